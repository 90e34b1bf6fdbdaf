package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** When a log does not look like its hive. */
class MisfitsTest {
  private static Calibration.HeldOut off(double rmseK) {
    return new Calibration.HeldOut(0, new double[0], rmseK);
  }

  private static Calibration.Channel channel(double rms) {
    return new Calibration.Channel(
        LogColumn.BROOD_A, new long[0], new double[0], new double[0], rms, 0.1, 1, 0);
  }

  @Test
  void aLogOfMinutesMustBePredictedBetterThanARowADay() {
    List<Calibration.Channel> minutes = List.of(channel(0.2));
    assertEquals(List.of(), Misfits.of(List.of(), minutes, off(2)));
    assertEquals(1, Misfits.of(List.of(), minutes, off(3)).size());
    assertEquals(List.of(), Misfits.of(List.of(), List.of(), off(3)));
    assertEquals(1, Misfits.of(List.of(), List.of(), off(6)).size());
    // nothing could be predicted
    assertEquals(List.of(), Misfits.of(List.of(), List.of(), off(Double.NaN)));
  }

  @Test
  void aReadingThatStaysFarOffIsNamed() {
    List<String> found = Misfits.of(List.of(), List.of(channel(1.6)), off(1));
    assertEquals(1, found.size());
    assertTrue(found.get(0).startsWith("brood_a: the best fit still misses it by 1.6 K"));
  }
}
