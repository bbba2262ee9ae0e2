package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.StoredEntry;

/**
 * Writes settled results as one SenML pack in JSON (RFC 8428), each of its latest revision, oldest
 * first.
 *
 * <p>The names of a result begin with {@code restpoint/{station}/{probe}/}, and for a check with
 * its role as well, so that a known solution is never taken for a sample. A number stands there
 * only in a unit of the registry and only where the relation is {@code =}; anything else is a text
 * under the same name with {@code /text} behind it. Left out are results without a number and those
 * before 1978-07-04T21:24:16Z, whose times a SenML reader takes for seconds from now (section
 * 4.5.3).
 */
public final class SenMlWriter {

  private static final long RELATIVE_BELOW_SECONDS = 1L << 28;
  private static final String AS_MEASURED = "solution as measured";

  private final JournalReader journal;
  private final ItemsOfAnArray pack;
  private long leftOut;
  private Optional<ObjectNode> base = Optional.empty();

  /** Writes from an open journal; neither is closed here. */
  public SenMlWriter(JournalReader journal, Writer out) {
    this.journal = journal;
    this.pack = new ItemsOfAnArray(out);
  }

  /**
   * Writes the whole pack.
   *
   * @return how many results were left out
   */
  public long write(ResultQuery query) {
    pack.write("[");
    query.latest().each(journal, this::result);
    pack.write("\n]\n");
    return leftOut;
  }

  private void result(StoredEntry entry) {
    JsonNode result = ResultQuery.parsed(entry);
    if (!result.has("concentration") || !isAbsolute(entry.time())) {
      leftOut++;
      return;
    }
    base = Optional.of(base(entry, result));
    amount(result.path("concentration"), "concentration");
    JsonNode reported = result.path("reported");
    String kind = reported.path("kind").asText();
    if (!kind.equals(AS_MEASURED) && !kind.isEmpty()) {
      amount(reported, kind.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-"));
    }
    if (result.has("millivolts")) {
      number("potential", "V", exact(result.path("millivolts")).scaleByPowerOfTen(-3));
    }
    if (result.has("celsius")) {
      number("temperature", "Cel", exact(result.path("celsius")));
    }
    pack.add(named("quality").put("v", result.path("quality").asInt()));
    text("flags", Column.text(result.path("flags")));
    text("sample", result.at("/sample/number").asText());
    text("result", entry.id());
  }

  private static boolean isAbsolute(Instant time) {
    return time.getEpochSecond() >= RELATIVE_BELOW_SECONDS;
  }

  private static ObjectNode base(StoredEntry entry, JsonNode result) {
    String role = result.at("/verification/role").asText();
    ObjectNode base = EventJson.mapper().createObjectNode();
    base.put(
        "bn",
        "restpoint/%s/%s/%s"
            .formatted(
                result.path("station").asText(), entry.probe(), role.isEmpty() ? "" : role + "/"));
    put(base, "bt", BigDecimal.valueOf(entry.time().toEpochMilli(), 3));
    return base;
  }

  /** A concentration under a name that tells what its mass is the mass of. */
  private void amount(JsonNode amount, String of) {
    String unit = amount.path("unit").asText();
    Optional<SenMlUnit> registered = SenMlUnit.ofUcum(unit);
    String name = unit.equals("[pH]") ? "pH" : of + "-" + amount.path("basis").asText();
    String relation = amount.path("relation").asText();
    if (registered.isEmpty() || !relation.equals("=")) {
      text(
          name + "/text",
          "%s %s %s %s"
              .formatted(
                  relation, amount.path("value").asText(), unit, amount.path("basis").asText()));
      return;
    }
    number(name, registered.get(), amount.path("value"));
    number(name + "/uncertainty", registered.get(), amount.path("uncertainty"));
  }

  private void number(String name, SenMlUnit unit, JsonNode value) {
    number(name, unit.symbol(), exact(value).scaleByPowerOfTen(unit.powerOfTen()));
  }

  private void number(String name, String unit, BigDecimal value) {
    ObjectNode record = named(name).put("u", unit);
    put(record, "v", value);
    pack.add(record);
  }

  private void text(String name, String text) {
    if (!text.isEmpty()) {
      pack.add(named(name).put("vs", text));
    }
  }

  /** The first record of a result says for all of them whose they are and when they were. */
  private ObjectNode named(String name) {
    ObjectNode record = base.orElseGet(() -> EventJson.mapper().createObjectNode());
    base = Optional.empty();
    return record.put("n", name);
  }

  /** The very digits that were kept: a shift of the decimal point changes none of them. */
  private static BigDecimal exact(JsonNode number) {
    return new BigDecimal(number.asText());
  }

  private static void put(ObjectNode record, String label, BigDecimal number) {
    if (number.stripTrailingZeros().scale() <= 0 && number.precision() - number.scale() < 18) {
      record.put(label, number.longValueExact());
    } else {
      record.put(label, number);
    }
  }
}
