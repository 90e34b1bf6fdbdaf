package org.broodbench.sky;

/** Where a value of a weather series comes from. */
public enum Quality {
  /** As the file has it. */
  MEASURED,
  /** Put in between neighbours. */
  FILLED,
  /** There is none; the number is NaN. */
  MISSING
}
