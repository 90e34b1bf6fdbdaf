package org.broodbench.audit;

import java.util.List;

/**
 * A rig on paper.
 *
 * @param findings stops first, then warnings, then notes
 * @param loads power and current of each load at each voltage
 * @param cutOuts everything in the chain that opens by itself
 * @param month the darkest month by the day
 * @param week the worst week by the day
 */
public record AuditReport(
    List<Finding> findings,
    List<LoadLine> loads,
    List<CutOutLine> cutOuts,
    Budget month,
    Budget week) {
  /** Copies the lists. */
  public AuditReport {
    findings = List.copyOf(findings);
    loads = List.copyOf(loads);
    cutOuts = List.copyOf(cutOuts);
  }

  /** Number of findings that are stops. */
  public long stops() {
    return findings.stream().filter(f -> f.severity() == Severity.STOP).count();
  }

  /** Whether there is a finding of an id. */
  public boolean has(String id) {
    return findings.stream().anyMatch(f -> f.id().equals(id));
  }
}
