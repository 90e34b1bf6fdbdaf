package org.broodbench.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Outside check values of one area, kept as rows of a table: what is computed, from which inputs,
 * the expected value, its tolerance and its source. {@link #run} computes every row and fails with
 * a list of those that miss.
 */
public final class CheckRows {
  private final String area;

  private CheckRows(String area) {
    this.area = area;
  }

  /** The rows of the resource {@code checks/<area>.csv}. */
  public static CheckRows of(String area) {
    return new CheckRows(area);
  }

  /**
   * One row.
   *
   * @param inputs name to text
   */
  public record Row(
      String id,
      String quantity,
      Map<String, String> inputs,
      double expected,
      double tolerance,
      String source) {
    /** An input that is a number. */
    public double number(String name) {
      return Double.parseDouble(text(name));
    }

    /** An input as it stands. */
    public String text(String name) {
      String value = inputs.get(name);
      if (value == null) {
        throw new IllegalArgumentException(id + " has no input " + name);
      }
      return value;
    }

    /** True where the input is there. */
    public boolean has(String name) {
      return inputs.containsKey(name);
    }
  }

  /** Reads all rows. */
  public List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    try (InputStream in = CheckRows.class.getResourceAsStream("/checks/" + area + ".csv");
        CsvReader<NamedCsvRecord> csv =
            CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (NamedCsvRecord r : csv) {
        Map<String, String> inputs = new HashMap<>();
        for (String part : r.getField("inputs").split(";")) {
          int eq = part.indexOf('=');
          if (eq > 0) {
            inputs.put(part.substring(0, eq).strip(), part.substring(eq + 1).strip());
          }
        }
        rows.add(
            new Row(
                r.getField("id"),
                r.getField("quantity"),
                inputs,
                Double.parseDouble(r.getField("expected")),
                Double.parseDouble(r.getField("tolerance")),
                r.getField("source")));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  /**
   * Computes every row and compares.
   *
   * @param count how many rows there must be, so that a lost row is noticed
   */
  public void run(int count, ToDoubleFunction<Row> compute) {
    List<Row> rows = rows();
    assertEquals(count, rows.size(), "rows of " + area);
    StringBuilder misses = new StringBuilder();
    for (Row row : rows) {
      double got = compute.applyAsDouble(row);
      if (!(Math.abs(got - row.expected()) <= row.tolerance())) {
        misses.append(
            String.format(
                Locale.ROOT,
                "%n%s (%s): got %.10g, expected %.10g within %.3g; %s",
                row.id(),
                row.quantity(),
                got,
                row.expected(),
                row.tolerance(),
                row.source()));
      }
    }
    if (misses.length() > 0) {
      fail("rows of " + area + " that miss:" + misses);
    }
  }
}
