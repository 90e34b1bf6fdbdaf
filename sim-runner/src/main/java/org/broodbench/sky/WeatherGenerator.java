package org.broodbench.sky;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.broodbench.matter.MoistAir;

/**
 * Invents hourly weather from monthly normals. Made weather says so in its source text.
 *
 * <p>Day by day: a fair-to-foul index follows a first-order autoregression (lag-one correlation
 * 0.65, common practice in weather generators, after Richardson 1981); clearness, rain, temperature
 * and wind all lean on it, so that dull days are the wet ones and, in the warm half of the year,
 * the cool ones. Temperature has a second regression of its own (0.7). Within the day the
 * temperature is a cosine from the low at sunrise to the high at 14:30 solar time (de Wit,
 * Goudriaan and van Laar 1978), the light follows the sun's height with broken cloud on top, and
 * the dew point is held near the night's low (FAO Irrigation and Drainage Paper 56, chapter 3). All
 * weights are own choices, tuned by eye; the numbers are drawn from {@link Draws} alone.
 */
public final class WeatherGenerator {
  private static final int HOUR_S = 3600;
  private static final double INDEX_MEMORY = 0.65;
  private static final double WARMTH_MEMORY = 0.7;
  private static final double LOWEST_CLEARNESS = 0.14;
  private static final double SKY_SWING = 0.36;

  /** Below 1 it cools faster in the evening than before dawn, as records do; own choice. */
  private static final double EVENING = 0.75;

  private static final double HIGH_AT_SOLAR_H = 14.5;

  private final GeneratorSettings s;
  private final int days;
  // one day before and after the season, so that the first and last night have both ends
  private final double[] index;
  private final double[] lowC;
  private final double[] highC;
  private final double[] dewC;
  private final double[] clearness;
  private final double[] rainMm;
  private final double[] windMS;
  private final double[] riseSolarH;

  private WeatherGenerator(GeneratorSettings settings) {
    s = settings;
    days = settings.days() + 2;
    index = new double[days];
    lowC = new double[days];
    highC = new double[days];
    dewC = new double[days];
    clearness = new double[days];
    rainMm = new double[days];
    windMS = new double[days];
    riseSolarH = new double[days];
    for (int d = 0; d < days; d++) {
      riseSolarH[d] = riseSolarHour(s.firstEpochDay() - 1 + d);
    }
    drawDays();
  }

  /** The whole season, hour by hour. */
  public static WeatherSeries generate(GeneratorSettings settings) {
    return new WeatherGenerator(settings).hours();
  }

  private void drawDays() {
    Draws draws = new Draws(s.seed(), 1);
    // clear days rise with the height of the place: a little below FAO-56 equation 37
    double clearest = 0.70 + 2.5e-5 * s.place().altitudeM();
    double z = draws.normal();
    double warm = draws.normal();
    for (int d = 0; d < days; d++) {
      z = next(z, INDEX_MEMORY, draws.normal());
      warm = next(warm, WARMTH_MEMORY, draws.normal());
      double rainDraw = draws.uniform();
      double rainSize = draws.exponential();
      double windNoise = draws.normal();
      double dewNoise = draws.normal();
      double clearNoise = draws.normal();
      int dayOfYear = LocalDate.ofEpochDay(s.firstEpochDay() - 1 + d).getDayOfYear();
      MonthlyNormals.Month m = s.normals().at(dayOfYear);
      double colder = spellColderByK(d - 1);
      double fair = colder > 0 ? Math.min(z, 0) * 0.3 - 1.4 : z;
      index[d] = fair;
      double sky = sky(m.clearness(), clearest, fair + 0.22 * clearNoise);
      clearness[d] = sky * (1 - s.stress().cloudierBy());
      // foul days are cooler in summer and, with less heat lost at night, milder in winter
      double summer = -StrictMath.cos(2 * StrictMath.PI * (dayOfYear - 15) / 365.25);
      summer = s.place().latitudeDeg() < 0 ? -summer : summer;
      double lean = 0.5 * summer;
      double mean =
          0.5 * (m.meanMaxC() + m.meanMinC())
              + m.dailySdK() * (lean * fair + StrictMath.sqrt(1 - lean * lean) * warm)
              - colder
              - s.stress().colderByK();
      double range = (m.meanMaxC() - m.meanMinC()) * (0.45 + 0.55 * sky / m.clearness());
      lowC[d] = mean - 0.5 * range;
      highC[d] = mean + 0.5 * range;
      // the wet days are the foulest of the month, softened so that some dull days stay dry
      double wetChance = normalCdf((quantile(m.wetDays()) - fair) * 1.6);
      rainMm[d] = rainDraw < wetChance ? m.wetDayMm() * rainSize : 0;
      dewC[d] = lowC[d] - 1 + (rainMm[d] > 0 ? 1 : -1.2 * Math.max(0, fair)) + 0.8 * dewNoise;
      windMS[d] = m.windMS() * StrictMath.exp(0.3 * windNoise - 0.18 * fair - 0.06);
    }
  }

