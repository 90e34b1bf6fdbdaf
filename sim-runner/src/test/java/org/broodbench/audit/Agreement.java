package org.broodbench.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.Pace;
import org.broodbench.power.BoardSpec;
import org.broodbench.power.SupplyUse;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;

/**
 * What the audit says of a rig against two runs: its worst week, and a fortnight of which ten days
 * are dark, begun with half a battery, so that everything that guards charge has its turn.
 */
final class Agreement {
  private static final int DARK_DAYS = 10;
  private static final int FORTNIGHT = 14;

  /** Stops that a run can show; the others are of fire, gas and plating. */
  static final Set<String> SHOWN =
      Set.of(
          "energy_budget",
          "autonomy",
          "inverter_idle_share",
          "heater_reach",
          "probe_place",
          "shed_sag",
          "cutout_before_standby",
          "returns_by_itself",
          "frost_charge",
          "frost_low_charge",
          "inverter_asleep",
          "inverter_small",
          "fuse_small",
          "heater_volts");

  /** What a run shows of a stop. */
  enum Shows {
    AGREES,
    DISAGREES,
    /** The run never came where the finding speaks of. */
    NOT_REACHED
  }

  /** By id: whether a run shows what the stop foretells. */
  final Map<String, Shows> stops = new LinkedHashMap<>();

  /** Whether the audit stops nothing. */
  final boolean passes;

  /** Whether it stops nothing that a run could show. */
  final boolean passesShown;

  /** Whether charge was kept, in the worst week and in the dark. */
  final boolean keepsCharge;

  /** Whether the heat was never shed for want of charge, nor any requirement missed. */
  final boolean warmAll;

  final String detail;

  private Agreement(PaperRig rig, RigWatch week, RigWatch dark) {
    passes = rig.report().stops() == 0;
    passesShown =
        rig.report().findings().stream()
            .noneMatch(f -> f.severity() == Severity.STOP && SHOWN.contains(f.id()));
    keepsCharge = week.keepsCharge() && dark.keepsCharge();
    warmAll = week.level < ShedLevel.HEAT_SHED && week.result.brood().percentInBand() >= 95;
    for (Finding f : rig.report().findings()) {
      if (f.severity() == Severity.STOP) {
        shows(f.id(), rig.scenario(), week, dark).ifPresent(s -> stops.put(f.id(), s));
      }
    }
    detail = told(week) + " | dark " + told(dark);
  }

  static Agreement of(PaperRig rig, boolean exact) {
    Scenario week = rig.worst(7);
    RigWatch plain = RigWatch.run(rig, week, rig.forcing(week), pace(week, exact));
    Scenario dark = rig.worst(FORTNIGHT);
    double low = Math.max(0.1, Math.min(rig.scenario().battery().initialSoc(), shedsAt(rig) + 0.1));
    double until = 86_400.0 * DARK_DAYS;
    List<EventSpec> events = new ArrayList<>();
    events.add(new EventSpec.Fault(0, FaultKind.PANEL_COVERED, until, 0));
    if (dark.shore().present()) {
      events.add(new EventSpec.Fault(0, FaultKind.SHORE_LOST, until, Double.NaN));
    }
    dark = dark.withBattery(dark.battery().withInitialSoc(low)).withEvents(events);
    return new Agreement(rig, plain, RigWatch.run(rig, dark, rig.forcing(dark), pace(dark, exact)));
  }

  private static double shedsAt(PaperRig rig) {
    return new Supply(rig.scenario(), 25).heatShedCharge(25);
  }

  private static Pace pace(Scenario s, boolean exact) {
    return exact ? Pace.exact(s, Pace.Keep.FIGURES) : Pace.search(s);
  }

