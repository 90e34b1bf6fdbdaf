package org.broodbench.output;

/** Things with their number before them, one of them without the s: "1 week", "3 weeks". */
public final class Counted {
  private Counted() {}

  /** The number and the thing; {@code one} is its name where there is one of it. */
  public static String of(long count, String one) {
    return count + " " + (count == 1 ? one : one + "s");
  }
}
