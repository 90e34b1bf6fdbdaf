package org.broodbench.input;

import java.util.List;
import java.util.function.Function;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;

/** A key being declared; every method returns the same draft. */
public final class KeyDraft {
  private final String path;
  private final Kind kind;
  private List<Dimension> dimensions = List.of();
  private Unit shown;
  private List<String> choices = List.of();
  private Bound low;
  private Bound high;
  private Key.Presence presence = Key.Presence.REQUIRED;
  private Function<Values, String> byDefault;
  private String defaultWords = "";
  private String onlyWhen = "";
  private List<String> onlyFor = List.of();
  private String help = "";

  KeyDraft(String path, Kind kind) {
    this.path = path;
    this.kind = kind;
  }

  KeyDraft measured(String unit, List<Dimension> all) {
    dimensions = all;
    shown = Units.get(all.get(0), unit);
    return this;
  }

  KeyDraft among(List<String> words) {
    choices = words;
    return this;
  }

  /** Both ends allowed. */
  public KeyDraft between(String least, String most) {
    return atLeast(least).atMost(most);
  }

  /** Lowest allowed value. */
  public KeyDraft atLeast(String least) {
    low = new Bound(base(least), least, false);
    return this;
  }

  /** Highest allowed value. */
  public KeyDraft atMost(String most) {
    high = new Bound(base(most), most, false);
    return this;
  }

  /** Bound that is itself refused. */
  public KeyDraft above(String least) {
    low = new Bound(base(least), least, true);
    return this;
  }

  /** A fixed default. */
  public KeyDraft byDefault(String text) {
    return byDefault(text, values -> text);
  }

  /**
   * A default that follows other keys.
   *
   * @param words the rule in words, for the key tables
   * @param rule gives the text; it sees the table of the key, and may read keys that do not depend
   *     on this one
   */
  public KeyDraft byDefault(String words, Function<Values, String> rule) {
    presence = Key.Presence.DEFAULTED;
    defaultWords = words;
    byDefault = rule;
    return this;
  }

  /** The key may be left out; the words say what that means. */
  public KeyDraft optional(String words) {
    presence = Key.Presence.OPTIONAL;
    defaultWords = words;
    return this;
  }

  /** The key applies only where a choice in the same table has one of some words. */
  public KeyDraft onlyWhen(String sibling, String... words) {
    onlyWhen = sibling;
    onlyFor = List.of(words);
    return this;
  }

  /** One line of help. */
  public KeyDraft help(String line) {
    help = line;
    return this;
  }

  private double base(String text) {
    if (kind != Kind.QUANTITY) {
      return Double.parseDouble(text);
    }
    try {
      return Quantity.parse(text, dimensions.get(0)).base();
    } catch (QuantityRefused e) {
      throw new IllegalStateException(path + ": " + text + ": " + e.getMessage(), e);
    }
  }

  Key key() {
    if (help.isEmpty()) {
      throw new IllegalStateException("key without help: " + path);
    }
    return new Key(
        path,
        kind,
        dimensions,
        shown,
        choices,
        low,
        high,
        presence,
        byDefault,
        defaultWords,
        onlyWhen,
        onlyFor,
        help);
  }
}
