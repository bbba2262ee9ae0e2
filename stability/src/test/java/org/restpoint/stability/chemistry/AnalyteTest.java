package org.restpoint.stability.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class AnalyteTest {

  private static final Pattern ATOMS = Pattern.compile("([A-Z][a-z]?)(\\d*)");

  private static Analyte named(String name) {
    return Analyte.named(name).orElseThrow();
  }

  /** Atoms of each element in an ion's formula, its charge cut off. */
  private static Map<String, Integer> atoms(Analyte analyte) {
    int size = Math.abs(analyte.charge());
    String charge = (size > 1 ? String.valueOf(size) : "") + (analyte.charge() > 0 ? "+" : "-");
    assertThat(analyte.formula()).endsWith(charge);
    String neutral = analyte.formula().substring(0, analyte.formula().length() - charge.length());
    Map<String, Integer> atoms = new HashMap<>();
    Matcher matcher = ATOMS.matcher(neutral);
    while (matcher.find()) {
      int count = matcher.group(2).isEmpty() ? 1 : Integer.parseInt(matcher.group(2));
      atoms.merge(matcher.group(1), count, Integer::sum);
    }
    return atoms;
  }

  @Test
  void eachMolarMassIsTheSumOfIupacsAtomicWeights() {
    Published table = Published.table("atomic-weights");
    List<String> symbols = table.texts("symbol");
    double[] weights = table.numbers("gramsPerMole");
    assertThat(Analyte.known()).hasSize(17);
    for (Analyte analyte : Analyte.known()) {
      Map<String, Integer> atoms = atoms(analyte);
      double sum = 0;
      for (Map.Entry<String, Integer> element : atoms.entrySet()) {
        sum += element.getValue() * weights[symbols.indexOf(element.getKey())];
      }
      // The sum's rounding.
      assertThat(analyte.gramsPerMole()).as(analyte.name()).isCloseTo(sum, within(1e-12));
      assertThat(analyte.nitrogenAtoms()).as(analyte.name()).isEqualTo(atoms.getOrDefault("N", 0));
    }
  }

  @Test
  void nitrateWeighs4Point4266TimesItsNitrogen() {
    Analyte nitrate = named("nitrate");
    // 62.004/14.007, by IUPAC's abridged atomic weights, to the printed decimals.
    assertThat(nitrate.gramsPerMole(Basis.AS_ION) / nitrate.gramsPerMole(Basis.AS_N))
        .isCloseTo(4.4266, within(0.00005));
  }

  @Test
  void anIonWithoutNitrogenHasOneBasis() {
    Analyte calcium = named("calcium");
    assertThat(calcium.bases()).containsExactly(Basis.AS_ION);
    assertThatThrownBy(() -> calcium.gramsPerMole(Basis.AS_N))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("calcium cannot be given as-N");
    assertThat(named("ammonium").bases()).containsExactly(Basis.AS_N, Basis.AS_ION);
  }

  @Test
  void anIonIsFoundByItsName() {
    for (Analyte analyte : Analyte.known()) {
      assertThat(Analyte.named(analyte.name())).contains(analyte);
    }
    assertThat(Analyte.named("Nitrate")).isEmpty();
  }

  @Test
  void anIonThatCannotBeIsRefused() {
    for (int charge : new int[] {0, 3, -3}) {
      assertThatThrownBy(() -> new Analyte("x", "X", charge, 10, 0))
          .hasMessage("an ion's charge is -2, -1, 1 or 2, not " + charge);
    }
    for (double mass : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Analyte("x", "X+", 1, mass, 0))
          .hasMessage("a molar mass is above zero, not " + mass);
    }
    assertThatThrownBy(() -> new Analyte("x", "X+", 1, 10, -1))
        .hasMessage("an ion has no fewer than 0 nitrogen atoms");
  }
}
