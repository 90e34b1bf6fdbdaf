package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class HeatScaleTest {
  /** Rounding to 8 bits moves a colour by up to about this in Oklab. */
  private static final double ROUNDING = 0.004;

  /**
   * Protanopia, deuteranopia and tritanopia in linear light: G. M. Machado, M. M. Oliveira, L. A.
   * F. Fernandes, IEEE Trans. Visualization and Computer Graphics 15 (2009), severity 1.0.
   */
  private static final double[][] BLINDNESS = {
    {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
    {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
    {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900}
  };

  private static int rgb(String colour) {
    return Integer.parseInt(colour.substring(1), 16);
  }

  @Test
  void stepsAreEvenAndGrowLighter() {
    List<String> all = HeatScale.colours();
    assertEquals(HeatScale.STEPS, all.size());
    double[] first = HeatScale.oklab(rgb(all.get(0)));
    double[] last = HeatScale.oklab(rgb(all.get(all.size() - 1)));
    double even = apart(first, last) / (all.size() - 1);
    for (int i = 1; i < all.size(); i++) {
      double[] before = HeatScale.oklab(rgb(all.get(i - 1)));
      double[] after = HeatScale.oklab(rgb(all.get(i)));
      assertEquals(even, apart(before, after), ROUNDING, "step " + i);
      assertTrue(after[0] > before[0], "lightness at " + i);
    }
    assertTrue(last[0] - first[0] > 0.6, "from dark to light");
  }

  private static double apart(double[] a, double[] b) {
    return Math.sqrt(
        (a[0] - b[0]) * (a[0] - b[0])
            + (a[1] - b[1]) * (a[1] - b[1])
            + (a[2] - b[2]) * (a[2] - b[2]));
  }

  /** Luminance rises all along for each common form of colour blindness. */
  @Test
  void theOrderIsSeenByTheColourBlind() {
    for (double[] m : BLINDNESS) {
      double before = -1;
      for (String c : HeatScale.colours()) {
        double r = HeatScale.linear(rgb(c) >> 16 & 255);
        double g = HeatScale.linear(rgb(c) >> 8 & 255);
        double b = HeatScale.linear(rgb(c) & 255);
        double luminance =
            0.2126 * (m[0] * r + m[1] * g + m[2] * b)
                + 0.7152 * (m[3] * r + m[4] * g + m[5] * b)
                + 0.0722 * (m[6] * r + m[7] * g + m[8] * b);
        assertTrue(luminance > before, c);
        before = luminance;
      }
    }
  }

  @Test
  void temperaturesBeyondTheEndsTakeTheEndsColour() {
    HeatScale s = new HeatScale(-10, 40);
    List<String> all = HeatScale.colours();
    assertEquals(all.get(0), s.colour(-30));
    assertEquals(all.get(0), s.colour(-10));
    assertEquals(all.get(all.size() - 1), s.colour(90));
    assertEquals(all.get(HeatScale.STEPS / 2), s.colour(15.1));
    assertEquals("none", s.colour(Double.NaN));
  }
}
