package org.broodbench.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The audit against runs of random rigs: what it calls a stop shows in a run, and rigs without such
 * a stop keep their charge: no load is commanded on below the charge that its shed level stands
 * for, nor loses its supply while commanded on. Disagreements at a coarse pace are looked at again
 * at the scenario's own.
 */
class AuditAgreementTest {
  /** Rows of the table: agrees, disagrees, not reached. */
  private static final class Table {
    final Map<String, int[]> stops = new TreeMap<>();
    final List<String> disagreements = new ArrayList<>();
    int rigs;
    int passes;
    int withoutShownStop;
    int keep;
    int warm;

    void add(long seed, Agreement a) {
      rigs++;
      passes += a.passes ? 1 : 0;
      a.stops.forEach((id, shows) -> stops.computeIfAbsent(id, x -> new int[3])[shows.ordinal()]++);
      if (a.passesShown) {
        withoutShownStop++;
        keep += a.keepsCharge ? 1 : 0;
        warm += a.warmAll ? 1 : 0;
      }
      if (disagrees(a)) {
        disagreements.add("rig " + seed + " " + a.stops + " " + a.detail);
      }
    }

    int sum(Agreement.Shows shows) {
      return stops.values().stream().mapToInt(row -> row[shows.ordinal()]).sum();
    }

    @Override
    public String toString() {
      StringBuilder text = new StringBuilder("| stop | agrees | disagrees | not reached |\n");
      stops.forEach(
          (id, n) -> text.append("| " + id + " | " + n[0] + " | " + n[1] + " | " + n[2] + " |\n"));
      text.append(rigs + " rigs, " + passes + " without any stop; ");
      text.append(withoutShownStop + " without a stop that a run can show: ");
      text.append(keep + " keep their charge, " + warm + " keep their brood warm too\n");
      return text + String.join("\n", disagreements);
    }
  }

  private static boolean disagrees(Agreement a) {
    return a.stops.containsValue(Agreement.Shows.DISAGREES) || a.passesShown && !a.keepsCharge;
  }

  private static Table compare(int count) {
    Table table = new Table();
    for (long seed = 0; table.rigs < count && seed < 2L * count; seed++) {
      Optional<PaperRig> rig = PaperRig.of(RandomSettings.of(seed));
      if (rig.isPresent()) {
        Agreement coarse = Agreement.of(rig.get(), false);
        table.add(seed, disagrees(coarse) ? Agreement.of(rig.get(), true) : coarse);
      }
    }
    assertEquals(count, table.rigs, "most settings make a rig");
    return table;
  }

  @Test
  void aFewRigsRunAsTheirAuditsSay() {
    Table table = compare(20);
    assertEquals(List.of(), table.disagreements, table::toString);
    assertTrue(table.sum(Agreement.Shows.AGREES) >= 6, table::toString);
    assertTrue(table.withoutShownStop >= 4, table::toString);
  }

  @Test
  @Tag("campaign")
  void fiveHundredRigsRunAsTheirAuditsSay() {
    Table table = compare(5 * Integer.getInteger("broodbench.campaign.percent", 100));
    System.out.println(table);
    int agrees = table.sum(Agreement.Shows.AGREES);
    int disagrees = table.sum(Agreement.Shows.DISAGREES);
    assertTrue(agrees >= 0.95 * (agrees + disagrees), table::toString);
    assertTrue(table.keep >= 0.98 * table.withoutShownStop, table::toString);
  }
}
