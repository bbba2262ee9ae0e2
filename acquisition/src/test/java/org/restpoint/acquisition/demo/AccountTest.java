package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AccountTest {

  private static final Instant START = Instant.parse("2026-04-02T08:00:00Z");

  private final List<String> lines = new ArrayList<>();
  private final Account account = new Account(lines::add);

  @Test
  void aTimeIsShownInMinutesAndSecondsSinceTheBeginningAlsoBeyondAnHour() {
    account.beginAt(START);
    account.at(START.plusSeconds(65), "now");
    account.at(START.plusSeconds(3725).plusMillis(900), "later");

    assertThat(lines).containsExactly("01:05  now", "62:05  later");
  }

  @Test
  void aLongTextIsBrokenAtSpacesAndStaysBelowItsBeginning() {
    account.beginAt(START);
    account.at(START, "word ".repeat(40).strip());

    assertThat(lines).hasSize(3).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    assertThat(lines.get(0)).startsWith("00:00  word");
    assertThat(lines.subList(1, 3)).allSatisfy(line -> assertThat(line).startsWith("       word"));
  }

  @Test
  void aNumberIsNotPartedFromItsUnit() {
    account.say("x".repeat(96) + " 12 mV and 3 standards");

    assertThat(lines).containsExactly("x".repeat(96), "12 mV and 3 standards");
  }

  @Test
  void aNoBreakSpaceKeepsWordsTogetherAndIsShownAsASpace() {
    account.say("x".repeat(92) + " Long" + Account.NO_BREAK + "Acre");

    assertThat(lines).containsExactly("x".repeat(92), "Long Acre");
  }

  @Test
  void thereIsRoomBetweenStepsButNotUnderAHeading() {
    account.heading("CHECK");
    account.gap();
    account.line("one");
    account.gap();
    account.line("two");

    assertThat(lines).containsExactly("", "CHECK", "one", "", "two");
  }
}
