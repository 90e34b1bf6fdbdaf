package org.broodbench.power;

import java.util.ArrayList;
import java.util.List;

/**
 * Everything between battery and loads that may open by itself, except the inverter's own trips:
 * fuses, the battery's protection board, frost and ice, the load output, the brown-out of the
 * controller's board.
 *
 * <p>An empty lead-acid battery delivers again when the available well stands 5 points above what
 * is locked, a board when it stands 2 points above; ice thaws 1 K above the freezing point. Own
 * choices.
 */
final class Guards {
  private static final double REFILLED = 0.05;
  private static final double BOARD_REFILLED = 0.02;
  private static final double THAWED_K = 1;
  private static final double FROST_C = 0;
  private static final double FROST_OVER_C = 5;

  private final SupplySpec spec;
  private final List<CutOut> all = new ArrayList<>();
  private final CutOut brownOut;
  private final CutOut empty;
  private final CutOut ice;
  private final CutOut boardLow;
  private final CutOut boardHigh;
  private final CutOut boardLimit;
  private final CutOut frost;
  private final CutOut output;
  private final Fuse batteryFuse;
  private final Fuse heaterFuse;
  private boolean gone;

  Guards(SupplySpec spec) {
    this.spec = spec;
    BoardSpec board = spec.battery().board();
    LoadOutput out = spec.pv().output();
    boolean acid = spec.battery().chemistry().leadAcid();
    brownOut =
        new CutOut(
            "controller_brown_out",
            "too few volts for the controller's board",
            true,
            0,
            spec.board().bootS());
    empty = new CutOut("battery_empty", "the battery has nothing left to give", true, 0, 0);
    ice = new CutOut("battery_frozen", "its acid has frozen", true, 0, 0);
    boardLow =
        new CutOut(
            "board_low_volts",
            "the protection board saves empty cells",
            board.returns() != BoardSpec.Return.HAND,
            0,
            0);
    boardHigh = new CutOut("board_high_volts", "the protection board saves full cells", true, 0, 0);
    boardLimit =
        new CutOut(
            "board_current",
            "more current than the protection board allows",
            true,
            0,
            board.limitReturnS());
    frost = new CutOut("charge_frost", "lithium cells must not be charged in frost", true, 0, 0);
    output =
        new CutOut(
            "load_output",
            "too few volts for the charge controller's load output",
            true,
            out.delayS(),
            out.delayS());
    batteryFuse = new Fuse("battery_fuse", spec.wiring().batteryFuseA());
    heaterFuse =
        new Fuse("heater_fuse", spec.heater().onInverter() ? 0 : spec.wiring().heaterFuseA());
    all.add(brownOut);
    if (board.fitted()) {
      all.addAll(List.of(boardLow, boardHigh, boardLimit));
    } else {
      all.add(empty);
    }
    if (acid) {
      all.add(ice);
    }
    if (spec.battery().frostCutOff()) {
      all.add(frost);
    }
    if (out.fitted()) {
      all.add(output);
    }
    if (batteryFuse.fitted()) {
      all.add(batteryFuse.cutOut());
    }
    if (heaterFuse.fitted()) {
      all.add(heaterFuse.cutOut());
    }
  }

  List<CutOut> all() {
    return all;
  }

  /** Takes the battery away or brings it back. */
  void take(boolean away) {
    gone = away;
  }

  /** Blows the fuse at the battery's post, or puts a new one in. */
  void batteryFuse(boolean blown) {
    batteryFuse.set(blown);
  }

  /** Blows the fuse of the heater's own circuit, or puts a new one in. */
  void heaterFuse(boolean blown) {
    heaterFuse.set(blown);
  }

  /** Whether the battery is on the bus at all. */
  boolean connected() {
    return !gone && !batteryFuse.cutOut().open() && !ice.open();
  }

  /** Whether it may be discharged. */
  boolean discharging() {
    return connected() && !empty.open() && !boardLow.open() && !boardLimit.open();
  }

  /** Whether it may be charged, at its temperature, °C. */
  boolean charging(double batteryC) {
    boolean frosty = spec.battery().frostCutOff() && (frost.open() || batteryC < FROST_C);
    return connected() && !boardHigh.open() && !frosty;
  }

  /** Whether loads on the battery side are fed. */
  boolean feeding() {
    return discharging() && !output.open();
  }

  /** Whether the controller's board runs. */
  boolean controllerRuns() {
    return feeding() && !brownOut.open();
  }

  /** Whether the heater's own circuit is closed. */
  boolean heaterClosed() {
    return !heaterFuse.cutOut().open();
  }

  /**
   * Judges the solved step.
   *
   * @param busV volts of the bus, V
   * @param terminalV volts at the battery's terminals, V
   * @param batteryA discharge positive, A
   * @param heaterA current of a heater on the battery side, A
   * @param collapsed whether no volts satisfied the loads
   */
  void judge(
      double busV,
      double terminalV,
      double batteryA,
      double heaterA,
      boolean collapsed,
      Battery battery) {
    BoardSpec board = spec.battery().board();
    double batteryC = battery.temperatureC();
    boolean drained = battery.empty() && batteryA > 0;
    brownOut.judge(
        controllerRuns() && busV < spec.board().brownOutV(),
        feeding() && busV >= spec.board().restartV());
    if (collapsed) {
      brownOut.force();
    }
    if (board.fitted()) {
      boardLow.judge(
          drained || (discharging() && terminalV < board.lowV()),
          terminalV >= board.lowReturnV()
              && battery.headroom() >= BOARD_REFILLED
              && (board.returns() == BoardSpec.Return.ITSELF || batteryA < 0));
      boardHigh.judge(terminalV > board.highV(), terminalV <= board.highReturnV());
      boardLimit.judge(batteryA > board.dischargeLimitA(), true);
    } else {
      empty.judge(drained, battery.headroom() >= REFILLED);
    }
    if (spec.battery().chemistry().leadAcid()) {
      double freezesC = Electrolyte.freezesC(Electrolyte.gravity(battery.stateOfCharge()));
      ice.judge(batteryC < freezesC, batteryC > freezesC + THAWED_K);
    }
    if (spec.battery().frostCutOff()) {
      frost.judge(batteryC < FROST_C, batteryC >= FROST_OVER_C);
    }
    LoadOutput out = spec.pv().output();
    if (out.fitted()) {
      output.judge(feeding() && busV < out.cutV(), discharging() && busV >= out.returnV());
    }
    batteryFuse.judge(batteryA < 0 ? -batteryA : batteryA);
    heaterFuse.judge(heaterA);
  }

  void accept(double seconds) {
    batteryFuse.accept(seconds);
    heaterFuse.accept(seconds);
    for (int i = 0; i < all.size(); i++) {
      CutOut c = all.get(i);
      if (c != batteryFuse.cutOut() && c != heaterFuse.cutOut()) {
        c.accept(seconds);
      }
    }
  }
}
