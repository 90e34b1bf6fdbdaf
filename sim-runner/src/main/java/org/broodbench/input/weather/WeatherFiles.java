package org.broodbench.input.weather;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.broodbench.input.BadInput;
import org.broodbench.sky.WeatherSeries;

/** Reads weather files; the layout is told by what stands in the file, never by its name. */
public final class WeatherFiles {
  private static final int HEAD_BYTES = 1 << 15;

  private WeatherFiles() {}

  private static List<WeatherFormat> formats() {
    return List.of(new TidyCsv(), new KnmiHourly());
  }

  /** Reads with {@link ReadOptions#DEFAULT}. */
  public static WeatherSeries read(Path file) {
    return read(file, ReadOptions.DEFAULT);
  }

  /**
   * Reads a file of any known layout.
   *
   * @throws BadInput with everything that is wrong, at most 50 problems
   */
  public static WeatherSeries read(Path file, ReadOptions options) {
    ProblemList problems = new ProblemList(file.toString());
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      return read(in, problems, options);
    } catch (NoSuchFileException e) {
      throw problems.fatal(0, 0, "", "no such file", "a weather file", "");
    } catch (IOException | UncheckedIOException e) {
      String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      throw problems.fatal(0, 0, "", why, "a file that can be read", "");
    }
  }

  private static WeatherSeries read(InputStream in, ProblemList problems, ReadOptions options)
      throws IOException {
    in.mark(HEAD_BYTES + 1);
    byte[] head = in.readNBytes(HEAD_BYTES);
    in.reset();
    if (head.length == 0) {
      throw problems.fatal(0, 0, "", "an empty file", "a weather file", "");
    }
    Head start = Head.of(head);
    for (WeatherFormat format : formats()) {
      if (format.recognises(start)) {
        WeatherSeries series = format.read(new LineSource(in, problems), problems, options);
        problems.throwIfAny();
        return series;
      }
    }
    throw problems.fatal(
        1,
        1,
        "",
        start.firstText(),
        "one of: " + formats().stream().map(WeatherFormat::title).collect(Collectors.joining(", ")),
        "Write it as our tidy CSV, or describe its columns in a mapping.");
  }
}
