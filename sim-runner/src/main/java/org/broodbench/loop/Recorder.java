package org.broodbench.loop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.colony.ColonyHeat;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Setting;
import org.broodbench.controller.ShedLevel;
import org.broodbench.hive.HiveSection;
import org.broodbench.plant.Actuators;
import org.broodbench.plant.Plant;
import org.broodbench.power.CutOut;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/** Keeps events, alarms and trace of a run, and puts the result together. */
final class Recorder {
  private final Scenario scenario;
  private final Plant plant;
  private final ReadingTaker taker;
  private final boolean keepsEvents;
  private final Trace trace;
  private final List<EventRow> events = new ArrayList<>();
  private final Map<String, Integer> earlyStops = new LinkedHashMap<>();
  private final double minOnS;
  private final HeldTime heldTime;

  private double tickAtS;
  private boolean heater;
  private boolean fan;
  private int shedLevel;
  private int sheds;
  private boolean wentDead;
  private double firstShedAtS = -1;
  private final boolean[] cutOutOpen;
  private int alarms;
  private double heaterOnAtS;
  private int reason = -1;
  private double reasonSinceS;
  private int heldOff = Reason.NONE;
  private RunResult.Moment worst;
  private HiveSection coldest;
  private final double[] alarmFirstS = new double[Alarm.COUNT];
  private final double[] alarmSinceS = new double[Alarm.COUNT];
  private final double[] alarmS = new double[Alarm.COUNT];

  private final double[] row = new double[Trace.COLUMNS.size()];
  private double beesCame;
  private double broodCame;
  private double heaterJ;
  private double pvJ;
  private double loadJ;
  private double intervalS;

  Recorder(Scenario scenario, Plant plant, ReadingTaker taker, Pace.Keep keep) {
    this.scenario = scenario;
    this.plant = plant;
    this.taker = taker;
    cutOutOpen = new boolean[plant.supply().cutOutCount()];
    keepsEvents = keep != Pace.Keep.FIGURES;
    int interval = scenario.run().traceIntervalS();
    trace =
        keep == Pace.Keep.TRACE
            ? new Trace(interval, 86_400 * scenario.window().days() / interval + 1)
            : null;
    minOnS = scenario.controller().settings().get(Setting.RELAY_MIN_ON_MILLIS) * 1e-3;
    heldTime = new HeldTime(scenario.controller().settings());
    for (String kind :
        List.of("limit", "trust", "effect", "shed", "supply", "cooling", "isolation", "service")) {
      earlyStops.put(kind, 0);
    }
    java.util.Arrays.fill(alarmFirstS, -1);
  }

  void event(double atS, String what, String from, String to, String why) {
    if (keepsEvents) {
      events.add(new EventRow(atS, what, from, to, why));
    }
  }

  /** A colony moved in during the run. */
  void colonyCame(double bees, double broodCells) {
    beesCame += bees;
    broodCame += broodCells;
  }

  /** Looks at what the controller asked at a tick. */
  void observe(double atS, Commands c) {
    boolean on = c.heater && c.isolation;
    tickAtS = atS;
    heldTime.heater(atS, on);
    if (on != heater) {
      if (on) {
        heaterOnAtS = atS;
        event(atS, "heater", "off", "on", ReasonWords.of(c.heaterReason));
      } else {
        int stop = c.heaterStopReason;
        event(atS, "heater", "on", "off", ReasonWords.of(stop));
        countStop(atS, stop);
      }
      heater = on;
    }
    if (c.fan != fan) {
      event(atS, "fan", fan ? "on" : "off", c.fan ? "on" : "off", ReasonWords.of(c.fanReason));
      fan = c.fan;
    }
    if (c.shedLevel != shedLevel) {
      boolean more = c.shedLevel > shedLevel;
      if (c.shedLevel >= ShedLevel.HEAT_SHED && shedLevel < ShedLevel.HEAT_SHED) {
        sheds++;
        firstShedAtS = firstShedAtS < 0 ? atS : firstShedAtS;
      }
      event(
          atS,
          "shed level",
          ShedLevel.name(shedLevel),
          ShedLevel.name(c.shedLevel),
          more ? "the battery is low" : "the battery has recovered");
      shedLevel = c.shedLevel;
    }
    if (c.heaterReason != reason) {
      reason = c.heaterReason;
      reasonSinceS = atS;
    }
    held(atS, on ? Reason.NONE : c.heaterReason, on, c);
    int changed = c.alarms ^ alarms;
    for (int bit = 0; changed != 0 && bit < Alarm.COUNT; bit++) {
      if ((changed >> bit & 1) != 0) {
        alarm(atS, bit, (c.alarms >> bit & 1) != 0);
      }
    }
    alarms = c.alarms;
  }

  /** Heat that is wanted and not given has a reason; each change of it is an event. */
  private void held(double atS, int held, boolean on, Commands c) {
    if (held != heldOff) {
      String why =
          held != Reason.NONE
              ? ReasonWords.of(held, heldTime.leftS(atS, c))
              : on ? "the heater came on" : "no longer wanted";
      event(atS, HeldHeat.WHAT, Reason.name(heldOff), Reason.name(held), why);
      heldOff = held;
    }
  }

