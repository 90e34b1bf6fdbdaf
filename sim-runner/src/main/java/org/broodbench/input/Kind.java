package org.broodbench.input;

/** What sort of value a key takes. */
public enum Kind {
  /** A text with a number and a unit. */
  QUANTITY("a number with a unit"),
  /** A whole number. */
  INTEGER("a whole number"),
  /** A number without unit. */
  NUMBER("a number"),
  /** Any text. */
  TEXT("a text"),
  /** One of a few words. */
  CHOICE("a word"),
  /** true or false. */
  BOOLEAN("true or false"),
  /** A calendar day, UTC. */
  DATE("a date: 2027-04-20"),
  /**
   * A point in time: date and time with zone, a day (its UTC midnight), or time since the start.
   */
  MOMENT("a time: 2027-04-20T14:00:00Z, or since the start: \"2 d 14 h\"");

  private final String words;

  Kind(String words) {
    this.words = words;
  }

  /** What may stand there, for messages. */
  public String words() {
    return words;
  }
}
