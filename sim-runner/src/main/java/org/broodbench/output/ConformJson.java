package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.ClosedLoop;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.ConformReport;
import org.broodbench.firmware.Difference;
import org.broodbench.firmware.Finding;
import org.broodbench.firmware.LogCheck;
import org.broodbench.firmware.RecordedLog;

/** The result of a check of firmware as JSON, format {@code broodbench-conform/1}. */
public final class ConformJson {
  private ConformJson() {}

  /**
   * The whole text.
   *
   * @param shortestFile where the shortest vector was written, or null
   */
  public static String of(ConformReport r, String shortestFile) {
    return JsonText.object(json -> write(json, r, shortestFile));
  }

  /** The check of a recorded log. */
  public static String ofLog(
      RecordedLog log, LogCheck.Result r, long toleranceMillis, List<Channel> missing) {
    return JsonText.object(
        json -> {
          json.text("format", "broodbench-conform/1").flag("equal", r.equal());
          json.nothing("fault").whole("steps", r.rows());
          LogCheck.Disagreement d = r.finding();
          if (d == null) {
            json.nothing("first_difference");
          } else {
            json.object(
                "first_difference",
                j ->
                    j.whole("step", d.line() - 2L)
                        .whole("time_ms", d.atMillis())
                        .text("rule", d.rule())
                        .text("field", d.field().key())
                        .text("expected", String.valueOf(d.expected()))
                        .text("got", String.valueOf(d.got()))
                        .whole("line", d.line())
                        .whole("lasted_ms", d.lastedMillis()));
          }
          json.nothing("shortest_steps").nothing("shortest_file");
          json.whole("tolerance_ms", toleranceMillis)
              .whole("log_heater_starts", r.starts()[0])
              .whole("reference_heater_starts", r.starts()[1])
              .texts("missing_readings", missing.stream().map(Channel::key).toList())
              .texts("compared", log.fields().stream().map(CommandField::key).toList());
        });
  }

  private static void write(JsonText json, ConformReport r, String shortestFile)
      throws IOException {
    json.text("format", "broodbench-conform/1").flag("equal", r.equal());
    text(json, "fault", r.fault() == null ? null : r.fault().key());
    text(json, "fault_text", r.faultText());
    json.whole("steps", r.steps());
    Finding f = r.finding();
    if (f == null) {
      json.nothing("first_difference").nothing("shortest_steps").nothing("shortest_file");
    } else {
      json.object("first_difference", j -> difference(j, f));
      json.whole("shortest_steps", f.shortest().ticks().size());
      text(json, "shortest_file", shortestFile);
      json.flag("shortest_is_complete", f.complete());
    }
    if (r.heaterFailedOff() == null) {
      json.nothing("heater_failed_off");
    } else {
      json.flag("heater_failed_off", r.heaterFailedOff());
    }
    json.text("target", r.target());
    if (r.board() == null) {
      json.nothing("firmware");
    } else {
      json.object(
          "firmware",
          j ->
              j.text("name", r.board().name())
                  .text("settings", r.board().fixed() ? "fixed" : "open")
                  .text("clock", r.board().ownClock() ? "own" : "host"));
    }
    json.whole("vectors", r.vectors());
    json.object(
        "rules",
        j ->
            j.texts("violated", r.violated())
                .texts("exercised", r.exercised())
                .texts("not_exercised", r.missed()));
    json.texts("not_reported", r.notReported().stream().map(CommandField::key).toList());
    json.whole("lines_sent_again", r.resent()).whole("lines_passed_over", r.chatter());
    if (r.closedLoop() == null) {
      json.nothing("closed_loop");
    } else {
      json.object("closed_loop", j -> closedLoop(j, r.closedLoop()));
    }
  }

  private static void difference(JsonText j, Finding f) throws IOException {
    Difference d = f.difference();
    int i = f.field().ordinal();
    Finding.Row row = f.rows().get(f.rows().size() - 1);
    j.whole("step", d.entry())
        .whole("time_ms", row.atMillis())
        .text("rule", f.rule())
        .text("field", f.field().key())
        .text("expected", String.valueOf(d.expected()[i]))
        .text("got", String.valueOf(d.got()[i]))
        .text("vector", f.vector().name())
        .whole("same_since_step", f.sinceEntry())
        .texts("fields", d.fields().stream().map(CommandField::key).toList());
  }

  private static void closedLoop(JsonText j, ClosedLoop.Result loop) throws IOException {
    List<JsonText.Body> rows = new ArrayList<>();
    for (ClosedLoop.Row row : loop.rows()) {
      rows.add(
          b ->
              b.text("name", row.requirement().kind().key())
                  .number("limit", row.requirement().limit())
                  .number("reference", row.reference())
                  .flag("reference_met", row.referenceMet())
                  .number("firmware", row.firmware())
                  .flag("firmware_met", row.firmwareMet()));
    }
    j.objects("requirements", rows);
    j.whole("reference_heater_starts", loop.reference().heaterCommanded().starts())
        .whole("firmware_heater_starts", loop.firmware().heaterCommanded().starts())
        .number("reference_brood_mean_c", loop.reference().brood().meanC())
        .number("firmware_brood_mean_c", loop.firmware().brood().meanC());
  }

  private static void text(JsonText json, String key, String value) throws IOException {
    if (value == null) {
      json.nothing(key);
    } else {
      json.text(key, value);
    }
  }
}
