package org.broodbench.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.broodbench.controller.Settings;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.ClosedLoop;
import org.broodbench.firmware.ConformReport;
import org.broodbench.firmware.Conformance;
import org.broodbench.firmware.FirmwareFault;
import org.broodbench.firmware.LogCheck;
import org.broodbench.firmware.ProcessTransport;
import org.broodbench.firmware.RecordedLog;
import org.broodbench.firmware.Script;
import org.broodbench.firmware.SerialTransport;
import org.broodbench.firmware.Session;
import org.broodbench.firmware.Suites;
import org.broodbench.firmware.Transport;
import org.broodbench.input.BadInput;
import org.broodbench.input.LogReader;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.input.VectorReader;
import org.broodbench.output.ConformJson;
import org.broodbench.output.ConformText;
import org.broodbench.output.Counted;
import org.broodbench.output.VectorCsv;
import org.broodbench.output.WholeFile;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code conform}: firmware against the reference, step by step. */
@Command(
    name = "conform",
    description = {
      "Checks firmware against the reference controller, step by step, and explains the first difference.",
      "With a scenario the firmware also drives its hive, and both verdicts stand side by side.",
      "Exit code 0: equal; 1: differs, hangs, ends or talks nonsense; 2: cannot be started."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class ConformCommand extends Verb {
  private static final long DEFAULT_TICKS = 400_000;
  private static final long SERIAL_TICKS = 3000;
  private static final long SCENARIO_TICKS = 50_000;
  private static final long BOARD_TICKS = 20_000;
  private static final int WEEK_TICK_MILLIS = 60_000;
  private static final int WEEK_DAYS = 7;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "SCENARIO",
      description = "A scenario whose settings are used and whose hive the firmware drives.")
  private Path scenarioFile;

  @Option(
      names = "--process",
      paramLabel = "CMD",
      description =
          "Firmware as a program that speaks the line protocol (controller-core/PROTOCOL.md), with its arguments; quotes keep a word together.")
  private String process;

  @Option(
      names = "--serial",
      paramLabel = "PORT",
      description = "Firmware on a board behind this serial port.")
  private String serial;

  @Option(
      names = "--baud",
      paramLabel = "N",
      description = "Bits a second on the serial port; 115200 when left out.",
      defaultValue = "115200")
  private int baud;

  @Option(
      names = "--pace",
      paramLabel = "MS",
      description = "Pause before every step, for a board that steps by its own clock.",
      defaultValue = "0")
  private int paceMillis;

  @Option(
      names = "--ticks",
      paramLabel = "N",
      description =
          "About how many steps of the suites to play; 400000, over a serial port 3000, with a scenario 50000.")
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
      description = "Play this vector file instead of the suites; may be given more than once.")
  private List<Path> vectors = new ArrayList<>();

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description =
          "Check a recorded log of readings and commands, with the scenario's settings (or the defaults).")
  private Path log;

  @Option(
      names = "--tolerance",
      paramLabel = "SECONDS",
      description = "How long log and reference may disagree; 120 when left out.",
      defaultValue = "120")
  private double toleranceS;

  @Option(
      names = "--settle",
      paramLabel = "MINUTES",
      description =
          "How much of the log's beginning is not judged, where it does not begin at power-up.",
      defaultValue = "0")
  private double settleMin;

  @Option(
      names = "--write-vectors",
      paramLabel = "DIR",
      description = "Write vector files small enough for a board and end.")
  private Path writeVectors;

  @Option(
      names = "--weather",
      paramLabel = "FILE",
      description = "A weather file that replaces the scenario's.")
  private Path weather;

  @Option(names = "--from", paramLabel = "DATE", description = "First day of the scenario, UTC.")
  private String from;

  @Option(names = "--days", paramLabel = "N", description = "Days of the scenario.")
  private Integer days;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set any scenario key by its dotted path; may be given more than once.")
  private List<String> set = new ArrayList<>();

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
    check();
    if (writeVectors != null) {
      return writeVectors();
    }
    if (log != null) {
      return overLog();
    }
    List<Script> given = new ArrayList<>();
    for (Path file : vectors) {
      given.addAll(VectorReader.read(file));
    }
    Scenario scenario = scenarioFile == null ? null : scenario(List.of());
    return serial != null
        ? overLink(serial, SerialTransport.of(serial, baud), given, scenario)
        : overLink(process, program(), given, scenario);
  }

  // ---- options ----

  private void check() {
    List<Problem> problems = new ArrayList<>();
    long modes = Stream.of(process, serial, log, writeVectors).filter(m -> m != null).count();
    if (modes != 1) {
      problems.add(
          problem(
              "conform",
              modes + " of these were given",
              "one of --process, --serial, --log, --write-vectors"));
    }
    range(problems, "--timeout", timeoutS, 0.1, 600);
    range(problems, "--tolerance", toleranceS, 0, 86_400);
    range(problems, "--settle", settleMin, 0, 100_000);
    range(problems, "--pace", paceMillis, 0, 60_000);
    range(problems, "--baud", baud, 300, 4_000_000);
    range(problems, "--ticks", ticks == null ? 1 : ticks, 1, 1_000_000_000);
    range(problems, "--days", days == null ? 1 : days, 1, 3660);
    try {
      if (from != null) {
        LocalDate.parse(from);
      }
    } catch (DateTimeParseException e) {
      problems.add(problem("--from", from, "a date such as 2000-12-24"));
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
  }

  private static Problem problem(String option, String found, String allowed) {
    return new Problem(option, 0, 0, "", found, allowed, "");
  }

  private static void range(
      List<Problem> problems, String option, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      problems.add(problem(option, String.valueOf(value), low + " to " + high));
    }
  }

  private Transport.Opener program() {
    try {
      return ProcessTransport.of(process);
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--process", 0, 0, "", process, "a program and its arguments", e.getMessage())));
    }
  }

  private Scenario scenario(List<String> extra) {
    List<String> settings = new ArrayList<>(extra);
    if (from != null) {
      settings.add("run.from=" + from);
    }
    if (days != null) {
      settings.add("run.days=" + days);
    }
    settings.addAll(set);
    if (scenarioFile != null) {
      return ScenarioReader.read(scenarioFile, settings);
    }
    String demo = RunCommand.DEMO;
    try (InputStream in = ConformCommand.class.getResourceAsStream("/scenarios/" + demo)) {
      if (in == null) {
        throw new IllegalStateException("the demo scenario is missing from the program");
      }
      return ScenarioReader.read(demo, in.readAllBytes(), settings);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ScenarioWeather weatherOf(Scenario scenario) {
    Path folder = scenarioFile == null ? null : scenarioFile.toAbsolutePath().getParent();
    return ScenarioWeather.of(scenario, folder, weather == null ? List.of() : List.of(weather));
  }

  // ---- over a link ----

  private int overLink(
      String target, Transport.Opener opener, List<Script> given, Scenario scenario) {
    ScenarioWeather found = scenario == null ? null : weatherOf(scenario);
    ConformReport report;
    try (Session session = Session.open(opener, (long) (timeoutS * 1000), paceMillis)) {
      Conformance conformance = new Conformance(session, opener, target);
      Settings settings = scenario == null ? null : scenario.controller().settings();
      if (session.board().fixed()) {
        settings = session.settings();
      }
      conformance.play(given.isEmpty() ? suites(settings, !session.board().fixed()) : given);
      if (found != null) {
        Forcing forcing = found.forcing(Plant.planes(found.scenario()));
        conformance.drive(found.scenario(), forcing, settings);
      }
      report = conformance.report();
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

  /** For settings that are given, else over all rigs. */
  private List<Script> suites(Settings settings, boolean keyed) {
    long entries =
        ticks != null
            ? ticks
            : serial != null ? SERIAL_TICKS : settings != null ? SCENARIO_TICKS : DEFAULT_TICKS;
    return settings == null
        ? Suites.shipped(entries)
        : Suites.of("these settings", settings, entries, keyed);
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

  // ---- without a link ----

  private int overLog() {
    RecordedLog recorded = LogReader.read(log);
    Scenario scenario = scenario(List.of());
    List<Channel> missing = recorded.missing(scenario.controller().settings());
    long tolerance = (long) (toleranceS * 1000);
    LogCheck.Result result =
        new LogCheck(
                recorded, scenario.controller().settings(), tolerance, (long) (settleMin * 60_000))
            .check(scenario.controller().tickMillis());
    console()
        .out()
        .print(
            json
                ? ConformJson.ofLog(recorded, result, tolerance, missing)
                : ConformText.ofLog(recorded, result, tolerance, missing));
    return result.equal() ? 0 : 1;
  }

  private int writeVectors() {
    Map<String, List<Script.Fixed>> files = new LinkedHashMap<>();
    for (Script script : Suites.forBoards(ticks == null ? BOARD_TICKS : ticks)) {
      Script.Fixed vector = Suites.asList(script);
      // vectors of one rig share a file, but for the long ones
      String rig = vector.name().replaceAll(", (change|case) .*", "");
      String kind = vector.name().contains(", change ") ? "changes-" : "";
      String name =
          (kind.isEmpty() && rig.equals(vector.name()) ? "wandering-" : kind)
              + rig.replaceAll("\\W+", "-");
      files.computeIfAbsent(name, k -> new ArrayList<>()).add(vector);
    }
    Scenario scenario =
        scenario(List.of("run.days=" + WEEK_DAYS, "controller.tick=" + WEEK_TICK_MILLIS + " ms"));
    ScenarioWeather found = weatherOf(scenario);
    Forcing forcing = found.forcing(Plant.planes(found.scenario()));
    files.put(
        "week",
        List.of(
            ClosedLoop.record(
                found.scenario(), forcing, scenario.controller().settings(), Long.MAX_VALUE)));
    long steps = 0;
    try {
      Files.createDirectories(writeVectors);
      for (Map.Entry<String, List<Script.Fixed>> file : files.entrySet()) {
        WholeFile.write(
            writeVectors.resolve(file.getKey() + ".csv"), VectorCsv.bytes(file.getValue()));
        steps += file.getValue().stream().mapToLong(v -> v.ticks().size()).sum();
      }
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              problem("--write-vectors", String.valueOf(e.getMessage()), "a folder to write to")));
    }
    console()
        .out()
        .println(
            "Written: "
                + Counted.of(files.size(), "vector file")
                + " with "
                + steps
                + " steps to "
                + writeVectors);
    return 0;
  }
}