  /**
   * Clearness of a day: a swing of 0.36 for each unit of the index, narrower upwards where the
   * clear sky is near; the centre is shifted so that the mean stays. A standard normal variable
   * exceeds 0 by 0.4 on average, hence that factor.
   */
  private static double sky(double mean, double clearest, double index) {
    double centre = mean;
    double up = SKY_SWING;
    for (int i = 0; i < 20; i++) {
      up = Math.min(SKY_SWING, Math.max(0, clearest - centre) / (1.5 * centre));
      centre = mean / (1 - 0.4 * (SKY_SWING - up));
    }
    double sky = centre * (1 + (index > 0 ? up : SKY_SWING) * index);
    return Math.max(LOWEST_CLEARNESS, Math.min(clearest, sky));
  }

  private double spellColderByK(int day) {
    double colder = 0;
    for (GeneratorSettings.Spell spell : s.spells()) {
      int last = spell.fromDay() + spell.days() + s.stress().longerSpellDays();
      if (day >= spell.fromDay() && day < last) {
        colder = Math.max(colder, spell.colderByK());
      }
    }
    return colder;
  }

  private static double next(double x, double memory, double draw) {
    return memory * x + StrictMath.sqrt(1 - memory * memory) * draw;
  }

  private WeatherSeries hours() {
    int n = s.days() * 24;
    double[] air = new double[n];
    double[] rh = new double[n];
    double[] wind = new double[n];
    double[] ghi = new double[n];
    double[] rain = new double[n];
    Draws draws = new Draws(s.seed(), 2);
    long start = s.firstEpochDay() * 86400;
    double wobble = 0;
    double gust = 0;
    for (int i = 0; i < n; i++) {
      wobble = next(wobble, 0.8, draws.normal());
      gust = next(gust, 0.7, draws.normal());
      // the record's spot values stand at the end of the hour
      double solarH = solarHour(start + (i + 1.0) * HOUR_S);
      int d = dayIndex(start + (i + 1.0) * HOUR_S);
      air[i] = round(temperature(d, solarH) + 0.35 * wobble, 0.1);
      double f = solarH / 24;
      double dew = dewC[d] + (f - 0.5) * (f > 0.5 ? dewC[d + 1] - dewC[d] : dewC[d] - dewC[d - 1]);
      double full = MoistAir.saturationWaterPa(air[i]);
      rh[i] = round(Math.min(100, 100 * MoistAir.saturationWaterPa(dew) / full), 1);
      double daily = 1 + 0.45 * StrictMath.sin(2 * StrictMath.PI * (solarH - 9) / 24);
      wind[i] = round(windMS[d] * daily * StrictMath.exp(0.3 * gust - 0.045), 0.1);
    }
    light(ghi);
    rain(rain, rh);
    return new WeatherSeries.Builder(start, HOUR_S, n)
        .column(Variable.AIR, air, Stand.instant(HOUR_S))
        .column(Variable.HUMIDITY, rh, Stand.instant(HOUR_S))
        .column(Variable.WIND, wind, Stand.MEAN)
        .column(Variable.GHI, ghi, Stand.MEAN)
        .column(Variable.PRECIPITATION, rain, Stand.MEAN)
        .windHeightM(10)
        .place(Optional.of(s.place()))
        .formatId("generated")
        .source(
            String.format(
                Locale.ROOT,
                "invented by our weather generator from monthly normals, seed %d; no measurement",
                s.seed()))
        .warnings(List.of())
        .build();
  }

  private double temperature(int d, double solarH) {
    if (solarH < riseSolarH[d]) {
      return night(highC[d - 1], lowC[d], HIGH_AT_SOLAR_H - 24, riseSolarH[d], solarH);
    }
    if (solarH <= HIGH_AT_SOLAR_H) {
      return Disaggregation.half(lowC[d], highC[d], riseSolarH[d], HIGH_AT_SOLAR_H, solarH);
    }
    return night(highC[d], lowC[d + 1], HIGH_AT_SOLAR_H, riseSolarH[d + 1] + 24, solarH);
  }

