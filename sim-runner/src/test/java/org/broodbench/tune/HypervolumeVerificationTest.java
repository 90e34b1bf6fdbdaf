package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class HypervolumeVerificationTest {
  @Test
  void boxesAndTheirUnionsAreMeasuredRight() {
    double[] best = {0, 0, 0};
    double[] worst = {1, 1, 1};
    // three standard errors of 200 000 points are 0.0034 at most
    assertEquals(0.5, Hypervolume.share(List.of(new double[] {0.5, 0, 0}), best, worst), 0.0034);
    double union =
        Hypervolume.share(List.of(new double[] {0.5, 0, 0}, new double[] {0, 0.5, 0}), best, worst);
    assertEquals(0.75, union, 0.0034);
    assertEquals(0, Hypervolume.share(List.of(new double[] {1, 1, 1}), best, worst));
  }

  /**
   * How much of a reference search's front a search has: {@code broodbench.front} and {@code
   * broodbench.reference} name two tune.csv files. At least 95 % is asked.
   */
  @Test
  @Tag("campaign")
  void aSearchComesCloseToAReferenceSearch() throws IOException {
    String front = System.getProperty("broodbench.front");
    String reference = System.getProperty("broodbench.reference");
    assumeTrue(front != null && reference != null, "no two fronts named");
    double share = against(read(Path.of(front)), read(Path.of(reference)));
    assertTrue(share >= 0.95, "share " + share);
  }

  /** Aims that do not differ at all are left out; the box reaches from the best to the worst. */
  private static double against(List<double[]> front, List<double[]> reference) {
    List<double[]> both = new ArrayList<>(front);
    both.addAll(reference);
    int n = both.get(0).length;
    double[] best = new double[n];
    double[] worst = new double[n];
    for (int k = 0; k < n; k++) {
      int aim = k;
      best[k] = both.stream().mapToDouble(x -> x[aim]).min().orElseThrow();
      double high = both.stream().mapToDouble(x -> x[aim]).max().orElseThrow();
      worst[k] = high + 0.1 * (high - best[k]);
    }
    return Hypervolume.share(front, best, worst) / Hypervolume.share(reference, best, worst);
  }

  private static List<double[]> read(Path file) throws IOException {
    List<double[]> scores = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      String[] cells = line.split(",");
      if (cells[0].equals("front") || cells[0].equals("recommended")) {
        scores.add(
            Arrays.stream(cells, cells.length - Aim.values().length, cells.length)
                .mapToDouble(Double::parseDouble)
                .toArray());
      }
    }
    return scores;
  }
}
