package org.restpoint.adapters.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.restpoint.adapters.modbus.ReadRequest.Answer;

class PublishedFramesTest {

  private static final HexFormat HEX = HexFormat.ofDelimiter(" ").withUpperCase();

  private static final ReadRequest HOLDING_108_TO_110 =
      new ReadRequest(RegisterTable.HOLDING, 107, 3);
  private static final ReadRequest INPUT_9 = new ReadRequest(RegisterTable.INPUT, 8, 1);

  @ParameterizedTest
  @CsvFileSource(resources = "/published/modbus-frames.csv", useHeadersInDisplayName = true)
  void aFrameIsWrittenAsTheSpecificationsPrintIt(
      String frame, String wire, int unit, int transaction, String pdu) {
    byte[] inside = HEX.parseHex(pdu);
    byte[] written =
        wire.equals("rtu")
            ? RtuFraming.frame(unit, inside)
            : TcpFraming.frame(transaction, unit, inside);
    assertThat(HEX.formatHex(written)).isEqualTo(frame);
  }

  @Test
  void theRequestsOfTheSpecification() {
    assertThat(HEX.formatHex(HOLDING_108_TO_110.pdu())).isEqualTo("03 00 6B 00 03");
    assertThat(HEX.formatHex(INPUT_9.pdu())).isEqualTo("04 00 08 00 01");
  }

  @Test
  void theAnswersOfTheSpecification() {
    assertThat(rtu(HOLDING_108_TO_110, 17, "11 03 06 02 2B 00 00 00 64 C8 BA"))
        .isEqualTo(new Answer.Registers(List.of(555, 0, 100)));
    assertThat(rtu(INPUT_9, 1, "01 04 02 00 0A 39 37"))
        .isEqualTo(new Answer.Registers(List.of(10)));
  }

  private static Answer rtu(ReadRequest request, int unit, String frame) {
    byte[] bytes = HEX.parseHex(frame);
    Heard heard = new Heard();
    heard.add(bytes, bytes.length);
    return new RtuFraming().ask(unit, request).answer(heard).orElseThrow();
  }
}
