package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.restpoint.stability.fit.Consistency;
import org.restpoint.stability.fit.LowEndFit;
import org.restpoint.stability.fit.OutlierSearch;
import org.restpoint.stability.fit.OutlyingPoint;
import org.restpoint.stability.fit.WeightedLine;

/** What there is to say of standards that were taken all the same, in words for a person. */
final class StandardsRemarks {

  private static final String READ_AGAIN =
      "Read it again with a fresh portion, rinsed and blotted before; if it stays off, make it"
          + " anew. It was not left out.";

  private StandardsRemarks() {}

  /** Of the scatter of the standards about their curve. */
  static List<Reason> of(List<StandardPoint> points, Consistency consistency, WeightedLine line) {
    List<Reason> remarks = new ArrayList<>();
    if (!consistency.consistent()) {
      remarks.add(
          new Reason(
              "standards-scatter",
              String.format(
                  Locale.ROOT,
                  "the standards scatter about their line %.2g times as far as their uncertainties"
                      + " let expect; the calibration counts as that much less certain",
                  consistency.inflation()),
              "Look for a standard that is off, for readings taken before rest, and whether the"
                  + " standards are known as well as the station file says."));
    }
    OutlyingPoint off = OutlierSearch.USUAL.byScatter(line);
    if (off instanceof OutlyingPoint.TooFewPoints || off instanceof OutlyingPoint.NoneFound) {
      off = OutlierSearch.USUAL.byUncertainty(line);
    }
    if (off instanceof OutlyingPoint.Named named && !consistency.consistent()) {
      remarks.add(
          new Reason(
              "standard-outlying",
              String.format(
                  Locale.ROOT,
                  "standard %s lies %+.2f mV off the line of all, more than chance explains",
                  points.get(named.index()).standard(),
                  line.points().get(named.index()).residual()),
              READ_AGAIN));
    }
    return remarks;
  }

  /** Of a bent curve that was asked for and not found. */
  static Reason straight(LowEndFit fit) {
    if (fit instanceof LowEndFit.TooFewStandards few) {
      return new Reason(
          "low-end-straight",
          String.format(
              Locale.ROOT,
              "a bent low end needs %d standards, there are %d: a straight line was drawn",
              few.needed(),
              few.standards()),
          "Read one more standard, about as low as the samples.");
    }
    if (fit instanceof LowEndFit.Undetermined) {
      return new Reason(
          "low-end-straight",
          "the standards do not say where the low end bends: a straight line was drawn",
          "Read standards on the straight part as well as below it, a decade apart.");
    }
    return new Reason(
        "low-end-straight",
        "no bend of the low end can be told from chance: a straight line was drawn",
        "Nothing, where the samples lie among the standards; otherwise read a lower standard.");
  }
}
