package org.broodbench.hive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The C program of the network's step, compiled and run where there is a compiler. */
public final class CStep {
  /**
   * What it printed.
   *
   * @param nsPerStep best CPU time of a step, ns
   * @param state end state
   */
  public record Result(double nsPerStep, double[] state) {}

  private CStep() {}

  /** Compiles and runs; empty where no compiler is found. */
  public static Optional<Result> run(Path folder, int steps, int repeats)
      throws IOException, InterruptedException {
    Path source = Path.of("src/bench/c/network_step.c").toAbsolutePath();
    Path program = folder.resolve("network_step");
    Path data = folder.resolve("network.txt");
    new NetworkStep().write(data);
    try {
      call(
          "gcc",
          "-std=gnu99",
          "-O3",
          "-march=native",
          "-ffp-contract=off",
          source.toString(),
          "-o",
          program.toString(),
          "-lm");
    } catch (IOException noCompiler) {
      return Optional.empty();
    }
    List<String> lines =
        call(program.toString(), data.toString(), "" + steps, "" + repeats).lines().toList();
    double[] state = new double[lines.size() - 1];
    for (int i = 0; i < state.length; i++) {
      state[i] = Double.parseDouble(lines.get(i + 1)); // reads hexadecimal, too
    }
    return Optional.of(new Result(Double.parseDouble(lines.get(0)), state));
  }

  private static String call(String... command) throws IOException, InterruptedException {
    Process p = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text = new String(p.getInputStream().readAllBytes());
    if (p.waitFor() != 0) {
      throw new IllegalStateException(Files.exists(Path.of(command[0])) + " " + text);
    }
    return text;
  }
}
