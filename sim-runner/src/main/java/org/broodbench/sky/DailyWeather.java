package org.broodbench.sky;

import java.util.List;
import java.util.Optional;
import org.broodbench.matter.MoistAir;

/**
 * Daily records and how they become hours: temperature by half cosines, light by the shares of
 * Collares-Pereira and Rabl scaled to the day's sum, dew point, wind and rain even over the day.
 * Days are of local mean solar time.
 *
 * @param place where
 * @param firstEpochDay first date, days since 1970-01-01
 * @param days one after another
 * @param source who measured it
 */
public record DailyWeather(Place place, long firstEpochDay, List<Day> days, String source) {

  /**
   * One day; NaN where there is no value.
   *
   * @param lowC lowest temperature; needed
   * @param highC highest temperature; needed
   * @param ghiKWhM2 global irradiation; else from the range of temperature by Hargreaves and Samani
   *     with 0.16, at most the clear day of FAO-56
   * @param dewC dew point; else the lowest temperature (FAO-56 equation 48)
   * @param windMS mean wind at 10 m
   * @param precipMm sum
   */
  public record Day(
      double lowC, double highC, double ghiKWhM2, double dewC, double windMS, double precipMm) {
    /** Refuses days without temperatures. */
    public Day {
      if (!(highC >= lowC)) {
        throw new IllegalArgumentException(
            "a day needs a highest temperature not below its lowest: " + lowC + ", " + highC);
      }
    }
  }

  /** Copies the list. */
  public DailyWeather {
    days = List.copyOf(days);
    if (days.isEmpty()) {
      throw new IllegalArgumentException("at least one day");
    }
  }

  /** Hours of UTC that the days cover; spot values stand at the end of the hour. */
  public WeatherSeries toHourly() {
    int n = days.size() * 24;
    // the UTC hour that begins nearest to the local midnight
    long start = startEpochS();
    double aheadH = aheadH();
    double[] air = new double[n];
    double[] rh = new double[n];
    double[] wind = new double[n];
    double[] ghi = new double[n];
    double[] rain = new double[n];
    double[] rise = new double[days.size()];
    for (int d = 0; d < rise.length; d++) {
      rise[d] = riseH(firstEpochDay + d);
    }
    boolean anyRain = false;
    boolean anyWind = false;
    for (int i = 0; i < n; i++) {
      int d = i / 24;
      Day day = days.get(d);
      Day before = days.get(Math.max(0, d - 1));
      Day after = days.get(Math.min(days.size() - 1, d + 1));
      double hour = i % 24 + 1 + aheadH;
      air[i] =
          Disaggregation.cosineAirC(
              before.highC,
              day.lowC,
              day.highC,
              after.lowC,
              hour,
              rise[d],
              rise[Math.min(rise.length - 1, d + 1)]);
      double dew = Double.isNaN(day.dewC) ? day.lowC : day.dewC;
      rh[i] =
          Math.min(100, 100 * MoistAir.saturationWaterPa(dew) / MoistAir.saturationWaterPa(air[i]));
      wind[i] = day.windMS;
      rain[i] = day.precipMm / 24;
      anyWind |= !Double.isNaN(day.windMS);
      anyRain |= !Double.isNaN(day.precipMm);
    }
    for (int d = 0; d < days.size(); d++) {
      light(d, ghi);
    }
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(start, 3600, n)
            .column(Variable.AIR, air, Stand.instant(3600))
            .column(Variable.HUMIDITY, rh, Stand.instant(3600))
            .column(Variable.GHI, ghi, Stand.MEAN);
    if (anyWind) {
      b.column(Variable.WIND, wind, Stand.MEAN);
    }
    if (anyRain) {
      b.column(Variable.PRECIPITATION, rain, Stand.MEAN);
    }
    return b.place(Optional.of(place))
        .formatId("daily")
        .source(source)
        .warnings(List.of("hours were made out of daily values"))
        .build();
  }

  private long startEpochS() {
    return Math.round(firstEpochDay * 24 - place.longitudeDeg() / 15) * 3600;
  }

  /** Local mean solar time of the start, hours after midnight; half an hour at most. */
  private double aheadH() {
    return (startEpochS() + place.longitudeDeg() * 240 - firstEpochDay * 86400.0) / 3600;
  }

  private void light(int d, double[] ghi) {
    long date = firstEpochDay + d;
    double noon = date * 86400.0 + 43200 - place.longitudeDeg() * 240;
    Sun.Ephemeris e = Sun.ephemeris(noon, Sun.DELTA_T_S);
    double ws = Almanac.sunsetHourAngleDeg(place.latitudeDeg(), e.declinationDeg());
    double equationH = Sun.equationOfTimeMin(noon) / 60;
    double[] share = new double[24];
    double sum = 0;
    for (int h = 0; h < 24; h++) {
      for (int k = 0; k < 12; k++) {
        double solarH = h + (k + 0.5) / 12 + aheadH() + equationH;
        share[h] += Disaggregation.globalShare(15 * (solarH - 12), ws);
      }
      sum += share[h];
    }
    double kWh = irradiationKWh(d, e);
    for (int h = 0; h < 24 && sum > 0; h++) {
      ghi[24 * d + h] = 1000 * kWh * share[h] / sum;
    }
  }

  private double irradiationKWh(int d, Sun.Ephemeris e) {
    Day day = days.get(d);
    if (!Double.isNaN(day.ghiKWhM2)) {
      return day.ghiKWhM2;
    }
    double outside = Irradiance.SOLAR_CONSTANT_W_M2 / (e.distanceAu() * e.distanceAu());
    double ra = Almanac.dailyMJ(place.latitudeDeg(), e.declinationDeg(), outside);
    double mj = Disaggregation.hargreavesMJ(day.lowC, day.highC, 0.16, ra);
    return Math.min(mj, Disaggregation.faoClearMJ(place.altitudeM(), ra)) / 3.6;
  }

  /**
   * Local mean solar time of sunrise; in the polar night and day a stand-in for the coldest hour.
   */
  private double riseH(long epochDay) {
    double noon = epochDay * 86400.0 + 43200 - place.longitudeDeg() * 240;
    Sun.Ephemeris e = Sun.ephemeris(noon, Sun.DELTA_T_S);
    double half = Almanac.sunsetHourAngleDeg(place.latitudeDeg(), e.declinationDeg()) / 15;
    return 12 - e.hourAngleDeg(place.longitudeDeg()) / 15 - Math.max(3, Math.min(9, half));
  }
}
