package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.api.Test;

/** A relay that was not logged, told from a first-order plant under a relay with hysteresis. */
class RelayGuessTest {
  /**
   * Closed form of that plant: C 10 kJ/K, UA 0.8 W/K, 60 W, 0 °C outside, 33.5 to 35.5 °C: on for τ
   * ln((Te − Tl)/(Te − Th)) = 617.41 s, duty 0.459981.
   */
  private static final double ON_S = 617.4094;

  private static final double DUTY = 0.459981;

  private static final double TAU_S = 10_000 / 0.8;

  private static double pan(double atS) {
    double period = ON_S / DUTY;
    double phase = atS % period;
    return phase < ON_S
        ? 75 + (33.5 - 75) * StrictMath.exp(-phase / TAU_S)
        : 35.5 * StrictMath.exp(-(phase - ON_S) / TAU_S);
  }

  private static FieldLog log(boolean withPan) {
    RawLog raw = new RawLog();
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 2 * 1440; i++) {
      double[] row = new double[LogColumn.COUNT];
      Arrays.fill(row, Double.NaN);
      row[LogColumn.BROOD_A.ordinal()] = 33 + random.nextDouble();
      if (withPan) {
        row[LogColumn.PAN.ordinal()] = Math.rint(pan(60.0 * i) / 0.0625) * 0.0625;
      }
      raw.add(i + 2, 1_800_000_000L + 60L * i, row);
    }
    return LogCleaner.clean(raw);
  }

  private static RelayGuess guess(FieldLog log) {
    Scenario s = TestRigs.small(1_800_000_000L, 2);
    return RelayGuess.of(log, s, new Observations(log, Observations.COMPARED));
  }

  @Test
  void aPanThatWarmsAndCoolsTellsTheRelay() {
    RelayGuess guess = guess(log(true));
    int steps = 2 * 1440 - 2;
    int right = 0;
    int on = 0;
    for (int k = 0; k < steps; k++) {
      boolean truth = 60.0 * (k + 1) % (ON_S / DUTY) < ON_S;
      right += truth == (guess.heater(k) == 1) ? 1 : 0;
      on += guess.heater(k);
    }
    // a switch between two rows may be put on either side: two minutes of a cycle of 22
    assertTrue(right > 0.9 * steps, right + " of " + steps);
    assertEquals(DUTY, (double) on / steps, 0.03);
    assertTrue(guess.relay().confidence() > 0.85);
    assertTrue(guess.relay().how().contains("pan warms"), guess.relay().how());
  }

  /** Three hours on, four off, of a pan that forgets in an hour and a half: it stands still hot. */
  @Test
  void aPanThatStandsStillHotIsStillHeated() {
    RawLog raw = new RawLog();
    SplittableRandom random = new SplittableRandom(2);
    double pan = 30;
    for (int i = 0; i < 3 * 1440; i++) {
      boolean on = i % 420 < 180;
      double nest = 33 + 1.5 * StrictMath.sin(i / 300.0);
      // 20 W into 4 kJ/K that loses 20 W at 27 K over the nest
      pan += ((on ? 27 : 0) - (pan - nest)) / 90;
      double[] row = new double[LogColumn.COUNT];
      Arrays.fill(row, Double.NaN);
      row[LogColumn.BROOD_A.ordinal()] = nest + 0.1 * random.nextDouble();
      row[LogColumn.PAN.ordinal()] = Math.rint((pan + 0.1 * random.nextDouble()) / 0.0625) * 0.0625;
      raw.add(i + 2, 1_800_000_000L + 60L * i, row);
    }
    RelayGuess guess = guess(LogCleaner.clean(raw));
    int right = 0;
    int steps = 3 * 1440 - 2;
    for (int k = 0; k < steps; k++) {
      right += (k + 1) % 420 < 180 == (guess.heater(k) == 1) ? 1 : 0;
    }
    // five minutes about each of the 21 switches
    assertTrue(right > steps - 21 * 5, right + " of " + steps);
    assertTrue(guess.relay().how().contains("pan warms"), guess.relay().how());
  }

  @Test
  void withoutPanAndVoltsTheSettingsDecideAndThatIsSaid() {
    RelayGuess guess = guess(log(false));
    assertTrue(guess.relay().how().contains("scenario's controller"), guess.relay().how());
    assertTrue(guess.relay().confidence() < 0.8);
  }
}