  private static String told(RigWatch w) {
    return String.format(
        Locale.ROOT,
        "level %d at %.2f, band %.0f %% (%.1f to %.1f), heat %.0f %% of %.0f Wh, early %s, opened %s, below %.3f %s, last %.2f%s",
        w.level,
        w.shedSoc,
        w.result.brood().percentInBand(),
        w.result.brood().low().value(),
        w.result.brood().high().value(),
        100 * w.result.heaterCommanded().onS() / 86_400 / w.result.days(),
        w.result.power().heaterJ / 3600,
        w.early,
        w.opened,
        w.below,
        w.belowBy,
        w.result.battery().finalSoc(),
        w.dead ? ", dead" : "");
  }

  private static Optional<Shows> shows(String id, Scenario s, RigWatch week, RigWatch dark) {
    boolean shortOfCharge = week.level >= ShedLevel.SET_BACK || week.dead;
    return switch (id) {
      case "energy_budget", "autonomy", "inverter_idle_share" -> is(shortOfCharge);
      case "heater_reach" ->
          is(
              week.result.brood().percentInBand() < 95
                  || week.result.heaterCommanded().onS() > 0.9 * 86_400 * week.result.days());
      case "probe_place" -> is(week.result.brood().percentInBand() < 95);
      case "shed_sag" ->
          week.level < ShedLevel.HEAT_SHED && dark.level < ShedLevel.HEAT_SHED && !gaveOut(dark)
              ? Optional.of(Shows.NOT_REACHED)
              : is(
                  week.level >= ShedLevel.HEAT_SHED && week.shedSoc > 0.6
                      || week.result.heaterCommanded().onS() == 0
                      || gaveOut(dark)
                      || dark.level >= ShedLevel.HEAT_SHED && dark.shedSoc < 0.1);
      case "cutout_before_standby" ->
          !week.early.isEmpty() || !dark.early.isEmpty()
              ? Optional.of(Shows.AGREES)
              : dark.level < ShedLevel.STANDBY || dark.result.heaterCommanded().starts() == 0
                  ? Optional.of(Shows.NOT_REACHED)
                  : Optional.of(Shows.DISAGREES);
      case "returns_by_itself" ->
          dark.opened.stream().anyMatch(o -> byHand(o, s))
              ? is(stuck(dark))
              : Optional.of(Shows.NOT_REACHED);
      case "frost_charge" -> is(week.result.supply().battery().frostChargeAh() > 0);
      case "frost_low_charge" ->
          is(week.opened.contains("battery_frozen") || dark.opened.contains("battery_frozen"));
      case "inverter_asleep" -> is(week.result.power().heaterJ == 0);
      case "inverter_small" -> is(week.early.stream().anyMatch(o -> o.startsWith("inverter")));
      case "fuse_small" ->
          week.result.heaterPowered().starts() == 0 && week.opened.isEmpty()
              ? Optional.of(Shows.NOT_REACHED)
              : is(week.opened.stream().anyMatch(o -> o.endsWith("fuse")));
      case "heater_volts" ->
          week.result.heaterPowered().starts() == 0
              ? Optional.of(Shows.NOT_REACHED)
              : is(
                  !week.result.hot().plateWithin()
                      || week.opened.stream().anyMatch(o -> o.endsWith("fuse")));
      default -> Optional.empty();
    };
  }

  private static Optional<Shows> is(boolean agrees) {
    return Optional.of(agrees ? Shows.AGREES : Shows.DISAGREES);
  }

  private static boolean gaveOut(RigWatch w) {
    return w.dead || w.early.contains("battery_empty") || w.early.contains("board_low_volts");
  }

  /** Whether a cut-out of some name waits for a hand, or for volts that never come. */
  private static boolean byHand(String name, Scenario s) {
    double most = s.battery().absorptionV();
    return switch (name) {
      case "board_low_volts" ->
          s.battery().board().returns() == BoardSpec.Return.HAND
              || s.battery().board().lowReturnV() >= most;
      case "load_output" -> s.pv().output().returnV() >= most;
      default ->
          name.startsWith("inverter")
              && (!s.inverter().trips().returnsByItself()
                  || s.inverter().trips().lowReturnV() >= most);
    };
  }

  private static boolean stuck(RigWatch w) {
    return w.result.supply().cutOuts().stream().anyMatch(SupplyUse.Opened::openAtEnd);
  }
}
