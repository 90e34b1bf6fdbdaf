package org.broodbench.firmware;

import java.util.Locale;

/** The firmware does not take part as the protocol asks. */
public final class FirmwareFault extends Exception {
  private static final long serialVersionUID = 1L;

  /** What is wrong. */
  public enum Kind {
    /** It could not be started or opened at all. */
    CANNOT_START,
    /** It does not answer in time. */
    HANG,
    /** It ended, or began anew by itself. */
    CRASH,
    /** It answers, but not what the protocol asks for. */
    NONSENSE;

    /** The word in results. */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final Kind kind;

  FirmwareFault(Kind kind, String text) {
    super(text);
    this.kind = kind;
  }

  /** What is wrong. */
  public Kind kind() {
    return kind;
  }
}
