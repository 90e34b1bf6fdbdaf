package org.broodbench.sky;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.MoistAir;

/**
 * Radiation of a window in cells. Every interval of the record is cut where a cell begins; the
 * pieces share its energy in proportion to the light of a clear sky, so that the energy of the
 * interval is kept and nothing comes before rise or after set. A spot value counts as the mean of
 * the interval centred on it.
 *
 * <p>Where the record has more than {@link #SHARE_LIMIT} times the clear sky's energy the rest is
 * diffuse light, spread evenly over the time that the sun is up; over the whole interval where that
 * is less than a sixth of it (twilight around rise and set). What the record says arrived must
 * arrive.
 */
final class CellLight {
  /** Own choice: clear-sky models are off by less than this at all but the lowest sun. */
  private static final double SHARE_LIMIT = 2;

  /**
   * Below this sine of elevation (5.7 degrees) the attenuation of the clear-sky shape is held: it
   * is meant for the beam, and near the horizon nearly all light is diffuse. Own choice.
   */
  private static final double LOW_SUN = 0.1;

  /** Clouds are told from the light where the sun stands higher than this, degrees; own choice. */
  private static final double CLOUD_FROM_DEG = 10;

  private static final double DAY_S = 86400;

  private final long from;
  private final int cells;
  private final double[] ghi;
  private final double[] dni;
  private final double[] dhi;
  private final double[][] plane;
  private final double[][] normals;
  private final double[] skyShare;
  private final double[] groundShare;
  private final boolean anyObstacle;
  private final Plane[] planes;
  private final ForcingSettings settings;
  private final Place place;
  private final double pressurePa;
  private final SunTrack sun;
  private final double[] cover;
  private final double coverFirstInstant;
  private final double coverStepS;
  private final List<String> notes = new ArrayList<>();

  // pieces of the interval in hand
  private double[] length = new double[16];
  private double[] weight = new double[16];
  private double[] start = new double[16];

  CellLight(
      WeatherSeries w,
      Place place,
      long from,
      long to,
      List<Plane> planeList,
      ForcingSettings settings) {
    this.from = from;
    this.settings = settings;
    this.place = place;
    pressurePa = MoistAir.standardPressurePa(place.altitudeM());
    cells = (int) ((to - from + Forcing.CELL_S - 1) / Forcing.CELL_S);
    ghi = new double[cells];
    dni = new double[cells];
    dhi = new double[cells];
    planes = planeList.toArray(new Plane[0]);
    plane = new double[planes.length][cells];
    normals = new double[planes.length][];
    skyShare = new double[planes.length];
    groundShare = new double[planes.length];
    anyObstacle = planeList.stream().anyMatch(q -> !q.obstacles().none());
    for (int p = 0; p < planes.length; p++) {
      double tilt = StrictMath.toRadians(planes[p].tiltDeg());
      double azimuth = StrictMath.toRadians(planes[p].azimuthDeg());
      normals[p] =
          new double[] {
            StrictMath.sin(tilt) * StrictMath.sin(azimuth),
            StrictMath.sin(tilt) * StrictMath.cos(azimuth),
            StrictMath.cos(tilt)
          };
      Plane q = planes[p];
      Horizon around = q.obstacles().horizon();
      double seen =
          around.points().isEmpty()
              ? 0.5 * (1 + normals[p][2])
              : around.skyShare(q.tiltDeg(), q.azimuthDeg());
      skyShare[p] = seen * q.cover().skyShare(q.tiltDeg());
      groundShare[p] = 0.5 * (1 - normals[p][2]) * q.cover().groundShare(q.tiltDeg());
    }
    Stand stand = w.stand(Variable.GHI);
    double step = w.stepS();
    double begin = w.startEpochS() + stand.centreS(step) - 0.5 * step;
    int first = (int) Math.floor((from - begin) / step);
    int last = (int) Math.ceil((to - begin) / step) - 1;
    int margin = (int) Math.ceil(DAY_S / step);
    sun =
        new SunTrack(
            place, from - (long) (DAY_S + 2 * step), to + (long) (DAY_S + 2 * step) + 3600);
    int lo = Math.max(0, first - margin);
    int hi = Math.min(w.n() - 1, last + margin);
    cover = new double[hi - lo + 1];
    coverFirstInstant = begin + (lo + 0.5) * step;
    coverStepS = step;
    SnowCover snow = new SnowCover();
    for (int i = 0; i < first && settings.snow() == ForcingSettings.SnowRule.FROM_RECORD; i++) {
      passSnow(snow, w, i);
    }
    for (int i = Math.min(lo, first); i <= Math.max(hi, last); i++) {
      int record = Math.max(0, Math.min(w.n() - 1, i));
      double a = begin + i * step;
      double kc = interval(w, record, a, step, i >= first && i <= last, snow);
      if (i >= lo && i <= hi) {
        cover[i - lo] = Double.isNaN(kc) ? Double.NaN : ClearSky.cloudCover(kc);
      }
      if (i >= first) {
        passSnow(snow, w, record);
      }
    }
    for (int k = 0; k < cells; k++) {
      double seconds = Math.min(Forcing.CELL_S, to - from - (double) k * Forcing.CELL_S);
      ghi[k] /= seconds;
      dni[k] /= seconds;
      dhi[k] /= seconds;
      for (double[] column : plane) {
        column[k] /= seconds;
      }
    }
    bridgeNights();
  }

