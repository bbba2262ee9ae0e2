package org.restpoint.acquisition.service;

import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Forgotten;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.event.State;

/**
 * The topics of a station, all below {@code restpoint/{station}/}.
 *
 * @param station the station's name
 */
public record Topics(String station) {

  /** Whether the service is there. */
  public String online() {
    return "restpoint/" + station + "/online";
  }

  /** Where a probe takes instructions; {@code +} for all probes. */
  public String instruction(String probe) {
    return of(probe, "instruction");
  }

  /** Where a probe answers. */
  public String answer(String probe) {
    return of(probe, "answer");
  }

  /** The filter for all that is said about a probe and to it. */
  public String everything(String probe) {
    return of(probe, "+");
  }

  /** The probe of an instruction's topic. */
  public String probeOf(String instructionTopic) {
    String[] levels = instructionTopic.split("/", -1);
    return levels.length > 2 ? levels[2] : instructionTopic;
  }

  /** Where an event goes. */
  public String of(Event event) {
    return of(event.probe(), kind(event));
  }

  /** The word for an event in topics and in the journal. */
  public static String kind(Event event) {
    if (event instanceof Result) {
      return "result";
    } else if (event instanceof Calibration) {
      return "calibration";
    } else if (event instanceof Notice) {
      return "notice";
    } else if (event instanceof State) {
      return "state";
    } else if (event instanceof BatchSummary) {
      return "batch";
    } else if (event instanceof Progress) {
      return "settling";
    } else if (event instanceof SampleRecord) {
      return "sample";
    } else if (event instanceof Forgotten) {
      return "forgotten";
    }
    return "raw";
  }

  /** Whether the broker keeps an event as its topic's last value. */
  public static boolean retained(Event event) {
    return event instanceof Calibration || event instanceof State;
  }

  /** Whether an event may be lost: it is told once, at QoS 0, and not kept. */
  public static boolean passing(Event event) {
    return event instanceof Progress || event instanceof RawReading;
  }

  /**
   * Whether an event is kept and answered but has no topic, because it names people or is the
   * caller's.
   */
  public static boolean unpublished(Event event) {
    return event instanceof SampleRecord || event instanceof Forgotten;
  }

  private String of(String probe, String what) {
    return "restpoint/" + station + "/" + probe + "/" + what;
  }
}
