package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Reason;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.ClosedLoop;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.ConformReport;
import org.broodbench.firmware.Difference;
import org.broodbench.firmware.Finding;
import org.broodbench.firmware.LogCheck;
import org.broodbench.firmware.RecordedLog;
import org.broodbench.firmware.Script;
import org.broodbench.firmware.Tick;
import org.broodbench.rig.Requirement;

/** The result of a check of firmware in words. */
public final class ConformText {
  private ConformText() {}

  /** The whole text. */
  public static String of(ConformReport r, String shortestFile) {
    StringBuilder t = new StringBuilder();
    t.append(verdict(r)).append('\n');
    if (r.fault() != null) {
      fault(t, r);
    }
    if (r.finding() != null) {
      finding(t, r.finding(), shortestFile);
    }
    if (r.closedLoop() != null) {
      closedLoop(t, r.closedLoop());
    }
    if (r.board() != null) {
      statistics(t, r);
    }
    return t.toString();
  }

  /** The check of a recorded log in words. */
  public static String ofLog(
      RecordedLog log, LogCheck.Result r, long toleranceMillis, List<Channel> missing) {
    StringBuilder t = new StringBuilder();
    LogCheck.Disagreement d = r.finding();
    t.append(d == null ? "EQUAL: " : "NOT EQUAL: ").append(log.file());
    t.append(d == null ? " agrees with the reference in each of " : " disagrees after ");
    t.append(grouped(r.rows())).append(" rows; switches may differ by up to ");
    t.append(time(toleranceMillis)).append(".\n");
    t.append("  Compared: ");
    t.append(String.join(" ", log.fields().stream().map(CommandField::key).toList())).append('\n');
    if (!missing.isEmpty()) {
      t.append(
          "  The settings expect readings that the log lacks, which may explain a difference: ");
      t.append(String.join(" ", missing.stream().map(Channel::key).toList())).append('\n');
    }
    t.append("  Heater starts: ").append(r.starts()[0]).append(" in the log, ");
    t.append(r.starts()[1]).append(" with the reference.\n");
    if (d != null) {
      t.append("\nFrom line ").append(d.line()).append(", ").append(time(d.atMillis()));
      t.append(" after the first row, for ")
          .append(time(d.lastedMillis()))
          .append(" at least:\n  ");
      t.append(d.field().key()).append(": expected ").append(d.field().words(d.expected()));
      t.append(", the log has ").append(d.field().words(d.got())).append(".\n");
      t.append("  Rule ").append(d.rule()).append(" of SPEC.md: ").append(d.ruleWords());
      t.append(". The reference's reason for the heater: ").append(Reason.name(d.reason()));
      t.append(".\n");
    }
    return t.toString();
  }

  private static String verdict(ConformReport r) {
    String who = r.board() == null ? r.target() : r.board().name() + " (" + r.target() + ")";
    if (r.equal()) {
      return "EQUAL: "
          + who
          + " gives the commands of the reference in each of "
          + grouped(r.steps())
          + " steps.";
    }
    if (r.finding() == null) {
      return "NOT EQUAL: "
          + who
          + " "
          + doing(r)
          + " after "
          + grouped(r.steps())
          + " equal steps.";
    }
    return "NOT EQUAL: " + who + " differs from the reference.";
  }

  private static String doing(ConformReport r) {
    return switch (r.fault()) {
      case HANG -> "stops answering";
      case CRASH -> "ends";
      case NONSENSE -> "does not speak the protocol";
      case CANNOT_START -> "cannot be started";
    };
  }

  private static void fault(StringBuilder t, ConformReport r) {
    t.append("  Fault: ").append(r.fault().key()).append(": ").append(r.faultText()).append('\n');
    if (r.heaterFailedOff() != null) {
      t.append(
          r.heaterFailedOff()
              ? "  Heat failed off: the heater was off, or was seen to go off within three ticks.\n"
              : "  Heat did NOT fail off: the heater was on in the last answer, and nothing told"
                  + " within three ticks that its output had opened.\n");
    }
  }

