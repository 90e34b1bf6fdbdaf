package org.broodbench.input.weather;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.broodbench.input.BadInput;
import org.broodbench.rig.CsvMapping;
import org.broodbench.sky.SeriesCheck;
import org.broodbench.sky.WeatherSeries;

/**
 * Reads weather files; the layout is told by what stands in the file, never by its name. Zip and
 * gzip archives are read as they are.
 */
public final class WeatherFiles {
  private static final int HEAD_BYTES = 1 << 15;

  private WeatherFiles() {}

  private static List<WeatherFormat> formats() {
    return List.of(
        new TidyCsv(),
        new DailyCsv(),
        new NormalsCsv(),
        new KnmiHourly(),
        new Uscrn(true),
        new Uscrn(false),
        new Surfrad(),
        new Tmy3(),
        new Nsrdb(),
        new Dwd(true),
        new Dwd(false),
        new JrcYear.TypicalCsv(),
        new JrcYear.HourlyCsv(),
        new JrcYear.TypicalJson(),
        new OpenMeteo.Csv(),
        new OpenMeteo.Json(),
        new Era5Point(),
        new Epw());
  }

  /** Names of the layouts that are read, for help texts. */
  public static List<String> formatIds() {
    return formats().stream().map(WeatherFormat::id).toList();
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
    return checked(open(file, options, false, formats()));
  }

  /** Reads a table along a mapping. */
  public static WeatherSeries read(Path file, CsvMapping mapping, ReadOptions options) {
    return checked(open(file, options, false, List.of(new MappedCsv(mapping))));
  }

  /**
   * Reads files that make one record: years of one station that follow one another; or different
   * subjects, such as air, wind and sun: the time they share, at the longest of their steps, each
   * variable from the first file that has it.
   */
  public static WeatherSeries readTogether(List<Path> files, ReadOptions options) {
    if (files.size() == 1) {
      return read(files.get(0), options);
    }
    List<WeatherSeries> parts = new ArrayList<>();
    for (Path file : files) {
      parts.add(open(file, options, true, formats()));
    }
    String names = files.stream().map(Path::toString).collect(Collectors.joining(" + "));
    ReadContext context = new ReadContext(new ProblemList(names), options, false, List.of());
    parts.sort(Comparator.comparingLong(WeatherSeries::startEpochS));
    boolean years = SeriesMerge.follow(parts);
    return checked(years ? SeriesMerge.join(parts, context) : SeriesMerge.merge(parts, context));
  }

  private static WeatherSeries checked(WeatherSeries series) {
    List<String> more = SeriesCheck.warnings(series);
    if (more.isEmpty()) {
      return series;
    }
    List<String> all = new ArrayList<>(series.warnings());
    all.addAll(more);
    return series.withWarnings(all);
  }

  private static WeatherSeries open(
      Path file, ReadOptions options, boolean part, List<WeatherFormat> formats) {
    ProblemList problems = new ProblemList(file.toString());
    try (InputStream raw = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      raw.mark(4);
      byte[] magic = raw.readNBytes(4);
      raw.reset();
      boolean zip = magic.length == 4 && magic[0] == 'P' && magic[1] == 'K' && magic[2] == 3;
      boolean gzip = magic.length >= 2 && magic[0] == 0x1f && magic[1] == (byte) 0x8b;
      if (zip) {
        return zipped(file, problems, options, part, formats);
      }
      ReadContext context = new ReadContext(problems, options, part, List.of());
      InputStream plain = gzip ? new BufferedInputStream(new GZIPInputStream(raw), 1 << 16) : raw;
      return stream(plain, context, formats);
    } catch (NoSuchFileException e) {
      throw problems.fatal(0, 0, "", "no such file", "a weather file", "");
    } catch (ZipException e) {
      throw problems.fatal(0, 0, "", "a damaged archive", "a whole zip or gzip file", "");
    } catch (IOException | UncheckedIOException e) {
      String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      throw problems.fatal(0, 0, "", why, "a file that can be read", "Is it cut short?");
    }
  }

  private static WeatherSeries stream(
      InputStream in, ReadContext context, List<WeatherFormat> formats) throws IOException {
    ProblemList problems = context.problems();
    in.mark(HEAD_BYTES + 1);
    byte[] head = in.readNBytes(HEAD_BYTES);
    in.reset();
    if (head.length == 0) {
      throw problems.fatal(0, 0, "", "an empty file", "a weather file", "");
    }
    boolean wide = head.length > 1 && (head[0] & 0xFF) >= 0xFE && (head[1] & 0xFF) >= 0xFE;
    if (wide) {
      throw problems.fatal(1, 1, "", "text in UTF-16", "text in UTF-8", "Save it as UTF-8.");
    }
    Head start = Head.of(head);
    if (start.firstText().isEmpty()) {
      throw problems.fatal(1, 1, "", "nothing but blanks or zeros", "a weather file", "");
    }
    for (WeatherFormat format : formats) {
      if (format.recognises(start)) {
        WeatherSeries series = read(format, in, context);
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

  private static WeatherSeries read(WeatherFormat format, InputStream in, ReadContext context) {
    try {
      return format instanceof JsonFormat json
          ? json.read(in, context)
          : format.read(new LineSource(in, context.problems()), context);
    } catch (IllegalArgumentException e) {
      // a place that is none
      throw context.problems().fatal(0, 0, "place", e.getMessage(), "the place of a station", "");
    }
  }

  /** The data of a station archive and what lies beside it; or the only readable file. */
  private static WeatherSeries zipped(
      Path file,
      ProblemList problems,
      ReadOptions options,
      boolean part,
      List<WeatherFormat> formats)
      throws IOException {
    try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.ISO_8859_1)) {
      List<ZipEntry> data = new ArrayList<>();
      List<ZipEntry> products = new ArrayList<>();
      List<String> side = List.of();
      for (Enumeration<? extends ZipEntry> e = zip.entries(); e.hasMoreElements(); ) {
        ZipEntry entry = e.nextElement();
        String name = entry.getName().substring(entry.getName().lastIndexOf('/') + 1);
        if (name.startsWith("produkt_")) {
          products.add(entry);
        } else if (name.startsWith("Metadaten_Geographie")) {
          byte[] text = zip.getInputStream(entry).readNBytes(1 << 20);
          side = new String(text, StandardCharsets.ISO_8859_1).lines().toList();
        } else if (!entry.isDirectory()
            && name.toLowerCase(Locale.ROOT).matches(".*\\.(csv|txt|dat|json|epw)")) {
          data.add(entry);
        }
      }
      List<ZipEntry> chosen = products.isEmpty() ? data : products;
      if (chosen.size() != 1) {
        throw problems.fatal(
            0,
            0,
            "",
            chosen.size() + " files that could be weather",
            "an archive with one",
            "Unpack it and name the file.");
      }
      ReadContext context = new ReadContext(problems, options, part, side);
      try (InputStream in = new BufferedInputStream(zip.getInputStream(chosen.get(0)), 1 << 16)) {
        return stream(in, context, formats);
      }
    }
  }
}
