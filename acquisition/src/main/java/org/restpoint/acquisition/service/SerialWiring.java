package org.restpoint.acquisition.service;

import java.util.HashMap;
import java.util.Map;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineChecksum;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.serial.SerialLine;
import org.restpoint.adapters.serial.SerialLineSettings;
import org.restpoint.adapters.serial.SerialSettings;
import org.restpoint.config.station.LineFormat.Checksum;
import org.restpoint.config.station.LineFormat.Encoding;
import org.restpoint.config.station.LineFormat.End;
import org.restpoint.config.station.LinkSettings.Serial;

/**
 * Makes the links of serial lines. Probes that name one port speak on one line; that they agree on
 * it was checked with the station file.
 */
final class SerialWiring {

  private final Surroundings surroundings;
  private final Map<String, SerialLine> lines = new HashMap<>();

  SerialWiring(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  Link link(Serial settings, LinkListener listener) {
    SerialLine line = lines.computeIfAbsent(settings.port().name(), port -> line(settings));
    return line.link(
        new SerialSettings(
            settings.line(),
            DeviceWiring.meaning(settings.numbers()),
            switch (settings.decimal()) {
              case POINT -> DecimalMark.POINT;
              case COMMA -> DecimalMark.COMMA;
            },
            settings.channel(),
            settings.poll(),
            settings.pollEvery(),
            settings.noDataAfter()),
        listener);
  }

  private SerialLine line(Serial settings) {
    return new SerialLine(
        new SerialLineSettings(
            DeviceWiring.port(settings.port()),
            new LineFormat(
                end(settings.format().end()),
                encoding(settings.format().encoding()),
                checksum(settings.format().checksum()))),
        surroundings.privateFolder(),
        surroundings.clock(),
        surroundings.nanos());
  }

  private static LineEnd end(End end) {
    if (end instanceof End.Terminator terminator) {
      return new LineEnd.Mark(terminator.text());
    }
    return end instanceof End.Width width ? new LineEnd.Width(width.bytes()) : LineEnd.CR_OR_LF;
  }

  private static LineEncoding encoding(Encoding encoding) {
    return switch (encoding) {
      case LATIN_1 -> LineEncoding.LATIN_1;
      case UTF_8 -> LineEncoding.UTF_8;
      case UTF_16LE -> LineEncoding.UTF_16LE;
      case UTF_16BE -> LineEncoding.UTF_16BE;
    };
  }

  private static LineChecksum checksum(Checksum checksum) {
    return switch (checksum) {
      case NONE -> LineChecksum.NONE;
      case XOR -> new LineChecksum.ExclusiveOr();
      case CRC_16_MODBUS -> new LineChecksum.Crc(Crc16.MODBUS);
      case CRC_16_ARC -> new LineChecksum.Crc(Crc16.ARC);
      case CRC_16_IBM_3740 -> new LineChecksum.Crc(Crc16.IBM_3740);
      case CRC_16_XMODEM -> new LineChecksum.Crc(Crc16.XMODEM);
      case CRC_16_KERMIT -> new LineChecksum.Crc(Crc16.KERMIT);
    };
  }
}
