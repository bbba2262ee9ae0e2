package org.restpoint.acquisition.metrics;

import java.util.Locale;
import java.util.Optional;

/**
 * All meters at one moment, as text.
 *
 * @param contentType the format's media type with its version and character set
 * @param text the meters, UTF-8
 */
public record Scrape(String contentType, String text) {

  /** The Prometheus text format, version 0.0.4. */
  static final String PROMETHEUS = "text/plain; version=0.0.4; charset=utf-8";

  /** The OpenMetrics text format, version 1.0.0. */
  static final String OPEN_METRICS = "application/openmetrics-text; version=1.0.0; charset=utf-8";

  private static final String OPEN_METRICS_TYPE = "application/openmetrics-text";

  /**
   * The format to answer with: OpenMetrics when the Accept header asks for it, else Prometheus
   * text, also when there is no header. A range with {@code q=0} asks for nothing (RFC 9110,
   * section 12.4.2).
   */
  static String formatFor(Optional<String> acceptHeader) {
    String header = acceptHeader.orElse("").toLowerCase(Locale.ROOT);
    for (String range : header.split(",", -1)) {
      String[] parts = range.split(";", -1);
      if (parts[0].strip().equals(OPEN_METRICS_TYPE) && !isExcluded(parts)) {
        return OPEN_METRICS;
      }
    }
    return PROMETHEUS;
  }

  private static boolean isExcluded(String[] parts) {
    for (String part : parts) {
      if (part.strip().matches("q\\s*=\\s*0(\\.0*)?")) {
        return true;
      }
    }
    return false;
  }
}