  private static void finding(StringBuilder t, Finding f, String shortestFile) {
    Difference d = f.difference();
    Finding.Row row = f.rows().get(f.rows().size() - 1);
    int i = f.field().ordinal();
    t.append("\nFirst difference: step ").append(d.entry()).append(" of vector '");
    t.append(f.vector().name())
        .append("', ")
        .append(time(row.atMillis()))
        .append(" after its start.\n");
    t.append("  ").append(f.field().key()).append(": expected ");
    t.append(f.field().words(d.expected()[i])).append(", got ");
    t.append(f.field().words(d.got()[i])).append(".\n");
    t.append("  Rule ")
        .append(f.rule())
        .append(" of SPEC.md: ")
        .append(f.ruleWords())
        .append(".\n");
    if (f.sinceEntry() >= 0) {
      t.append("  Both had ").append(f.field().key()).append(' ');
      t.append(f.field().words(f.moment().before()[i]));
      t.append(" since step ").append(f.sinceEntry()).append(", ");
      t.append(time(f.sinceMillis())).append(" before.\n");
    }
    reasons(t, d);
    others(t, f);
    table(
        t,
        f,
        "Up to twenty steps before and, last, the one that differs; raw readings (hundredths of a degree, mV, mA, mW, per mille), outputs as the reference has them:",
        f.rows());
    shortest(t, f, shortestFile);
  }

  private static void reasons(StringBuilder t, Difference d) {
    int why = CommandField.HEATER_REASON.ordinal();
    boolean said = d.reported()[why];
    t.append("  The reference gives as reason for the heater: ");
    t.append(Reason.name(d.expected()[why]));
    if (said) {
      t.append("; the firmware: ").append(CommandField.HEATER_REASON.words(d.got()[why]));
    }
    t.append(".\n");
  }

  private static void others(StringBuilder t, Finding f) {
    List<CommandField> fields = new ArrayList<>(f.difference().fields());
    fields.remove(f.field());
    if (fields.isEmpty()) {
      return;
    }
    t.append("  In the same step also differ:");
    for (CommandField field : fields) {
      t.append("\n    ").append(field.key()).append(": expected ");
      t.append(field.words(f.difference().expected()[field.ordinal()])).append(", got ");
      t.append(field.words(f.difference().got()[field.ordinal()]));
    }
    t.append('\n');
  }