  private void countStop(double atS, int stop) {
    if (stop != Reason.NONE && atS - heaterOnAtS < minOnS - 1e-9) {
      earlyStops.merge(Reason.stopKind(stop), 1, Integer::sum);
    }
  }

  private void alarm(double atS, int bit, boolean raised) {
    if (raised) {
      if (alarmFirstS[bit] < 0) {
        alarmFirstS[bit] = atS;
      }
      alarmSinceS[bit] = atS;
    } else {
      alarmS[bit] += atS - alarmSinceS[bit];
    }
    event(
        atS,
        "alarm " + Alarm.name(bit),
        raised ? "clear" : "raised",
        raised ? "raised" : "clear",
        "by the controller");
  }

  /** Looks at everything in the supply chain that may open by itself; the plant has moved on. */
  void cutOuts(double atS) {
    for (int i = 0; i < cutOutOpen.length; i++) {
      CutOut c = plant.supply().cutOut(i);
      if (c.open() != cutOutOpen[i]) {
        cutOutOpen[i] = c.open();
        String what = "cut-out " + c.name();
        if (c.open()) {
          event(atS, what, "closed", "open", c.why());
        } else {
          event(atS, what, "open", "closed", "its cause is gone");
        }
      }
    }
  }

  /** The bus lost its power: everything is off, whatever the controller had asked. */
  void busDied(double atS, Commands before) {
    wentDead = true;
    event(atS, "bus", "alive", "dead", "the battery could not carry the loads");
    if (heater) {
      event(atS, "heater", "on", "off", "the bus is dead");
      if (atS - heaterOnAtS < minOnS - 1e-9) {
        earlyStops.merge("supply", 1, Integer::sum);
      }
    }
    if (before.fan) {
      event(atS, "fan", "on", "off", "the bus is dead");
    }
    heldTime.heater(atS, false);
    heater = false;
    fan = false;
    if (heldOff != Reason.NONE) {
      event(atS, HeldHeat.WHAT, Reason.name(heldOff), Reason.name(Reason.NONE), "the bus is dead");
      heldOff = Reason.NONE;
    }
  }

  /** Books the solved step. */
  void book(double fromS, double lengthS, Commands c, Actuators held, Metrics metrics) {
    heaterJ += plant.supply().heaterW() * lengthS;
    pvJ += plant.supply().pvUsedW() * lengthS;
    loadJ += plant.supply().loadW() * lengthS;
    intervalS += lengthS;
    double endS = fromS + lengthS;
    if (trace != null) {
      trace.section(endS, plant.hive()::section);
    }
    if (metrics.broodLow.atS() == endS) {
      if (keepsEvents) {
        coldest = plant.hive().section();
      }
      worst =
          new RunResult.Moment(
              endS,
              c.heaterReason,
              shedLevel,
              held.heater,
              held.heater ? endS - heaterOnAtS : 0,
              plant.supply().dead(),
              plant.weather().airC,
              reasonSinceS,
              heldTime.leftS(tickAtS, c));
    }
    stateRow(1, c, held);
  }

  private void stateRow(double theta, Commands c, Actuators held) {
    if (trace == null) {
      return;
    }
    var hive = plant.hive().view();
    var supply = plant.supply();
    int i = 0;
    row[i++] = hive.nestC(theta);
    row[i++] = taker.lastC(ProbeSpec.Role.BROOD_A);
    row[i++] = taker.lastC(ProbeSpec.Role.BROOD_B);
    row[i++] = hive.panNode() >= 0 ? hive.nodeC(hive.panNode(), theta) : Double.NaN;
    row[i++] = hive.plateNode() >= 0 ? hive.nodeC(hive.plateNode(), theta) : Double.NaN;
    row[i++] = hive.nodeC(hive.broodAirNode(), theta);
    row[i++] = hive.nodeC(hive.topAirNode(), theta);
    row[i++] = plant.weather().airC;
    row[i++] = plant.weather().ghiWM2;
    row[i++] = plant.weather().windMS;
    int powerAt = i;
    row[i++] = 0;
    row[i++] = held.heater ? 1 : 0;
    row[i++] = held.fan ? 1 : 0;
    row[i++] = shedLevel;
    row[i++] =
        c.workingSetPointCentiC == Commands.NO_TEMPERATURE
            ? Double.NaN
            : c.workingSetPointCentiC / 100.0;
    row[i++] = supply.battery().stateOfCharge();
    row[i++] = supply.volts();
    row[i++] = supply.battery().temperatureC();
    int pvAt = i;
    i += 2;
    row[i++] = plant.hive().colonyW();
    row[i++] = hive.broodRhPercent(theta);
    row[i++] = hive.broodCo2Percent(theta);
    row[i++] = hive.filmKg() * 1000;
    row[i++] = hive.throughFlowM3S() * 60_000;
    row[i++] = hive.panCoreNode() >= 0 ? hive.nodeC(hive.panCoreNode(), theta) : Double.NaN;
    row[i++] = hive.lidInsideC(theta);
    row[i++] = hive.wallInsideC(theta);
    row[i] = hive.condensingGH();
    row[powerAt] = intervalS > 0 ? heaterJ / intervalS : 0;
    row[pvAt] = intervalS > 0 ? pvJ / intervalS : 0;
    row[pvAt + 1] = intervalS > 0 ? loadJ / intervalS : 0;
  }

