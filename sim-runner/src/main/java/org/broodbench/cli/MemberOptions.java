package org.broodbench.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.members.Members;
import org.broodbench.recipe.Recipe;
import org.broodbench.study.Crew;
import org.broodbench.study.Parallel;
import picocli.CommandLine.Option;

/** Which other machines help with a study. */
final class MemberOptions {
  @Option(
      names = "--members",
      paramLabel = "HOST:PORT",
      split = ",",
      description =
          "Machines that help, each started with 'broodbench lend'; the answer is the same. With --threads 0 this machine leaves all to them. See docs/members.md.")
  private List<String> members = new ArrayList<>();

  @Option(
      names = "--secret",
      paramLabel = "FILE",
      description =
          "File with the secret of the members; the variable BROODBENCH_SECRET when left out.")
  private Path secret;

  /** Whether other machines help. */
  boolean given() {
    return !members.isEmpty();
  }

  /** Fewest threads of this machine. */
  int least() {
    return given() ? 0 : 1;
  }

  /**
   * Who carries out a study.
   *
   * @param threads of this machine
   * @param stop asked between pieces; once true, no further piece begins
   * @throws BadInput where a member cannot be had
   */
  Crew crew(Recipe recipe, int threads, BooleanSupplier stop, Console console) {
    if (!given()) {
      return new Parallel(threads, stop);
    }
    return Members.crew(
        addresses(), SecretFile.read(secret), recipe, threads, stop, console.err()::println);
  }

  /** Refuses addresses and secrets that cannot be used. */
  void check() {
    if (given()) {
      addresses();
      SecretFile.read(secret);
    }
  }

  private List<Members.Address> addresses() {
    needEngine("--members");
    List<Problem> problems = new ArrayList<>();
    List<Members.Address> addresses = new ArrayList<>();
    for (String m : members) {
      Members.Address a = address(m);
      if (a == null || a.port() == 0 || addresses.contains(a)) {
        problems.add(problem("--members", m));
      } else {
        addresses.add(a);
      }
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    return addresses;
  }

  /** A host and a port; null where a text is none. */
  static Members.Address address(String text) {
    int colon = text.lastIndexOf(':');
    String host = colon < 0 ? "" : text.substring(0, colon).replaceAll("^\\[(.*)]$", "$1");
    boolean bare = !host.contains(":") || text.startsWith("[");
    if (!host.matches("[A-Za-z0-9._:%-]+")
        || !bare
        || !text.substring(colon + 1).matches("\\d{1,5}")) {
      return null;
    }
    int port = Integer.parseInt(text.substring(colon + 1));
    return port > 65_535 ? null : new Members.Address(host, port);
  }

  static Problem problem(String option, String found) {
    return new Problem(
        option, 0, 0, "", found, "HOST:PORT, each machine once, such as 192.168.1.20:5701", "");
  }

  /** Refuses where the program lacks the engine. */
  static void needEngine(String option) {
    if (!Members.engineIsHere()) {
      throw new BadInput(
          List.of(
              new Problem(
                  option,
                  0,
                  0,
                  "",
                  "a program without the extra library for several machines",
                  "that library in the folder members of the program",
                  "'mvn -Pmembers -DskipTests package' puts it there; docs/members.md has another way.")));
    }
  }
}
