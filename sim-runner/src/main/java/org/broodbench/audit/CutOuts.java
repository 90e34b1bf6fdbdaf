package org.broodbench.audit;

import static org.broodbench.audit.Finding.PRACTICE;
import static org.broodbench.audit.Words.down;
import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.power.Battery;
import org.broodbench.power.BoardSpec;
import org.broodbench.power.ChargeProfile;
import org.broodbench.power.Electrolyte;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.LoadOutput;
import org.broodbench.rig.Known;
import org.broodbench.rig.PaperSpec;
import org.broodbench.rig.Scenario;

/**
 * Everything in the chain that opens by itself: when, what closes it again, and who comes first.
 */
final class CutOuts {
  private final Facts f;
  private final Findings out;
  private final Scenario s;
  private final Supply p;

  CutOuts(Facts f, Findings out) {
    this.f = f;
    this.out = out;
    s = f.s;
    p = f.supply;
  }

  void run() {
    LoadOutput load = s.pv().output();
    BoardSpec board = s.battery().board();
    if (load.fitted()) {
      early("load output", load.cutV(), "pv.load_cut", true);
      neverReached("load output", load.returnV(), "pv.load_return");
    }
    if (board.fitted()) {
      early("protection board", board.lowV(), "battery.board.low_volts", true);
      board(board);
    }
    early("controller's own board", s.controller().brownOutV(), "controller.brown_out", true);
    if (p.inverterUsed() && (p.onInverter() || p.acLoadsW() > 0)) {
      early("inverter", s.inverter().trips().lowV(), "inverter.low_cut", false);
      inverter();
    }
  }

  /** Volts of the bus with the heater on, just before it is shed, with the battery cold. */
  private double sagV() {
    double coldC = Math.min(25, p.coldBatteryC());
    double a = p.restA() + p.heaterA(p.workV());
    return p.heatShedRestedV(coldC) - a * p.sourceOhm(coldC);
  }

  private void early(String name, double tripV, String key, boolean untilStandby) {
    double restV = p.standbyV() - p.restA() * p.sourceOhm(Math.min(25, p.coldBatteryC()));
    double firstV = untilStandby ? Math.min(restV, sagV()) : sagV();
    if (tripV < firstV) {
      return;
    }
    double newV =
        Math.max(key.startsWith("controller") ? 2 : 5, down(firstV - 0.2 * p.scale(), 0.1));
    out.add(
        "cutout_before_standby",
        Severity.STOP,
        "A cut-out opens before the controller has shed its loads",
        of(
            "the %s opens at %.2f V; the controller is in standby at %.2f V, the bus then at %.2f V; with the heater on, before it is shed, the bus stands at %.2f V - %.2f A x %.0f mOhm = %.2f V",
            name,
            tripV,
            p.standbyV(),
            restV,
            p.heatShedRestedV(Math.min(25, p.coldBatteryC())),
            p.restA() + p.heaterA(p.workV()),
            1000 * p.sourceOhm(Math.min(25, p.coldBatteryC())),
            sagV()),
        "Set it lower than both",
        List.of(set(key, newV, 1, "V")),
        PRACTICE);
  }

  private void neverReached(String name, double returnV, String key) {
    double chargingV = s.battery().absorptionV();
    if (returnV < chargingV) {
      return;
    }
    byHand(
        of(
            "the %s reconnects at %.2f V, and charging never goes above %.2f V",
            name, returnV, chargingV),
        List.of(set(key, down(chargingV - 0.6 * p.scale(), 0.1), 1, "V")));
  }

  private void board(BoardSpec board) {
    if (board.returns() == BoardSpec.Return.HAND) {
      byHand(
          of("the protection board that opened at %.1f V is let go only by a hand", board.lowV()),
          List.of("battery.board.returns=charge"));
    }
    neverReached("protection board", board.lowReturnV(), "battery.board.low_return_volts");
    Known starts = s.paper().startsOnOpenBoard();
    if (starts == Known.YES || s.shore().present()) {
      return;
    }
    out.add(
        "returns_by_itself",
        starts == Known.NO ? Severity.STOP : Severity.WARN,
        starts == Known.NO
            ? "After a flat battery this rig does not come back by itself"
            : "Nobody knows whether this rig comes back from a flat battery",
        of(
            "the protection board opens at %.1f V; a charge controller that sees no battery %s",
            board.lowV(), starts == Known.NO ? "does not start" : "may not start"),
        "Take a charge controller that starts on an open board, try it, and say so",
        List.of("pv.starts_on_open_board=yes"),
        PRACTICE);
  }

  private void inverter() {
    InverterSpec.Trips t = s.inverter().trips();
    if (!t.returnsByItself()) {
      byHand(
          of("the inverter that went off at %.1f V is switched on only by a hand", t.lowV()),
          List.of("inverter.returns=true"));
    }
    neverReached("inverter", t.lowReturnV(), "inverter.low_return");
    if (t.mostRestarts() < 1_000_000) {
      neverReached(
          "inverter, once it has restarted too often,", t.unlockV(), "inverter.unlock_volts");
    }
    double coldC = p.coldBatteryC();
    ChargeProfile c = s.battery().charge();
    double chargingV = c.absorptionV() + c.compensationVPerK() * (coldC - 25);
    boolean charges = s.pv().powerW() > 0 || s.shore().powerW() > 0;
    if (charges && chargingV > t.highV()) {
      double newV = Words.up(chargingV + 0.2 * p.scale(), 0.1);
      out.add(
          "inverter_high_volts",
          Severity.WARN,
          "Charging in the cold switches the inverter off",
          of(
              "%.2f V at 25 °C + %.0f mV/K x (%.0f - 25) K = %.2f V; the inverter goes off above %.2f V",
              c.absorptionV(), 1000 * c.compensationVPerK(), coldC, chargingV, t.highV()),
          "Take one that bears it",
          List.of(
              set("inverter.high_cut", newV, 1, "V"),
              set("inverter.high_return", Math.min(t.highReturnV(), newV - 0.2), 1, "V")),
          "temperature compensation: data sheets; high cut 15.0 to 16.5 V: makers' sheets");
    }
  }

