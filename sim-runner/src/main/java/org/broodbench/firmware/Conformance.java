package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;

/** Plays vectors to firmware until the first difference, shrinks it and explains it. */
public final class Conformance {
  /** Entries that may be played while shrinking, on a link that loses nothing and on another. */
  private static final long SHRINK_ENTRIES = 1_500_000;

  private static final long SHRINK_ENTRIES_SLOW = 4000;

  /** Vectors looked at after the first difference, to see which other rules are violated. */
  private static final int LATER_VECTORS = 40;

  private final Session session;
  private final String target;
  private final RuleCoverage coverage = new RuleCoverage();
  private final List<String> violated = new ArrayList<>();
  private int vectors;
  private long steps;
  private Finding finding;
  private FirmwareFault fault;

  /**
   * @param target what is checked, as the user named it
   */
  public Conformance(Session session, String target) {
    this.session = session;
    this.target = target;
  }

  /** Plays all; never throws for what the firmware does. */
  public ConformReport check(List<Script> scripts) {
    try {
      for (int i = 0; i < scripts.size(); i++) {
        Script script = scripts.get(i);
        coverage.begin(script.settings());
        Difference difference = session.run(script, Long.MAX_VALUE, coverage);
        steps += session.answered();
        if (difference != null) {
          explain(script, difference);
          later(scripts.subList(i + 1, scripts.size()));
          break;
        }
        vectors++;
      }
    } catch (FirmwareFault f) {
      steps += finding == null ? session.answered() : 0;
      fault = f;
    }
    return report();
  }

  private void explain(Script script, Difference difference) {
    Script.Fixed vector = Reference.record(script, difference.entry() + 1);
    finding = Finding.of(vector, difference, vector, difference, false);
    violated.add(finding.rule());
    if (session.board().ownClock()) {
      return; // its counter cannot be played again
    }
    boolean quick = session.board().ahead() > 1;
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
    if (fault != null || session.board().ahead() == 1) {
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

  private ConformReport report() {
    return new ConformReport(
        target,
        session.board(),
        vectors,
        steps,
        fault == null ? null : fault.kind(),
        fault == null ? null : fault.getMessage(),
        fault == null ? null : session.heaterFailedOff(),
        finding,
        List.copyOf(violated),
        coverage.exercised(),
        coverage.missed(),
        session.notReported(),
        session.resent(),
        session.chatter());
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
        0);
  }
}
