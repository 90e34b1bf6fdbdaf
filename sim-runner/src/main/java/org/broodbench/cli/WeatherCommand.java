package org.broodbench.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.weather.ReadOptions;
import org.broodbench.input.weather.TidyCsv;
import org.broodbench.input.weather.WeatherFiles;
import org.broodbench.output.WeatherJson;
import org.broodbench.output.WeatherPicture;
import org.broodbench.output.WeatherText;
import org.broodbench.output.WholeFile;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.WeatherSeries;
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
      index = "0",
      paramLabel = "FILE",
      description = "A weather file; the format is detected by content.")
  private Path file;

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
    check("--days", days, 1, 366);
    check("--count", count, 1, 1000);
    if (!Files.isRegularFile(file)) {
      throw new BadInput(
          List.of(
              new Problem(
                  file.toString(),
                  0,
                  0,
                  "",
                  Files.isDirectory(file) ? "a folder" : "no such file",
                  "a weather file",
                  "")));
    }
    WeatherSeries series = WeatherFiles.read(file, ReadOptions.DESCRIBE);
    WeatherSummary summary = WeatherSummary.of(series);
    List<WorstWindows.Window> worst =
        86_400 % series.stepS() == 0
            ? WorstWindows.find(series, days, count, RigClass.SMALL, 0)
            : List.of();
    try {
      write(series, worst);
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  e.getMessage(),
                  0,
                  0,
                  "",
                  "a place that cannot be written",
                  "a folder that can",
                  "")));
    }
    if (json) {
      console().out().print(WeatherJson.of(summary, worst));
    } else {
      console()
          .out()
          .print(WeatherText.of(summary, worst, RigClass.SMALL, units == RunCommand.Units.F));
    }
    return 0;
  }

  private static void check(String option, int value, int low, int high) {
    if (value < low || value > high) {
      throw new BadInput(
          List.of(new Problem(option, 0, 0, "", String.valueOf(value), low + " to " + high, "")));
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