  private void byHand(String arithmetic, List<String> cure) {
    out.add(
        "returns_by_itself",
        Severity.STOP,
        "After a flat battery this rig does not come back by itself",
        arithmetic,
        "Take a part that returns by itself",
        cure,
        PRACTICE);
  }

  /** The chain as a table. */
  List<CutOutLine> lines() {
    List<CutOutLine> all = new ArrayList<>();
    BoardSpec board = s.battery().board();
    LoadOutput load = s.pv().output();
    double chargingV = s.battery().absorptionV();
    all.add(
        line(
            "controller standby",
            of("%.2f V at rest", p.standbyV()),
            "its leave level while charging",
            Known.YES));
    all.add(
        line(
            "controller brown-out",
            of("below %.2f V", s.controller().brownOutV()),
            of("%.2f V for %.0f s", s.controller().restartV(), s.controller().bootS()),
            Known.YES));
    if (load.fitted()) {
      all.add(
          line(
              "load output",
              of("below %.2f V for %.0f s", load.cutV(), load.delayS()),
              of("%.2f V for %.0f s", load.returnV(), load.delayS()),
              load.returnV() < chargingV ? Known.YES : Known.NO));
    }
    if (board.fitted()) {
      boolean hand = board.returns() == BoardSpec.Return.HAND || board.lowReturnV() >= chargingV;
      Known starts = s.shore().present() ? Known.YES : s.paper().startsOnOpenBoard();
      all.add(
          line(
              "protection board, low",
              of("below %.2f V", board.lowV()),
              of("%.2f V, by %s", board.lowReturnV(), word(board.returns())),
              hand ? Known.NO : starts));
      all.add(
          line(
              "protection board, high",
              of("above %.2f V: no charging", board.highV()),
              of("below %.2f V", board.highReturnV()),
              Known.YES));
      all.add(
          line(
              "protection board, current",
              of("above %.0f A", board.dischargeLimitA()),
              of("after %.0f s", board.limitReturnS()),
              Known.YES));
    } else {
      all.add(
          line(
              "empty battery",
              of(
                  "%.0f %% at %.0f °C",
                  100 * Battery.lockedShare(p.chemistry(), p.coldBatteryC()), p.coldBatteryC()),
              "5 points above that",
              Known.YES));
    }
    if (p.chemistry().leadAcid()) {
      all.add(
          line(
              "frozen battery",
              of("at 20 %% below %.0f °C", Electrolyte.freezesC(Electrolyte.gravity(0.2))),
              "thawed, if its case held",
              Known.UNKNOWN));
    }
    if (s.battery().frostCutOff()) {
      all.add(line("charging in frost", "battery below 0 °C", "5 °C", Known.YES));
    }
    if (p.inverterUsed()) {
      InverterSpec.Trips t = s.inverter().trips();
      Known returns = t.returnsByItself() && t.lowReturnV() < chargingV ? Known.YES : Known.NO;
      all.add(
          line(
              "inverter, low",
              of("below %.2f V", t.lowV()),
              of(
                  "%.2f V after %.0f s; %d times, then %.2f V",
                  t.lowReturnV(), t.waitS(), t.mostRestarts(), t.unlockV()),
              returns));
      all.add(
          line(
              "inverter, high",
              of("above %.2f V", t.highV()),
              of("below %.2f V after %.0f s", t.highReturnV(), t.waitS()),
              t.returnsByItself() ? Known.YES : Known.NO));
    }
    if (s.wiring().batteryFuseA() > 0) {
      all.add(
          line("battery fuse", of("%.1f A", s.wiring().batteryFuseA()), "a new fuse", Known.NO));
    }
    if (s.wiring().heaterFuseA() > 0 && !p.onInverter()) {
      all.add(line("heater fuse", of("%.1f A", s.wiring().heaterFuseA()), "a new fuse", Known.NO));
    }
    PaperSpec.CutOut c = s.paper().cutOut();
    if (c.kind() != PaperSpec.Kind.NONE) {
      all.add(
          line(
              "thermal cut-out",
              of("%.1f ± %.1f °C at the plate", c.opensC(), c.toleranceK()),
              s.paper().cutOutStaysOpen() ? "a hand, as it must" : "when cooled",
              s.paper().cutOutStaysOpen() ? Known.NO : Known.YES));
    }
    return all;
  }

  private static String word(BoardSpec.Return r) {
    return switch (r) {
      case ITSELF -> "volts alone";
      case CHARGE -> "charging";
      case HAND -> "a hand";
    };
  }

  private static CutOutLine line(String name, String trips, String reconnects, Known returns) {
    return new CutOutLine(name, trips, reconnects, returns);
  }
}
