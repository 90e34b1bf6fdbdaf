package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Compares a recorded log with what the reference does on its readings. Between two rows the
 * readings are held and the reference is stepped on. A field differs when log and reference
 * disagree without a break for longer than the tolerance: a log is coarse, and switches fall
 * between its rows.
 *
 * <p>A comb may stand at a threshold for hours, and what the controller read between two rows is
 * not in the log. With a leeway the question is whether some readings that near to the logged ones
 * lead to the logged switches of the heater: the reference reads the brood colder by the leeway
 * where the log has the heater on, and warmer where it has it off. Then the log is judged to its
 * end.
 */
public final class LogCheck {
  /**
   * What was found.
   *
   * @param rows rows judged
   * @param starts heater starts in the log and with the reference, over the rows judged
   * @param finding the first field that differed for too long, or null
   * @param differedMillis time in all disagreements that were too long, where judged to the end
   * @param apartMillis time in all disagreements, the short ones too, where judged to the end
   */
  public record Result(
      long rows, int[] starts, Disagreement finding, long differedMillis, long apartMillis) {
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

  /** How long the reference lives before a log that is judged with leeway, ms; own choice. */
  private static final long LIVES_MILLIS = 6 * 3_600_000L;

  private final RecordedLog log;
  private final Settings settings;
  private final long toleranceMillis;
  private final long settleMillis;
  private final int leewayCentiK;
  private final Disagreement[] open = new Disagreement[CommandField.COUNT];
  private final long[] lastedMillis = new long[CommandField.COUNT];
  private long differedMillis;
  private long apartMillis;

  /** Without a leeway. */
  public LogCheck(RecordedLog log, Settings settings, long toleranceMillis, long settleMillis) {
    this(log, settings, toleranceMillis, settleMillis, 0);
  }

  /**
   * @param toleranceMillis how long log and reference may disagree
   * @param settleMillis how much of the log's beginning is not judged
   * @param leewayCentiK how far a brood reading may be off the logged one; 0 for not at all, and
   *     then the first disagreement ends the check
   */
  public LogCheck(
      RecordedLog log,
      Settings settings,
      long toleranceMillis,
      long settleMillis,
      int leewayCentiK) {
    this.log = log;
    this.settings = settings;
    this.toleranceMillis = toleranceMillis;
    this.settleMillis = settleMillis;
    this.leewayCentiK = leewayCentiK;
  }

  /**
   * Plays the log.
   *
   * @param stepMillis step of the reference between two rows
   */
  public Result check(int stepMillis) {
    Result high = play(stepMillis, true);
    if (leewayCentiK == 0 || high.equal()) {
      return high;
    }
    Result low = play(stepMillis, false);
    return low.apartMillis() < high.apartMillis() ? low : high;
  }

  private Result play(int stepMillis, boolean charged) {
    Arrays.fill(open, null);
    Arrays.fill(lastedMillis, 0);
    int[] starts = new int[2];
    differedMillis = 0;
    apartMillis = 0;
    Reference reference = new Reference(settings);
    int[] before = new int[CommandField.COUNT];
    int[] logged = new int[CommandField.COUNT];
    long judged = 0;
    if (leewayCentiK > 0) {
      live(reference, stepMillis, charged);
    }
    RecordedLog.Row last = null;
    Tick held = null;
    Disagreement first = null;
    int heater = CommandField.HEATER.ordinal();
    for (RecordedLog.Row row : log.rows()) {
      if (last != null) {
        for (long at = last.atMillis() + stepMillis; at < row.atMillis(); at += stepMillis) {
          reference.play(held.at((int) at));
        }
      }
      boolean on = row.commands()[heater] == 1;
      held = leant(row.tick(), on, reference.commands().heater);
      Commands commands = reference.play(held.at((int) row.atMillis()));
      int[] now = CommandField.values(commands);
      if (row.atMillis() >= settleMillis) {
        judged++;
        starts[0] += on && logged[heater] == 0 ? 1 : 0;
        starts[1] += now[heater] == 1 && before[heater] == 0 ? 1 : 0;
        Disagreement found = judge(row, now, before, last == null);
        first = first == null ? found : first;
        if (first != null && leewayCentiK == 0) {
          long lasted = lastedMillis[first.field().ordinal()];
          return new Result(judged, starts, first, lasted, lasted);
        }
      }
      before = now;
      logged = row.commands();
      last = row;
    }
    for (CommandField field : log.fields()) {
      close(field.ordinal());
    }
    return new Result(judged, starts, first, differedMillis, apartMillis);
  }

  /**
   * The log does not begin at power-up, and what the controller remembers is not in it: the
   * reference is let live through hours at the first readings, brood at the set point, so that it
   * begins at its target, and with the log's highest or lowest volts: on the best or the worst
   * level that it can be on.
   */
  private void live(Reference reference, int stepMillis, boolean charged) {
    if (log.rows().isEmpty()) {
      return;
    }
    Tick first = log.rows().get(0).tick();
    Tick end = first;
    int battery = Channel.BATTERY.ordinal();
    for (RecordedLog.Row row : log.rows()) {
      int over = row.tick().value(battery) - end.value(battery);
      end = row.tick().valid(battery) && (charged ? over > 0 : over < 0) ? row.tick() : end;
    }
    Tick warm = first.with(Channel.BATTERY, end);
    int setPoint = settings.get(Setting.HEAT_SET_POINT_CENTI_C);
    for (Channel brood : new Channel[] {Channel.BROOD_A, Channel.BROOD_B}) {
      warm = warm.shifted(brood, setPoint - first.value(brood.ordinal()));
    }
    for (long at = -LIVES_MILLIS; at < 0; at += stepMillis) {
      reference.play(warm.at((int) at));
    }
  }

  /**
   * The readings of a row, the brood as far towards the logged state as the leeway allows, the
   * volts so that the reference, which corrects them for its own heater (rules B1 and B2), comes to
   * what is right for the logged one.
   */
  private Tick leant(Tick tick, boolean loggedOn, boolean referenceOn) {
    if (leewayCentiK == 0) {
      return tick;
    }
    int by = loggedOn ? -leewayCentiK : leewayCentiK;
    Tick leant = tick.shifted(Channel.BROOD_A, by).shifted(Channel.BROOD_B, by);
    if (loggedOn == referenceOn || tick.valid(Channel.BATTERY_CURRENT.ordinal())) {
      return leant;
    }
    int sagMilliV =
        settings.get(Setting.HEATER_RATED_MILLI_A) * settings.get(Setting.BATTERY_MILLI_OHM) / 1000;
    return leant.shifted(Channel.BATTERY, loggedOn ? sagMilliV : -sagMilliV);
  }

  private void close(int field) {
    apartMillis += lastedMillis[field];
    differedMillis += lastedMillis[field] > toleranceMillis ? lastedMillis[field] : 0;
    lastedMillis[field] = 0;
    open[field] = null;
  }

  private Disagreement judge(RecordedLog.Row row, int[] now, int[] before, boolean first) {
    Disagreement found = null;
    for (CommandField field : log.fields()) {
      int i = field.ordinal();
      if (row.commands()[i] == now[i]) {
        close(i);
        continue;
      }
      if (open[i] == null) {
        open[i] = begins(row, field, now, before, first);
      }
      Disagreement d = open[i];
      lastedMillis[i] = row.atMillis() - d.atMillis();
      if (lastedMillis[i] > toleranceMillis && found == null) {
        found =
            new Disagreement(
                d.line(),
                d.atMillis(),
                lastedMillis[i],
                d.field(),
                d.rule(),
                d.expected(),
                d.got(),
                d.reason());
      }
    }
    return found;
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
