package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What of a log with holes is compared with the simulation. */
class ObservationsTest {
  private static final long FROM_S = 1_800_000_000L;

  /** Rows a minute over stretches, h long, with holes, h, behind them. */
  private static Observations seen(int... hours) {
    RawLog raw = new RawLog();
    long at = FROM_S;
    for (int k = 0; k < hours.length; k += 2) {
      for (int i = 0; i < 60 * hours[k]; i++) {
        double[] row = new double[LogColumn.COUNT];
        Arrays.fill(row, Double.NaN);
        row[LogColumn.BROOD_A.ordinal()] = 33 + StrictMath.sin(at / 5000.0);
        row[LogColumn.BATTERY_V.ordinal()] = 12.5 + 0.1 * StrictMath.sin(at / 7000.0);
        raw.add(raw.rows() + 2, at, row);
        at += 60;
      }
      at += 3600L * (k + 1 < hours.length ? hours[k + 1] : 0);
    }
    return new Observations(LogCleaner.clean(raw), List.of(LogColumn.BROOD_A, LogColumn.BATTERY_V));
  }

  /** Bins of ten minutes between two hours of the log that a column is compared in. */
  private static long compared(Observations seen, int channel, int fromH, int toH) {
    double[] mean = seen.mean(channel);
    return Arrays.stream(mean, 6 * fromH, Math.min(mean.length, 6 * toH))
        .filter(x -> !Double.isNaN(x))
        .count();
  }

  @Test
  void afterAHoleTheNestIsComparedOnceItHasSettled() {
    Observations seen = seen(72, 72, 72);
    assertTrue(compared(seen, 0, 24, 72) > 280);
    assertEquals(0, compared(seen, 0, 72, 144 + 15));
    assertTrue(compared(seen, 0, 144 + 16, 216) > 320);
  }

  @Test
  void theChargeAfterAHoleIsAGuessSoTheFirstStretchIsTakenWhereItIsNearlyAsLong() {
    Observations seen = seen(72, 72, 74);
    assertTrue(compared(seen, 1, 12, 72) > 340);
    assertEquals(0, compared(seen, 1, 72, 218));
  }

  @Test
  void aMuchLongerStretchIsTakenAllTheSame() {
    Observations seen = seen(30, 72, 120);
    assertEquals(0, compared(seen, 1, 0, 102));
    assertTrue(compared(seen, 1, 103, 222) > 690);
  }
}
