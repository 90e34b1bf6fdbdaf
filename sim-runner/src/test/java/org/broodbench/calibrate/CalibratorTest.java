package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.ForcingSettings;
import org.junit.jupiter.api.Test;

class CalibratorTest {
  private static final Calibrator.Settings TWO = new Calibrator.Settings(2, stage -> {});

  private static Calibration of(MadeLog made, RawLog raw) {
    return Calibrator.calibrate(
        new Calibrator.Question(
            LogCleaner.clean(raw),
            "made",
            made.believed,
            made.weather,
            true,
            ForcingSettings.DEFAULT),
        TWO);
  }

  /** The log with some columns, every so many rows. */
  private static RawLog part(RawLog raw, int every, LogColumn... columns) {
    RawLog out = new RawLog();
    List<LogColumn> kept = Arrays.asList(columns);
    for (int i = 0; i < raw.rows(); i += every) {
      double[] row = new double[LogColumn.COUNT];
      Arrays.fill(row, Double.NaN);
      for (LogColumn c : kept) {
        row[c.ordinal()] = raw.value(c, i);
      }
      out.add(raw.line(i), raw.epochS(i), row);
    }
    return out;
  }

  @Test
  void aLogOfAnotherHiveIsRejectedWithTheReasons() {
    MadeLog made = new MadeLog(7, 3);
    Scenario s = made.believed;
    ColonySpec c = s.colony();
    Scenario other =
        s.withHive(TestRigs.insulated(0, 3))
            .withColony(
                new ColonySpec(
                    25_000,
                    c.beeMassG(),
                    15_000,
                    6,
                    c.clusterLossFactor(),
                    c.shiverCeilingWKg(),
                    c.broodHeatMW(),
                    c.waterNear()));
    Calibration wrong = made.calibrate(other, 2);
    assertFalse(wrong.fits());
    assertTrue(wrong.misfit().get(0).length() > 30, wrong.misfit().toString());
  }

  @Test
  void twoThermometersTellTheHiveButNotTheBattery() {
    MadeLog made = new MadeLog(5, 3);
    Calibration c =
        of(made, part(made.raw, 1, LogColumn.BROOD_A, LogColumn.OUTDOOR, LogColumn.HEATER));
    List<Knob> told = new ArrayList<>();
    List<Knob> asked = new ArrayList<>();
    for (Calibration.Parameter p : c.parameters()) {
      asked.add(p.knob());
      if (p.told()) {
        told.add(p.knob());
      } else {
        assertFalse(p.want().isEmpty());
      }
    }
    assertFalse(asked.contains(Knob.BATTERY_CAPACITY));
    assertFalse(asked.contains(Knob.PAN_OFFSET));
    assertTrue(told.contains(Knob.CLUSTER_LOSS), told.toString());
    // two thermometers see the same whether air gets in or the outdoor probe is off by a little
    assertFalse(told.contains(Knob.AIR_LEAKAGE), told.toString());
    assertFalse(told.contains(Knob.OUTDOOR_OFFSET), told.toString());
  }

  @Test
  void aDailyLogIsMarkedAndFittedWidely() {
    MadeLog made = new MadeLog(3, 12, 0.5);
    RawLog daily = part(made.raw, 1440, LogColumn.BROOD_A, LogColumn.PAN, LogColumn.BATTERY_V);
    RawLog wrong = new RawLog();
    for (int i = 0; i < daily.rows(); i++) {
      double[] row = new double[LogColumn.COUNT];
      for (LogColumn c : LogColumn.values()) {
        row[c.ordinal()] = daily.value(c, i);
      }
      row[LogColumn.BROOD_A.ordinal()] -= i == 6 ? 12 : 0;
      wrong.add(i + 2, daily.epochS(i), row);
    }
    Calibration c = of(made, wrong);
    int marked = 0;
    for (Calibration.Reading r : c.readings()) {
      marked += r.mark().equals("expected") ? 0 : 1;
      if (r.column() == LogColumn.BROOD_A && r.epochS() == daily.epochS(6)) {
        assertEquals("alarming", r.mark());
      }
    }
    // nine of ten right readings are inside the range, and the wrong one makes one
    assertTrue(marked <= 0.25 * c.readings().size(), marked + " of " + c.readings().size());
    assertTrue(c.alarms().stream().anyMatch(a -> a.name().equals("alarming_readings")));
    for (Calibration.Parameter p : c.parameters()) {
      // a hundred draws scatter by a tenth around the prior's 1
      assertTrue(p.sigma() <= 1.25 && p.low() < p.high(), p.toString());
    }
  }
}
