package org.restpoint.acquisition.listen;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.listen.Payloads.Kind;
import org.restpoint.adapters.guess.Field;
import org.restpoint.adapters.guess.FieldGuess;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** The section of a station file for topics that were understood: a probe for each. */
final class TopicSection {

  private static final String NAME = "[A-Za-z0-9_-]{1,64}";

  private TopicSection() {}

  /**
   * The section, from {@code probes:} on.
   *
   * @param topics those whose messages are understood
   * @param broker where they were heard
   */
  static List<String> of(List<TopicHeard> topics, String broker) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "# Heard at %s; the station's broker would be: { url: \"%s\" }".formatted(broker, broker));
    List<String> probes = new ArrayList<>();
    List<String> families = TopicFamilies.of(topics);
    Set<String> names = new HashSet<>();
    for (TopicHeard heard : topics) {
      FieldGuess guess = heard.guess().orElseThrow();
      guess
          .doubts()
          .forEach(doubt -> lines.add("# Look at this, %s: %s.".formatted(heard.topic(), doubt)));
      Optional<String> family =
          families.stream().filter(filter -> TopicFamilies.fits(filter, heard.topic())).findFirst();
      String own =
          family
              .map(filter -> TopicFamilies.captured(filter, heard.topic()))
              .orElse(heard.topic().substring(heard.topic().lastIndexOf('/') + 1));
      String name = own.matches(NAME) && names.add(own) ? own : "probe-" + (names.size() + 1);
      names.add(name);
      List<String> keys = new ArrayList<>();
      keys.add("topic: " + Yaml.text(family.orElse(heard.topic())));
      if (family.isPresent() && !name.equals(own)) {
        keys.add("captured: " + Yaml.text(own));
      }
      keys.addAll(numbers(heard, guess));
      probes.addAll(ProbeText.of(name, guess.meaning(), "mqtt", keys));
    }
    lines.add("probes:");
    lines.addAll(probes);
    return lines;
  }

  private static List<String> numbers(TopicHeard heard, FieldGuess guess) {
    List<String> keys = new ArrayList<>();
    Kind kind = heard.kind().orElseThrow();
    if (kind == Kind.NUMBER
        && guess.meaning().potential().equals(Optional.of(PotentialScale.MILLIVOLTS))) {
      keys.add("payload: number");
      return keys;
    }
    if (kind == Kind.SENML) {
      keys.add("payload: senml");
    }
    guess
        .potential()
        .ifPresent(
            field -> keys.add(key(guess.meaning().potential().map(PotentialScale::name), field)));
    guess
        .temperature()
        .ifPresent(
            field ->
                keys.add(key(guess.meaning().temperature().map(TemperatureScale::name), field)));
    keys.addAll(NumberKeys.of(guess.meaning()));
    heard
        .time()
        .ifPresent(
            time -> {
              keys.add("time: " + Yaml.text(time.pointer()));
              if (time.milliseconds()) {
                keys.add("time-unit: ms");
              }
            });
    return keys;
  }

  private static String key(Optional<String> name, Field field) {
    return name.orElseThrow() + ": " + Yaml.text(field.key());
  }
}