  private static void passSnow(SnowCover snow, WeatherSeries w, int i) {
    snow.pass(w.value(Variable.AIR, i), w.value(Variable.PRECIPITATION, i), w.stepS());
  }

  /** Shares one interval out; returns the clear-sky index, NaN where the sun is too low to tell. */
  private double interval(
      WeatherSeries w, int record, double a, double step, boolean write, SnowCover snow) {
    double g = w.value(Variable.GHI, record);
    if (Double.isNaN(g)) {
      return Double.NaN;
    }
    int n = 0;
    double weightJ = 0;
    double upS = 0;
    double extraJ = 0;
    double clearJ = 0;
    double aboveS = 0;
    double t = a;
    double end = a + step;
    while (t < end - 1e-6) {
      double next =
          Math.min(
              end, from + (Math.floor((t - from) / Forcing.CELL_S + 1e-9) + 1) * Forcing.CELL_S);
      if (n == length.length) {
        grow();
      }
      length[n] = next - t;
      start[n] = t;
      double middle = 0.5 * (t + next);
      sun.at(middle);
      double s = sun.up();
      weight[n] = 0;
      if (s > -0.02) {
        double elevation = sun.elevationDeg();
        double lifted = elevation + Sun.refractionDeg(elevation, pressurePa, 10);
        double sine = StrictMath.sin(StrictMath.toRadians(lifted));
        if (elevation > Sun.RISE_ELEVATION_DEG) {
          upS += length[n];
          weight[n] = shape(Math.max(sine, 1e-3)) * length[n];
          extraJ += sun.extraterrestrialNormalWM2(middle) * Math.max(s, 0) * length[n];
        }
        if (elevation > CLOUD_FROM_DEG) {
          double mass = ClearSky.absoluteAirMass(ClearSky.airMass(90 - lifted), pressurePa);
          clearJ +=
              length[n]
                  * ClearSky.ineichen(
                          sine,
                          mass,
                          settings.linkeTurbidity(),
                          place.altitudeM(),
                          sun.extraterrestrialNormalWM2(middle))
                      .ghi();
          aboveS += length[n];
        }
      }
      weightJ += weight[n];
      n++;
      t = next;
    }
    double energyJ = g * step;
    if (write && energyJ > 0) {
      double share = weightJ > 0 ? Math.min(energyJ / weightJ, SHARE_LIMIT) : 0;
      boolean day = upS >= step / 6;
      double evenW = Math.max(0, energyJ - share * weightJ) / (day ? upS : step);
      double outside = sun.extraterrestrialNormalWM2(a + 0.5 * step);
      double diffuse = diffuseFraction(w, record, g, extraJ / step, outside);
      for (int i = 0; i < n; i++) {
        piece(i, share * weight[i] / length[i], day && weight[i] == 0 ? 0 : evenW, diffuse, snow);
      }
    }
    // an interval with a lower sun in part is no fair measure of the clouds
    return aboveS > 0.999 * step ? energyJ / clearJ : Double.NaN;
  }

  private static double shape(double sine) {
    return 1098 * sine * StrictMath.exp(-0.059 / Math.max(sine, LOW_SUN));
  }