  private static void table(StringBuilder t, Finding f, String title, List<Finding.Row> rows) {
    List<String[]> lines = new ArrayList<>();
    List<Channel> shown = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      if (channel.fitted(f.vector().settings())) {
        shown.add(channel);
      }
    }
    List<String> head = new ArrayList<>(List.of("step", "at"));
    for (Channel channel : shown) {
      head.add(channel.name().toLowerCase(Locale.ROOT));
    }
    head.addAll(List.of("switches", "heater", "reason", "fan", "level", "set point"));
    lines.add(head.toArray(String[]::new));
    for (Finding.Row row : rows) {
      List<String> cells =
          new ArrayList<>(List.of(String.valueOf(row.entry()), time(row.atMillis())));
      for (Channel channel : shown) {
        cells.add(sample(row.tick(), channel.ordinal()));
      }
      cells.add(switches(row.tick().switches()));
      cells.add(words(row, CommandField.HEATER));
      cells.add(words(row, CommandField.HEATER_REASON));
      cells.add(words(row, CommandField.FAN));
      cells.add(words(row, CommandField.SHED_LEVEL));
      cells.add(words(row, CommandField.WORKING_SET_POINT_CENTI_C));
      lines.add(cells.toArray(String[]::new));
    }
    t.append('\n').append(title).append('\n');
    align(t, lines);
  }

  private static String words(Finding.Row row, CommandField field) {
    return field.words(row.commands()[field.ordinal()]);
  }

  private static String sample(Tick tick, int channel) {
    if (!tick.valid(channel)) {
      return "-";
    }
    String value = String.valueOf(tick.value(channel));
    return tick.ageMillis(channel) == 0 ? value : value + "@" + tick.ageMillis(channel);
  }

  private static String switches(int bits) {
    String[] names = {"full", "shore", "button", "test"};
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < names.length; i++) {
      if ((bits >> i & 1) != 0) {
        text.append(text.length() == 0 ? "" : "+").append(names[i]);
      }
    }
    return text.length() == 0 ? "." : text.toString();
  }

  private static void align(StringBuilder t, List<String[]> lines) {
    int[] width = new int[lines.get(0).length];
    for (String[] line : lines) {
      for (int c = 0; c < width.length; c++) {
        width[c] = Math.max(width[c], line[c].length());
      }
    }
    for (String[] line : lines) {
      StringBuilder row = new StringBuilder(" ");
      for (int c = 0; c < width.length; c++) {
        row.append(' ').append(line[c]).append(" ".repeat(width[c] - line[c].length()));
      }
      t.append(row.toString().stripTrailing()).append('\n');
    }
  }

  private static void shortest(StringBuilder t, Finding f, String shortestFile) {
    Script.Fixed shortest = f.shortest();
    int count = shortest.ticks().size();
    t.append("\nShortest sequence found that still shows it: ").append(Counted.of(count, "step"));
    t.append(f.complete() ? ".\n" : " (the search ended before everything was tried).\n");
    if (shortestFile != null) {
      t.append("  Written: ").append(shortestFile);
      t.append("; play it again with --vectors ").append(shortestFile).append('\n');
    }
  }

  private static void closedLoop(StringBuilder t, ClosedLoop.Result loop) {
    t.append("\nThe hive of the scenario, driven by the reference and by the firmware:\n");
    List<String[]> lines = new ArrayList<>();
    lines.add(new String[] {"requirement", "limit", "reference", "", "firmware", ""});
    for (ClosedLoop.Row row : loop.rows()) {
      Requirement.Kind kind = row.requirement().kind();
      lines.add(
          new String[] {
            kind.key(),
            (kind.atLeast() ? "at least " : "at most ")
                + rounded(row.requirement().limit())
                + " "
                + kind.unit(),
            rounded(row.reference()),
            row.referenceMet() ? "met" : "missed",
            rounded(row.firmware()),
            row.firmwareMet() ? "met" : "missed"
          });
    }
    lines.add(
        new String[] {
          "heater starts",
          "",
          String.valueOf(loop.reference().heaterCommanded().starts()),
          "",
          String.valueOf(loop.firmware().heaterCommanded().starts()),
          ""
        });
    lines.add(
        new String[] {
          "mean of the brood, degC",
          "",
          rounded(loop.reference().brood().meanC()),
          "",
          rounded(loop.firmware().brood().meanC()),
          ""
        });
    align(t, lines);
    if (loop.fault() != null) {
      t.append("  From the fault on the outputs were held ");
      t.append(Boolean.TRUE.equals(loop.heaterFailedOff()) ? "off.\n" : "as they were last.\n");
    }
  }

  private static String rounded(double value) {
    return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%.2f", value);
  }

  private static void statistics(StringBuilder t, ConformReport r) {
    int all = r.exercised().size() + r.missed().size();
    t.append("\n").append(grouped(r.steps())).append(" steps compared in ");
    t.append(Counted.of(r.vectors(), "whole vector")).append(". Rules seen at work: ");
    t.append(r.exercised().size()).append(" of ").append(all).append(".\n");
    if (!r.missed().isEmpty()) {
      t.append("  Not seen at work: ").append(String.join(" ", r.missed())).append('\n');
    }
    if (!r.violated().isEmpty()) {
      t.append("  Violated: ").append(String.join(" ", r.violated())).append('\n');
    }
    if (!r.notReported().isEmpty()) {
      t.append("  Not compared, for the firmware does not report it: ");
      t.append(String.join(" ", r.notReported().stream().map(CommandField::key).toList()));
      t.append('\n');
    }
    if (r.resent() > 0 || r.chatter() > 0) {
      t.append("  Lines sent again: ").append(r.resent()).append("; lines passed over: ");
      t.append(r.chatter()).append('\n');
    }
  }

  private static String grouped(long value) {
    return String.format(Locale.ROOT, "%,d", value);
  }

  /** Days, hours, minutes, seconds; what is nothing is left out. */
  static String time(long millis) {
    long seconds = millis / 1000;
    StringBuilder text = new StringBuilder();
    long[] sizes = {86_400, 3600, 60};
    String[] names = {" d ", " h ", " min "};
    for (int i = 0; i < sizes.length; i++) {
      if (seconds >= sizes[i] || text.length() > 0) {
        text.append(seconds / sizes[i]).append(names[i]);
        seconds %= sizes[i];
      }
    }
    long rest = millis % 1000;
    text.append(seconds);
    if (rest != 0) {
      text.append(String.format(Locale.ROOT, ".%03d", rest));
    }
    return text.append(" s").toString();
  }
}
