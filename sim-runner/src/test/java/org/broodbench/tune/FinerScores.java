package org.broodbench.tune;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.input.Tuning;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Parallel;

/** The trade-offs of a search on the demo, run again on its seasons with a tick of 10 s. */
final class FinerScores {
  private static final Path DEMO = Path.of("..", "scenarios", "late-split.toml");
  private static final List<String> FINER = List.of("tune.tick=10 s");

  private FinerScores() {}

  /**
   * Scores over all seasons, a row a trade-off.
   *
   * @param front a tune.csv with the knobs of the demo
   */
  static List<double[]> of(Path front) throws IOException {
    byte[] bytes = Files.readAllBytes(DEMO);
    Scenario s = ScenarioReader.read("late-split.toml", bytes, FINER);
    TuneSpec spec = Tuning.spec(s, bytes, FINER);
    List<Season> seasons =
        Studies.seasons(ScenarioWeather.of(s, null, List.of()), spec, 0, spec.seasons());
    SeasonRuns runs = new SeasonRuns(s.controller().settings(), spec.knobs(), seasons);
    List<Candidate> candidates = candidates(front, spec.knobs());
    List<String> names = new ArrayList<>();
    for (Candidate c : candidates) {
      seasons.forEach(season -> names.add(SeasonRuns.name(c, season)));
    }
    Map<String, Scores> found = new LinkedHashMap<>();
    new Parallel(Runtime.getRuntime().availableProcessors(), () -> false)
        .run(names, runs, (piece, line) -> found.put(names.get(piece), Scores.of(line)));
    List<double[]> rows = new ArrayList<>();
    for (Candidate c : candidates) {
      Scores over =
          Scores.over(seasons.stream().map(x -> found.get(SeasonRuns.name(c, x))).toList());
      rows.add(Arrays.stream(Aim.values()).mapToDouble(over::get).toArray());
    }
    return rows;
  }

  private static List<Candidate> candidates(Path front, List<TuneSpec.Knob> knobs)
      throws IOException {
    List<Candidate> candidates = new ArrayList<>();
    for (String line : Files.readAllLines(front)) {
      String[] cells = line.split(",");
      if (cells[0].equals("front") || cells[0].equals("recommended")) {
        List<Integer> counts = new ArrayList<>();
        for (int i = 0; i < knobs.size(); i++) {
          double shown = Double.parseDouble(cells[1 + i]);
          counts.add((int) Math.rint(shown * knobs.get(i).perUnit()));
        }
        candidates.add(new Candidate(counts));
      }
    }
    return candidates;
  }
}
