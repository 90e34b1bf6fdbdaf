package org.broodbench.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.broodbench.loop.Lengths;
import org.broodbench.rig.Requirement;
import org.broodbench.study.Remedy;
import org.broodbench.study.RemedySearch;

/** What came of the search for single changes, in sentences. */
final class RemedyWords {
  /** So many effects are told of one remedy. */
  private static final int TOLD = 4;

  private RemedyWords() {}

  /** What the whole search found, in one or two sentences. */
  static String winner(RemedySearch search) {
    String tried =
        search.tried() == 1 ? "one single change was" : search.tried() + " single changes were";
    if (search.helpful().isEmpty()) {
      return Markup.capital(tried)
          + " simulated, and none helps noticeably: this rig needs more than one change at once,"
          + " or other requirements.";
    }
    Remedy best = search.helpful().get(0);
    String start = Markup.capital(tried) + " simulated. ";
    return start
        + switch (best.reach()) {
          case EVERY_COLONY ->
              "The first below is the best: with it every requirement is met, whatever the colony.";
          case TRIED_COLONY, TRIED_COLONY_ONLY_LOOKED_AT ->
              "The first below is the best: with it every requirement is met for the colony that it"
                  + " was tried with, but not for every colony.";
          case NONE ->
              "None mends everything by itself; the first below helps most. Two or more together may"
                  + " do: try them with --set.";
        };
  }

  /** With which colony and how finely the changes were tried. */
  static String how(RemedySearch search) {
    String colony =
        switch (search.lossName()) {
          case "low" -> "a colony that loses little heat";
          case "high" -> "a colony that loses much heat";
          default -> "the scenario's own colony";
        };
    return "Tried with "
        + colony
        + " (factor "
        + Quantity.plain(search.lossFactor(), 2)
        + "), the controller stepped every "
        + Lengths.of(search.tickMillis() / 1000.0)
        + (search.tickMillis() > 1000
            ? ", with and without the change; run the one you choose in full."
            : ", with and without the change.");
  }

  /** For whom a remedy mends everything; empty where it does not. */
  static String reach(Remedy r) {
    return switch (r.reach()) {
      case EVERY_COLONY -> "everything met, whatever the colony";
      case TRIED_COLONY -> "everything met for this colony, not for every one";
      case TRIED_COLONY_ONLY_LOOKED_AT -> "everything met for this colony; others not looked at";
      case NONE -> "";
    };
  }

  /** The effects worth telling: what was or is missed, then what moved most. */
  static List<Remedy.Effect> told(Remedy r) {
    List<Remedy.Effect> told = new ArrayList<>();
    for (Remedy.Effect e : r.effects()) {
      boolean battery = e.requirement().kind() == Requirement.Kind.LOWEST_SOC;
      if (!e.metBefore() || !e.metAfter() || battery) {
        told.add(e);
      }
    }
    told.sort(Comparator.comparingInt(e -> !e.metBefore() ? 0 : !e.metAfter() ? 1 : 2));
    return told.subList(0, Math.min(TOLD, told.size()));
  }

  /** The options that make it. */
  static String options(Remedy r) {
    return r.change().settings().stream().map(RemedyWords::option).collect(Collectors.joining(" "));
  }

  private static String option(String setting) {
    int equals = setting.indexOf('=');
    String value = setting.substring(equals + 1);
    return "--set "
        + setting.substring(0, equals + 1)
        + (value.matches("[\\w.]+") ? value : '"' + value + '"');
  }

  /** An effect as plain text: "brood comb in its band 88.1 to 97.3 % of hours". */
  static String effect(Remedy.Effect e, Markup m) {
    Requirement.Kind kind = e.requirement().kind();
    String before = RequirementWords.value(kind, e.before(), m);
    String after = RequirementWords.value(kind, e.after(), m);
    int unit = after.indexOf(' ');
    if (unit > 0 && !after.contains("<") && before.endsWith(after.substring(unit))) {
      before = before.substring(0, before.length() - after.length() + unit);
    }
    return RequirementWords.brief(kind)
        + " "
        + before
        + " → "
        + after
        + (e.metAfter() ? "" : e.metBefore() ? " (now missed)" : " (still missed)");
  }
}
