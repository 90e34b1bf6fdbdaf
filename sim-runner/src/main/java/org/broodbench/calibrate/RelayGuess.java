package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Replay;
import org.broodbench.rig.Scenario;

/**
 * The relays by step: as logged, or told from the pan that warms and the volts that sag, or as the
 * scenario's controller would have switched them on the logged readings.
 */
final class RelayGuess implements Replay.Drive {
  /** Middles nearer than so many spreads do not tell a relay; own choice. */
  private static final double APART = 2.5;

  /** A sag may be so many times what the scenario's wiring makes of its heater, or a share. */
  private static final double SAG_FACTOR = 4;

  /** Volts that say otherwise than the pan for more of the rows sag by something else. */
  private static final double AGREE = 0.8;

  /** Mean time between two switches of a heater relay, s; own choice. */
  private static final double DWELL_S = 900;

  /** Settings alone are right about this often: the keeper may have changed them; own choice. */
  private static final double SETTINGS_CONFIDENCE = 0.7;

  private final int[] heater;
  private final int[] fan;
  private final Calibration.Relay relay;

  private RelayGuess(int[] heater, int[] fan, Calibration.Relay relay) {
    this.heater = heater;
    this.fan = fan;
    this.relay = relay;
  }

  static RelayGuess of(FieldLog log, Scenario s, Observations seen) {
    int[] fan = Observations.relay(log, log.column(LogColumn.FAN), seen.startS(), seen.steps());
    if (s.fan().powerW() == 0) {
      Arrays.fill(fan, 0);
    }
    if (s.heater().powerW() == 0) {
      int[] none = new int[seen.steps()];
      return new RelayGuess(none, fan, new Calibration.Relay("no heater", 1));
    }
    if (log.has(LogColumn.HEATER)) {
      return new RelayGuess(
          Observations.relay(log, log.column(LogColumn.HEATER), seen.startS(), seen.steps()),
          fan,
          new Calibration.Relay("logged", 1));
    }
    List<String> by = new ArrayList<>();
    // neighbouring rates are taken over the same rows, so each says less of its own
    double[] logOdds =
        earlier(
            odds(PanWarming.of(log), -2.0 * PanWarming.reach(log)),
            (int) Math.round(PanWarming.halfRiseS(s.heater()) / log.stepS()));
    if (logOdds.length > 0) {
      by.add("how fast the pan warms");
    }
    double[] sag = sag(log);
    double[] sagOdds = sags(TwoStates.of(sag), s) ? odds(sag, 1) : new double[0];
    if (sagOdds.length > 0 && (logOdds.length == 0 || agree(logOdds, sagOdds))) {
      by.add("how the volts sag");
      double[] pan = logOdds.length == 0 ? new double[log.rows()] : logOdds;
      logOdds = new double[log.rows()];
      for (int i = 0; i < pan.length; i++) {
        logOdds[i] = pan[i] + sagOdds[i];
      }
    }
    if (by.isEmpty()) {
      double[] state = asController(log, s);
      return new RelayGuess(
          Observations.relay(log, state, seen.startS(), seen.steps()),
          fan,
          new Calibration.Relay(
              "not logged and not to be seen in pan or volts: as the scenario's controller switches"
                  + " on the logged readings",
              SETTINGS_CONFIDENCE));
    }
    double[] p = smooth(log, logOdds);
    double sure = 0;
    double[] state = new double[p.length];
    for (int i = 0; i < p.length; i++) {
      state[i] = p[i] > 0.5 ? 1 : 0;
      sure += Math.max(p[i], 1 - p[i]) / p.length;
      // rates are taken over some rows: a switch lies somewhere in them, half of that off on
      // average
      boolean switched = i > 0 && state[i] != state[i - 1];
      sure -= switched ? 0.5 * PanWarming.reach(log) / p.length : 0;
    }
    sure = Math.max(0.5, sure);
    return new RelayGuess(
        Observations.relay(log, state, seen.startS(), seen.steps()),
        fan,
        new Calibration.Relay(
            String.format(Locale.ROOT, "not logged: told from %s", String.join(" and ", by)),
            sure));
  }

