package org.broodbench.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.broodbench.checks.CheckRows;
import org.broodbench.input.ScenarioReader;
import org.broodbench.plant.Plant;
import org.broodbench.power.Chemistry;
import org.broodbench.power.OpenCircuit;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SizeSpec;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.study.Journal;
import org.broodbench.study.Parallel;
import org.broodbench.study.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sizing against the closed form of loss of load. A rig is made to be what the form takes for
 * granted: a heater that always runs, a battery without losses, days of which each is sunny with
 * some probability and then fills the battery, whatever is missing, or dark and gives nothing. A
 * battery that carries N dark days then leaves (1-p)^(N+1) of all days without load.
 */
class LossOfLoadVerificationTest {
  private static final long FROM_EPOCH_S = 20_532L * 86_400; // 20 March 2026

  /** The sun shines from 8 to 16 o'clock UTC at longitude 0. */
  private static final int FIRST_H = 8;

  private static final int LAST_H = 16;
  private static final double LOAD_W = 10;

  /** So that the last minute of a spell that is just carried is no matter of rounding. */
  private static final double SPARE_H = 0.1;

  /** Charge at which this rig sheds the heat. */
  private static final double SHED_AT = 0.2;

  @TempDir private Path folder;

  private static Scenario rig(int days, List<String> settings) {
    String text =
        """
        title = "constant load, ideal battery"
        [run]
        from = 2026-03-20
        days = %d
        [site]
        latitude = "0 N"
        longitude = "0 E"
        altitude = "0 m"
        [hive]
        length = "460 mm"
        width = "380 mm"
        wall_thickness = "22 mm"
        floor_thickness = "22 mm"
        lid_thickness = "22 mm"
        [[hive.box]]
        height = "230 mm"
        frames = 10
        [fan]
        power = "0 W"
        [colony]
        bees = 100
        brood_cells = 10
        brood_frames = 1
        [heater]
        power = "10 W"
        regulated = true
        [sensor]
        battery_current = true
        [controller]
        power = "0 W"
        [controller.heat]
        set_back = "0 K"
        survival = "30 degC"
        [controller.effect]
        judge = "2 h"
        rise = "0.2 K"
        above = "1 K"
        [controller.shed]
        by_charge = true
        heat_enter_charge = "20 %%"
        leave_delay = "1 min"
        [battery]
        chemistry = "lfp"
        capacity = "50 Ah"
        resistance = "0.1 mOhm"
        coulombic_efficiency = "100 %%"
        self_discharge = "0 %%/month"
        charge_limit = "2000 A"
        frost_cut_off = false
        [battery.board]
        fitted = false
        [pv]
        controller_power = "0 W"
        [[pv.group]]
        power = "2 kW"
        tilt = "0 deg"
        [wiring]
        heater_contacts = "0 mOhm"
        heater_length = "0 m"
        battery_lead = "0 mOhm"
        battery_fuse = "0 A"
        heater_fuse = "0 A"
        regulator_efficiency = "100 %%"
        """
            .formatted(days);
    return ScenarioReader.read("ideal.toml", text.getBytes(StandardCharsets.UTF_8), settings);
  }

  /** Air of 4 °C without wind, and full light in the sunny days. */
  private static Forcing weather(Scenario s, boolean[] sunny) {
    int hours = 24 * sunny.length;
    double[] air = new double[hours];
    Arrays.fill(air, 4);
    double[] light = new double[hours];
    for (int h = 0; h < hours; h++) {
      int hour = h % 24;
      light[h] = sunny[h / 24] && hour >= FIRST_H && hour < LAST_H ? 700 : 0;
    }
    WeatherSeries series =
        new WeatherSeries.Builder(FROM_EPOCH_S, 3600, hours)
            .column(Variable.AIR, air, Stand.MEAN)
            .column(Variable.GHI, light, Stand.MEAN)
            .place(java.util.Optional.of(s.place()))
            .build();
    return Forcing.of(
        series,
        s.place(),
        FROM_EPOCH_S,
        FROM_EPOCH_S + 86_400L * sunny.length,
        Plant.planes(s),
        ForcingSettings.DEFAULT);
  }

