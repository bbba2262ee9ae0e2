package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tells what is wrong where several probes name one port: each kind of link has its rule. */
final class SharedPorts {

  /** What probes of one kind of link must keep to on one port. */
  interface Rule {

    /**
     * Tells what a probe does not keep to.
     *
     * @param newcomer a probe on the port
     * @param earlier those before it in the file, at least one, all of its kind of link
     */
    void tell(PortUse newcomer, List<PortUse> earlier);
  }

  /** The kinds of link whose probes may share a port, each with its rule. */
  private static final Map<String, Rule> RULES =
      Map.of(
          "modbus",
          ModbusSharing::tell,
          "serial",
          SerialSharing::tell,
          "sdi12",
          Sdi12Sharing::tell);

  private SharedPorts() {}

  static void tell(List<PortUse> uses) {
    Map<String, List<PortUse>> byDevice = new LinkedHashMap<>();
    for (PortUse use : uses) {
      List<PortUse> earlier = byDevice.computeIfAbsent(use.device(), device -> new ArrayList<>());
      if (!earlier.isEmpty()) {
        tell(use, List.copyOf(earlier));
      }
      earlier.add(use);
    }
  }

  private static void tell(PortUse newcomer, List<PortUse> earlier) {
    Rule rule = RULES.get(newcomer.kind());
    if (rule != null && earlier.stream().allMatch(use -> use.kind().equals(newcomer.kind()))) {
      rule.tell(newcomer, earlier);
    } else {
      refuse(newcomer, "a port of its own", earlier.get(0), "");
    }
  }

  /**
   * Refuses a port that another probe uses.
   *
   * @param how what the two do alike; empty, or with a space before it
   */
  static void refuse(PortUse newcomer, String expected, PortUse owner, String how) {
    newcomer
        .port()
        .refuse(
            expected,
            "%s, already used by probe %s (line %d)%s"
                .formatted(newcomer.port().found(), owner.probe(), owner.port().line(), how));
  }

  /**
   * Tells that two probes on a port do not agree on a key.
   *
   * @param key the key, which at least one of the two has
   */
  static void tellDifference(PortUse newcomer, PortUse owner, String key) {
    String expected =
        "%s, as probe %s has it on this port (line %d)"
            .formatted(
                owner.keys().inside(key).map(Entry::found).orElse("no " + key),
                owner.probe(),
                owner.keys().inside(key).orElse(owner.port()).line());
    newcomer
        .keys()
        .inside(key)
        .ifPresentOrElse(
            entry -> entry.refuse(expected),
            () ->
                newcomer
                    .keys()
                    .problems()
                    .add(
                        newcomer.keys().key() + "." + key,
                        newcomer.port().line(),
                        expected,
                        "nothing"));
  }
}
