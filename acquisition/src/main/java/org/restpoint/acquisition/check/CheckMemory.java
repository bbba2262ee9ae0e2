package org.restpoint.acquisition.check;

import java.util.List;

/**
 * What is kept of a probe's checks over a restart.
 *
 * @param ids the results of the samples that some role does not vouch for yet, oldest first, at
 *     most {@link Checkbook#MOST_RESULTS}
 * @param spans one for each role
 * @param charts the recoveries of each check standard
 */
public record CheckMemory(List<String> ids, List<Span> spans, List<RecoveryChart> charts) {

  public CheckMemory {
    ids = List.copyOf(ids);
    spans = List.copyOf(spans);
    charts = List.copyOf(charts);
  }
}
