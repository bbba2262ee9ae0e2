package org.restpoint.acquisition.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.acquisition.slip.Slip.Fact;
import org.restpoint.acquisition.slip.Slip.Headline;
import org.restpoint.acquisition.slip.Slip.Part;
import org.restpoint.acquisition.slip.Slip.Section;
import org.restpoint.acquisition.slip.Slip.Sentence;

/** A section as it is put together; what is empty is left out, what stood there is not repeated. */
final class Parts {

  private final String heading;
  private final List<Part> parts = new ArrayList<>();

  Parts(String heading) {
    this.heading = heading;
  }

  Parts headline(String text) {
    return add(new Headline(text));
  }

  Parts fact(String label, String text) {
    return text.isBlank() ? this : add(new Fact(label, text));
  }

  Parts fact(String label, Optional<String> text) {
    text.ifPresent(found -> fact(label, found));
    return this;
  }

  /** A sentence begins with a capital letter and ends with a full stop, however it was given. */
  Parts sentence(String text) {
    return text.isBlank() ? this : add(new Sentence(closed(text.strip())));
  }

  Section section() {
    return new Section(heading, parts);
  }

  private static String closed(String text) {
    String begun = capitalised(text);
    return ".!?".indexOf(begun.charAt(begun.length() - 1)) < 0 ? begun + "." : begun;
  }

  /** A text with a capital letter at its beginning; pH stays what it is. */
  static String capitalised(String text) {
    if (text.startsWith("pH")) {
      return text;
    }
    int first = text.offsetByCodePoints(0, 1);
    return text.substring(0, first).toUpperCase(Locale.ROOT) + text.substring(first);
  }

  private Parts add(Part part) {
    if (!parts.contains(part)) {
      parts.add(part);
    }
    return this;
  }
}
