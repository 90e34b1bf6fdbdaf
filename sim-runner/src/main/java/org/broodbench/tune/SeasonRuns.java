package org.broodbench.tune;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.controller.Settings;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Pieces;

/** Runs of one candidate over one season, by name; what each gives is its scores. */
public final class SeasonRuns implements Pieces {
  private final Settings settings;
  private final List<TuneSpec.Knob> knobs;
  private final Map<String, Season> seasons = new HashMap<>();

  /**
   * @param settings what the knobs are put into
   * @param seasons all that runs may be over
   */
  public SeasonRuns(Settings settings, List<TuneSpec.Knob> knobs, List<Season> seasons) {
    this.settings = settings;
    this.knobs = knobs;
    seasons.forEach(s -> this.seasons.put(s.label(), s));
  }

  /** What the run of a candidate over a season is called. */
  static String name(Candidate candidate, Season season) {
    return candidate.key() + " " + season.label();
  }

  @Override
  public String of(String name) {
    String[] parts = name.split(" ", 2);
    Season season = parts.length == 2 ? seasons.get(parts[1]) : null;
    if (season == null) {
      throw new IllegalArgumentException("no run is called " + name);
    }
    Candidate candidate =
        new Candidate(Arrays.stream(parts[0].split(",")).map(Integer::valueOf).toList());
    RunResult r =
        new Simulation(
                season.scenario(),
                season.forcing(),
                new ReferenceController(candidate.put(settings, knobs)),
                season.pace())
            .run();
    return Scores.of(r, season.scenario().battery().chemistry().leadAcid()).line();
  }
}