  /** Days as the closed form has them; first and last are sunny, so that no dark spell is cut. */
  private static boolean[] drawn(SplittableRandom random, double p, int days) {
    boolean[] sunny = new boolean[days];
    for (int d = 0; d < days; d++) {
      sunny[d] = d == 0 || d == days - 1 || random.nextDouble() < p;
    }
    return sunny;
  }

  /** Days without load where a store carries so many dark days. */
  private static int lost(boolean[] sunny, int carries) {
    int lost = 0;
    int dark = 0;
    for (boolean sun : sunny) {
      dark = sun ? 0 : dark + 1;
      lost += dark > carries ? 1 : 0;
    }
    return lost;
  }

  /**
   * A battery for so many dark days and the night before the first harvest, by the usual arithmetic
   * with the mean volts of its discharge: Wh over depth over volts.
   */
  private static SizeSpec.Choice battery(int carries) {
    OpenCircuit curve = new OpenCircuit(Chemistry.LFP, 12);
    double wh = LOAD_W * (24 * carries + 24 - (LAST_H - FIRST_H) + SPARE_H);
    double ah = wh / (curve.integralV(1) - curve.integralV(SHED_AT));
    String set = "battery.capacity=" + ah + " Ah";
    return new SizeSpec.Choice(List.of(set), 100 * carries, 0, "", carries);
  }

  private SizeReport sized(
      double lossOfLoadH,
      List<SizeSpec.Choice> batteries,
      int days,
      List<boolean[]> years,
      boolean pruned)
      throws IOException {
    List<SizeSeason> seasons = new ArrayList<>();
    for (boolean[] year : years) {
      seasons.add(
          new SizeSeason("season " + seasons.size(), 0, weather(rig(days, List.of()), year)));
    }
    SizeSpec spec =
        new SizeSpec(lossOfLoadH, 0.5, "EUR", List.of(new SizeSpec.Part("battery", batteries)));
    try (Journal journal = Journal.open(folder.resolve("journal"), "loss of load " + pruned)) {
      return new SizeStudy(spec, seasons, changes -> rig(days, changes), pruned)
          .run("made by hand", journal, new Parallel(2, () -> false), () -> false, Progress.NONE);
    }
  }

  /** Bookkeeping of many days against the closed form; the rows also say what availability is. */
  @Test
  void manyDaysLoseWhatTheClosedFormSays() {
    CheckRows.of("loss-of-load")
        .run(
            3,
            row -> {
              if (row.has("availability")) {
                // a rig that stands without heat for 1 - A of a season of 10 days
                double hours = (1 - row.number("availability")) * 240;
                return SizeReport.lossOfLoadShare(hours, 10);
              }
              int days = 2_000_000;
              boolean[] sunny = drawn(new SplittableRandom(1), row.number("p"), days);
              return (double) lost(sunny, (int) row.number("N")) / days;
            });
  }

  /** The simulated rig against the bookkeeping of the same days, and the choice that follows. */
  @Test
  void theStudyFindsTheHoursAndTheBatteryOfTheClosedForm() throws IOException {
    int days = 21;
    SplittableRandom random = new SplittableRandom(5);
    List<boolean[]> years = new ArrayList<>();
    double[] expectedH = new double[4];
    for (int k = 0; k < 5; k++) {
      boolean[] year = drawn(random, 0.5, days);
      years.add(year);
      for (int n = 0; n < 4; n++) {
        expectedH[n] += 24.0 * lost(year, n) / 5;
      }
    }
    List<SizeSpec.Choice> batteries = List.of(battery(0), battery(1), battery(2), battery(3));
    SizeReport every = sized(1000, batteries, days, years, false);
    assertEquals(4, every.trials().size());
    for (int n = 0; n < 4; n++) {
      assertTrue(expectedH[n] > 0);
      // the controller waits a minute before it sheds and some before it takes the load back: two
      // minutes a dark spell, and SPARE_H the other way
      double told = every.trials().get(n).lossOfLoadH();
      assertEquals(expectedH[n], told, 0.002 * expectedH[n] + 0.3, "N = " + n);
    }
    // asked for what two days carry and one does not
    double limit = Math.sqrt(expectedH[1] * expectedH[2]);
    SizeReport chosen = sized(limit, batteries, days, years, true);
    assertEquals(200, chosen.best().price());
    assertTrue(chosen.seasonsRun() < 4 * 5, "something is left out");
  }
}
