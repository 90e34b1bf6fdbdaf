package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LengthsTest {
  @Test
  void aLengthIsSaidInTwoUnitsAtMostAndNoneOfNothing() {
    assertEquals("0 s", Lengths.of(0));
    assertEquals("less than 1 s", Lengths.of(0.2));
    assertEquals("40 s", Lengths.of(40.4));
    assertEquals("1 min", Lengths.of(59.7));
    assertEquals("2 min 10 s", Lengths.of(130));
    assertEquals("15 min", Lengths.of(900));
    assertEquals("1 h 10 min", Lengths.of(4205));
    assertEquals("2 h", Lengths.of(7199));
    assertEquals("47 h 59 min", Lengths.of(2 * 86_400 - 60));
    assertEquals("2 d", Lengths.of(2 * 86_400 - 20));
    assertEquals("3 d 4 h", Lengths.of(3 * 86_400 + 4.4 * 3600));
    assertEquals("none", Lengths.of(Double.NaN));
  }
}
