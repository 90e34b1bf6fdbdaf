package org.broodbench.output;

import java.nio.charset.StandardCharsets;
import org.broodbench.loop.Trace;
import org.broodbench.rig.Scenario;

/** The trace as comma-separated values: {@code time}, then the columns of {@link Trace#COLUMNS}. */
public final class TraceCsv {
  private TraceCsv() {}

  /** All rows. Every field is a stamp or a number, so nothing needs quoting. */
  public static byte[] bytes(Scenario s, Trace trace) {
    StringBuilder out = new StringBuilder(trace.rows() * 150);
    out.append("time");
    for (String column : Trace.COLUMNS) {
      out.append(',').append(column);
    }
    out.append('\n');
    int columns = Trace.COLUMNS.size();
    int[] decimals = new int[columns];
    for (int c = 0; c < columns; c++) {
      String name = Trace.COLUMNS.get(c);
      decimals[c] = name.equals("soc") ? 5 : name.endsWith("_v") ? 4 : 3;
    }
    for (int r = 0; r < trace.rows(); r++) {
      out.append(Stamps.of(s.window().fromEpochS(), (double) r * trace.intervalS()));
      for (int c = 0; c < columns; c++) {
        out.append(',');
        Numbers.append(out, trace.value(c, r), decimals[c]);
      }
      out.append('\n');
    }
    return out.toString().getBytes(StandardCharsets.US_ASCII);
  }
}