  private static double night(double high, double low, double from, double to, double solarH) {
    return Disaggregation.half(
        high, low, 0, 1, StrictMath.pow((solarH - from) / (to - from), EVENING));
  }

  /** Shares each solar day's light among its hours; broken cloud makes single hours vary. */
  private void light(double[] ghi) {
    Draws draws = new Draws(s.seed(), 3);
    long start = s.firstEpochDay() * 86400;
    SunTrack sun = new SunTrack(s.place(), start - 86400, start + (s.days() + 1L) * 86400);
    int n = ghi.length;
    int margin = 24;
    double[] outside = new double[n + 2 * margin];
    double[] weight = new double[n + 2 * margin];
    double[] dayOutside = new double[days];
    double[] dayWeight = new double[days];
    double cloud = 0;
    for (int i = 0; i < outside.length; i++) {
      cloud = next(cloud, 0.6, draws.normal());
      double from = start + (double) (i - margin) * HOUR_S;
      double sum = 0;
      for (int k = 0; k < 12; k++) {
        double t = from + (k + 0.5) * 300;
        sun.at(t);
        sum += Math.max(0, sun.up()) * sun.extraterrestrialNormalWM2(t) / 12;
      }
      int d = dayIndex(from + 0.5 * HOUR_S);
      outside[i] = sum;
      double broken = 4 * clearness[d] * (1 - clearness[d]);
      // lower sun, longer way through the air; the attenuation of Haurwitz 1945, held at low sun
      double air = StrictMath.exp(-0.059 / Math.max(sum / Irradiance.SOLAR_CONSTANT_W_M2, 0.1));
      weight[i] = sum * air * StrictMath.exp(0.45 * broken * cloud);
      dayOutside[d] += sum;
      dayWeight[d] += weight[i];
    }
    for (int i = 0; i < n; i++) {
      int d = dayIndex(start + (i + 0.5) * HOUR_S);
      double share = dayWeight[d] > 0 ? weight[i + margin] / dayWeight[d] : 0;
      ghi[i] = round(Math.min(clearness[d] * dayOutside[d] * share, 0.85 * outside[i + margin]), 1);
    }
  }

  /** Rain falls in one block of hours of the day, and the air is near saturation while it does. */
  private void rain(double[] rain, double[] rh) {
    Draws draws = new Draws(s.seed(), 4);
    for (int d = 1; d <= s.days(); d++) {
      int hours = 3 + draws.below(10);
      int first = draws.below(24);
      double[] part = new double[hours];
      double sum = 0;
      for (int k = 0; k < hours; k++) {
        part[k] = draws.exponential();
        sum += part[k];
      }
      for (int k = 0; k < hours && rainMm[d] > 0; k++) {
        int i = (d - 1) * 24 + first + k;
        if (i < rain.length) {
          rain[i] = round(rain[i] + rainMm[d] * part[k] / sum, 0.1);
          rh[i] = Math.max(rh[i], 90 + Math.rint(8 * part[k] / sum));
        }
      }
    }
  }

  private int dayIndex(double epochS) {
    double local = epochS + s.place().longitudeDeg() * 240 - s.firstEpochDay() * 86400.0;
    return Math.max(0, Math.min(days - 1, (int) Math.floor(local / 86400) + 1));
  }

  private double solarHour(double epochS) {
    double local = epochS + s.place().longitudeDeg() * 240;
    return (local - Math.floor(local / 86400) * 86400) / 3600;
  }

  private double riseSolarHour(long epochDay) {
    int n = LocalDate.ofEpochDay(epochDay).getDayOfYear();
    double half =
        Almanac.sunsetHourAngleDeg(s.place().latitudeDeg(), Almanac.cooperDeclinationDeg(n)) / 15;
    // in the polar night and day the coldest hour comes some hours before noon all the same
    return 12 - Math.max(3, Math.min(9, half));
  }

  private static double round(double value, double unit) {
    double scaled = Math.rint(value / unit);
    return unit < 1 ? scaled / Math.rint(1 / unit) : scaled * unit;
  }

  /** Logistic stand-in for the normal distribution, within 0.01: Bowling and others 2009. */
  private static double normalCdf(double x) {
    return 1 / (1 + StrictMath.exp(-x * (1.5976 + 0.07056 * x * x)));
  }

  private static double quantile(double p) {
    double low = -8;
    double high = 8;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (normalCdf(middle) < p) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }
}