  /**
   * Share of diffuse light: from the record's diffuse or direct irradiance where there is one, else
   * by Erbs from the clearness index of the interval.
   *
   * @param extra mean extraterrestrial irradiance on the horizontal, W/m2
   * @param outside the same facing the sun; their ratio is the mean cosine of the zenith angle
   */
  private static double diffuseFraction(
      WeatherSeries w, int record, double g, double extra, double outside) {
    double d = w.value(Variable.DHI, record);
    if (!Double.isNaN(d)) {
      return Math.max(0, Math.min(1, d / g));
    }
    double b = w.value(Variable.DNI, record);
    if (!Double.isNaN(b) && extra > 0) {
      return Math.max(0, Math.min(1, 1 - b * extra / (outside * g)));
    }
    return extra > 0 ? Irradiance.erbsDiffuseFraction(g / extra) : 1;
  }

  private void piece(int i, double shared, double even, double diffuse, SnowCover snow) {
    int cell = (int) Math.floor((start[i] - from) / Forcing.CELL_S + 1e-9);
    double total = shared + even;
    if (cell < 0 || cell >= cells || total <= 0) {
      return;
    }
    double middle = start[i] + 0.5 * length[i];
    sun.at(middle);
    double cosZenith = sun.up();
    double outside = sun.extraterrestrialNormalWM2(middle);
    double d = total;
    double b = 0;
    if (cosZenith >= Irradiance.LOWEST_BEAM_COS_ZENITH) {
      b = Math.min(outside, shared * (1 - diffuse) / cosZenith);
      d = total - b * cosZenith;
    }
    double seconds = length[i];
    ghi[cell] += total * seconds;
    dni[cell] += b * seconds;
    dhi[cell] += d * seconds;
    boolean white =
        settings.snow() == ForcingSettings.SnowRule.ALWAYS
            || settings.snow() == ForcingSettings.SnowRule.FROM_RECORD && snow.white();
    double albedo = white ? settings.snowAlbedo() : settings.albedo();
    double circumsolar =
        settings.transposition() == Transposition.Model.HAY_DAVIES ? b / outside : 0;
    double direct = b + d * circumsolar / Math.max(cosZenith, 0.01745);
    double elevationDeg = anyObstacle ? sun.elevationDeg() : 0;
    double azimuthDeg = anyObstacle ? sun.azimuthDeg() : 0;
    double hour = (middle - DAY_S * Math.floor(middle / DAY_S)) / 3600;
    for (int p = 0; p < planes.length; p++) {
      double[] n = normals[p];
      Plane q = planes[p];
      double incidence = sun.east() * n[0] + sun.north() * n[1] + cosZenith * n[2];
      double beam = 0;
      if (incidence > 0) {
        beam = direct * incidence * q.cover().beamShare(incidence);
        if (!q.obstacles().none()) {
          beam *= q.obstacles().beamShare(elevationDeg, azimuthDeg, hour);
        }
      }
      double light = beam + d * (1 - circumsolar) * skyShare[p] + total * albedo * groundShare[p];
      plane[p][cell] += (white ? light * q.cover().snowShare() : light) * seconds;
    }
  }

  private void grow() {
    length = java.util.Arrays.copyOf(length, 2 * length.length);
    weight = java.util.Arrays.copyOf(weight, length.length);
    start = java.util.Arrays.copyOf(start, length.length);
  }

  /** Cloud cover between two days is joined by a straight line; without any day it is a half. */
  private void bridgeNights() {
    int before = -1;
    for (int i = 0; i < cover.length; i++) {
      if (Double.isNaN(cover[i])) {
        continue;
      }
      for (int j = before + 1; j < i; j++) {
        cover[j] =
            before < 0
                ? cover[i]
                : cover[before] + (cover[i] - cover[before]) * (j - before) / (i - before);
      }
      before = i;
    }
    if (before < 0) {
      java.util.Arrays.fill(cover, 0.5);
      notes.add("clouds: the sun never stands high enough to tell, so half the sky is covered");
    } else {
      java.util.Arrays.fill(cover, before + 1, cover.length, cover[before]);
    }
  }

  /** Cloud cover 0 to 1. */
  double cloudCoverAt(double epochS) {
    double x = (epochS - coverFirstInstant) / coverStepS;
    if (x <= 0) {
      return cover[0];
    }
    int i = (int) x;
    return i >= cover.length - 1
        ? cover[cover.length - 1]
        : cover[i] + (x - i) * (cover[i + 1] - cover[i]);
  }

  List<String> notes() {
    return notes;
  }

  void read(int cell, Sample out) {
    out.ghiWM2 = ghi[cell];
    out.dniWM2 = dni[cell];
    out.dhiWM2 = dhi[cell];
    for (int p = 0; p < plane.length; p++) {
      out.planeWM2[p] = plane[p][cell];
    }
  }
}
