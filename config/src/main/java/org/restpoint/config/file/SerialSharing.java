package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.restpoint.config.station.LinkSettings.Serial;

/**
 * What probes on one serial port keep to: they agree on how it is opened and how its bytes become
 * lines, and no two of them claim the same lines.
 */
final class SerialSharing {

  /**
   * Something they agree on.
   *
   * @param keys the keys that say it, of which a link has one at most
   * @param said what a link says of it
   */
  private record Agreed(List<String> keys, Function<Serial, Object> said) {

    Agreed(String key, Function<Serial, Object> said) {
      this(List.of(key), said);
    }

    /** The key to name where two differ. */
    String key(PortUse newcomer, PortUse owner) {
      Optional<String> own = keys.stream().filter(key -> has(newcomer, key)).findFirst();
      Optional<String> other = keys.stream().filter(key -> has(owner, key)).findFirst();
      return own.or(() -> other).orElse(keys.get(0));
    }

    private static boolean has(PortUse use, String key) {
      return use.keys().inside(key).isPresent();
    }
  }

  private static final List<Agreed> AGREED =
      List.of(
          new Agreed("baud", serial -> serial.port().baud()),
          new Agreed("data-bits", serial -> serial.port().dataBits()),
          new Agreed("parity", serial -> serial.port().parity()),
          new Agreed("stop-bits", serial -> serial.port().stopBits()),
          new Agreed("handshake", serial -> serial.port().handshake()),
          new Agreed("dtr", serial -> serial.port().dtr()),
          new Agreed("rts", serial -> serial.port().rts()),
          new Agreed(List.of("terminator", "width"), serial -> serial.format().end()),
          new Agreed("encoding", serial -> serial.format().encoding()),
          new Agreed("checksum", serial -> serial.format().checksum()));

  private static final Agreed EVERY = new Agreed("every", Serial::pollEvery);

  private SerialSharing() {}

  static void tell(PortUse newcomer, List<PortUse> earlier) {
    if (!(newcomer.link().orElse(null) instanceof Serial serial)) {
      return;
    }
    Optional<PortUse> owner = earlier.stream().filter(use -> use.link().isPresent()).findFirst();
    owner.ifPresent(use -> AGREED.forEach(agreed -> compare(agreed, newcomer, use)));
    if (serial.poll().isPresent()) {
      earlier.stream()
          .filter(
              use -> use.link().orElse(null) instanceof Serial other && other.poll().isPresent())
          .findFirst()
          .ifPresent(use -> compare(EVERY, newcomer, use));
    }
    earlier.stream()
        .filter(use -> use.link().orElse(null) instanceof Serial other && sameLines(serial, other))
        .findFirst()
        .ifPresent(use -> tellSameLines(newcomer, serial, use));
  }

  private static void compare(Agreed agreed, PortUse newcomer, PortUse owner) {
    if (newcomer.link().orElse(null) instanceof Serial one
        && owner.link().orElse(null) instanceof Serial other
        && !agreed.said().apply(one).equals(agreed.said().apply(other))) {
      SharedPorts.tellDifference(newcomer, owner, agreed.key(newcomer, owner));
    }
  }

  private static boolean sameLines(Serial one, Serial other) {
    return one.line().pattern().equals(other.line().pattern())
        && one.channel().equals(other.channel());
  }

  private static void tellSameLines(PortUse newcomer, Serial serial, PortUse owner) {
    if (serial.channel().isEmpty()) {
      SharedPorts.refuse(
          newcomer,
          "a port of its own, or on a shared one a channel or a line of its own",
          owner,
          " with the same line");
      return;
    }
    newcomer
        .keys()
        .inside("channel")
        .ifPresent(
            channel ->
                channel.refuse(
                    "a channel of its own",
                    "%s, already that of probe %s on this port (line %d)"
                        .formatted(
                            channel.found(),
                            owner.probe(),
                            owner.keys().inside("channel").orElse(owner.port()).line())));
  }
}
