package org.broodbench.firmware;

/**
 * What the firmware said of itself.
 *
 * @param name its name
 * @param fixed it keeps its own settings
 * @param ownClock it steps by its own counter
 * @param ahead how many lines may be on their way to it
 * @param settings how many settings it knows
 */
public record Board(String name, boolean fixed, boolean ownClock, int ahead, int settings) {
  private static final int MOST_AHEAD = 4000;

  static Board of(Answer hello) throws FirmwareFault {
    long version = hello.number(0);
    if (version != Wire.VERSION) {
      throw hello.nonsense("version " + version + " of the protocol, this is " + Wire.VERSION);
    }
    if (hello.fields().length < 7) {
      throw hello.nonsense("the hello has seven fields");
    }
    String kind = hello.fields()[1];
    String clock = hello.fields()[2];
    if (!kind.equals("open") && !kind.equals("fixed")) {
      throw hello.nonsense("settings are open or fixed");
    }
    if (!clock.equals("host") && !clock.equals("own")) {
      throw hello.nonsense("the clock is host or own");
    }
    long ahead = Math.max(1, Math.min(MOST_AHEAD, hello.number(4)));
    return new Board(
        hello.fields()[6],
        kind.equals("fixed"),
        clock.equals("own"),
        (int) ahead,
        (int) hello.number(3));
  }
}
