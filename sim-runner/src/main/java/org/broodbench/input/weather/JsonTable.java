package org.broodbench.input.weather;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A JSON text as single values by dotted path, and as columns: an array of plain values at {@code
 * a.b} is the column {@code a.b}, and the members {@code c} of an array of objects at {@code a.b}
 * are the column {@code a.b.c}. Numbers are kept as numbers; null is missing.
 */
final class JsonTable {
  /** A file of any layout has some dozens; each costs half a kilobyte at least. */
  private static final int MOST_COLUMNS = 1000;

  /** Single values, likewise. */
  private static final int MOST_VALUES = 10_000;

  /** Cells in all columns together: a century of hours with twenty columns. */
  private static final int MOST_CELLS = 20_000_000;

  private final ProblemList problems;
  private int cells;
  private final Map<String, String> values = new HashMap<>();
  private final Map<String, Column> columns = new LinkedHashMap<>();

  private JsonTable(ProblemList problems) {
    this.problems = problems;
  }

  /** Values of one name down the rows. */
  static final class Column {
    private double[] numbers = new double[64];
    private List<String> texts;
    private int n;

    private void add(String text) {
      if (texts == null) {
        texts = new ArrayList<>();
      }
      while (texts.size() < n) {
        texts.add("");
      }
      texts.add(text);
      addNumber(Double.NaN);
    }

    private void addNumber(double value) {
      if (n == numbers.length) {
        numbers = Arrays.copyOf(numbers, n + n / 2);
      }
      numbers[n++] = value;
    }

    int size() {
      return n;
    }
  }

  /** Reads all of it; a mistake in the text is a problem at its line. */
  static JsonTable read(InputStream in, ProblemList problems) throws IOException {
    JsonTable table = new JsonTable(problems);
    try (JsonParser p = new JsonFactory().createParser(in)) {
      if (p.nextToken() != JsonToken.START_OBJECT) {
        throw problems.fatal(1, 1, "", "no object", "a JSON object", "");
      }
      table.object(p, "");
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      int column = e.getLocation() == null ? 0 : e.getLocation().getColumnNr();
      throw problems.fatal(
          Math.max(0, line),
          Math.max(0, column),
          "",
          e.getOriginalMessage(),
          "a whole JSON text",
          "Is the file cut short?");
    }
    return table;
  }

  private void object(JsonParser p, String path) throws IOException {
    while (p.nextToken() != JsonToken.END_OBJECT) {
      String name = path.isEmpty() ? p.currentName() : path + "." + p.currentName();
      value(p, p.nextToken(), name);
    }
  }

  private void value(JsonParser p, JsonToken token, String name) throws IOException {
    switch (token) {
      case START_OBJECT -> object(p, name);
      case START_ARRAY -> array(p, name);
      default -> {
        values.put(name, p.getText());
        bounded(p, values.size(), MOST_VALUES, "single values");
      }
    }
  }

  /** So that no file asks for all memory. */
  private void bounded(JsonParser p, int count, int most, String what) {
    if (count > most) {
      int line = Math.max(0, p.currentLocation().getLineNr());
      throw problems.fatal(
          line, 0, "", "more than " + most + " " + what, "a record of weather", "");
    }
  }

  private void array(JsonParser p, String name) throws IOException {
    for (JsonToken t = p.nextToken(); t != JsonToken.END_ARRAY; t = p.nextToken()) {
      if (t == JsonToken.START_OBJECT) {
        while (p.nextToken() != JsonToken.END_OBJECT) {
          String member = name + "." + p.currentName();
          JsonToken inner = p.nextToken();
          if (inner == JsonToken.START_OBJECT || inner == JsonToken.START_ARRAY) {
            p.skipChildren();
          } else {
            scalar(p, inner, member);
          }
        }
      } else if (t == JsonToken.START_ARRAY) {
        p.skipChildren();
      } else {
        scalar(p, t, name);
      }
    }
  }

  private void scalar(JsonParser p, JsonToken t, String name) throws IOException {
    Column c = columns.computeIfAbsent(name, k -> new Column());
    bounded(p, columns.size(), MOST_COLUMNS, "columns");
    bounded(p, ++cells, MOST_CELLS, "values in columns");
    if (t == JsonToken.VALUE_NUMBER_INT || t == JsonToken.VALUE_NUMBER_FLOAT) {
      c.addNumber(p.getDoubleValue());
    } else if (t == JsonToken.VALUE_NULL) {
      c.addNumber(Double.NaN);
    } else {
      c.add(p.getText());
    }
  }

  /** A single value as text, or empty. */
  String text(String path) {
    return values.getOrDefault(path, "");
  }

  /** A single value as a number, or NaN. */
  double number(String path) {
    try {
      return Double.parseDouble(text(path));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** The columns below a path as a table whose rows are walked by {@link Rows#next}. */
  Rows rows(String path) {
    return new Rows(path + ".");
  }

  /** A cursor over the rows. */
  final class Rows implements Row {
    private final List<String> names = new ArrayList<>();
    private final List<Column> parts = new ArrayList<>();
    private int at = -1;

    private Rows(String prefix) {
      columns.forEach(
          (name, column) -> {
            if (name.startsWith(prefix)) {
              names.add(name.substring(prefix.length()));
              parts.add(column);
            }
          });
    }

    boolean next() {
      at++;
      return !parts.isEmpty() && at < parts.get(0).n;
    }

    /** Number of the row from 1; stands in for the line. */
    int number() {
      return at + 1;
    }

    /** Name of a column that is not as long as the first, or null where all are. */
    String uneven() {
      for (int i = 0; i < parts.size(); i++) {
        if (parts.get(i).n != parts.get(0).n) {
          return names.get(i);
        }
      }
      return null;
    }

    /** Position of the column of this name, or -1. */
    int at(String name) {
      return names.indexOf(name);
    }

    @Override
    public int count() {
      return parts.size();
    }

    @Override
    public int column(int field) {
      return 0;
    }

    @Override
    public boolean isEmpty(int field) {
      return Double.isNaN(number(field)) && text(field).isEmpty();
    }

    @Override
    public String text(int field) {
      List<String> texts = parts.get(field).texts;
      return texts == null || at >= texts.size() ? "" : texts.get(at);
    }

    @Override
    public boolean is(int field, String text) {
      return text(field).equals(text);
    }

    @Override
    public double number(int field) {
      return parts.get(field).numbers[at];
    }
  }
}
