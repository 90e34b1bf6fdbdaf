package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Settings;

/**
 * Compares a recorded log with what the reference does on its readings. Between two rows the
 * readings are held and the reference is stepped on. A field differs when log and reference
 * disagree without a break for longer than the tolerance: a log is coarse, and switches fall
 * between its rows.
 */
public final class LogCheck {
  /**
   * What was found.
   *
   * @param rows rows judged
   * @param starts heater starts in the log and with the reference, over the rows judged
   * @param finding the first field that differed for too long, or null
   */
  public record Result(long rows, int[] starts, Disagreement finding) {
    /** No field differed for longer than the tolerance. */
    public boolean equal() {
      return finding == null;
    }
  }

  /**
   * A disagreement.
   *
   * @param line line of the log where it begins
   * @param atMillis time since the first row
   * @param lastedMillis how long it had lasted when it became too long
   * @param field what differs
   * @param rule the rule of SPEC.md that it is about
   * @param expected of the reference
   * @param got in the log
   * @param reason the reference's reason for the heater
   */
  public record Disagreement(
      int line,
      long atMillis,
      long lastedMillis,
      CommandField field,
      String rule,
      int expected,
      int got,
      int reason) {
    /** What the rule says, in a few words. */
    public String ruleWords() {
      return Rules.words(rule);
    }
  }

  private final RecordedLog log;
  private final Settings settings;
  private final long toleranceMillis;
  private final long settleMillis;
  private final Disagreement[] open = new Disagreement[CommandField.COUNT];
  private final int[] starts = new int[2];

  /**
   * @param toleranceMillis how long log and reference may disagree
   * @param settleMillis how much of the log's beginning is not judged
   */
  public LogCheck(RecordedLog log, Settings settings, long toleranceMillis, long settleMillis) {
    this.log = log;
    this.settings = settings;
    this.toleranceMillis = toleranceMillis;
    this.settleMillis = settleMillis;
  }

  /**
   * Plays the log.
   *
   * @param stepMillis step of the reference between two rows
   */
  public Result check(int stepMillis) {
    Reference reference = new Reference(settings);
    int[] before = new int[CommandField.COUNT];
    int[] logged = new int[CommandField.COUNT];
    long judged = 0;
    RecordedLog.Row last = null;
    for (RecordedLog.Row row : log.rows()) {
      if (last != null) {
        for (long at = last.atMillis() + stepMillis; at < row.atMillis(); at += stepMillis) {
          reference.play(last.tick().at((int) at));
        }
      }
      Commands commands = reference.play(row.tick().at((int) row.atMillis()));
      int[] now = CommandField.values(commands);
      if (row.atMillis() >= settleMillis) {
        judged++;
        int heater = CommandField.HEATER.ordinal();
        starts[0] += row.commands()[heater] == 1 && logged[heater] == 0 ? 1 : 0;
        starts[1] += now[heater] == 1 && before[heater] == 0 ? 1 : 0;
        Disagreement found = judge(row, now, before, last == null);
        if (found != null) {
          return new Result(judged, starts, found);
        }
      }
      before = now;
      logged = row.commands();
      last = row;
    }
    return new Result(judged, starts, null);
  }

  private Disagreement judge(RecordedLog.Row row, int[] now, int[] before, boolean first) {
    for (CommandField field : log.fields()) {
      int i = field.ordinal();
      if (row.commands()[i] == now[i]) {
        open[i] = null;
        continue;
      }
      if (open[i] == null) {
        open[i] = begins(row, field, now, before, first);
      }
      long lasted = row.atMillis() - open[i].atMillis();
      if (lasted > toleranceMillis) {
        Disagreement d = open[i];
        return new Disagreement(
            d.line(), d.atMillis(), lasted, d.field(), d.rule(), d.expected(), d.got(), d.reason());
      }
    }
    return null;
  }

  private Disagreement begins(
      RecordedLog.Row row, CommandField field, int[] now, int[] before, boolean first) {
    int[] got = now.clone();
    boolean[] reported = new boolean[CommandField.COUNT];
    List<CommandField> fields = new ArrayList<>(log.fields());
    for (CommandField f : fields) {
      got[f.ordinal()] = row.commands()[f.ordinal()];
      reported[f.ordinal()] = true;
    }
    Difference difference = new Difference(row.line(), row.tick(), now, got, reported);
    Moment moment = new Moment(settings, row.tick(), 0, first, null, before, now);
    return new Disagreement(
        row.line(),
        row.atMillis(),
        0,
        field,
        RuleFinder.rule(difference, moment),
        now[field.ordinal()],
        got[field.ordinal()],
        now[CommandField.HEATER_REASON.ordinal()]);
  }
}
