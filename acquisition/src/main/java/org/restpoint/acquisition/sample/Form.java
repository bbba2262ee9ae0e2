package org.restpoint.acquisition.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.text.IsoTime;

/** What a field of a sample's record may hold. */
sealed interface Form {

  /** What it may hold, in words for a person. */
  String expected();

  /** The value as records keep it; empty where it is none. */
  Optional<JsonNode> read(JsonNode value);

  /** The value that a text stands for; the text itself where it stands for nothing else. */
  JsonNode ofText(String text);

  /**
   * Text.
   *
   * @param most characters at most
   * @param lines whether it may have several lines
   */
  record Words(int most, boolean lines) implements Form {

    @Override
    public String expected() {
      return "text of 1 to %d characters%s".formatted(most, lines ? "" : " in one line");
    }

    @Override
    public Optional<JsonNode> read(JsonNode value) {
      if (!value.isTextual()) {
        return Optional.empty();
      }
      String text = value.textValue().strip();
      boolean fits = !text.isEmpty() && text.length() <= most;
      return fits && text.chars().allMatch(this::mayStand)
          ? Optional.of(TextNode.valueOf(text))
          : Optional.empty();
    }

    private boolean mayStand(int character) {
      return !Character.isISOControl(character)
          || (lines && (character == '\n' || character == '\r' || character == '\t'));
    }

    @Override
    public JsonNode ofText(String text) {
      return TextNode.valueOf(text);
    }
  }

  /**
   * A number.
   *
   * @param least the least there is
   * @param most the most there is
   * @param unit its unit, for a person
   */
  record Range(double least, double most, String unit) implements Form {

    private static final Pattern DECIMAL = Pattern.compile("[-+]?\\d{1,9}(\\.\\d{1,15})?");

    @Override
    public String expected() {
      return "a number from %.0f to %.0f %s".formatted(least, most, unit);
    }

    @Override
    public Optional<JsonNode> read(JsonNode value) {
      double number = value.doubleValue();
      if (!value.isNumber() || !(number >= least && number <= most)) {
        return Optional.empty();
      }
      boolean whole = number == Math.rint(number);
      return Optional.of(whole ? IntNode.valueOf((int) number) : DoubleNode.valueOf(number));
    }

    @Override
    public JsonNode ofText(String text) {
      return DECIMAL.matcher(text).matches()
          ? DoubleNode.valueOf(Double.parseDouble(text))
          : TextNode.valueOf(text);
    }
  }

  /** Yes or no. */
  record YesOrNo() implements Form {

    @Override
    public String expected() {
      return "true or false";
    }

    @Override
    public Optional<JsonNode> read(JsonNode value) {
      return value.isBoolean() ? Optional.of(value) : Optional.empty();
    }

    @Override
    public JsonNode ofText(String text) {
      return switch (text.toLowerCase(Locale.ROOT)) {
        case "true", "yes" -> BooleanNode.TRUE;
        case "false", "no" -> BooleanNode.FALSE;
        default -> TextNode.valueOf(text);
      };
    }
  }

  /**
   * One of some words.
   *
   * @param words the words
   */
  record OneOf(List<String> words) implements Form {

    public OneOf {
      words = List.copyOf(words);
    }

    @Override
    public String expected() {
      return "one of " + String.join(", ", words);
    }

    @Override
    public Optional<JsonNode> read(JsonNode value) {
      return value.isTextual() && words.contains(value.textValue())
          ? Optional.of(value)
          : Optional.empty();
    }

    @Override
    public JsonNode ofText(String text) {
      return TextNode.valueOf(text);
    }
  }

  /** A date and time with its offset from UTC, which is kept: it tells the time of day there. */
  record Moment() implements Form {

    private static final int EARLIEST_YEAR = 1970;
    private static final int LATEST_YEAR = 2199;

    @Override
    public String expected() {
      return "ISO 8601 with Z or an offset, like 2026-04-02T09:15:00-05:00";
    }

    @Override
    public Optional<JsonNode> read(JsonNode value) {
      try {
        OffsetDateTime time =
            OffsetDateTime.from(IsoTime.FORMATTER.parse(value.isTextual() ? value.asText() : ""));
        return time.getYear() >= EARLIEST_YEAR && time.getYear() <= LATEST_YEAR
            ? Optional.of(TextNode.valueOf(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time)))
            : Optional.empty();
      } catch (DateTimeException e) {
        return Optional.empty();
      }
    }

    @Override
    public JsonNode ofText(String text) {
      return TextNode.valueOf(text);
    }
  }
}