  /** The first row of the trace. */
  void row(long nowMs, Commands c, Actuators held) {
    if (trace != null) {
      stateRow(0, c, held);
      trace.add(row);
    }
  }

  /** Adds a row where one is due at this time; the plant has just moved on. */
  void rowIfDue(long nowMs, Commands c, Actuators held) {
    if (nowMs % (1000L * scenario.run().traceIntervalS()) == 0) {
      if (trace != null) {
        row[Trace.COLUMNS.indexOf("soc")] = plant.supply().battery().stateOfCharge();
        trace.add(row);
      }
      heaterJ = 0;
      pvJ = 0;
      loadJ = 0;
      intervalS = 0;
    }
  }

  private List<RunResult.ProbeTruth> probeTruths(Metrics m, double endS) {
    List<RunResult.ProbeTruth> truths = new ArrayList<>();
    for (int p = 0; p < scenario.probes().size(); p++) {
      ProbeSpec spec = scenario.probes().get(p);
      truths.add(
          new RunResult.ProbeTruth(
              spec.role(),
              spec.place(),
              m.probeSumKs[p] / endS,
              m.probeOffKs[p] / endS,
              m.probeLagK[p]));
    }
    return truths;
  }

  RunResult result(Metrics m, double endS, List<ColonyDay> days) {
    var hive = plant.hive();
    var supply = plant.supply();
    List<AlarmSpan> spans = new ArrayList<>();
    for (int bit = 0; bit < Alarm.COUNT; bit++) {
      if (alarmFirstS[bit] >= 0) {
        double s = alarmS[bit];
        if ((alarms >> bit & 1) != 0) {
          s += endS - alarmSinceS[bit];
        }
        spans.add(new AlarmSpan(Alarm.name(bit), alarmFirstS[bit], s / 3600));
      }
    }
    spans.sort(java.util.Comparator.comparingDouble(AlarmSpan::firstAtS));
    double bees = scenario.colony().bees() + beesCame;
    double brood = scenario.colony().broodCells() + broodCame;
    var battery = supply.battery();
    return new RunResult(
        endS / 86_400,
        m.heater,
        m.heaterPower,
        m.fan,
        java.util.Collections.unmodifiableMap(earlyStops),
        new RunResult.Brood(
            m.broodSumKs / m.broodS,
            m.broodLow,
            m.broodHigh,
            m.belowS / 3600,
            m.aboveS / 3600,
            m.belowKs / 3600,
            m.aboveKs / 3600,
            100 * (1 - (m.belowS + m.aboveS) / m.broodS)),
        new RunResult.Air(
            m.humiditySum / m.airS,
            m.humidityLow,
            m.co2Sum / m.airS,
            m.co2High,
            m.condensingS / 3600),
        new RunResult.BatteryUse(
            m.socLow,
            m.voltsLow,
            battery.stateOfCharge(),
            supply.ledger().chargeOutAh / scenario.battery().capacityAh(),
            m.lastFullAtS < 0 ? Double.NaN : (endS - m.lastFullAtS) / 86_400,
            wentDead),
        colonyEnd(m, days, bees, brood),
        m.panHigh,
        m.plateHigh,
        new RunResult.HotParts(
            m.fillingHigh,
            m.plateWM2High,
            m.plateOverS / 3600,
            m.contactOverS / 3600,
            scenario.heater().limits()),
        m.shedS / 3600,
        sheds,
        firstShedAtS,
        worst,
        hive.ledger(),
        coldest,
        hive.films(),
        hive.ways(),
        probeTruths(m, endS),
        supply.ledger(),
        supply.use(),
        List.copyOf(spans),
        List.copyOf(events),
        days,
        trace);
  }

  /** Numbers that move tell of themselves; of those that stay, the doses take their part. */
  private RunResult.ColonyEnd colonyEnd(
      Metrics m, List<ColonyDay> days, double bees, double brood) {
    double feedG = plant.hive().ledger().colonyJ / ColonyHeat.HONEY_J_G;
    if (!days.isEmpty()) {
      ColonyDay last = days.get(days.size() - 1);
      return new RunResult.ColonyEnd(
          bees, last.bees(), brood, last.brood(), last.lostToCold(), last.lostToHeat(), feedG);
    }
    double toHeat = brood * m.dose.lostToHeat();
    double toCold = (brood - toHeat) * m.dose.lostToCold();
    double live = plant.hive().alive() ? bees * m.adults.outlivesHeat() : 0;
    return new RunResult.ColonyEnd(
        bees, live, brood, brood - toHeat - toCold, toCold, toHeat, feedG);
  }
}
