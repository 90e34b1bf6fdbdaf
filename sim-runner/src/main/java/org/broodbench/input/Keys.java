package org.broodbench.input;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.broodbench.matter.Dimension;

/** The registry of every key of a kind of file: reading, checking and documentation follow it. */
public final class Keys {
  private static final Pattern ROW = Pattern.compile("(?<=\\.)\\d+(?=\\.|$)");

  private final Map<String, Key> keys;
  private final Map<String, Table> tables;

  /**
   * A table, plain or repeated.
   *
   * @param path dotted; {@code *} stands for a row of an outer repeated table
   * @param repeated whether it is written with double brackets
   * @param defaultRows rows assumed when a repeated table is left out
   * @param mostRows most rows
   * @param help one line
   */
  public record Table(String path, boolean repeated, int defaultRows, int mostRows, String help) {}

  private Keys(Map<String, Key> keys, Map<String, Table> tables) {
    this.keys = keys;
    this.tables = tables;
  }

  /** A new, empty registry to be filled. */
  public static Builder builder() {
    return new Builder();
  }

  /** All keys in the order of declaration. */
  public Collection<Key> all() {
    return keys.values();
  }

  /** All declared tables in the order of declaration. */
  public Collection<Table> tables() {
    return tables.values();
  }

  /** The key that a path with row numbers belongs to. */
  public Optional<Key> find(String path) {
    return Optional.ofNullable(keys.get(pattern(path)));
  }

  /** The table that a path with row numbers belongs to. */
  Optional<Table> table(String path) {
    return Optional.ofNullable(tables.get(pattern(path)));
  }

  /** Names that may stand directly in a table: keys and inner tables. */
  Set<String> names(String tablePath) {
    String inner = tablePath.isEmpty() ? "" : pattern(tablePath) + ".";
    Set<String> names = new LinkedHashSet<>();
    for (Collection<String> paths : List.of(keys.keySet(), tables.keySet())) {
      for (String path : paths) {
        if (path.startsWith(inner) && path.length() > inner.length()) {
          String rest = path.substring(inner.length());
          int dot = rest.indexOf('.');
          names.add(dot < 0 ? rest : rest.substring(0, dot));
        }
      }
    }
    return names;
  }

  /** The path with each row number replaced by {@code *}. */
  static String pattern(String path) {
    return ROW.matcher(path).replaceAll("*");
  }

  /** Fills a registry; a wrong declaration is a fault of the program. */
  public static final class Builder {
    private final List<KeyDraft> drafts = new ArrayList<>();
    private final Map<String, Table> tables = new LinkedHashMap<>();

    private Builder() {}

    /** Declares a plain table with its one line of help; its outer tables come with it. */
    public Builder table(String path, String help) {
      return put(new Table(path, false, 0, 0, help));
    }

    /** Declares a repeated table. */
    public Builder rows(String path, int defaultRows, int mostRows, String help) {
      return put(new Table(path, true, defaultRows, mostRows, help));
    }

    private Builder put(Table table) {
      if (tables.put(table.path(), table) != null) {
        throw new IllegalStateException("table declared twice: " + table.path());
      }
      return this;
    }

    /** Declares a quantity, shown in a unit of the first dimension. */
    public KeyDraft quantity(String path, String shownUnit, Dimension... dimensions) {
      return draft(path, Kind.QUANTITY).measured(shownUnit, List.of(dimensions));
    }

    /** Declares a key of a kind without unit or choices. */
    public KeyDraft plain(String path, Kind kind) {
      return draft(path, kind);
    }

    /** Declares a choice of words. */
    public KeyDraft choice(String path, String... words) {
      return draft(path, Kind.CHOICE).among(List.of(words));
    }

    private KeyDraft draft(String path, Kind kind) {
      KeyDraft draft = new KeyDraft(path, kind);
      drafts.add(draft);
      return draft;
    }

    /** Freezes the registry. */
    public Keys build() {
      Map<String, Key> keys = new LinkedHashMap<>();
      for (KeyDraft draft : drafts) {
        Key key = draft.key();
        if (keys.put(key.path(), key) != null) {
          throw new IllegalStateException("key declared twice: " + key.path());
        }
        String table = key.table().replaceAll("\\.\\*$", "");
        if (!table.isEmpty() && !tables.containsKey(table)) {
          throw new IllegalStateException("table not declared: " + table);
        }
      }
      Map<String, Table> withOuter = new LinkedHashMap<>();
      for (Table table : tables.values()) {
        for (int dot = table.path().indexOf('.');
            dot >= 0;
            dot = table.path().indexOf('.', dot + 1)) {
          String outer = table.path().substring(0, dot);
          if (!tables.containsKey(outer) && !outer.endsWith("*")) {
            withOuter.putIfAbsent(outer, new Table(outer, false, 0, 0, ""));
          }
        }
        withOuter.put(table.path(), table);
      }
      return new Keys(keys, withOuter);
    }
  }
}
