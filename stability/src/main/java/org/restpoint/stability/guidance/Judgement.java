package org.restpoint.stability.guidance;

import java.util.List;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/** What a table says of a number. */
public sealed interface Judgement {

  /** In plain words, with the figures. */
  String meaning();

  /**
   * It says something.
   *
   * @param bands those that the number may be in: one where it can tell, several where the number
   *     lies too near a limit or is itself no more than a limit, none where the table has none
   * @param rate the rate it recommends, where there is one
   * @param meaning in plain words
   */
  record Applies(List<Band> bands, Optional<Rate> rate, String meaning) implements Judgement {

    public Applies {
      bands = List.copyOf(bands);
    }
  }

  /**
   * It has nothing to say.
   *
   * @param reasons why, all of them
   */
  record DoesNotApply(List<Reason> reasons) implements Judgement {

    public DoesNotApply {
      reasons = List.copyOf(reasons);
    }

    @Override
    public String meaning() {
      StringBuilder text = new StringBuilder("This table does not apply:");
      String gap = " ";
      for (Reason reason : reasons) {
        text.append(gap).append(reason.text()).append(". ").append(reason.remedy());
        gap = " And ";
      }
      return text.toString();
    }
  }
}
