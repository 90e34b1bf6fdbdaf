package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.calibrate.Calibration;

/** What a log says as JSON, format {@code broodbench-calibrate/1}. */
public final class CalibrationJson {
  private CalibrationJson() {}

  /** The whole text. */
  public static String of(Calibration c) {
    return JsonText.object(json -> write(json, c));
  }

  private static void write(JsonText json, Calibration c) throws IOException {
    json.text("format", "broodbench-calibrate/1")
        .object(
            "scenario",
            j ->
                j.text("title", c.scenario().title())
                    .text("file", c.scenario().fileName())
                    .text("sha256", c.scenario().sha256()))
        .object(
            "log",
            j ->
                j.text("file", c.logName())
                    .whole("rows", c.log().rows())
                    .whole("step_s", c.log().stepS())
                    .text("from", Stamps.of(c.log().fromS(), 0))
                    .text("to", Stamps.of(c.log().toS(), 0)))
        .object(
            "relay",
            j -> j.text("known_by", c.relay().how()).number("confidence", c.relay().confidence()))
        .flag("fits", c.fits())
        .texts("misfit", c.misfit());
    List<JsonText.Body> parameters = new ArrayList<>();
    for (int i = 0; i < c.parameters().size(); i++) {
      Calibration.Parameter p = c.parameters().get(i);
      parameters.add(j -> parameter(j, p));
    }
    json.objects("parameters", parameters);
    List<JsonText.Body> pairs = new ArrayList<>();
    for (int a = 0; a < c.correlation().length; a++) {
      for (int b = 0; b < a; b++) {
        double r = c.correlation()[a][b];
        String one = c.parameters().get(a).knob().key();
        String other = c.parameters().get(b).knob().key();
        pairs.add(j -> j.text("a", one).text("b", other).number("correlation", r));
      }
    }
    json.objects("correlations", pairs);
    json.number("held_out_rmse_k", c.heldOut().rmseK());
    json.text("held_out_from", Stamps.of(c.heldOut().fromS(), 0));
    channels(json, c);
    List<JsonText.Body> trend = new ArrayList<>();
    for (Calibration.Trend t : c.trend()) {
      trend.add(
          j ->
              j.text("name", t.knob().key())
                  .number("first_half", t.first())
                  .number("second_half", t.second())
                  .number(t.knob().isOffset() ? "difference" : "ratio", t.change())
                  .number("low", t.low())
                  .number("high", t.high())
                  .number("explains", t.explains()));
    }
    json.objects("trend", trend);
    json.objects("alarms", findings(c.alarms())).objects("advice", advice(c.advice()));
    if (c.conform() == null) {
      json.nothing("decisions");
    } else {
      json.object(
          "decisions",
          j ->
              j.whole("rows", c.conform().rows())
                  .whole("starts_logged", c.conform().startsLogged())
                  .whole("starts_reference", c.conform().startsReference())
                  .number("differed_h", c.conform().differedH())
                  .texts("differences", c.conform().differences())
                  .text("not_judged", c.conform().rests()));
    }
    List<JsonText.Body> readings = new ArrayList<>();
    for (Calibration.Reading r : c.readings()) {
      readings.add(
          j ->
              j.text("time", Stamps.of(r.epochS(), 0))
                  .text("name", r.column().key())
                  .number("value", r.value())
                  .number("low", r.low())
                  .number("high", r.high())
                  .text("mark", r.mark()));
    }
    json.objects("readings", readings);
    json.texts("notes", c.notes());
  }

  private static void parameter(JsonText j, Calibration.Parameter p) throws IOException {
    j.text("name", p.knob().key())
        .number("value", p.value())
        .number("low", p.low())
        .number("high", p.high())
        .text("unit", p.knob().unit())
        .flag("told_by_log", p.told())
        .number("before", p.before())
        .text("scenario_key", p.knob().scenarioKey())
        .number("prior_deviations", p.z())
        .number("left_of_prior", p.sigma());
    if (!p.want().isEmpty()) {
      j.text("to_tell_it", p.want());
    }
  }

  private static void channels(JsonText json, Calibration c) throws IOException {
    List<JsonText.Body> channels = new ArrayList<>();
    for (int i = 0; i < c.channels().size(); i++) {
      Calibration.Channel x = c.channels().get(i);
      double heldOut = c.heldOut().rmse()[i];
      channels.add(
          j ->
              j.text("name", x.column().key())
                  .number("rms", x.rms())
                  .number("held_out_rms", heldOut)
                  .number("scatter", x.sigma())
                  .number("deviations_last_bins", x.tauBins())
                  .number("autocorrelation", x.lagOne()));
    }
    json.objects("channels", channels);
  }

  private static List<JsonText.Body> advice(List<Calibration.Advised> all) {
    List<JsonText.Body> out = new ArrayList<>();
    for (Calibration.Advised a : all) {
      out.add(
          j ->
              j.text("name", a.name())
                  .text("text", a.text())
                  .object("heater_wh_day", range(a.heaterWhDay()))
                  .object("warm_points", range(a.bandPoints()))
                  .object("lowest_charge_points", range(a.chargePoints())));
    }
    return out;
  }

  private static JsonText.Body range(Calibration.Range r) {
    return j -> j.number("best", r.best()).number("low", r.low()).number("high", r.high());
  }

  private static List<JsonText.Body> findings(List<Calibration.Finding> all) {
    List<JsonText.Body> out = new ArrayList<>();
    for (Calibration.Finding f : all) {
      out.add(j -> j.text("name", f.name()).text("text", f.text()).text("why", f.why()));
    }
    return out;
  }
}
