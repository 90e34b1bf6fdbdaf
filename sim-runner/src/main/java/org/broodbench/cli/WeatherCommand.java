package org.broodbench.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.weather.ReadOptions;
import org.broodbench.input.weather.TidyCsv;
import org.broodbench.input.weather.WeatherFiles;
import org.broodbench.output.MadeWeatherText;
import org.broodbench.output.WeatherJson;
import org.broodbench.output.WeatherPicture;
import org.broodbench.output.WeatherText;
import org.broodbench.output.WholeFile;
import org.broodbench.sky.MadeYears;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WeatherStatistics;
import org.broodbench.sky.WeatherSummary;
import org.broodbench.sky.WorstWindows;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code weather}: what a weather file holds, and its hardest weeks. */
@Command(
    name = "weather",
    description = "Describes a weather file: format, coverage, gaps, months, hardest windows.",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class WeatherCommand extends Verb {
  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description =
          "A weather file; the format is detected by content. Several are years or subjects of one record.")
  private List<Path> files;

  @Option(
      names = "--days",
      paramLabel = "N",
      defaultValue = "7",
      description = "Length of a window in UTC days; 7 when left out.")
  private int days;

  @Option(
      names = "--count",
      paramLabel = "N",
      defaultValue = "10",
      description = "How many of the hardest windows; 10 when left out.")
  private int count;

  @Option(
      names = "--heat-loss",
      paramLabel = "W/K",
      defaultValue = "0.6",
      description =
          "What makes a window hard: heat that the hive loses for each kelvin; 0.6 when left out.")
  private double heatLossWPerK;

  @Option(
      names = "--warm-to",
      paramLabel = "DEGC",
      defaultValue = "20",
      description =
          "What makes a window hard: outdoor temperature from which no heater runs; 20 when left out.")
  private double warmToC;

  @Option(
      names = "--harvest",
      paramLabel = "KWH",
      defaultValue = "0.065",
      description =
          "What makes a window hard: energy that the panel brings for each kWh/m2 of sun; 0.065 when left out.")
  private double harvestKWh;

  @Option(
      names = "--tidy",
      paramLabel = "FILE",
      description = "Write the whole record as tidy CSV.")
  private Path tidy;

  @Option(
      names = "--windows",
      paramLabel = "DIR",
      description =
          "Write each of the hardest windows as tidy CSV into a folder, with three days before and after where the record has them.")
  private Path windows;

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw the record into an SVG file.")
  private Path picture;

  @Option(
      names = "--make",
      paramLabel = "YEARS",
      description =
          "Make years of weather that resemble the record, and compare their statistics with it.")
  private int makeYears;

  @Option(
      names = "--by",
      paramLabel = "WAY",
      defaultValue = "runs",
      description =
          "How the years of --made are made: runs (runs of days of the record, set together anew; the default) or normals (from its monthly means).")
  private String by;

  @Option(
      names = "--first-year",
      paramLabel = "YEAR",
      defaultValue = "2001",
      description = "First year of --make; 2001 when left out.")
  private int firstYear;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of --make; 1 when left out. Equal seeds give equal weather.")
  private long seed;

  @Option(
      names = "--made",
      paramLabel = "FILE",
      description = "Write what --make made as tidy CSV.")
  private Path made;

  @Option(
      names = "--units",
      paramLabel = "C|F",
      defaultValue = "C",
      description = "Units for people: ${COMPLETION-CANDIDATES}.")
  private RunCommand.Units units;

  @Option(
      names = "--json",
      description = "Print the description as JSON on standard output and nothing else there.")
  private boolean json;

  WeatherCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    List<Problem> problems = new ArrayList<>();
    check(problems, "--days", days, 1, 366);
    check(problems, "--count", count, 1, 1000);
    check(problems, "--heat-loss", heatLossWPerK, 0, 100);
    check(problems, "--warm-to", warmToC, -20, 40);
    check(problems, "--harvest", harvestKWh, 0, 100);
    check(problems, "--first-year", firstYear, 1900, 2199);
    check(problems, "--make", makeYears, 0, 100);
    if (made != null && makeYears == 0) {
      problems.add(refused("--made", made.toString(), "with --make YEARS"));
    }
    MadeYears.Way way =
        Arrays.stream(MadeYears.Way.values())
            .filter(w -> w.word().equals(by))
            .findFirst()
            .orElse(null);
    if (way == null) {
      problems.add(refused("--by", by, "runs, normals"));
    }
    for (Path file : files) {
      if (!Files.isRegularFile(file)) {
        String found = Files.isDirectory(file) ? "a folder" : "no such file";
        problems.add(refused(file.toString(), found, "a weather file"));
      }
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    RigClass rig = new RigClass(heatLossWPerK, warmToC, harvestKWh);
    WeatherSeries series = WeatherFiles.readTogether(files, ReadOptions.DESCRIBE);
    WeatherSummary summary = WeatherSummary.of(series);
    List<WorstWindows.Window> worst =
        86_400 % series.stepS() == 0 ? WorstWindows.find(series, days, count, rig, 0) : List.of();
    List<MadeWeatherText.Column> compared = new ArrayList<>();
    try {
      // what may be refused comes before anything is written
      if (makeYears > 0) {
        compared.add(new MadeWeatherText.Column("record", WeatherStatistics.of(series)));
        for (MadeYears.Way each : MadeYears.Way.values()) {
          make(series, each, each == way, compared);
        }
      }
      write(series, worst);
    } catch (IOException e) {
      throw new BadInput(
          List.of(refused(e.getMessage(), "a place that cannot be written", "a folder that can")));
    }
    if (json) {
      console().out().print(WeatherJson.of(summary, worst, compared));
    } else {
      console().out().print(WeatherText.of(summary, worst, rig, units == RunCommand.Units.F));
      if (!compared.isEmpty()) {
        console().out().print("\n" + MadeWeatherText.of(compared));
      }
    }
    return 0;
  }

  /** A way that the record does not allow is told, and refused only where it was asked for. */
  private void make(
      WeatherSeries record, MadeYears.Way way, boolean asked, List<MadeWeatherText.Column> compared)
      throws IOException {
    try {
      WeatherSeries years = MadeYears.of(record, way, firstYear, makeYears, seed);
      compared.add(new MadeWeatherText.Column(way.word(), WeatherStatistics.of(years)));
      if (asked && made != null) {
        WholeFile.write(made, tidyBytes(years));
      }
    } catch (IllegalArgumentException e) {
      if (asked) {
        String allowed = "a record that years can be made from by " + by;
        throw new BadInput(List.of(refused(files.get(0).toString(), e.getMessage(), allowed)));
      }
      console().err().println("Not made from " + way.word() + ": " + e.getMessage() + ".");
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }

  private static Problem refused(String where, String found, String allowed) {
    return new Problem(where, 0, 0, "", found, allowed, "");
  }

  private static void check(
      List<Problem> problems, String option, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      problems.add(refused(option, plain(value), plain(low) + " to " + plain(high)));
    }
  }

  private void write(WeatherSeries series, List<WorstWindows.Window> worst) throws IOException {
    if (tidy != null) {
      WholeFile.write(tidy, tidyBytes(series));
    }
    if (picture != null) {
      WholeFile.write(picture, WeatherPicture.of(series, worst).getBytes(StandardCharsets.UTF_8));
    }
    if (windows != null) {
      Files.createDirectories(windows);
      int rank = 1;
      for (WorstWindows.Window w : worst) {
        long marginS = 3 * 86_400L;
        WeatherSeries part =
            series.between(w.fromEpochS() - marginS, w.fromEpochS() + w.days() * 86_400L + marginS);
        String day = Instant.ofEpochSecond(w.fromEpochS()).toString().substring(0, 10);
        WholeFile.write(
            windows.resolve(String.format(java.util.Locale.ROOT, "hard-%02d-%s.csv", rank++, day)),
            tidyBytes(part));
      }
    }
  }

  private static byte[] tidyBytes(WeatherSeries series) throws IOException {
    StringWriter text = new StringWriter();
    TidyCsv.write(series, text);
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
