package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;

/**
 * A difference, explained.
 *
 * @param vector what was played, up to the differing step
 * @param difference the difference at its end
 * @param moment that step as the reference has it
 * @param field the field to name first
 * @param rule the rule of SPEC.md that it is about
 * @param sinceEntry since which entry both had the value that one of them leaves now
 * @param sinceMillis how long before the differing step that was
 * @param rows the steps before, and the differing step last
 * @param shortest the shortest vector found that still shows it
 * @param shortestDifference the difference at the end of that
 * @param complete whether nothing more could be left out of it
 */
public record Finding(
    Script.Fixed vector,
    Difference difference,
    Moment moment,
    CommandField field,
    String rule,
    long sinceEntry,
    long sinceMillis,
    List<Row> rows,
    Script.Fixed shortest,
    Difference shortestDifference,
    boolean complete) {
  private static final int ROWS_BEFORE = 20;

  /**
   * A step and what the reference commanded.
   *
   * @param entry index of the entry
   * @param atMillis time since the first step
   * @param tick its readings
   * @param commands the reference's, by {@link CommandField}
   */
  public record Row(long entry, long atMillis, Tick tick, int[] commands) {}

  /** What the rule says, in a few words. */
  public String ruleWords() {
    return Rules.words(rule);
  }

  static Finding of(
      Script.Fixed vector,
      Difference difference,
      Script.Fixed shortest,
      Difference shortestDifference,
      boolean complete) {
    Reference reference = new Reference(vector.settings());
    CommandField field = RuleFinder.field(difference);
    List<Row> rows = new ArrayList<>();
    int[] before = new int[CommandField.COUNT];
    int[] now = before;
    long at = 0;
    long sinceEntry = -1;
    long sinceAt = 0;
    int last = 0;
    int dt = 0;
    boolean first = true;
    boolean single = true;
    Tick.Kind restart = null;
    for (int i = 0; i < vector.ticks().size(); i++) {
      Tick tick = i == difference.entry() ? difference.tick() : vector.ticks().get(i);
      Commands commands = reference.play(tick);
      if (!tick.isStep()) {
        restart = tick.kind();
        continue;
      }
      dt = first || (restart != null && i == difference.entry()) ? 0 : tick.nowMillis() - last;
      at += first ? 0 : Math.max(0, tick.nowMillis() - last);
      last = tick.nowMillis();
      single = first;
      first = false;
      before = now;
      now = CommandField.values(commands);
      boolean end = i == difference.entry();
      if (!end && (sinceEntry < 0 || now[field.ordinal()] != before[field.ordinal()])) {
        sinceEntry = i;
        sinceAt = at;
      }
      rows.add(new Row(i, at, tick, now));
      if (rows.size() > ROWS_BEFORE + 1) {
        rows.remove(0);
      }
      if (!end) {
        restart = null;
      }
    }
    Moment moment =
        new Moment(vector.settings(), difference.tick(), dt, single, restart, before, now);
    return new Finding(
        vector,
        difference,
        moment,
        field,
        RuleFinder.rule(difference, moment),
        sinceEntry,
        at - sinceAt,
        List.copyOf(rows),
        shortest,
        shortestDifference,
        complete);
  }
}
