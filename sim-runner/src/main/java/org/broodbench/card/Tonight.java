package org.broodbench.card;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.Trace;
import org.broodbench.sky.Forcing;

/**
 * What a night brings, by the volts at dusk and the lowest temperature. For each low the night is
 * simulated from many states of charge; the volts that the gauge would show at dusk lead back to
 * the answer. The range holds the published heat losses of small clusters and an error of the
 * gauge.
 */
public final class Tonight {
  /** A gauge is believed to so many volts on a 12 V battery; own choice. */
  static final double GAUGE_ERROR_V = 0.05;

  private static final double[] CHARGES = {
    0.03, 0.1, 0.17, 0.24, 0.31, 0.38, 0.45, 0.52, 0.59, 0.66, 0.73, 0.8, 0.87, 0.94, 1
  };

  /** Volts at dusk are a mean over so long before it, s, with the heater off where it was. */
  private static final int LOOK_S = 3600;

  /**
   * An answer.
   *
   * @param volts battery volts at dusk, heater off
   * @param lowC lowest temperature of the night, °C
   * @param nightH length of the night, h
   * @param heatH hours of it until the heat is shed; the whole night where it is not
   * @param dawnLevel lowest and highest shed level at dawn
   * @param dawnV battery volts at dawn
   */
  public record Answer(
      double volts, double lowC, double nightH, Range heatH, Range dawnLevel, Range dawnV) {
    /** Whether heat lasts the night whatever the loss. */
    public boolean wholeNight() {
      // a shed in the last minutes before dawn does no harm
      return heatH.low() >= nightH - 0.1;
    }
  }

  private final OneNight night;
  private final double nightLowC;
  private final double[] losses;
  private final double errorV;

  /**
   * For a night of the season.
   *
   * @param nightLowC its own lowest temperature
   * @param losses factors on the heat loss of a cluster
   * @param nominalV of the battery
   */
  Tonight(OneNight night, double nightLowC, double[] losses, double nominalV) {
    this.night = night;
    this.nightLowC = nightLowC;
    this.losses = losses;
    errorV = GAUGE_ERROR_V * nominalV / 12;
  }

  /** Answers for each of some volts, at one low. */
  List<Answer> at(double lowC, double... volts) {
    Forcing forcing = night.forcing(1, lowC - nightLowC);
    List<Curve> curves =
        IntStream.range(0, losses.length)
            .parallel()
            .mapToObj(k -> curve(forcing, losses[k]))
            .toList();
    double nightH = (night.dawnS() - OneNight.LEAD_S) / 3600;
    List<Answer> answers = new ArrayList<>();
    for (double v : volts) {
      Range heat = Range.NONE;
      Range level = Range.NONE;
      Range dawn = Range.NONE;
      for (Curve c : curves) {
        for (double error : new double[] {-errorV, 0, errorV}) {
          double at = c.place(v + error);
          heat = heat.with(between(c.heatH, at));
          dawn = dawn.with(between(c.dawnV, at));
          level = level.with(c.level[(int) Math.floor(at)]).with(c.level[(int) Math.ceil(at)]);
        }
      }
      answers.add(new Answer(v, lowC, nightH, heat, level, dawn));
    }
    return answers;
  }

  private static double between(double[] y, double at) {
    int i = (int) Math.min(y.length - 2, Math.floor(at));
    return y[i] + (at - i) * (y[i + 1] - y[i]);
  }

  private Curve curve(Forcing forcing, double loss) {
    int n = CHARGES.length;
    Curve c = new Curve(new double[n], new double[n], new double[n], new double[n]);
    for (int i = 0; i < n; i++) {
      Trace t = night.run(forcing, 1, CHARGES[i], loss, true);
      double ends = night.heatEndsS(t, night.dawnS());
      double nightS = night.dawnS() - OneNight.LEAD_S;
      int dawn = (int) (night.dawnS() / t.intervalS());
      c.duskV[i] = quietV(t);
      c.heatH[i] = (Double.isNaN(ends) ? nightS : ends) / 3600;
      c.dawnV[i] = t.column("battery_v")[dawn];
      double level = t.column("shed_level")[dawn];
      c.level[i] = Double.isNaN(night.boardEndsS(t)) ? level : Math.max(level, ShedLevel.STANDBY);
      if (i > 0) {
        // the gauge cannot tell states that show the same volts
        c.duskV[i] = Math.max(c.duskV[i], c.duskV[i - 1]);
      }
    }
    return c;
  }

  private static double quietV(Trace t) {
    double[] volts = t.column("battery_v");
    double[] on = t.column("heater_on");
    int dusk = OneNight.LEAD_S / t.intervalS();
    double sum = 0;
    int n = 0;
    double all = 0;
    int from = dusk - LOOK_S / t.intervalS();
    for (int i = from; i <= dusk; i++) {
      all += volts[i] / (dusk - from + 1);
      if (on[i] == 0) {
        sum += volts[i];
        n++;
      }
    }
    return n > 0 ? sum / n : all;
  }

  /** Answers by state of charge. */
  private record Curve(double[] duskV, double[] heatH, double[] dawnV, double[] level) {
    /** Where in the arrays some volts stand, with its fraction. */
    double place(double volts) {
      int last = duskV.length - 1;
      if (!(volts > duskV[0])) {
        return 0;
      }
      for (int i = 1; i <= last; i++) {
        if (volts <= duskV[i]) {
          return i - 1 + (volts - duskV[i - 1]) / (duskV[i] - duskV[i - 1]);
        }
      }
      return last;
    }
  }
}
