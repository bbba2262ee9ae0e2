package org.restpoint.acquisition.batch;

/** How far a batch is with its present cup. */
public enum Stage {
  /** Between two cups: the present one has had its turn, or none has come yet. */
  BETWEEN,
  /** The electrode is to be put into the present cup. */
  MOVING,
  /** The present cup is being read. */
  READING,
  /** The standard in the present cup was refused: a fresh portion, or on without it. */
  STANDARD_REFUSED,
  /** All cups have come. */
  THROUGH
}
