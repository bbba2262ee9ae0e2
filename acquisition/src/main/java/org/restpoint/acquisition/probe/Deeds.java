package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.suspicion.Circumstances;

/** What an instruction changes at once, with nothing to read. */
final class Deeds {

  private final Voice voice;
  private final CalibrationBook calibrations;
  private final Reckoning reckoning;
  private final Response response;
  private final DayBook day;
  private final Underway underway;
  private final Brackets brackets;

  Deeds(
      Voice voice,
      CalibrationBook calibrations,
      Reckoning reckoning,
      Response response,
      DayBook day,
      Underway underway,
      Brackets brackets) {
    this.voice = voice;
    this.calibrations = calibrations;
    this.reckoning = reckoning;
    this.response = response;
    this.day = day;
    this.underway = underway;
    this.brackets = brackets;
  }

  void carryOut(Instant time, Instruction.Task task) {
    if (task instanceof Instruction.Soak soak) {
      leave(time);
      day.soak(time, soak);
    } else if (task instanceof Instruction.Store store) {
      leave(time);
      day.store(time, store);
    } else if (task instanceof Instruction.Replaced replaced) {
      replace(time, replaced);
    } else if (task instanceof Instruction.Rinsed rinsed) {
      rinse(time, rinsed);
    } else {
      cancel(time);
    }
  }

  private void leave(Instant time) {
    underway.leaveStream(time);
    calibrations.endRound();
  }

  private void replace(Instant time, Instruction.Replaced replaced) {
    underway.leaveStream(time);
    calibrations.forget();
    response.forget();
    reckoning.checks().forget();
    brackets.endNone();
    day.replaced(time);
    voice.notice(time, Interruptions.replaced(replaced.part()));
  }

  private void rinse(Instant time, Instruction.Rinsed rinsed) {
    day.rinsed(time, rinsed);
    reckoning.know(Circumstances::afterRinse);
    if (underway.backInStream(time)) {
      calibrations.endRound();
    }
  }

  private void cancel(Instant time) {
    underway
        .instruction()
        .ifPresent(
            cancelled ->
                voice.refused(time, cancelled, Interruptions.cancelled(), Optional.empty()));
    underway.clear();
    day.cancelSoak(time);
  }
}
