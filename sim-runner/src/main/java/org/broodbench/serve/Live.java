package org.broodbench.serve;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.function.BooleanSupplier;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.IllegalSettings;
import org.broodbench.controller.Reason;
import org.broodbench.controller.ShedLevel;
import org.broodbench.input.BadInput;
import org.broodbench.input.KeyOffers;
import org.broodbench.input.Problem;
import org.broodbench.loop.ReasonWords;
import org.broodbench.output.LivePicture;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;

/** What the live page asks, and the answers. */
public final class Live {
  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/dist/";

  /** Kept in memory by their path; there is no other way to a file. */
  private final Map<String, Answer> files = new LinkedHashMap<>();

  /** Lately made, the least used first; a few megabytes each. */
  private final Map<List<Object>, byte[]> pictures = Bench.lately();

  private final Bench bench;
  private final Tabs tabs = new Tabs();

  /** One quick run at a time, so that the newest change has the processor. */
  private final Semaphore quick = new Semaphore(1, true);

  /** One long piece of work at a time. */
  private final Semaphore slow = new Semaphore(1, true);

  private final Studies studies;

  /** For one rig. */
  public Live(Bench bench, Studies studies) {
    this.bench = bench;
    this.studies = studies;
    file("/", Answer.HTML, "page.html");
    file("/live.js", "text/javascript; charset=utf-8", "live.js");
    file("/live.css", "text/css; charset=utf-8", "live.css");
    file("/report.css", "text/css; charset=utf-8", "/org/broodbench/output/report.css");
    file("/uplot.js", "text/javascript; charset=utf-8", UPLOT + "uPlot.iife.min.js");
    file("/uplot.css", "text/css; charset=utf-8", UPLOT + "uPlot.min.css");
  }

