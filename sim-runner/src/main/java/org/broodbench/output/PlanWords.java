package org.broodbench.output;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.card.FieldCard;
import org.broodbench.study.BatteryAlone;

/** The plan of a season in words: what, when, the trigger, and when to go back. */
final class PlanWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private PlanWords() {}

  static List<String> lines(FieldCard.Plan plan) {
    List<String> all = new ArrayList<>();
    all.add(OutlookWords.headline(plan.outlook()));
    all.add(alone(plan.alone()));
    all.add(
        OutlookWords.nextBox(plan.outlook())
            + " Trigger: bees between all frames at dawn on two cold mornings running. Go back: where the brood probe"
            + " falls below its usual range within two nights, take the box away again.");
    if (plan.outlook().weaning() != null) {
      all.add(OutlookWords.weaning(plan.outlook()));
    }
    return all;
  }

  static String alone(BatteryAlone a) {
    int ready = a.readyFrom();
    String mains =
        a.mains() ? "Battery alone (mains taken away): " : "Battery alone (there are no mains): ";
    if (ready < 0) {
      BatteryAlone.Week last = a.weeks().get(a.weeks().size() - 1);
      return mains
          + String.format(
              Locale.ROOT,
              "not within these weeks; even from %s on, the hardest week, from %s, sheds heat for %.0f h.",
              day(last.fromEpochS()),
              day(last.hardestFromEpochS()),
              last.shedHours().get(0));
    }
    BatteryAlone.Week week = a.weeks().get(ready);
    return mains
        + (ready == 0 ? "at once" : "from " + day(week.fromEpochS()) + " on")
        + ", for then the hardest week to come, from "
        + day(week.hardestFromEpochS())
        + ", sheds no heat, begun with a full battery"
        + (week.holdsForAll()
            ? ", whatever the heat loss of the cluster."
            : "; but not where the cluster loses much heat.")
        + " Trigger: battery full on three evenings running."
        + (a.mains()
            ? " Go back: mains on again where the volts at dusk are "
            : " Go back: charge from elsewhere where the volts at dusk are ")
        + (a.limitV() > 0
            ? String.format(Locale.ROOT, "below %.2f V.", a.limitV())
            : "at the level of set-back.");
  }

  private static String day(long epochS) {
    return DAY.format(Instant.ofEpochSecond(epochS));
  }
}
