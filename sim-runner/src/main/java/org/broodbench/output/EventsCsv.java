package org.broodbench.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.broodbench.loop.EventRow;
import org.broodbench.rig.Scenario;

/** The events of a run as comma-separated values: time, what, from, to, reason. */
public final class EventsCsv {
  private EventsCsv() {}

  /** All rows, in UTF-8. */
  public static byte[] bytes(Scenario s, List<EventRow> events) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      csv.writeRecord("time", "what", "from", "to", "reason");
      for (EventRow e : events) {
        csv.writeRecord(
            Stamps.of(s.window().fromEpochS(), e.atS()), e.what(), e.from(), e.to(), e.reason());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
