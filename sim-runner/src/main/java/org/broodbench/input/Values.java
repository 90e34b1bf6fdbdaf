package org.broodbench.input;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The values of a scenario by dotted path: given ones and defaults, each knowing which it is and
 * where it stands. A view of one row of a repeated table takes paths within that row.
 */
public final class Values {
  /**
   * Asked for a value that had a problem of its own. Whoever depends on it cannot be judged and is
   * passed over.
   */
  static final class Unsound extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unsound(String path) {
      super(path, null, false, false);
    }
  }

  private record Given(Object value, String text, Spot spot) {}

  /** What all views of one scenario share. */
  private static final class Store {
    final Keys keys;
    final Map<String, Given> given = new LinkedHashMap<>();
    final Map<String, Given> defaults = new HashMap<>();
    final Set<String> unsound = new HashSet<>();
    final Set<String> beingResolved = new HashSet<>();
    final Map<String, Integer> rows = new LinkedHashMap<>();
    final Map<String, Spot> tables = new HashMap<>();

    Store(Keys keys) {
      this.keys = keys;
    }
  }

  private final Store store;
  private final String prefix;

  Values(Keys keys) {
    this(new Store(keys), "");
  }

  private Values(Store store, String prefix) {
    this.store = store;
    this.prefix = prefix;
  }

  void put(String path, Object value, String text, Spot spot) {
    store.given.put(path, new Given(value, text, spot));
    store.unsound.remove(path);
  }

  void markUnsound(String path) {
    store.given.remove(path);
    store.unsound.add(path);
  }

  void setRows(String table, int count) {
    store.rows.put(table, count);
  }

  void setTable(String table, Spot spot) {
    store.tables.put(table, spot);
  }

  /** The view of the whole scenario. */
  public Values root() {
    return new Values(store, "");
  }

  /** Path of this view: empty for the whole, "event.2." for a row. */
  public String prefix() {
    return prefix;
  }

  /** Views of the rows of a repeated table of this view. */
  public List<Values> rows(String table) {
    List<Values> views = new ArrayList<>();
    for (int i = 0; i < rowCount(table); i++) {
      views.add(new Values(store, prefix + table + "." + i + "."));
    }
    return views;
  }

  /** The number of rows of a repeated table, default rows included. */
  public int rowCount(String table) {
    Integer count = store.rows.get(prefix + table);
    return count != null
        ? count
        : store.keys.table(prefix + table).map(Keys.Table::defaultRows).orElse(0);
  }

  Values row(String rowPath) {
    return new Values(store, rowPath + ".");
  }

  private Given get(String key) {
    String path = prefix + key;
    Given value = store.given.get(path);
    if (value != null) {
      return value;
    }
    if (store.unsound.contains(path)) {
      throw new Unsound(path);
    }
    value = store.defaults.get(path);
    return value != null ? value : resolveDefault(path);
  }

  private Given resolveDefault(String path) {
    Key key =
        store
            .keys
            .find(path)
            .orElseThrow(() -> new IllegalArgumentException("undeclared key " + path));
    if (key.presence() == Key.Presence.REQUIRED) {
      throw new Unsound(path);
    }
    if (key.presence() == Key.Presence.OPTIONAL) {
      return null;
    }
    if (!store.beingResolved.add(path)) {
      throw new IllegalStateException("the default of " + path + " depends on itself");
    }
    try {
      String table = path.substring(0, path.length() - key.name().length());
      // a plain table inside the root sees the whole scenario, a row sees itself
      boolean row = key.path().contains("*");
      String text = key.byDefault().apply(row ? new Values(store, table) : root());
      Given value = new Given(ValueReader.readText(key, text), text, new Spot("default", 0, 0));
      store.defaults.put(path, value);
      return value;
    } catch (ValueReader.Refused e) {
      throw new IllegalStateException("the default of " + path + " is out of bounds", e);
    } finally {
      store.beingResolved.remove(path);
    }
  }

  private <T> T as(String key, Class<T> type) {
    Given value = get(key);
    if (value == null || !type.isInstance(value.value())) {
      throw new IllegalArgumentException(
          prefix + key + " is no " + type.getSimpleName() + " or was left out");
    }
    return type.cast(value.value());
  }

  /** Whether there is a value, given or by default. */
  public boolean has(String key) {
    return get(key) != null;
  }

  /** Whether the value was left at its default. */
  public boolean isAssumed(String key) {
    return has(key) && !store.given.containsKey(prefix + key);
  }

  /** Whether the value came from the command line. */
  public boolean isFromOption(String key) {
    Given value = store.given.get(prefix + key);
    return value != null && value.spot().file().equals(Spot.OPTION);
  }

  /** A quantity in its base unit, or a bare number. */
  public double number(String key) {
    Given value = get(key);
    if (value != null && value.value() instanceof Quantity quantity) {
      return quantity.base();
    }
    return as(key, Number.class).doubleValue();
  }

  /** A quantity with its dimension, for keys that take more than one. */
  public Quantity quantity(String key) {
    return as(key, Quantity.class);
  }

  /** A whole number. */
  public long integer(String key) {
    return as(key, Long.class);
  }

  /** A text or the word of a choice. */
  public String text(String key) {
    return as(key, String.class);
  }

  /** True or false. */
  public boolean flag(String key) {
    return as(key, Boolean.class);
  }

  /** A calendar day. */
  public LocalDate date(String key) {
    return as(key, LocalDate.class);
  }

  /** Seconds from a start to a moment that was given as a time or as a duration since the start. */
  public double secondsSince(String key, long startEpochS) {
    Given value = get(key);
    if (value != null && value.value() instanceof Quantity since) {
      return since.base();
    }
    return as(key, OffsetDateTime.class).toEpochSecond() - startEpochS;
  }

  /** The value as written: "33 degC". */
  public String shown(String key) {
    Given value = get(key);
    return value == null ? "nothing" : value.text();
  }

  /** Where the value stands; a default stands where its table begins, or nowhere. */
  public Spot spot(String key) {
    Given value = store.given.get(prefix + key);
    return value != null ? value.spot() : tableSpot(prefix + key);
  }

  /** Where the table of a path begins, or line 0. */
  Spot tableSpot(String path) {
    int dot = path.lastIndexOf('.');
    Spot spot = dot < 0 ? null : store.tables.get(path.substring(0, dot));
    return spot != null ? spot : store.tables.getOrDefault("", new Spot("", 0, 0));
  }

  /** "line 9", "--set" or "default": where a value comes from, for messages about two keys. */
  public String whence(String key) {
    Given value = get(key);
    return value == null ? "not given" : value.spot().words();
  }

  /** Every path that the declared keys have in this scenario, with row numbers. */
  List<String> paths() {
    List<String> paths = new ArrayList<>();
    for (Key key : store.keys.all()) {
      expand(key.path(), paths);
    }
    return paths;
  }

  private void expand(String path, List<String> out) {
    int star = path.indexOf(".*");
    if (star < 0) {
      out.add(path);
      return;
    }
    String table = path.substring(0, star);
    int count = root().rowCount(table);
    for (int i = 0; i < count; i++) {
      expand(table + "." + i + path.substring(star + 2), out);
    }
  }

  /** Whether a key applies, judged by the choice beside it. */
  boolean applies(Key key, String path) {
    if (key.onlyWhen().isEmpty()) {
      return true;
    }
    String sibling = path.substring(0, path.length() - key.name().length()) + key.onlyWhen();
    return key.onlyFor().contains(root().text(sibling));
  }

  /** What was left at its default, in the order of declaration: "battery.chemistry = agm". */
  public List<String> assumed() {
    List<String> lines = new ArrayList<>();
    for (String path : paths()) {
      Key key = store.keys.find(path).orElseThrow();
      Values root = root();
      if (root.applies(key, path) && root.isAssumed(path)) {
        lines.add(path + " = " + root.shown(path));
      }
    }
    return lines;
  }
}
