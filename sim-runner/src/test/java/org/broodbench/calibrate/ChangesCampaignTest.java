package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.broodbench.loop.Trace;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.ForcingSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Hives that change in the middle of their log, and the same hives unchanged: each alarm fires on
 * its change and none on the unchanged. Changes that are advised are carried out on the true hive.
 * The alarms and the ranges of the advice are a goal that is not reached yet.
 */
class ChangesCampaignTest {
  private static final int DAYS = 8;
  private static final double SPREAD = 0.3;

  private static final Set<String> OF_CHANGE =
      Set.of(
          "heater_weakening",
          "insulation_wet",
          "colony_falling",
          "colony_rising",
          "battery_ageing");

  /** Hives whose heater works on every night of their log. */
  private static final long[] HIVES = {1, 5, 6, 9, 2, 7, 3, 10};

  /** What happened, how often the alarm came, what others came. */
  final Map<String, int[]> fired = new LinkedHashMap<>();

  final List<String> table = new ArrayList<>();

  /** Figures of the advice and how many of them held in the true hive. */
  final int[] held = new int[2];

  private static MadeLog with(long seed, EventSpec event) {
    return new MadeLog(seed, DAYS, SPREAD, s -> s.withEvents(List.of(event)));
  }

  private static MadeLog broken(long seed, FaultKind kind, double size) {
    double at = MadeLog.middleS(DAYS);
    return with(seed, new EventSpec.Fault(at, kind, Double.POSITIVE_INFINITY, size));
  }

  private static MadeLog bees(long seed, double factor) {
    double[] z = new double[Knob.COUNT];
    z[Knob.COLONY_BEES.ordinal()] = StrictMath.log(factor) / Knob.COLONY_BEES.spread();
    return new MadeLog(seed, DAYS, SPREAD, s -> s, s -> FittedRig.turned(s, z));
  }

  private static Scenario wet(Scenario s) {
    double[] z = new double[Knob.COUNT];
    z[Knob.HIVE_LOSS.ordinal()] = StrictMath.log(1.5) / Knob.HIVE_LOSS.spread();
    return FittedRig.turned(s, z);
  }

  void look(long seed, String happened, String alarm, MadeLog made) {
    Calibration c = alarm.isEmpty() ? made.calibrate(2) : made.fitAlone();
    List<String> came =
        c.alarms().stream()
            .map(Calibration.Finding::name)
            .filter(OF_CHANGE::contains)
            .distinct()
            .toList();
    int[] n = fired.computeIfAbsent(happened, k -> new int[3]);
    n[0]++;
    n[1] += came.contains(alarm) ? 1 : 0;
    n[2] += came.stream().anyMatch(a -> !a.equals(alarm)) ? 1 : 0;
    table.add(seed + " " + happened + ": " + came + " " + c.trend());
    if (alarm.isEmpty()) {
      advised(made, c);
    }
  }

  private static double[] figures(Trace t) {
    double[] brood = t.column("brood_c");
    double[] heater = t.column("heater_w");
    double[] soc = t.column("soc");
    double[] out = {0, 0, 100};
    int rows = brood.length - MadeLog.firstRow();
    for (int i = MadeLog.firstRow(); i < brood.length; i++) {
      out[0] += heater[i] / rows * 24;
      out[1] += brood[i] >= 32 ? 100.0 / rows : 0;
      out[2] = Math.min(out[2], 100 * soc[i]);
    }
    return out;
  }

  /** The changes carried out on the true hive. */
  private void advised(MadeLog made, Calibration c) {
    double[] now = figures(made.run(made.real));
    Map<String, UnaryOperator<Scenario>> changes =
        Map.of(
            "more_insulation", s -> s.withHive(Advice.insulated(s.hive())),
            "lower_set_point", s -> Advice.setPoint(s, -100),
            "higher_set_point", s -> Advice.setPoint(s, 100));
    for (Calibration.Advised a : c.advice()) {
      if (!changes.containsKey(a.name())) {
        continue;
      }
      double[] then = figures(made.run(changes.get(a.name()).apply(made.real)));
      Calibration.Range[] said = {a.heaterWhDay(), a.bandPoints(), a.chargePoints()};
      for (int k = 0; k < 3; k++) {
        double truth = then[k] - now[k];
        boolean inside = truth >= said[k].low() && truth <= said[k].high();
        held[0]++;
        held[1] += inside ? 1 : 0;
        table.add(
            String.format(
                Locale.ROOT,
                "  %s %d: true %+.1f, said %+.1f (%+.1f to %+.1f)%s",
                a.name(),
                k,
                truth,
                said[k].best(),
                said[k].low(),
                said[k].high(),
                inside ? "" : " OUTSIDE"));
      }
    }
    Calibration.Advised first = c.advice().get(0);
    if (first.name().startsWith("first_more_insulation")) {
      double[] then = figures(made.run(changes.get("more_insulation").apply(made.real)));
      assertTrue(then[1] > now[1] || then[2] > now[2], first.text());
    }
  }

