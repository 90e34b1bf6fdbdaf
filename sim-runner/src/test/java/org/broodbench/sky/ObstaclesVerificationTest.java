package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What obstacles and covers do to the light that a plane is given in a window of weather. */
class ObstaclesVerificationTest {
  private static final Place PLACE = new Place(47, 11, 900);
  private static final long DAY0 = LocalDate.of(2027, 4, 18).toEpochDay();

  private static double[] meanWM2(List<Plane> planes, ForcingSettings settings) {
    WeatherSeries w = WeatherGenerator.generate(GeneratorSettings.uplandSpring(2, DAY0, 6));
    Forcing f = Forcing.of(w, PLACE, DAY0 * 86_400, (DAY0 + 6) * 86_400, planes, settings);
    double[] mean = new double[planes.size()];
    Sample s = new Sample(planes.size());
    for (int k = 0; k < f.cells(); k++) {
      f.sample(k * 300.0 + 150, s);
      for (int p = 0; p < mean.length; p++) {
        mean[p] += s.planeWM2[p] / f.cells();
      }
    }
    return mean;
  }

  private static Plane behind(Horizon horizon, List<Obstacles.HourShade> shades) {
    return new Plane(50, 180, new Obstacles(horizon, shades), Cover.NONE);
  }

  private static Horizon ring(double deg, double open) {
    return new Horizon(List.of(new Horizon.Point(0, deg)), open);
  }

  @Test
  void aHorizonTakesLightInProportionToWhatItLetsThrough() {
    double[] w =
        meanWM2(
            List.of(
                new Plane(50, 180),
                behind(ring(25, 0), List.of()),
                behind(ring(25, 0.5), List.of()),
                behind(ring(25, 1), List.of()),
                behind(ring(0, 0), List.of())),
            ForcingSettings.DEFAULT);
    assertTrue(w[1] < 0.9 * w[0], "25 degrees all round take a tenth: " + w[1] + " of " + w[0]);
    assertEquals(0.5 * (w[0] + w[1]), w[2], 1e-6 * w[0], "half open lies in the middle");
    assertEquals(w[0], w[3], 1e-6 * w[0], "wholly open changes nothing");
    assertEquals(w[0], w[4], 1e-6 * w[0], "a flat horizon changes nothing");
  }

  /** Two shades that meet take together what one over both hours takes; over midnight too. */
  @Test
  void shadesByTheHourAddUp() {
    double[] w =
        meanWM2(
            List.of(
                new Plane(50, 180),
                behind(Horizon.OPEN, List.of(new Obstacles.HourShade(6, 12, 0))),
                behind(Horizon.OPEN, List.of(new Obstacles.HourShade(12, 6, 0))),
                behind(Horizon.OPEN, List.of(new Obstacles.HourShade(0, 24, 0)))),
            ForcingSettings.DEFAULT);
    double direct = w[0] - w[3];
    assertTrue(direct > 0.2 * w[0], "direct light matters");
    assertEquals(direct, (w[0] - w[1]) + (w[0] - w[2]), 1e-9 * w[0]);
    assertTrue(w[0] - w[1] > 0.1 * direct && w[0] - w[2] > 0.1 * direct);
  }

  @Test
  void glassTakesAFewPercentAndSnowItsShare() {
    ForcingSettings d = ForcingSettings.DEFAULT;
    ForcingSettings white =
        new ForcingSettings(
            d.transposition(),
            d.albedo(),
            d.snowAlbedo(),
            ForcingSettings.SnowRule.ALWAYS,
            d.longWave(),
            d.linkeTurbidity(),
            d.roughnessM(),
            d.hiveHeightM(),
            d.shelterFactor(),
            d.defaultWindMS());
    List<Plane> planes =
        List.of(
            new Plane(50, 180),
            new Plane(50, 180, Obstacles.NONE, new Cover(Cover.Law.GLASS, 0.7)),
            new Plane(50, 180, Obstacles.NONE, new Cover(Cover.Law.LINEAR, 0.7)),
            new Plane(50, 180, Obstacles.NONE, new Cover(Cover.Law.NONE, 0.7)));
    double[] bare = meanWM2(planes, d);
    double[] snowed = meanWM2(planes, white);
    for (int p = 1; p <= 2; p++) {
      double kept = bare[p] / bare[0];
      assertTrue(kept > 0.93 && kept < 0.99, "kept " + kept);
    }
    assertEquals(0.7 * snowed[0], snowed[3], 1e-9 * snowed[0]);
  }

  /**
   * The equivalent angle of diffuse light against the integral over the sky that it stands for, and
   * over the ground for an upright pane. The published fits are good to about a hundredth.
   */
  @Test
  void diffuseLightThroughGlassMatchesTheIntegralOverTheSky() {
    Cover glass = new Cover(Cover.Law.GLASS, 1);
    int n = 2000;
    double through = 0;
    for (int i = 0; i < n; i++) {
      double theta = (i + 0.5) / n * StrictMath.PI / 2;
      double weight = StrictMath.sin(2 * theta) * StrictMath.PI / 2 / n;
      through += weight * glass.beamShare(StrictMath.cos(theta));
    }
    assertEquals(through, glass.skyShare(0), 0.01);
    // upright, half the hemisphere in front of the pane is sky and half is ground
    assertEquals(through, glass.skyShare(90), 0.015);
    assertEquals(through, glass.groundShare(90), 0.015);
    assertTrue(through > 0.9 && through < 0.97, "through " + through);
  }
}
