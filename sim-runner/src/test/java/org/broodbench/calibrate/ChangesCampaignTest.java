package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.broodbench.hive.Guesses;
import org.broodbench.hive.HiveSpec;
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
          "battery_ageing",
          "probe_moved",
          "hive_colder",
          "hive_warmer");

  /** What an alarm of several causes calls each. */
  private static final Map<String, String> IN_WORDS =
      Map.of(
          "heater_weakening", "a weaker heater",
          "insulation_wet", "more heat lost",
          "colony_falling", "less heat from the colony",
          "colony_rising", "more heat from the colony");

  /**
   * The first eight are hives whose heater works on every night; the alarms were made with them.
   * The other eight came after: heaters of 21 and 28 hardly ever run.
   */
  private static final long[] HIVES = {1, 5, 6, 9, 2, 7, 3, 10, 21, 22, 23, 24, 25, 26, 27, 28};

  /** Of a change: hives, told alone, told with others, others told alone. */
  final Map<String, int[]> fired = new LinkedHashMap<>();

  final List<String> table = new ArrayList<>();

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

  /** Walls, bees and air otherwise than the model has them. */
  private static Scenario otherModel(Scenario s) {
    HiveSpec h = s.hive();
    Guesses g = h.guesses();
    return s.withHive(
        new HiveSpec(
            h.lengthM(),
            h.widthM(),
            h.frontDeg(),
            h.boxes(),
            h.broodBox(),
            h.wall(),
            h.floor(),
            h.lid(),
            h.edgeFactor(),
            h.wallSkin(),
            h.lidSkin(),
            h.entranceWidthM(),
            h.entranceHeightM(),
            h.topVentM2(),
            h.openShare(),
            h.dischargeCoefficient(),
            1.5 * h.windEffectiveness(),
            new Guesses(
                0.7 * g.combFilmM2KW(),
                1.5 * g.boxMixingM3S(),
                0.6 * g.clusterExchangeM3S(),
                g.runOffM(),
                g.lossFactor())));
  }

  private void look(long seed, String happened, String alarm, MadeLog made) {
    Calibration c = made.fitAlone();
    List<Calibration.Finding> came =
        c.alarms().stream().filter(a -> OF_CHANGE.contains(a.name())).toList();
    int[] n = fired.computeIfAbsent(happened, k -> new int[4]);
    n[0]++;
    for (Calibration.Finding a : came) {
      boolean named = IN_WORDS.containsKey(alarm) && a.text().contains(IN_WORDS.get(alarm));
      n[a.name().equals(alarm) ? 1 : named ? 2 : 3]++;
    }
    table.add(
        seed
            + " "
            + happened
            + ": "
            + came.stream().map(Calibration.Finding::name).toList()
            + " "
            + c.trend().stream().limit(3).toList());
  }

  /** Heat, Wh a day; share of the time in the band; lowest charge; all from the second day on. */
  private static double[] figures(Trace t) {
    double[] brood = t.column("brood_c");
    double[] heater = t.column("heater_w");
    double[] soc = t.column("soc");
    double[] out = {0, 0, 100};
    int from = MadeLog.firstRow() + 1440;
    int rows = brood.length - from;
    for (int i = from; i < brood.length; i++) {
      out[0] += heater[i] / rows * 24;
      out[1] += brood[i] >= 32 ? 100.0 / rows : 0;
      out[2] = Math.min(out[2], 100 * soc[i]);
    }
    return out;
  }

  private static double firstCharge(Trace t) {
    return t.column("soc")[MadeLog.firstRow()];
  }

  private static Scenario begun(Scenario s, double soc) {
    double middle = Math.max(0.05, Math.min(0.95, s.battery().initialSoc()));
    double[] z = new double[Knob.COUNT];
    z[Knob.START_CHARGE.ordinal()] =
        StrictMath.log(soc / (1 - soc) * (1 - middle) / middle) / Knob.START_CHARGE.spread();
    return FittedRig.at(s, z);
  }

  /** The run, two days before the log on, that has a charge at its first row as near as it can. */
  private static Trace withCharge(MadeLog made, Scenario s, double charge) {
    double low = 0.01;
    double high = 0.995;
    Trace best = null;
    for (int i = 0; i < 7; i++) {
      double middle = (low + high) / 2;
      Trace t = made.run(begun(s, middle));
      double off = firstCharge(t) - charge;
      if (best == null || Math.abs(off) < Math.abs(firstCharge(best) - charge)) {
        best = t;
      }
      low = off < 0 ? middle : low;
      high = off < 0 ? high : middle;
    }
    return best;
  }

  private static UnaryOperator<Scenario> turned(Knob k, double factor) {
    double[] z = new double[Knob.COUNT];
    z[k.ordinal()] = StrictMath.log(factor) / k.spread();
    return s -> FittedRig.turned(s, z);
  }

  private static final Map<String, UnaryOperator<Scenario>> ADVISED =
      Map.of(
          "more_insulation", s -> s.withHive(Advice.insulated(s.hive())),
          "lower_set_point", s -> Advice.setPoint(s, -100),
          "higher_set_point", s -> Advice.setPoint(s, 100),
          "narrower_openings", turned(Knob.AIR_LEAKAGE, 0.5),
          "bigger_panel", turned(Knob.PANEL_FACTOR, 1.5));

  /** Of the advice: figures, figures that held; the same of board and set points alone. */
  private final int[] held = new int[4];

  /** The changes carried out on the true hive, begun with the charge of the log's first row. */
  private void advised(long seed) {
    MadeLog made = new MadeLog(seed, DAYS, SPREAD);
    Calibration c = made.calibrate(1);
    Trace as = made.run(made.real);
    double[] now = figures(as);
    for (Calibration.Advised a : c.advice()) {
      if (!ADVISED.containsKey(a.name())) {
        continue;
      }
      Scenario changed = ADVISED.get(a.name()).apply(made.real);
      double[] then = figures(withCharge(made, changed, firstCharge(as)));
      Calibration.Range[] said = {a.heaterWhDay(), a.bandPoints(), a.chargePoints()};
      for (int k = 0; k < 3; k++) {
        double truth = then[k] - now[k];
        boolean inside = truth >= said[k].low() && truth <= said[k].high();
        boolean hard = a.name().endsWith("insulation") || a.name().endsWith("set_point");
        held[0]++;
        held[1] += inside ? 1 : 0;
        held[2] += hard ? 1 : 0;
        held[3] += hard && inside ? 1 : 0;
        table.add(
            String.format(
                Locale.ROOT,
                "  %d %s %d: true %+.1f, said %+.1f (%+.1f to %+.1f)%s",
                seed,
                a.name(),
                k,
                truth,
                said[k].best(),
                said[k].low(),
                said[k].high(),
                inside ? "" : " OUTSIDE"));
      }
      if (c.advice().get(0).name().equals("first_" + a.name())) {
        assertTrue(then[1] > now[1] || then[2] > now[2], c.advice().get(0).text());
      }
    }
  }

  private void changes(long seed, boolean all) {
    look(seed, "nothing", "", new MadeLog(seed, DAYS, SPREAD));
    look(seed, "heater at 70 %", "heater_weakening", broken(seed, FaultKind.ELEMENT_BURNT, 0.7));
    if (!all) {
      return;
    }
    look(
        seed,
        "nothing, in a hive that is not quite the model's",
        "",
        new MadeLog(seed, DAYS, SPREAD, ChangesCampaignTest::otherModel));
    look(seed, "bees less by 40 %", "colony_falling", bees(seed, 0.6));
    look(seed, "bees more by 60 %", "colony_rising", bees(seed, 1.6));
    look(
        seed,
        "walls lose half more",
        "insulation_wet",
        new MadeLog(seed, DAYS, SPREAD, s -> s, ChangesCampaignTest::wet));
    look(seed, "battery at half", "battery_ageing", broken(seed, FaultKind.BATTERY_AGED, 0.5));
    look(
        seed,
        "brood probe slips by a kelvin",
        "probe_moved",
        broken(seed, FaultKind.PROBE_OFFSET, -1));
  }

  private static int hives() {
    int percent = Integer.getInteger("broodbench.campaign.percent", 100);
    return Math.max(1, HIVES.length * percent / 100);
  }

  @Test
  @Tag("campaign")
  void alarmsFireOnTheirChange() {
    for (int h = 0; h < hives(); h++) {
      // the small share of a build has two logs
      changes(HIVES[h], hives() > 1);
    }
    String said =
        String.join("\n", table)
            + fired.entrySet().stream()
                .map(e -> "\n" + e.getKey() + ": " + Arrays.toString(e.getValue()))
                .collect(Collectors.joining());
    System.out.println(said);
    fired.forEach(
        (happened, n) -> {
          // an alarm of one hive may be too weak to be sure of, batteries may never be drawn on
          boolean nothing = happened.startsWith("nothing");
          assertTrue(nothing || n[1] + n[2] >= 0.6 * n[0], happened + "\n" + said);
          assertTrue(nothing || n[3] <= 0.1 * n[0], happened + "\n" + said);
          assertTrue(!nothing || n[3] == 0, happened + "\n" + said);
        });
  }

  @Test
  @Tag("campaign")
  void advisedChangesDoWhatIsSaid() {
    for (int h = 0; h < hives(); h++) {
      advised(HIVES[h]);
    }
    String said = String.join("\n", table) + "\n" + Arrays.toString(held);
    System.out.println(said);
    // nine of ten are said; those of one hive go wrong together
    assertTrue(held[1] >= 0.85 * held[0], said);
    assertTrue(held[3] >= 0.8 * held[2], said);
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
