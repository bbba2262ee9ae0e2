package org.restpoint.stability.move;

/** What a reading tells of the electrode's whereabouts. */
public enum Motion {
  /** Nothing: it stays, or is not seen to have arrived yet. */
  NONE,
  /** It is out of every solution. */
  OUT_OF_SOLUTION,
  /** It was out of every solution and is in one again. */
  MOVED_THROUGH_AIR,
  /** It left its level, was not seen out of a solution, and is calm at another level. */
  MOVED_BY_STEP
}
