package org.broodbench.sky;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.MoistAir;

/**
 * The weather of one window of time, ready for the plant: everything is computed beforehand, and
 * {@link #sample} only looks up and interpolates.
 *
 * <p>The window is cut into cells of {@link #CELL_S} that start with it. Radiation and
 * precipitation are constant in a cell. Air temperature, vapour pressure, wind, pressure and sky
 * temperature are known at the edges of the cells and straight in between; the record's own values
 * stand at their instants (the middle of the interval for means) and are joined by straight lines.
 */
public final class Forcing {
  /** Length of a cell, s. */
  public static final int CELL_S = 300;

  private final long startEpochS;
  private final double durationS;
  private final int cells;
  private final double[] airC;
  private final double[] vapourPa;
  private final double[] windMS;
  private final double[] skyC;
  private final double[] pressurePa;
  private final CellLight light;
  private final double[] precipMmPerH;
  private final List<String> assumed;

  private Forcing(
      WeatherSeries w,
      Place place,
      long from,
      long to,
      List<Plane> planes,
      ForcingSettings settings) {
    startEpochS = from;
    durationS = to - from;
    cells = (int) ((to - from + CELL_S - 1) / CELL_S);
    airC = new double[cells + 1];
    vapourPa = new double[cells + 1];
    windMS = new double[cells + 1];
    skyC = new double[cells + 1];
    pressurePa = new double[cells + 1];
    precipMmPerH = new double[cells];
    List<String> notes = new ArrayList<>();
    light = new CellLight(w, place, from, to, planes, settings);
    fillEdges(w, place, settings, notes);
    assumed = List.copyOf(notes);
  }

  /**
   * Prepares the window from {@code fromEpochS} to {@code toEpochS}.
   *
   * @param place where the hive stands; it may lie apart from the place of the record
   * @throws NotCovered where the record does not reach over the window or has no air temperature or
   *     no global irradiance somewhere inside
   */
  public static Forcing of(
      WeatherSeries w,
      Place place,
      long fromEpochS,
      long toEpochS,
      List<Plane> planes,
      ForcingSettings settings) {
    if (toEpochS <= fromEpochS) {
      throw new IllegalArgumentException("the window ends before it begins");
    }
    if (fromEpochS < w.startEpochS() || toEpochS > w.endEpochS()) {
      throw new NotCovered(
          "the weather record does not reach over the window", fromEpochS, toEpochS, w, null);
    }
    int first = (int) ((fromEpochS - w.startEpochS()) / w.stepS());
    int last = (int) ((toEpochS - 1 - w.startEpochS()) / w.stepS());
    for (int i = first; i <= last; i++) {
      for (Variable v : List.of(Variable.AIR, Variable.GHI)) {
        if (Double.isNaN(w.value(v, i))) {
          throw new NotCovered(
              "no " + v.column() + " inside the window", fromEpochS, toEpochS, w, v);
        }
      }
    }
    return new Forcing(w, place, fromEpochS, toEpochS, planes, settings);
  }

  private Forcing(Forcing other, double[] edgeAirC) {
    startEpochS = other.startEpochS;
    durationS = other.durationS;
    cells = other.cells;
    airC = edgeAirC;
    vapourPa = new double[cells + 1];
    skyC = new double[cells + 1];
    for (int k = 0; k <= cells; k++) {
      vapourPa[k] = Math.min(other.vapourPa[k], MoistAir.saturationWaterPa(airC[k]));
      skyC[k] = other.skyC[k] + airC[k] - other.airC[k];
    }
    windMS = other.windMS;
    pressurePa = other.pressurePa;
    light = other.light;
    precipMmPerH = other.precipMmPerH;
    assumed = other.assumed;
  }

  /**
   * The same weather with the air temperature that another thermometer shows; the sky is warmer or
   * colder by as much, vapour is held to what that air can carry.
   *
   * @param edgeAirC air temperature at the edges of the cells, °C, one more than there are cells
   */
  public Forcing withAir(double[] edgeAirC) {
    if (edgeAirC.length != cells + 1) {
      throw new IllegalArgumentException(edgeAirC.length + " edges for " + cells + " cells");
    }
    return new Forcing(this, edgeAirC.clone());
  }

