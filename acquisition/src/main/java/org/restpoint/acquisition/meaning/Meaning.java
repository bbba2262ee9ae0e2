package org.restpoint.acquisition.meaning;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.Guidance;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.guidance.Band;
import org.restpoint.stability.guidance.Cautions;
import org.restpoint.stability.guidance.Found;
import org.restpoint.stability.guidance.GuidanceTable;
import org.restpoint.stability.guidance.Judge;
import org.restpoint.stability.guidance.Judgement;
import org.restpoint.stability.guidance.Measurand;
import org.restpoint.stability.guidance.Rate;
import org.restpoint.stability.guidance.Relation;

/**
 * Says what the results of one electrode mean, by the tables that the station file chose for their
 * kind of sample. A result without a sample's record, or whose record says no kind or one that no
 * table is for, has no meaning told. A table that is for the kind and does not apply says why.
 */
public final class Meaning {

  /** What a result is of while nobody said how the sample was prepared. */
  private static final String AS_MEASURED = "solution as measured";

  /** What a result is of where a recipe of water reckoned it back. */
  private static final String WATER_SAMPLE = "water sample";

  /** These only say that the number is a limit, which a judgement takes into account. */
  private static final List<String> LIMITS = List.of("below-range", "above-range");

  private static final List<String> HARMFUL_IN_WELLS = List.of("nitrate", "nitrite");

  private final Analyte analyte;
  private final List<Chosen> tables;

  /** A table with the name that the file chose and the kinds of samples it is for. */
  private record Chosen(String name, List<String> kinds, GuidanceTable table) {}

  private Meaning(Analyte analyte, List<Chosen> tables) {
    this.analyte = analyte;
    this.tables = tables;
  }

  /** What the results of an electrode mean by the tables that were chosen. */
  public static Meaning of(Analyte analyte, Collection<ChosenTable> tables) {
    return new Meaning(
        analyte,
        tables.stream()
            .map(
                chosen ->
                    new Chosen(chosen.name(), chosen.kinds(), GuidanceTerms.table(chosen.table())))
            .toList());
  }

  /** The result with what it means now, in place of what was said of that before. */
  public Result explain(Result result) {
    Optional<List<Guidance>> told =
        result
            .reported()
            .flatMap(reported -> told(reported, result.sample(), result.time(), result.flags()));
    return told.equals(result.guidance()) ? result : result.meaning(told);
  }

  /**
   * What a number means.
   *
   * @param reported the number
   * @param sample the sample's record
   * @param time when it settled
   * @param flags the result's flags
   * @return what each table for this kind of sample says, in the file's order; empty where there is
   *     none
   */
  public Optional<List<Guidance>> told(
      Reported reported, Optional<ObjectNode> sample, Instant time, List<String> flags) {
    if (tables.isEmpty() || sample.isEmpty()) {
      return Optional.empty();
    }
    SampleRecord taken = SampleRecord.of(sample.get());
    List<Guidance> told = new ArrayList<>();
    for (Chosen chosen : tables) {
      taken
          .kind()
          .filter(chosen.kinds()::contains)
          .map(kind -> guidance(chosen, kind, found(reported, taken, kind, time), flags))
          .ifPresent(told::add);
    }
    return told.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(told));
  }

  private Found found(Reported reported, SampleRecord taken, String kind, Instant time) {
    String of = reported.kind();
    if (of.equals(AS_MEASURED)) {
      of = kind.endsWith(Measurand.WATER) ? Measurand.WATER : "the " + AS_MEASURED;
    } else if (of.equals(WATER_SAMPLE)) {
      of = Measurand.WATER;
    }
    return new Found(
        new Measurand(
            analyte, of, reported.unit(), Basis.ofCode(reported.basis()).orElse(Basis.AS_ION)),
        reported.value(),
        reported.uncertainty(),
        Relation.ofSign(reported.relation()).orElseThrow(),
        taken.depth(),
        time.atOffset(ZoneOffset.UTC).toLocalDate());
  }

  private Guidance guidance(Chosen chosen, String kind, Found found, List<String> flags) {
    GuidanceTable table = chosen.table();
    Judgement judgement = Judge.of(table, found);
    List<Band> bands =
        judgement instanceof Judgement.Applies applies ? applies.bands() : List.<Band>of();
    Optional<Rate> rate =
        judgement instanceof Judgement.Applies applies ? applies.rate() : Optional.empty();
    return new Guidance(
        chosen.name(),
        table.title(),
        doubt(flags) + judgement.meaning(),
        rate.map(
            given ->
                new Guidance.Rate(
                    given.poundsPerAcre(),
                    Rate.UNIT,
                    given.expandedUncertainty(),
                    given.reckoned())),
        table.source(),
        table.scope().text(),
        caution(table, kind, bands));
  }

  /** What a flagged result begins with: it is no more than a hint. */
  private static String doubt(List<String> flags) {
    String codes =
        flags.stream().filter(flag -> !LIMITS.contains(flag)).collect(Collectors.joining(", "));
    return codes.isEmpty()
        ? ""
        : "This result is flagged (" + codes + "): treat what follows as a hint. ";
  }

  private String caution(GuidanceTable table, String kind, List<Band> bands) {
    List<String> cautions = new ArrayList<>();
    bands.forEach(band -> band.caution().ifPresent(cautions::add));
    boolean drunk =
        kind.equals(ChosenTable.WELL_WATER)
            && HARMFUL_IN_WELLS.contains(analyte.name())
            && !table.caution().contains(Cautions.DRINKING);
    if (drunk) {
      cautions.add(Cautions.DRINKING);
    }
    cautions.add(table.caution());
    return cautions.stream()
        .map(text -> text.endsWith(".") ? text : text + ".")
        .distinct()
        .collect(Collectors.joining(" "));
  }
}
