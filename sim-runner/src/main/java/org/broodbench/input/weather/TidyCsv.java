package org.broodbench.input.weather;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Quality;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Our own weather file: comma-separated UTF-8 text, comment lines with {@code #} first, then a
 * header with the unit in each name, then one row per interval.
 *
 * <pre>
 * # broodbench weather 1
 * # source: who measured it
 * # latitude_deg: 47.0
 * # longitude_deg: 11.5
 * # altitude_m: 900
 * # step_s: 3600
 * # wind_height_m: 10
 * # stand air_c: instant 3600
 * from_utc,air_c,rh_percent,wind_m_s,ghi_w_m2,precip_mm
 * 2027-04-20T00:00:00Z,3.1,81,1.4,0,0.2
 * </pre>
 *
 * <p>{@code from_utc} is the start of the interval, always in UTC. A value is the mean
 * (precipitation: the sum) over its interval unless a {@code stand} line says {@code instant} and
 * how many seconds after the start, or {@code mean} and by how much the interval is shifted. An
 * empty field is missing. The column {@code filled} names, parted by +, the columns of that row
 * that were put in by a reader. Columns of other names are left alone.
 */
public final class TidyCsv implements WeatherFormat {
  private static final String TITLE_LINE = "# broodbench weather 1";
  private static final String TIME = "from_utc";
  private static final String FILLED = "filled";
  private static final Variable[] VARIABLES = Variable.values();

  TidyCsv() {}

  @Override
  public String id() {
    return "tidy_csv";
  }

  @Override
  public String title() {
    return "our tidy CSV";
  }

  @Override
  public boolean recognises(Head head) {
    return head.firstText().startsWith(TITLE_LINE)
        || head.lines().stream()
            .filter(l -> !l.startsWith("#") && !l.isBlank())
            .findFirst()
            .orElse("")
            .startsWith(TIME + ",");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    CommentLines header = new CommentLines(problems);
    boolean more = header.read(lines);
    if (!more) {
      throw problems.fatal(
          lines.number(), 0, "", "no header", "a line that starts with from_utc", "");
    }
    Fields f = new Fields(',');
    f.split(lines);
    int[] at = columns(f, problems, lines.number());
    int width = f.count();
    int filledAt = -1;
    for (int i = 0; i < width; i++) {
      if (f.is(i, FILLED)) {
        filledAt = i;
      }
    }
    long step = Math.round(header.number("step_s", 60, 86400, Double.NaN));
    Optional<Place> place = header.place();
    double windHeight = header.number("wind_height_m", 0.5, 200, 10);
    Stand[] stands = header.stands();
    problems.throwIfAny();
    if (step == 0) {
      throw problems.fatal(
          0, 0, "step_s", "no line \"# step_s: ...\"", "the length of an interval, s", "");
    }
    SeriesCollector rows = new SeriesCollector(context, (int) step);
    Picks picks = new Picks(problems);
    for (Variable v : VARIABLES) {
      picks.add(v, v.column(), at[v.ordinal()]);
    }
    java.util.BitSet filled = new java.util.BitSet();
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() != width) {
        problems.add(
            line, 1, "", f.count() + " fields", width + " fields", "Is the file cut short?");
        continue;
      }
      long from = Stamps.isoUtc(f, 0);
      if (from == Stamps.NONE) {
        problems.add(line, f.column(0), TIME, f.text(0), "UTC as 2027-04-20T05:00:00Z", "");
        continue;
      }
      double[] row = picks.row(f, line);
      if (filledAt >= 0 && !f.isEmpty(filledAt)) {
        for (String name : f.text(filledAt).split("\\+")) {
          for (int v = 0; v < row.length; v++) {
            if (VARIABLES[v].column().equals(name)) {
              filled.set(rows.index(from) * VARIABLES.length + v);
            }
          }
        }
      }
      rows.add(from, line, row);
    }
    rows.alreadyFilled(filled);
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(windHeight)
        .place(place)
        .source(header.text("source"))
        .typicalYear(header.text("typical_year").equals("true"))
        .build();
  }

  private static int[] columns(Fields f, ProblemList problems, int line) {
    if (!f.is(0, TIME)) {
      problems.add(line, 1, TIME, f.text(0), TIME + " as the first column", "");
    }
    int[] at = new int[VARIABLES.length];
    Arrays.fill(at, -1);
    for (int i = 1; i < f.count(); i++) {
      for (Variable v : VARIABLES) {
        if (!f.is(i, v.column())) {
          continue;
        }
        if (at[v.ordinal()] >= 0) {
          problems.add(line, f.column(i), v.column(), "a second column", "each column once", "");
        }
        at[v.ordinal()] = i;
      }
    }
    return at;
  }

  /**
   * Writes a series; reading it back gives the same numbers. Lines end with a line feed.
   *
   * @throws IOException of the writer
   */
  public static void write(WeatherSeries w, Writer out) throws IOException {
    out.write(TITLE_LINE + "\n# source: " + w.source().replaceAll("\\s+", " ") + "\n");
    if (w.place().isPresent()) {
      Place p = w.place().get();
      out.write("# latitude_deg: " + p.latitudeDeg() + "\n");
      out.write("# longitude_deg: " + p.longitudeDeg() + "\n");
      out.write("# altitude_m: " + p.altitudeM() + "\n");
    }
    out.write("# step_s: " + w.stepS() + "\n# wind_height_m: " + w.windHeightM() + "\n");
    if (w.typicalYear()) {
      out.write("# typical_year: true\n");
    }
    StringBuilder header = new StringBuilder(TIME);
    boolean anyFilled = false;
    for (Variable v : VARIABLES) {
      if (w.has(v)) {
        Stand s = w.stand(v);
        if (!s.equals(Stand.MEAN)) {
          String kind = s.mean() ? "mean" : "instant";
          out.write("# stand " + v.column() + ": " + kind + " " + number(s.offsetS()) + "\n");
        }
        header.append(',').append(v.column());
      }
    }
    anyFilled = w.filledHours() > 0;
    out.write(header + (anyFilled ? "," + FILLED : "") + "\n");
    StringBuilder b = new StringBuilder();
    for (int i = 0; i < w.n(); i++) {
      b.setLength(0);
      b.append(Stamps.text(w.startEpochS() + (long) i * w.stepS()));
      StringBuilder filled = new StringBuilder();
      for (Variable v : VARIABLES) {
        if (!w.has(v)) {
          continue;
        }
        double value = w.value(v, i);
        b.append(',').append(Double.isNaN(value) ? "" : number(value));
        if (w.quality(v, i) == Quality.FILLED) {
          filled.append(filled.length() > 0 ? "+" : "").append(v.column());
        }
      }
      if (anyFilled) {
        b.append(',').append(filled);
      }
      out.write(b.append('\n').toString());
    }
  }

  /** The shortest text that reads back as the same number, without a needless ".0". */
  private static String number(double value) {
    if (value == Math.rint(value) && Math.abs(value) < 1e9) {
      return String.format(Locale.ROOT, "%d", (long) value);
    }
    return Double.toString(value);
  }
}
