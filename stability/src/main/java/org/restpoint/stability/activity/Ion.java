package org.restpoint.stability.activity;

import java.util.List;
import java.util.Optional;
import org.restpoint.stability.chemistry.Analyte;

/**
 * An ion in solution, with the distance to which other ions come near it.
 *
 * <p>Sizes are those of J. Kielland, J. Am. Chem. Soc. 59 (1937) 1675, doi 10.1021/ja01288a032, for
 * hydrated ions; sodium, hydrogen carbonate and dihydrogen phosphate are given there as 400 to 450
 * pm, of which this is the middle.
 *
 * <p>Edge results: an analyte that Kielland's table does not hold has no ion here, and {@link
 * #of(Analyte)} is empty; every analyte {@linkplain Analyte#known() known by name} has one.
 *
 * @param name what a person calls it, not blank
 * @param charge its charge number z, −4 to 4 and not 0
 * @param sizePicometres å, the distance of closest approach of other ions, above 0 and up to 2000
 *     pm (Kielland's largest is 1100)
 */
public record Ion(String name, int charge, double sizePicometres) {

  private static final List<Ion> KIELLAND =
      List.of(
          new Ion("hydrogen", 1, 900),
          new Ion("lithium", 1, 600),
          new Ion("sodium", 1, 425),
          new Ion("hydrogen carbonate", -1, 425),
          new Ion("dihydrogen phosphate", -1, 425),
          new Ion("fluoride", -1, 350),
          new Ion("hydroxide", -1, 350),
          new Ion("thiocyanate", -1, 350),
          new Ion("chlorate", -1, 350),
          new Ion("perchlorate", -1, 350),
          new Ion("potassium", 1, 300),
          new Ion("chloride", -1, 300),
          new Ion("bromide", -1, 300),
          new Ion("iodide", -1, 300),
          new Ion("cyanide", -1, 300),
          new Ion("nitrite", -1, 300),
          new Ion("nitrate", -1, 300),
          new Ion("ammonium", 1, 250),
          new Ion("rubidium", 1, 250),
          new Ion("caesium", 1, 250),
          new Ion("silver", 1, 250),
          new Ion("magnesium", 2, 800),
          new Ion("calcium", 2, 600),
          new Ion("copper", 2, 600),
          new Ion("zinc", 2, 600),
          new Ion("strontium", 2, 500),
          new Ion("barium", 2, 500),
          new Ion("cadmium", 2, 500),
          new Ion("lead", 2, 450),
          new Ion("carbonate", -2, 450),
          new Ion("sulfate", -2, 400),
          new Ion("hydrogen phosphate", -2, 400));

  public Ion {
    if (name.isBlank()) {
      throw new IllegalArgumentException("an ion has a name");
    }
    if (charge == 0 || Math.abs(charge) > 4) {
      throw new IllegalArgumentException(
          "the charge of " + name + " is -4 to 4 and not 0, not " + charge);
    }
    if (!(sizePicometres > 0 && sizePicometres <= 2000)) {
      throw new IllegalArgumentException(
          "the size of " + name + " is above 0 and up to 2000 pm, not " + sizePicometres);
    }
  }

  /** The ions of Kielland's table that are known here. */
  public static List<Ion> known() {
    return KIELLAND;
  }

  /** The ion of that name, if it is known. */
  public static Optional<Ion> named(String name) {
    return KIELLAND.stream().filter(ion -> ion.name.equals(name)).findFirst();
  }

  /** The ion that an electrode responds to; empty where its name and charge are not known. */
  public static Optional<Ion> of(Analyte analyte) {
    return named(analyte.name()).filter(ion -> ion.charge == analyte.charge());
  }
}
