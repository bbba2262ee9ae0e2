package org.restpoint.acquisition.slip;

import java.util.List;
import org.restpoint.acquisition.event.Result;

/**
 * What stands on a slip, in its order, whatever it is printed on. Its texts hold no control
 * characters: a line break in a note is a space, whatever else could move a terminal's cursor or
 * turn the reading direction is shown as U+FFFD.
 *
 * @param title what it is, in one line
 * @param sections its parts, none of them empty
 */
public record Slip(String title, List<Section> sections) {

  public Slip {
    title = Printable.of(title);
    sections = sections.stream().filter(section -> !section.parts().isEmpty()).toList();
  }

  /** The slip of a result, of any outcome. */
  public static Slip of(Result result, Subject subject) {
    return new Slip(
        SampleSection.title(result, subject),
        List.of(
            SampleSection.of(result, subject),
            NumberSection.of(result, subject),
            MethodSection.of(result, subject),
            SurenessSection.of(result, subject),
            MeaningSection.of(result),
            CareSection.of(result, subject),
            OriginSection.of(result)));
  }

  /**
   * A part of the slip under a heading.
   *
   * @param heading a few words
   * @param parts what stands there, from the top
   */
  public record Section(String heading, List<Part> parts) {

    public Section {
      heading = Printable.of(heading);
      parts = List.copyOf(parts);
    }
  }

  /** Something that stands on a slip. */
  public sealed interface Part {}

  /**
   * A name and what it is.
   *
   * @param label a word or two
   * @param text what it is
   */
  public record Fact(String label, String text) implements Part {

    public Fact {
      label = Printable.of(label);
      text = Printable.of(text);
    }
  }

  /**
   * What the slip is for; to be seen first.
   *
   * @param text a number with its uncertainty and unit, or that there is none
   */
  public record Headline(String text) implements Part {

    public Headline {
      text = Printable.of(text);
    }
  }

  /**
   * A sentence or a few.
   *
   * @param text with its full stop
   */
  public record Sentence(String text) implements Part {

    public Sentence {
      text = Printable.of(text);
    }
  }
}
