package org.broodbench.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.TuneSpec;
import org.broodbench.tune.Aim;
import org.broodbench.tune.Judged;
import org.broodbench.tune.TuneReport;

/** The best trade-offs of a search for settings as tidy comma-separated values. */
public final class TuneCsv {
  private TuneCsv() {}

  /** The present settings, then the front, in UTF-8. */
  public static byte[] bytes(TuneReport r) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      List<String> head = new ArrayList<>(List.of("what"));
      r.spec().knobs().forEach(k -> head.add(k.resultName()));
      for (Aim aim : Aim.values()) {
        head.add(aim.key());
      }
      csv.writeRecord(head);
      csv.writeRecord(row("now", r, r.now()));
      for (Judged x : r.front()) {
        csv.writeRecord(row(x == r.recommended() ? "recommended" : "front", r, x));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> row(String what, TuneReport r, Judged x) {
    List<String> row = new ArrayList<>(List.of(what));
    for (int i = 0; i < r.spec().knobs().size(); i++) {
      TuneSpec.Knob k = r.spec().knobs().get(i);
      row.add(Double.toString(k.shown(x.candidate().counts().get(i))));
    }
    for (Aim aim : Aim.values()) {
      row.add(Double.toString(x.scores().get(aim)));
    }
    return row;
  }
}