  void all(int hives) {
    for (int h = 0; h < hives; h++) {
      long seed = HIVES[h];
      look(seed, "nothing", "", new MadeLog(seed, DAYS, SPREAD));
      look(seed, "heater at 70 %", "heater_weakening", broken(seed, FaultKind.ELEMENT_BURNT, 0.7));
      if (hives < 2) {
        // the small share of a build
        continue;
      }
      look(seed, "bees less by 40 %", "colony_falling", bees(seed, 0.6));
      look(seed, "bees more by 60 %", "colony_rising", bees(seed, 1.6));
      look(
          seed,
          "walls lose half more",
          "insulation_wet",
          new MadeLog(seed, DAYS, SPREAD, s -> s, ChangesCampaignTest::wet));
      look(seed, "battery at half", "battery_ageing", broken(seed, FaultKind.BATTERY_AGED, 0.5));
    }
  }

  @Test
  @Tag("goal")
  void alarmsFireOnTheirChangeAndAdviceHolds() {
    int percent = Integer.getInteger("broodbench.campaign.percent", 100);
    int hives = Math.max(1, HIVES.length * percent / 100);
    all(hives);
    String said = String.join("\n", table);
    assertEquals(0, fired.get("nothing")[2], said);
    fired.forEach(
        (happened, n) -> {
          // an alarm of one hive may be too weak to be sure of; own choice
          assertTrue(happened.equals("nothing") || 2 * n[1] >= n[0], happened + "\n" + said);
        });
    // nine of ten are said
    assertTrue(held[1] >= 0.75 * held[0], said);
  }

  /** A row a day by hand; the element burns out in the middle. */
  static Calibration.Reading[] dailyReadings(long seed) {
    MadeLog made = broken(seed, FaultKind.ELEMENT_BURNT, 0);
    FieldLog all = LogCleaner.clean(made.raw);
    RawLog daily = new RawLog();
    double hours = 0;
    for (int i = 0; i < all.rows(); i++) {
      hours += all.column(LogColumn.HEATER)[i] / 60;
      if (i % 1440 == 300) {
        double[] row = new double[LogColumn.COUNT];
        Arrays.fill(row, Double.NaN);
        row[LogColumn.BROOD_A.ordinal()] = Math.rint(all.column(LogColumn.BROOD_A)[i]);
        row[LogColumn.PAN.ordinal()] = Math.rint(all.column(LogColumn.PAN)[i]);
        row[LogColumn.HEATER_HOURS.ordinal()] =
            daily.rows() == 0 ? Double.NaN : Math.rint(10 * hours) / 10;
        daily.add(daily.rows() + 2, all.epochS()[i], row);
        hours = 0;
      }
    }
    return Calibrator.calibrate(
            new Calibrator.Question(
                LogCleaner.clean(daily),
                "by hand",
                made.believed,
                made.weather,
                true,
                ForcingSettings.DEFAULT),
            new Calibrator.Settings(2, stage -> {}))
        .readings()
        .toArray(Calibration.Reading[]::new);
  }

  @Test
  @Tag("campaign")
  void aDailyLogShowsWhenTheElementBurntOut() {
    Calibration.Reading[] readings = dailyReadings(5);
    int[] marked = new int[2];
    int[] all = new int[2];
    for (Calibration.Reading r : readings) {
      int half = r.epochS() < readings[0].epochS() + DAYS / 2 * 86_400L ? 0 : 1;
      all[half]++;
      marked[half] += r.mark().equals("expected") ? 0 : 1;
    }
    String said = Arrays.toString(readings);
    // nine of ten right readings are in their range
    assertTrue(marked[0] <= 0.25 * all[0], said);
    assertTrue(marked[1] >= 0.4 * all[1], said);
    assertTrue(Arrays.stream(readings).anyMatch(r -> r.mark().equals("alarming")), said);
  }
}
