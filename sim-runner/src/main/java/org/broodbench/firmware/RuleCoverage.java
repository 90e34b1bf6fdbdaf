package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Settings;

/** Which rules the steps that were played exercised, judged by what the reference commanded. */
final class RuleCoverage implements Play.Watcher {
  private final long[] seen = new long[Rules.count()];
  private Settings settings;
  private int[] before;
  private int lastMillis;
  private Tick.Kind restart;

  /** A vector begins. */
  void begin(Settings newSettings) {
    settings = newSettings;
    before = null;
    restart = null;
  }

  @Override
  public void played(Tick tick, Commands expected) {
    if (!tick.isStep()) {
      restart = tick.kind();
      return;
    }
    boolean first = before == null;
    int[] now = CommandField.values(expected);
    int dt = first || restart != null ? 0 : tick.nowMillis() - lastMillis;
    Moment moment =
        new Moment(
            settings, tick, dt, first, restart, first ? new int[CommandField.COUNT] : before, now);
    for (int i = 0; i < seen.length; i++) {
      // a thousand times is often enough, and looking costs more than stepping
      if (seen[i] < 1000 && Rules.seen(i, moment)) {
        seen[i]++;
      }
    }
    before = now;
    lastMillis = tick.nowMillis();
    restart = null;
  }

  /** Rules seen at work. */
  List<String> exercised() {
    return list(true);
  }

  /** Rules that could be seen and were not. */
  List<String> missed() {
    return list(false);
  }

  private List<String> list(boolean wanted) {
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < seen.length; i++) {
      if (seen[i] > 0 == wanted) {
        ids.add(Rules.id(i));
      }
    }
    return ids;
  }
}
