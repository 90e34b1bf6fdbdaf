package org.broodbench.calibrate;

/** A log that cannot be used, and why. */
public final class LogRefused extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final int line;
  private final String column;
  private final String allowed;
  private final String hint;

  /**
   * A refusal.
   *
   * @param line line in the file, 0 for the whole
   * @param column what it is about, or empty
   * @param found what was found
   * @param allowed what may be there
   * @param hint what to do about it
   */
  public LogRefused(int line, String column, String found, String allowed, String hint) {
    super(found);
    this.line = line;
    this.column = column;
    this.allowed = allowed;
    this.hint = hint;
  }

  /** Line in the file, 0 for the whole. */
  public int line() {
    return line;
  }

  /** What it is about. */
  public String column() {
    return column;
  }

  /** What may be there. */
  public String allowed() {
    return allowed;
  }

  /** What to do about it. */
  public String hint() {
    return hint;
  }
}
