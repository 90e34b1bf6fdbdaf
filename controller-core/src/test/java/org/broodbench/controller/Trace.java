package org.broodbench.controller;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/**
 * A random history of readings as a short list of segments: each changes one thing and then lets
 * some steps pass. Shrinking drops segments and steps, so a failing trace can be read.
 */
record Trace(int rig, int startMillis, List<Segment> segments) {
  enum Channel {
    BROOD_A,
    BROOD_B,
    PAN,
    OUTDOOR,
    HUMIDITY,
    VOLTS,
    CURRENT,
    CHARGE,
    HEATER_CURRENT,
    BUTTON,
    SHORE,
    FULL,
    TEST,
    TIME
  }

  enum Shape {
    CONSTANT,
    SAWTOOTH,
    GLITCH,
    MISSING,
    STALE,
    CODE,
    EXTREME
  }

  /** From here on {@code channel} follows {@code shape}; then {@code steps} of {@code dtMillis}. */
  record Segment(Channel channel, Shape shape, int value, int other, int steps, int dtMillis) {
    @Override
    public String toString() {
      return String.format(
          "%s %s %d/%d then %d x %d ms", channel, shape, value, other, steps, dtMillis);
    }
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("rig " + rig + ", counter from " + startMillis);
    for (Segment segment : segments) {
      text.append("\n  ").append(segment);
    }
    return text.toString();
  }

  /** Event codes of channel TIME, taken from the value modulo their number. */
  static final int GAP = 0;

  static final int RESTORE = 1;
  static final int POWER_LOSS = 2;
  static final int BACKWARDS = 3;
  static final int NEAR_WRAP = 4;
  static final int LONG_IDLE = 5;
  static final int EVENTS = 6;

  private static final int[] TICKS = {100, 1000, 7000, 30000, 60000};

  private static final int[] TEMPERATURES = {
    -1000, 500, 1000, 1700, 1800, 2500, 3000, 3100, 3200, 3300, 3550, 3599, 3600, 3649, 3650, 3699,
    3700, 3799, 3800, 3801, 4299, 4300
  };
  private static final int[] VOLTS = {
    5000, 10800, 10801, 11600, 11800, 12050, 12051, 12150, 12250, 12300, 12449, 12450, 12500, 12550,
    12900
  };
  private static final int[] CHARGE = {100, 150, 200, 201, 249, 250, 300, 400, 500, 900};
  private static final int[] HUMIDITY = {300, 750, 751, 849, 850, 989, 990, 1000};
  private static final int[] CURRENT = {-9000, -5100, -100, 0, 199, 200, 2499, 2500, 2501, 8000};

  static int[] corners(Channel channel) {
    return switch (channel) {
      case VOLTS -> VOLTS;
      case CHARGE -> CHARGE;
      case HUMIDITY -> HUMIDITY;
      case CURRENT, HEATER_CURRENT -> CURRENT;
      case BUTTON, SHORE, FULL, TEST -> new int[] {0, 1};
      case TIME -> new int[] {GAP, RESTORE, POWER_LOSS, BACKWARDS, NEAR_WRAP, LONG_IDLE};
      default -> TEMPERATURES;
    };
  }

  static Arbitrary<Segment> segment() {
    return Arbitraries.of(Channel.class)
        .flatMap(
            channel -> {
              int[] corners = corners(channel);
              Arbitrary<Integer> corner =
                  Arbitraries.integers().between(0, corners.length - 1).map(i -> corners[i]);
              Arbitrary<Shape> shape =
                  Arbitraries.frequency(
                      net.jqwik.api.Tuple.of(6, Shape.CONSTANT),
                      net.jqwik.api.Tuple.of(2, Shape.SAWTOOTH),
                      net.jqwik.api.Tuple.of(1, Shape.GLITCH),
                      net.jqwik.api.Tuple.of(1, Shape.MISSING),
                      net.jqwik.api.Tuple.of(1, Shape.STALE),
                      net.jqwik.api.Tuple.of(1, Shape.CODE),
                      net.jqwik.api.Tuple.of(1, Shape.EXTREME));
              Arbitrary<Integer> steps = Arbitraries.integers().between(1, 150);
              Arbitrary<Integer> tick =
                  Arbitraries.integers().between(0, TICKS.length - 1).map(i -> TICKS[i]);
              return Combinators.combine(shape, corner, corner, steps, tick)
                  .as((s, a, b, n, dt) -> new Segment(channel, s, a, b, n, dt));
            });
  }

  static Arbitrary<Trace> traces(int segmentsMost) {
    Arbitrary<Integer> start =
        Arbitraries.of(0, Integer.MAX_VALUE - 200_000, -200_000, Integer.MIN_VALUE);
    return Combinators.combine(
            Arbitraries.integers().between(0, Rigs.COUNT - 1),
            start,
            segment().list().ofMinSize(1).ofMaxSize(segmentsMost))
        .as(Trace::new);
  }
}