  /** Air temperature at the edges of the cells, °C, one more than there are cells. */
  public double[] edgeAirC() {
    return airC.clone();
  }

  private void fillEdges(
      WeatherSeries w, Place place, ForcingSettings settings, List<String> notes) {
    EdgeReader air = new EdgeReader(w, Variable.AIR);
    VapourReader vapour = new VapourReader(w, air);
    EdgeReader wind = new EdgeReader(w, Variable.WIND);
    EdgeReader pressure = new EdgeReader(w, Variable.PRESSURE);
    double standardPa = MoistAir.standardPressurePa(place.altitudeM());
    double windFactor =
        settings.shelterFactor()
            * Wind.logRatio(w.windHeightM(), settings.hiveHeightM(), settings.roughnessM());
    boolean windMissing = false;
    for (int k = 0; k <= cells; k++) {
      double t = startEpochS + (double) k * CELL_S;
      airC[k] = air.at(t);
      vapourPa[k] = Math.min(vapour.at(t), MoistAir.saturationWaterPa(airC[k]));
      double measured = wind.at(t);
      windMissing |= Double.isNaN(measured);
      windMS[k] = windFactor * (Double.isNaN(measured) ? settings.defaultWindMS() : measured);
      double p = pressure.at(t);
      pressurePa[k] = Double.isNaN(p) ? standardPa : p;
      skyC[k] = LongWave.skyC(settings.longWave(), airC[k], vapourPa[k], light.cloudCoverAt(t));
    }
    for (int k = 0; k < cells; k++) {
      double middle = startEpochS + (k + 0.5) * CELL_S;
      int i = (int) ((middle - w.startEpochS()) / w.stepS());
      double mm = w.value(Variable.PRECIPITATION, Math.min(i, w.n() - 1));
      precipMmPerH[k] = Double.isNaN(mm) ? 0 : mm * 3600.0 / w.stepS();
    }
    if (windMissing) {
      notes.add(
          "wind where the record has none: "
              + settings.defaultWindMS()
              + " m/s at "
              + w.windHeightM()
              + " m");
    }
    if (vapour.guessed()) {
      notes.add("humidity where the record has none: dew point at the day's lowest temperature");
    }
    if (!w.has(Variable.PRESSURE)) {
      notes.add("air pressure: standard atmosphere at " + place.altitudeM() + " m");
    }
    if (!w.has(Variable.PRECIPITATION)) {
      notes.add("precipitation: the record has none, so it is dry throughout");
    }
    notes.addAll(light.notes());
  }

  /**
   * The weather at an instant of the window; nothing is allocated. Before the start and after the
   * end the nearest value holds.
   *
   * @param secondsFromStart 0 to {@link #durationS}
   */
  public void sample(double secondsFromStart, Sample out) {
    double x = secondsFromStart / CELL_S;
    int k = (int) x;
    if (x < 0) {
      k = 0;
      x = 0;
    } else if (k >= cells) {
      k = cells - 1;
      if (x > cells) {
        x = cells;
      }
    }
    double f = x - k;
    out.airC = airC[k] + f * (airC[k + 1] - airC[k]);
    out.vapourPa = vapourPa[k] + f * (vapourPa[k + 1] - vapourPa[k]);
    out.windMS = windMS[k] + f * (windMS[k + 1] - windMS[k]);
    out.skyC = skyC[k] + f * (skyC[k + 1] - skyC[k]);
    out.pressurePa = pressurePa[k] + f * (pressurePa[k + 1] - pressurePa[k]);
    out.precipMmPerH = precipMmPerH[k];
    light.read(k, out);
  }

  /** Length of the cells in which radiation is constant, s. */
  public double cellS() {
    return CELL_S;
  }

  /** Number of cells; the last may reach beyond the end of the window. */
  public int cells() {
    return cells;
  }

  /** Start of the window, seconds since 1970-01-01T00:00:00Z. */
  public long startEpochS() {
    return startEpochS;
  }

  /** Length of the window, s. */
  public double durationS() {
    return durationS;
  }

  /** What stands in for things that the record does not hold, for the list of assumptions. */
  public List<String> assumed() {
    return assumed;
  }
}
