package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Settings;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/** Plays vectors to firmware until the first difference, shrinks it and explains it. */
public final class Conformance {
  /** Entries that may be played while shrinking, on a link that loses nothing and on another. */
  private static final long SHRINK_ENTRIES = 1_500_000;

  private static final long SHRINK_ENTRIES_SLOW = 4000;

  /** Vectors looked at after the first difference, to see which other rules are violated. */
  private static final int LATER_VECTORS = 40;

  private final Session session;
  private final Transport.Opener opener;
  private final String target;
  private final RuleCoverage coverage = new RuleCoverage();
  private final List<String> violated = new ArrayList<>();
  private int vectors;
  private long steps;
  private Finding finding;
  private FirmwareFault fault;
  private Boolean failedOff;
  private ClosedLoop.Result closedLoop;

  /**
   * @param opener opens the same firmware once more, to see a fault line by line
   * @param target what is checked, as the user named it
   */
  public Conformance(Session session, Transport.Opener opener, String target) {
    this.session = session;
    this.opener = opener;
    this.target = target;
  }

  /** Plays all until the first difference; never throws for what the firmware does. */
  public void play(List<Script> scripts) {
    Script script = null;
    try {
      for (int i = 0; i < scripts.size() && !over(); i++) {
        script = scripts.get(i);
        coverage.begin(script.settings());
        Difference difference = session.run(script, Long.MAX_VALUE, coverage);
        steps += session.answered();
        if (difference != null) {
          explain(Reference.record(script, difference.entry() + 1), difference);
          later(scripts.subList(i + 1, scripts.size()));
        } else {
          vectors++;
        }
      }
    } catch (FirmwareFault f) {
      fault = f;
      if (finding == null) {
        lookCloser(script);
      }
    }
  }

  /**
   * Lines that went ahead hide where a fault began: the vector is played once more, a line at a
   * time.
   */
  private void lookCloser(Script script) {
    long answered = session.answered();
    if (session.ahead() > 1) {
      session.close();
      try (Session again = session.again(opener)) {
        try {
          again.run(script, Long.MAX_VALUE);
        } catch (FirmwareFault f) {
          fault = f;
          answered = again.answered();
          failedOff = again.heaterFailedOff();
        }
      } catch (FirmwareFault f) {
        // what was seen at first stands
        failedOff = session.heaterFailedOff();
      }
    }
    steps += answered;
  }

  private boolean over() {
    return finding != null || fault != null;
  }

  /** Lets the firmware drive the hive of a scenario, with these settings in both runs. */
  public void drive(Scenario scenario, Forcing forcing, Settings settings) {
    if (fault != null) {
      return;
    }
    try {
      closedLoop = ClosedLoop.of(session, scenario, forcing, settings);
      steps += closedLoop.entries();
      failedOff = closedLoop.heaterFailedOff();
      fault = closedLoop.fault();
      if (closedLoop.difference() != null && finding == null && fault == null) {
        explain(closedLoop.vector(), closedLoop.difference());
      }
    } catch (FirmwareFault f) {
      fault = f;
    }
  }

  private void explain(Script.Fixed vector, Difference difference) {
    finding = Finding.of(vector, difference, vector, difference, false);
    violated.add(finding.rule());
    if (session.board().ownClock()) {
      return; // its counter cannot be played again
    }
    boolean quick = session.ahead() > 1;
    Shrinker shrinker =
        new Shrinker(
            session, vector, finding.field(), quick ? SHRINK_ENTRIES : SHRINK_ENTRIES_SLOW);
    try {
      Script.Fixed shortest = shrinker.shrink();
      Difference shown = shrinker.shown() == null ? difference : shrinker.shown();
      finding = Finding.of(vector, difference, shortest, shown, shrinker.complete());
    } catch (FirmwareFault f) {
      // the difference stands; that it does worse on the way to a shorter one is told beside it
      fault = f;
    }
  }

  private void later(List<Script> scripts) throws FirmwareFault {
    if (fault != null || session.ahead() == 1) {
      return;
    }
    for (Script script : scripts.subList(0, Math.min(LATER_VECTORS, scripts.size()))) {
      Difference difference = session.run(script, Long.MAX_VALUE);
      if (difference != null) {
        Script.Fixed vector = Reference.record(script, difference.entry() + 1);
        String rule = Finding.of(vector, difference, vector, difference, false).rule();
        if (!violated.contains(rule)) {
          violated.add(rule);
        }
      }
    }
  }

  /** What was found. */
  public ConformReport report() {
    return new ConformReport(
        target,
        session.board(),
        vectors,
        steps,
        fault == null ? null : fault.kind(),
        fault == null ? null : fault.getMessage(),
        fault == null ? null : failedOff != null ? failedOff : session.heaterFailedOff(),
        finding,
        List.copyOf(violated),
        coverage.exercised(),
        coverage.missed(),
        session.notReported(),
        session.resent(),
        session.chatter(),
        closedLoop);
  }

  /** The report of firmware that did not even say hello. */
  public static ConformReport failedHello(String target, FirmwareFault fault) {
    return new ConformReport(
        target,
        null,
        0,
        0,
        fault.kind(),
        fault.getMessage(),
        null,
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        0,
        0,
        null);
  }
}