  /**
   * Log odds of on; none where the feature does not tell two states.
   *
   * @param share what the odds of the lower state are divided by
   */
  private static double[] odds(double[] feature, double share) {
    if (Robust.there(feature).length < 50) {
      return new double[0];
    }
    TwoStates states = TwoStates.of(feature);
    if (states.apart() < APART) {
      return new double[0];
    }
    return Arrays.stream(feature).map(x -> -states.logOdds(x) / share).toArray();
  }

  /** Each row by what is seen some rows later. */
  private static double[] earlier(double[] odds, int rows) {
    double[] out = new double[odds.length];
    Arrays.setAll(out, i -> i + rows < out.length ? odds[i + rows] : 0);
    return out;
  }

  /** Whether two states of volts are about as far apart as a heater and the leads make them. */
  private static boolean sags(TwoStates states, Scenario s) {
    double amps = s.heater().powerW() / s.battery().nominalV();
    double expected = amps * (s.battery().resistanceOhm() + s.wiring().batteryLeadOhm());
    double found = states.high() - states.low();
    return found > expected / SAG_FACTOR && found < expected * SAG_FACTOR;
  }

  /** Whether two say the same of most rows that both are sure of. */
  private static boolean agree(double[] a, double[] b) {
    int both = 0;
    int same = 0;
    for (int i = 0; i < a.length; i++) {
      if (Math.abs(a[i]) > 0.5 && Math.abs(b[i]) > 0.5) {
        both++;
        same += a[i] > 0 == b[i] > 0 ? 1 : 0;
      }
    }
    return same > AGREE * both;
  }

  /** Volts against the middle of the hour around. */
  private static double[] sag(FieldLog log) {
    double[] v = log.column(LogColumn.BATTERY_V);
    double[] out = new double[v.length];
    int half = Math.max(2, 1800 / log.stepS());
    for (int i = 0; i < v.length; i++) {
      int from = Math.max(0, i - half);
      int to = Math.min(v.length, i + half + 1);
      double[] window = Arrays.copyOfRange(v, from, to);
      out[i] = v[i] - (Robust.quantile(window, 0.1) + Robust.quantile(window, 0.9)) / 2;
    }
    return out;
  }

  /** Chances of on with what came before and after: forward and backward over two states. */
  private static double[] smooth(FieldLog log, double[] logOdds) {
    int n = logOdds.length;
    double[] forward = new double[n];
    double[] backward = new double[n];
    for (int i = 0; i < n; i++) {
      forward[i] = logOdds[i] + (i == 0 ? 0 : passed(forward[i - 1], log, i));
    }
    for (int i = n - 2; i >= 0; i--) {
      backward[i] = passed(backward[i + 1] + logOdds[i + 1], log, i + 1);
    }
    double[] p = new double[n];
    for (int i = 0; i < n; i++) {
      p[i] = 1 / (1 + StrictMath.exp(-(forward[i] + backward[i])));
    }
    return p;
  }

  /** Log odds after the time between two rows in which the relay may have switched. */
  private static double passed(double odds, FieldLog log, int row) {
    double dt = log.epochS()[row] - log.epochS()[row - 1];
    double stay = 0.5 * (1 + StrictMath.exp(-2 * dt / DWELL_S));
    double p = 1 / (1 + StrictMath.exp(-Math.max(-30, Math.min(30, odds))));
    double q = stay * p + (1 - stay) * (1 - p);
    return StrictMath.log(q / (1 - q));
  }

  /** What the scenario's controller makes of the logged readings, row by row. */
  private static double[] asController(FieldLog log, Scenario s) {
    ReferenceController controller = new ReferenceController(s.controller().settings());
    Readings readings = new Readings();
    Commands commands = new Commands();
    double[] state = new double[log.rows()];
    for (int i = 0; i < state.length; i++) {
      DecisionCheck.fill(readings, log, i);
      controller.step((int) ((log.epochS()[i] - log.fromS()) * 1000), readings, commands);
      state[i] = commands.heater ? 1 : 0;
    }
    return state;
  }

  @Override
  public int heater(int step) {
    return step < heater.length ? heater[step] : heater[heater.length - 1];
  }

  @Override
  public int fan(int step) {
    return step < fan.length ? fan[step] : fan[fan.length - 1];
  }

  /** How the heater's relay is known. */
  Calibration.Relay relay() {
    return relay;
  }
}
