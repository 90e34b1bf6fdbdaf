package org.broodbench.audit;

/** How much a finding weighs. */
public enum Severity {
  /** Do not put the hive out like this. */
  STOP,
  /** It will cost heat, charge or parts. */
  WARN,
  /** Good to know. */
  NOTE;

  /** The word in results. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
