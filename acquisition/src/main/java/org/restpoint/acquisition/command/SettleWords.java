package org.restpoint.acquisition.command;

import java.util.List;
import java.util.stream.Collectors;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.SettleRule;

/** Says a rule of rest in words: what follows "at rest when". */
final class SettleWords {

  private SettleWords() {}

  static String of(SettleRule rule) {
    if (rule instanceof SettleRule.AllOf all) {
      return joined(all.rules(), " and ");
    }
    if (rule instanceof SettleRule.AnyOf any) {
      return joined(any.rules(), " or ");
    }
    return single(rule);
  }

  private static String joined(List<SettleRule> rules, String word) {
    return rules.stream().map(SettleWords::member).collect(Collectors.joining(word));
  }

  private static String member(SettleRule rule) {
    boolean combination = rule instanceof SettleRule.AllOf || rule instanceof SettleRule.AnyOf;
    return combination ? "(" + of(rule) + ")" : single(rule);
  }

  private static String single(SettleRule rule) {
    if (rule instanceof SettleRule.Drift drift) {
      return "the drift over %s%s is at most %s mV/min with %d readings or more"
          .formatted(
              Words.span(drift.over()),
              errors(drift.standardErrors()),
              Words.number(drift.belowMillivoltsPerMinute()),
              drift.readingsAtLeast());
    }
    if (rule instanceof SettleRule.Forecast forecast) {
      return "its rest is foretold within " + within(forecast.within()) + learning(forecast);
    }
    SettleRule.Consecutive consecutive = (SettleRule.Consecutive) rule;
    String which =
        consecutive.span().isZero()
            ? consecutive.readings() + " readings"
            : "all readings of %s, %d or more,"
                .formatted(Words.span(consecutive.span()), consecutive.readings());
    return which + " lie within " + within(consecutive.within());
  }

  private static String learning(SettleRule.Forecast forecast) {
    return forecast.learn() ? ", learning how the electrode responds" : "";
  }

  private static String errors(double standardErrors) {
    if (standardErrors == 0) {
      return "";
    }
    return standardErrors == 1
        ? " plus its standard error"
        : " plus %s standard errors".formatted(Words.number(standardErrors));
  }

  private static String within(SettleRule.Within within) {
    return within instanceof SettleRule.Within.Percent share
        ? Words.number(share.percent()) + " % of the concentration"
        : Words.number(((SettleRule.Within.Millivolts) within).millivolts()) + " mV";
  }
}
