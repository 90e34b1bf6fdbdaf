package org.broodbench.stress;

import java.util.List;
import org.broodbench.rig.Scenario;

/**
 * What a stress study found.
 *
 * @param scenario what was stressed
 * @param weather where its weeks are from, in words
 * @param plan what was tried
 * @param weeks the weeks, hardest first
 * @param rows finished rows, by week, then in the order of the faults, then by heat loss
 * @param planned how many rows there are when it is whole
 * @param assumed what was assumed
 */
public record StressReport(
    Scenario scenario,
    String weather,
    StressPlan plan,
    List<StressWeek> weeks,
    List<StressRow> rows,
    int planned,
    List<String> assumed) {
  /** Whether every row is there. */
  public boolean whole() {
    return rows.size() == planned;
  }

  /** Whether every requirement holds in every row. */
  public boolean met() {
    return rows.stream().allMatch(StressRow::met);
  }
}
