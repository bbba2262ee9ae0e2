package org.restpoint.stability.settle1;

import java.util.Random;

/** The five kinds of electrode in the set, with the share each has of it. */
public enum Model {
  /** Film diffusion in a well stirred sample, τ of 1 to 8 s. */
  FILM_STIRRED("film, stirred", 0.30),
  /** Film diffusion in a sample at rest, τ of 10 to 60 s. */
  FILM_UNSTIRRED("film, unstirred", 0.20),
  /** Diffusion within the membrane, τ of 0.0001 to 0.05 s. */
  MEMBRANE("membrane", 0.15),
  /** A hyperbola, k of 0.3 to 10 s. */
  HYPERBOLIC("hyperbolic", 0.15),
  /** Two exponentials, τ1 of 2 to 10 s, τ2 5 to 15 times as long with 5 to 30 % of the way. */
  TWO_EXPONENTIALS("two exponentials", 0.20);

  private final String words;
  private final double share;

  Model(String words, double share) {
    this.words = words;
    this.share = share;
  }

  /** Its name in tables. */
  public String words() {
    return words;
  }

  /** Its share of the set, 0 to 1. */
  public double share() {
    return share;
  }

  /** Draws one by its share: a {@code nextDouble}, held against the shares summed up in order. */
  static Model draw(Random random) {
    double drawn = random.nextDouble();
    double upTo = 0;
    for (Model model : values()) {
      upTo += model.share;
      if (drawn < upTo) {
        return model;
      }
    }
    return TWO_EXPONENTIALS;
  }

  /**
   * Draws its parameters, in the order of the formula in {@link Response}: one {@code nextDouble}
   * each.
   *
   * @param slower what all times are multiplied by
   */
  Response response(Random random, double slower) {
    return switch (this) {
      case FILM_STIRRED -> new Response.Film(slower * Draw.logUniform(random, 1, 8));
      case FILM_UNSTIRRED -> new Response.Film(slower * Draw.logUniform(random, 10, 60));
      case MEMBRANE -> new Response.Membrane(slower * Draw.logUniform(random, 1e-4, 0.05));
      case HYPERBOLIC -> new Response.Hyperbola(slower * Draw.logUniform(random, 0.3, 10));
      case TWO_EXPONENTIALS -> {
        double fast = slower * Draw.logUniform(random, 2, 10);
        double slow = fast * Draw.uniform(random, 5, 15);
        yield new Response.TwoExponentials(fast, slow, Draw.uniform(random, 0.05, 0.30));
      }
    };
  }
}