  private void file(String path, String type, String resource) {
    try (InputStream in = Live.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program is incomplete: " + resource + " is missing");
      }
      files.put(path, Answer.of(type, in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Answer answer(Question q) {
    if (q.method().equals("GET") || q.method().equals("HEAD")) {
      Answer file = files.get(q.path());
      file = file == null ? studies.report(q.path()) : file;
      return file == null ? Answer.refused(404, "Nothing here.") : file;
    }
    if (!q.method().equals("POST")) {
      return Answer.refused(405, "GET or POST.");
    }
    if (q.tab().isEmpty()) {
      return Answer.refused(400, "Which tab?");
    }
    try {
      return switch (q.path()) {
        case "/api/rig" -> Answer.json(rig(q));
        case "/api/keep" -> {
          tabs.keep(q.tab(), q.body());
          yield Answer.json("{}");
        }
        case "/api/quick" -> run(q, true);
        case "/api/full" -> run(q, false);
        case "/api/remedies" -> remedies(q);
        case "/api/ticks" -> Answer.json(ticks(q));
        case "/api/study" -> Answer.json(studies.state());
        case "/api/study/stop" -> {
          studies.stop();
          yield Answer.json(studies.state());
        }
        case "/api/study/start" -> {
          List<String> lines = q.lines();
          List<String> settings = lines.subList(Math.min(1, lines.size()), lines.size());
          bench.scenario(settings);
          boolean begun = !lines.isEmpty() && studies.start(lines.get(0), bench.source(), settings);
          yield begun
              ? Answer.json(studies.state())
              : Answer.refused(400, "Another study is running, or there is none of that name.");
        }
        case "/api/values" -> Answer.json(Knobs.values(bench.offers(q.lines())));
        case "/api/save" -> {
          bench.scenario(q.lines());
          String text = Handed.scenario(bench.source(), q.lines());
          yield new Answer(
              200,
              "application/toml",
              text.getBytes(StandardCharsets.UTF_8),
              "changed-" + bench.scenario(List.of()).fileName().replaceAll("[^\\w.-]", "_"));
        }
        default -> Answer.refused(404, "Nothing here.");
      };
    } catch (Overtaken e) {
      return Answer.refused(409, "Overtaken by a later change.");
    } catch (BadInput e) {
      return refused(problems(e.problems()));
    } catch (IllegalSettings e) {
      Problem p = new Problem("page", 0, 0, "", e.getMessage(), "", "");
      return refused(problems(List.of(p)));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Answer.refused(503, "The program ends.");
    }
  }

  /** Runs the unchanged rig once, so that the first picture is there when it is asked for. */
  public void warmUp() {
    try {
      picture(List.of(), true);
      picture(List.of(), false);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The picture of a run, made or lately made; null where something told that it is not wanted. */
  private byte[] picture(List<String> settings, boolean quickly) throws InterruptedException {
    return picture(settings, quickly, () -> true);
  }

  private byte[] picture(List<String> settings, boolean quickly, BooleanSupplier wanted)
      throws InterruptedException {
    List<Object> key = List.of(settings, quickly);
    Semaphore turn = quickly ? quick : slow;
    turn.acquire();
    try {
      if (!wanted.getAsBoolean()) {
        return null;
      }
      byte[] known;
      synchronized (pictures) {
        known = pictures.get(key);
      }
      if (known != null) {
        return known;
      }
      Bench.Ran ran = bench.run(settings, quickly, wanted);
      Map<String, double[]> film = new LinkedHashMap<>();
      List<double[]> columns = ran.film().columns();
      for (int i = 0; i < columns.size(); i++) {
        film.put(Film.COLUMNS.get(i), columns.get(i));
      }
      byte[] made =
          LivePicture.bytes(
              ran.outcome(), film, !quickly, Handed.command(bench.source(), settings));
      synchronized (pictures) {
        pictures.put(key, made);
      }
      return made;
    } finally {
      turn.release();
    }
  }

  /** Runs unless a later change of the same tab has overtaken this one. */
  private Answer run(Question q, boolean quickly) throws InterruptedException {
    long number = tabs.begins(q.tab());
    byte[] picture = picture(q.lines(), quickly, () -> tabs.isNewest(q.tab(), number));
    return picture == null
        ? Answer.refused(409, "Overtaken by a later change.")
        : Answer.of(Answer.BYTES, picture);
  }

  /** The first line is the moment, the others are settings. */
  private String ticks(Question q) throws InterruptedException {
    List<String> lines = q.lines();
    long atS =
        lines.isEmpty() || !lines.get(0).matches("\\d{1,8}") ? 0 : Long.parseLong(lines.get(0));
    slow.acquire();
    try {
      return bench.ticks(lines.subList(Math.min(1, lines.size()), lines.size()), atS);
    } finally {
      slow.release();
    }
  }

  private Answer remedies(Question q) throws InterruptedException {
    long number = tabs.begins(q.tab());
    slow.acquire();
    try {
      if (!tabs.isNewest(q.tab(), number)) {
        return Answer.refused(409, "Overtaken by a later change.");
      }
      BooleanSupplier wanted = () -> tabs.isNewest(q.tab(), number);
      return Answer.json(LivePicture.remedies(bench.remedies(q.lines(), wanted)));
    } finally {
      slow.release();
    }
  }

  private String rig(Question q) {
    Scenario s = bench.scenario(List.of());
    List<KeyOffers.Offer> offers = bench.offers(List.of());
    StringBuilder out = new StringBuilder("{\"title\":");
    out.append(LivePicture.string(s.title()))
        .append(",\"file\":")
        .append(LivePicture.string(s.fileName()))
        .append(",\"rows\":")
        .append(bench.eventRows())
        .append(",\"units\":")
        .append(LivePicture.units())
        .append(",\"groups\":")
        .append(Knobs.groups(offers))
        .append(",\"keys\":")
        .append(Knobs.offers(offers))
        .append(",\"alarmBits\":")
        .append(Film.ALARM_BITS);
    words(out, "reasons", Reason.LAST + 1, ReasonWords::of);
    words(out, "alarms", Alarm.COUNT, Alarm::name);
    words(out, "sheds", ShedLevel.STANDBY + 1, ShedLevel::name);
    out.append(",\"faults\":[");
    String comma = "";
    for (FaultKind kind : FaultKind.values()) {
      if (kind.appliesTo(s)) {
        out.append(comma)
            .append("[")
            .append(LivePicture.string(kind.key()))
            .append(",")
            .append(kind.canEnd())
            .append("]");
        comma = ",";
      }
    }
    return out.append("],\"page\":")
        .append(LivePicture.string(tabs.page(q.tab())))
        .append('}')
        .toString();
  }

  private static void words(
      StringBuilder out, String name, int count, java.util.function.IntFunction<String> word) {
    out.append(",\"").append(name).append("\":[");
    for (int i = 0; i < count; i++) {
      out.append(i == 0 ? "" : ",").append(LivePicture.string(word.apply(i)));
    }
    out.append(']');
  }

  /** A good answer to a bad question: browsers write any other status on their console. */
  private static Answer refused(String problems) {
    return Answer.of("application/problem+json", problems.getBytes(StandardCharsets.UTF_8));
  }

  private static String problems(List<Problem> problems) {
    StringBuilder out = new StringBuilder("{\"problems\":[");
    String comma = "";
    for (Problem p : problems) {
      out.append(comma)
          .append("{\"key\":")
          .append(LivePicture.string(p.key()))
          .append(",\"found\":")
          .append(LivePicture.string(p.found()))
          .append(",\"allowed\":")
          .append(LivePicture.string(p.allowed()))
          .append(",\"hint\":")
          .append(LivePicture.string(p.hint()))
          .append('}');
      comma = ",";
    }
    return out.append("]}").toString();
  }
}
