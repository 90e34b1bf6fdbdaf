package org.broodbench.sky;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Weather at one place as records of equal length without holes. Record i covers the half-open
 * interval (start + i step, start + (i+1) step] in UTC; {@link #stand} says where in it each
 * variable stands. A value that is not there is NaN and never 0.
 *
 * <p>Units: degC, percent over liquid water, m/s at {@link #windHeightM}, W/m2, mm, Pa.
 */
public final class WeatherSeries {
  private static final Variable[] VARIABLES = Variable.values();

  private final long startEpochS;
  private final int stepS;
  private final int n;
  private final double[][] columns;
  private final byte[] filledBits;
  private final Stand[] stands;
  private final double windHeightM;
  private final Optional<Place> place;
  private final Optional<Coordinates> coordinates;
  private final String source;
  private final String formatId;
  private final boolean typicalYear;
  private final List<String> warnings;
  private final double filledHours;

  private WeatherSeries(Builder b) {
    if (b.stepS <= 0 || b.n <= 0) {
      throw new IllegalArgumentException(
          "a series needs a positive step and records: step " + b.stepS + " s, " + b.n);
    }
    startEpochS = b.startEpochS;
    stepS = b.stepS;
    n = b.n;
    columns = b.columns.clone();
    for (double[] column : columns) {
      if (column != null && column.length < n) {
        throw new IllegalArgumentException("a column is shorter than the series");
      }
    }
    filledBits = b.filledBits == null ? new byte[n] : b.filledBits;
    if (filledBits.length < n) {
      throw new IllegalArgumentException("fewer marks of filled values than the series is long");
    }
    stands = b.stands.clone();
    windHeightM = b.windHeightM;
    place = b.place;
    coordinates =
        b.place
            .map(p -> new Coordinates(p.latitudeDeg(), p.longitudeDeg()))
            .or(() -> b.coordinates);
    source = b.source;
    formatId = b.formatId;
    typicalYear = b.typicalYear;
    warnings = List.copyOf(b.warnings);
    int filled = 0;
    for (int i = 0; i < n; i++) {
      if (filledBits[i] != 0) {
        filled++;
      }
    }
    filledHours = filled * (double) stepS / 3600.0;
  }

  /** Start of the first interval, seconds since 1970-01-01T00:00:00Z. */
  public long startEpochS() {
    return startEpochS;
  }

  /** End of the last interval. */
  public long endEpochS() {
    return startEpochS + (long) n * stepS;
  }

  /** Length of an interval, s. */
  public int stepS() {
    return stepS;
  }

  /** Number of records. */
  public int n() {
    return n;
  }

  /** True where at least one value of the variable is there. */
  public boolean has(Variable v) {
    double[] column = columns[v.ordinal()];
    if (column == null) {
      return false;
    }
    for (int i = 0; i < n; i++) {
      if (!Double.isNaN(column[i])) {
        return true;
      }
    }
    return false;
  }

  /** The value of record i, NaN where missing. */
  public double value(Variable v, int i) {
    double[] column = columns[v.ordinal()];
    return column == null ? Double.NaN : column[i];
  }

  /** Measured, filled or missing. */
  public Quality quality(Variable v, int i) {
    if (Double.isNaN(value(v, i))) {
      return Quality.MISSING;
    }
    return (filledBits[i] & 1 << v.ordinal()) != 0 ? Quality.FILLED : Quality.MEASURED;
  }

  /** Where in the interval the variable stands. */
  public Stand stand(Variable v) {
    return stands[v.ordinal()];
  }

  /** Height above ground that the wind was measured at, m. */
  public double windHeightM() {
    return windHeightM;
  }

  /** Where it was measured, if the file tells. */
  public Optional<Place> place() {
    return place;
  }

  /** Latitude and longitude of the measurement, also where the file does not tell the altitude. */
  public Optional<Coordinates> coordinates() {
    return coordinates;
  }

  /**
   * A point without its altitude, degrees.
   *
   * @param latitudeDeg north positive
   * @param longitudeDeg east positive
   */
  public record Coordinates(double latitudeDeg, double longitudeDeg) {}

  /** Free text: who measured or made it. */
  public String source() {
    return source;
  }

  /** Short name of the file layout. */
  public String formatId() {
    return formatId;
  }

  /** True where months come from different years and the year number is only a label. */
  public boolean typicalYear() {
    return typicalYear;
  }

  /** What a reader of results should know. */
  public List<String> warnings() {
    return warnings;
  }

  /** Hours in which at least one value was put in. */
  public double filledHours() {
    return filledHours;
  }

  /** Number of records without a value of this variable. */
  public int missing(Variable v) {
    int count = 0;
    for (int i = 0; i < n; i++) {
      if (Double.isNaN(value(v, i))) {
        count++;
      }
    }
    return count;
  }

  /** The same series with these warnings; the numbers are shared. */
  public WeatherSeries withWarnings(List<String> texts) {
    Builder b = new Builder(startEpochS, stepS, n);
    for (Variable v : VARIABLES) {
      b.column(v, columns[v.ordinal()], stands[v.ordinal()]);
    }
    b.filledBits = filledBits;
    return b.about(this).warnings(texts).build();
  }

  /** The records whose intervals lie between two times, as far as the series reaches. */
  public WeatherSeries between(long fromEpochS, long toEpochS) {
    int first = (int) Math.max(0, -Math.floorDiv(startEpochS - fromEpochS, (long) stepS));
    int end = (int) Math.min(n, Math.floorDiv(toEpochS - startEpochS, (long) stepS));
    if (end <= first) {
      throw new IllegalArgumentException("no record lies between the two times");
    }
    Builder b = new Builder(startEpochS + (long) first * stepS, stepS, end - first);
    for (Variable v : VARIABLES) {
      if (columns[v.ordinal()] != null) {
        b.column(v, Arrays.copyOfRange(columns[v.ordinal()], first, end), stands[v.ordinal()]);
      }
    }
    b.filledBits = Arrays.copyOfRange(filledBits, first, end);
    return b.about(this).build();
  }

  /** A builder that starts as a copy; its columns are copies too. */
  public Builder toBuilder() {
    Builder b = new Builder(startEpochS, stepS, n);
    for (Variable v : VARIABLES) {
      if (columns[v.ordinal()] != null) {
        b.column(v, Arrays.copyOf(columns[v.ordinal()], n), stands[v.ordinal()]);
      }
    }
    b.filledBits = filledBits.clone();
    return b.about(this);
  }

  /** Collects a series; arrays that are handed in belong to the series afterwards. */
  public static final class Builder {
    private final long startEpochS;
    private final int stepS;
    private final int n;
    private final double[][] columns = new double[VARIABLES.length][];
    private final Stand[] stands = new Stand[VARIABLES.length];
    private byte[] filledBits;
    private double windHeightM = 10;
    private Optional<Place> place = Optional.empty();
    private Optional<Coordinates> coordinates = Optional.empty();
    private String source = "";
    private String formatId = "";
    private boolean typicalYear;
    private List<String> warnings = List.of();

    /** Starts a series of n records. */
    public Builder(long startEpochS, int stepS, int n) {
      this.startEpochS = startEpochS;
      this.stepS = stepS;
      this.n = n;
      Arrays.fill(stands, Stand.MEAN);
    }

    /** Sets the values and where they stand. */
    public Builder column(Variable v, double[] values, Stand stand) {
      columns[v.ordinal()] = values;
      stands[v.ordinal()] = stand;
      return this;
    }

    /** Takes over all that is said about another series. */
    public Builder about(WeatherSeries other) {
      return windHeightM(other.windHeightM)
          .place(other.place)
          .coordinates(other.coordinates)
          .source(other.source)
          .formatId(other.formatId)
          .typicalYear(other.typicalYear)
          .warnings(other.warnings);
    }

    /** Bit {@code 1 << ordinal} is set where the variable of that record was filled. */
    public Builder filledBits(byte[] bits) {
      filledBits = bits;
      return this;
    }

    /** Height of the anemometer, m; 10 unless set. */
    public Builder windHeightM(double heightM) {
      windHeightM = heightM;
      return this;
    }

    /** Where it was measured. */
    public Builder place(Optional<Place> where) {
      place = where;
      return this;
    }

    /** Where, if the altitude is not known; a place goes before. */
    public Builder coordinates(Optional<Coordinates> where) {
      coordinates = where;
      return this;
    }

    /** Who measured or made it. */
    public Builder source(String text) {
      source = text;
      return this;
    }

    /** Short name of the file layout. */
    public Builder formatId(String id) {
      formatId = id;
      return this;
    }

    /** Marks a year put together from months of different years. */
    public Builder typicalYear(boolean typical) {
      typicalYear = typical;
      return this;
    }

    /** Replaces the warnings. */
    public Builder warnings(List<String> texts) {
      warnings = List.copyOf(texts);
      return this;
    }

    /** Makes the series. */
    public WeatherSeries build() {
      return new WeatherSeries(this);
    }
  }
}
