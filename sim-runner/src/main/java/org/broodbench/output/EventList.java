package org.broodbench.output;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.broodbench.loop.EventRow;
import org.broodbench.loop.HeldHeat;

/**
 * The events of a run for the page. Words are kept once and rows point at them. A rig that switches
 * without pause could fill the page: then the switchings beyond {@link #MOST_SWITCHINGS} are left
 * out, and the page says so.
 */
final class EventList {
  /** Switchings of heater and fan, and heat held off, that the page carries at most; own choice. */
  static final int MOST_SWITCHINGS = 8000;

  private static final Set<String> SWITCHINGS = Set.of("heater", "fan", HeldHeat.WHAT);

  private final List<EventRow> kept = new ArrayList<>();
  private final Map<String, int[]> counts = new LinkedHashMap<>();
  private final int total;

  EventList(List<EventRow> events) {
    total = events.size();
    int switchings = 0;
    for (EventRow e : events) {
      counts.computeIfAbsent(e.what(), w -> new int[1])[0]++;
      boolean switching = SWITCHINGS.contains(e.what());
      if (!switching || switchings++ < MOST_SWITCHINGS) {
        kept.add(e);
      }
    }
  }

  /** How many there were by what changed. */
  Map<String, int[]> counts() {
    return counts;
  }

  /** How many there were. */
  int total() {
    return total;
  }

  /** How many the page does not carry. */
  int leftOut() {
    return total - kept.size();
  }

  /** Words, and rows of second, what, from, to and reason. */
  String json() {
    Map<String, Integer> words = new LinkedHashMap<>();
    StringBuilder rows = new StringBuilder();
    for (EventRow e : kept) {
      rows.append(rows.isEmpty() ? "" : ",").append(Json.number(e.atS()));
      for (String w : List.of(e.what(), e.from(), e.to(), e.reason())) {
        rows.append(',').append(words.computeIfAbsent(w, x -> words.size()));
      }
    }
    StringBuilder out = new StringBuilder("{\"words\":[");
    String comma = "";
    for (String w : words.keySet()) {
      out.append(comma).append(Json.string(w));
      comma = ",";
    }
    return out.append("],\"rows\":[").append(rows).append("]}").toString();
  }
}
