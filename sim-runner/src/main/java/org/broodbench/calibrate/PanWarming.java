package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.Pan;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * How fast a pan warms beyond what nest and outdoor air make of it. A pan warms by its heater and
 * cools to its surroundings: rate = a + b·on − (pan − nest)/τ + c·(outdoor − nest). A hot pan that
 * is still heated may stand still, so the rate alone does not tell the relay. Which state a row is
 * in and the slopes, common to both states, are estimated in turns (a mixture of two straight
 * lines, R. E. Quandt and J. B. Ramsey, J. Am. Stat. Assoc. 73 (1978) 730-738).
 */
final class PanWarming {
  /** Rates are taken over so much time to either side, s; own choice. */
  private static final int REACH_S = 120;

  /** Times τ that the turns begin with, min: a bare plate to a deep bed of sand; own choice. */
  private static final double[] FIRST_MIN = {240, 120, 80, 60, 40, 30};

  private static final int TURNS = 10;

  /** Median over mean of the sum of two waiting times of one length: 1.678 over 2. */
  private static final double TWO_STAGES = 0.839;

  /** Fewer rows do not make straight lines. */
  private static final int LEAST_ROWS = 50;

  private final double[] rate;
  private final List<double[]> surroundings = new ArrayList<>();

  private PanWarming(FieldLog log) {
    rate = rates(log);
    double[] pan = log.column(LogColumn.PAN);
    double[] nest = nest(log);
    surroundings.add(less(pan, nest));
    if (log.has(LogColumn.OUTDOOR) && Robust.there(nest).length > 0) {
      surroundings.add(less(log.column(LogColumn.OUTDOOR), nest));
    }
    for (double[] s : surroundings) {
      for (int i = 0; i < s.length; i++) {
        rate[i] = Double.isNaN(s[i]) ? Double.NaN : rate[i];
      }
    }
  }

  /**
   * Time after a switch at which half of the change of a pan's rate is there, s: of two equal
   * stages 0.84 of the mean time that heat takes from the plate to the top of the pan. Of a chain
   * that is heated at its foot each place lags behind the mean by what it takes to warm all that
   * lies beyond it (W. C. Elmore, J. Appl. Phys. 19 (1948) 55-63).
   */
  static double halfRiseS(HeaterSpec h) {
    Pan p = h.pan();
    boolean mixed = Double.isInfinite(p.throughWK());
    if (h.plateJK() == 0 || p.heatJK() == 0 || p.fromPlateWK() == 0) {
      return 0;
    }
    double halfJK = p.heatJK() / 2;
    double coverJK = mixed ? 0 : p.coverJK();
    double intoPanS = (p.heatJK() + coverJK) / p.fromPlateWK();
    double throughS = mixed ? 0 : (halfJK + coverJK) / p.throughWK();
    double toCoverS = mixed || coverJK == 0 ? 0 : coverJK / p.toCoverWK();
    double plate = h.plateJK() * (intoPanS + throughS + toCoverS);
    double lower = halfJK * (throughS + toCoverS);
    double mean = (plate + lower + halfJK * toCoverS) / (h.plateJK() + p.heatJK() + coverJK);
    return TWO_STAGES * mean;
  }

  /** Rows to either side that a rate is taken over. */
  static int reach(FieldLog log) {
    return Math.max(1, (int) Math.round((double) REACH_S / log.stepS()));
  }

  /** K a minute that the surroundings do not account for, by row; not a number where unknown. */
  static double[] of(FieldLog log) {
    double[] none = new double[log.rows()];
    Arrays.fill(none, Double.NaN);
    if (!log.has(LogColumn.PAN)) {
      return none;
    }
    PanWarming w = new PanWarming(log);
    return Robust.there(w.rate).length < LEAST_ROWS ? none : w.best();
  }

  /** The nest, or what is next to it; all zero where nothing inside but the pan is logged. */
  private static double[] nest(FieldLog log) {
    for (LogColumn c : List.of(LogColumn.BROOD_A, LogColumn.BROOD_B, LogColumn.TOP)) {
      if (log.has(c)) {
        return log.column(c);
      }
    }
    return new double[log.rows()];
  }

  private static double[] less(double[] a, double[] b) {
    double[] out = new double[a.length];
    Arrays.setAll(out, i -> a[i] - b[i]);
    return out;
  }

  private static double[] rates(FieldLog log) {
    double[] pan = log.column(LogColumn.PAN);
    long[] at = log.epochS();
    int reach = reach(log);
    double[] out = new double[pan.length];
    Arrays.fill(out, Double.NaN);
    for (int i = reach; i + reach < pan.length; i++) {
      long dt = at[i + reach] - at[i - reach];
      if (dt <= 6L * reach * log.stepS()) {
        out[i] = (pan[i + reach] - pan[i - reach]) / dt * 60;
      }
    }
    return out;
  }

  private double[] best() {
    double[] feature = rate;
    TwoStates states = TwoStates.of(rate);
    for (double min : FIRST_MIN) {
      double[] f = beyond(new double[] {-1 / min, 0});
      TwoStates s = TwoStates.of(f);
      if (s.apart() > states.apart()) {
        feature = f;
        states = s;
      }
    }
    for (int turn = 0; turn < TURNS; turn++) {
      double[] f = beyond(slopes(feature, states));
      TwoStates s = TwoStates.of(f);
      if (s.apart() < states.apart()) {
        break;
      }
      feature = f;
      states = s;
    }
    return feature;
  }

  private double[] beyond(double[] slopes) {
    double[] out = rate.clone();
    for (int k = 0; k < surroundings.size(); k++) {
      for (int i = 0; i < out.length; i++) {
        out[i] -= slopes[k] * surroundings.get(k)[i];
      }
    }
    return out;
  }

  /** Slopes by least squares, given how likely each row is of the higher state. */
  private double[] slopes(double[] feature, TwoStates states) {
    int n = 2 + surroundings.size();
    double[][] normal = new double[n][n];
    double[] right = new double[n];
    double[] row = new double[n];
    for (int i = 0; i < rate.length; i++) {
      if (Double.isNaN(feature[i])) {
        continue;
      }
      row[0] = 1;
      row[1] = 1 / (1 + StrictMath.exp(-states.logOdds(feature[i])));
      for (int k = 2; k < n; k++) {
        row[k] = surroundings.get(k - 2)[i];
      }
      double off = feature[i] - (row[1] > 0.5 ? states.high() : states.low());
      double weight = Misfit.weight(off / states.sigma());
      for (int a = 0; a < n; a++) {
        right[a] += weight * row[a] * rate[i];
        for (int b = 0; b < n; b++) {
          normal[a][b] += weight * row[a] * row[b];
        }
      }
    }
    for (int a = 0; a < n; a++) {
      // a column that never moves has no slope
      normal[a][a] += 1e-9 * (1 + normal[a][a]);
    }
    double[] all =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(normal))
            .getSolver()
            .solve(MatrixUtils.createRealVector(right))
            .toArray();
    return Arrays.copyOfRange(all, 2, n);
  }
}
