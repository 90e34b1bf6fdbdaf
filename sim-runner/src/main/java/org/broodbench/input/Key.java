package org.broodbench.input;

import java.util.List;
import java.util.function.Function;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;

/**
 * Everything that is known about one key of a scenario, declared once.
 *
 * @param path dotted; {@code *} stands for the row number of a repeated table
 * @param kind sort of value
 * @param dimensions dimensions that a quantity may have, the usual one first; empty for other kinds
 * @param shown unit in which defaults and bounds are shown; null for other kinds
 * @param choices allowed words of a choice; empty for other kinds
 * @param low lowest value, or null
 * @param high highest value, or null
 * @param presence what happens when the key is left out
 * @param byDefault rule that gives the default as a text, or null
 * @param defaultWords the default in words, for the key tables
 * @param onlyWhen sibling key whose word decides whether this key applies, or empty
 * @param onlyFor words of that sibling for which it applies
 * @param help one line
 */
public record Key(
    String path,
    Kind kind,
    List<Dimension> dimensions,
    Unit shown,
    List<String> choices,
    Bound low,
    Bound high,
    Presence presence,
    Function<Values, String> byDefault,
    String defaultWords,
    String onlyWhen,
    List<String> onlyFor,
    String help) {

  /** What happens when a key is left out. */
  public enum Presence {
    /** It is a mistake. */
    REQUIRED,
    /** A default is taken and listed as assumed. */
    DEFAULTED,
    /** Nothing; the key means something only when it is there. */
    OPTIONAL
  }

  /** Last part of the path. */
  public String name() {
    return path.substring(path.lastIndexOf('.') + 1);
  }

  /** Path of the table that holds the key; empty for a key at the top. */
  public String table() {
    int dot = path.lastIndexOf('.');
    return dot < 0 ? "" : path.substring(0, dot);
  }

  /** The range in words: "5 degC to 38 degC"; empty where there is none. */
  public String range() {
    if (low != null && high != null) {
      return (low.open() ? "above " : "")
          + low.text()
          + (high.open() ? " to below " : " to ")
          + high.text();
    }
    if (low != null) {
      return (low.open() ? "above " : "at least ") + low.text();
    }
    if (high != null) {
      return (high.open() ? "below " : "at most ") + high.text();
    }
    return "";
  }
}
