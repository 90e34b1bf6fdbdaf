package org.broodbench.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.firmware.ConformReport;
import org.broodbench.firmware.Conformance;
import org.broodbench.firmware.FirmwareFault;
import org.broodbench.firmware.ProcessTransport;
import org.broodbench.firmware.Script;
import org.broodbench.firmware.Session;
import org.broodbench.firmware.Suites;
import org.broodbench.firmware.Transport;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.VectorReader;
import org.broodbench.output.ConformJson;
import org.broodbench.output.ConformText;
import org.broodbench.output.VectorCsv;
import org.broodbench.output.WholeFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code conform}: firmware against the reference, step by step. */
@Command(
    name = "conform",
    description = {
      "Checks firmware against the reference controller, step by step, and explains the first difference.",
      "Exit code 0: equal; 1: differs, hangs, ends or talks nonsense; 2: cannot be started."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class ConformCommand extends Verb {
  private static final long DEFAULT_TICKS = 250_000;

  @Option(
      names = "--process",
      paramLabel = "CMD",
      description =
          "Firmware as a program that speaks the line protocol (controller-core/PROTOCOL.md).")
  private String process;

  @Option(
      names = "--ticks",
      paramLabel = "N",
      description = "About how many steps of the shipped suites to play.")
  private Long ticks;

  @Option(
      names = "--timeout",
      paramLabel = "SECONDS",
      description = "Longest wait for one answer; 2 when left out.",
      defaultValue = "2")
  private double timeoutS;

  @Option(
      names = "--vectors",
      paramLabel = "FILE",
      description =
          "Play this vector file instead of the shipped suites; may be given more than once.")
  private List<Path> vectors = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for shortest.csv; broodbench-out/conform when left out.")
  private Path out;

  @Option(
      names = "--json",
      description = "Print the result as JSON on standard output and nothing else there.")
  private boolean json;

  ConformCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    List<Problem> problems = new ArrayList<>();
    if (process == null) {
      problems.add(new Problem("--process", 0, 0, "", "nothing to check", "--process CMD", ""));
    }
    if (!(timeoutS >= 0.1 && timeoutS <= 600)) {
      problems.add(
          new Problem("--timeout", 0, 0, "", String.valueOf(timeoutS), "0.1 to 600 seconds", ""));
    }
    if (ticks != null && (ticks < 1 || ticks > 1_000_000_000)) {
      problems.add(new Problem("--ticks", 0, 0, "", String.valueOf(ticks), "1 to 1000000000", ""));
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    List<Script> given = new ArrayList<>();
    for (Path file : vectors) {
      given.add(VectorReader.read(file));
    }
    return overLink(process, opener(), given);
  }

  private Transport.Opener opener() {
    try {
      return ProcessTransport.of(process);
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--process", 0, 0, "", process, "a program and its arguments", e.getMessage())));
    }
  }

  private int overLink(String target, Transport.Opener opener, List<Script> given) {
    ConformReport report;
    try (Session session = Session.open(opener, (long) (timeoutS * 1000), 0)) {
      report = new Conformance(session, target).check(scripts(session, given));
    } catch (FirmwareFault fault) {
      if (fault.kind() == FirmwareFault.Kind.CANNOT_START) {
        console().err().println("Cannot be started: " + target + ": " + fault.getMessage());
        console().err().println("Nothing was run.");
        return Main.BAD_INPUT;
      }
      report = Conformance.failedHello(target, fault);
    }
    String shortest = report.finding() == null ? null : write(report.finding().shortest());
    console()
        .out()
        .print(json ? ConformJson.of(report, shortest) : ConformText.of(report, shortest));
    return report.equal() ? 0 : 1;
  }

  private List<Script> scripts(Session session, List<Script> given) {
    if (!given.isEmpty()) {
      return given;
    }
    long entries = ticks == null ? DEFAULT_TICKS : ticks;
    return session.board().fixed()
        ? Suites.of("own settings", session.settings(), entries)
        : Suites.shipped(entries);
  }

  private String write(Script.Fixed vector) {
    Path folder = out == null ? Path.of("broodbench-out", "conform") : out;
    Path file = folder.resolve("shortest.csv");
    try {
      Files.createDirectories(folder);
      WholeFile.write(file, VectorCsv.bytes(vector));
    } catch (IOException e) {
      console().err().println("Cannot write " + file + ": " + e.getMessage());
      return null;
    }
    return file.toString();
  }
}
