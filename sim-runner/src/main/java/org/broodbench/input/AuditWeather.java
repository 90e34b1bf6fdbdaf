package org.broodbench.input;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.broodbench.audit.Season;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Plane;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WeatherSummary;
import org.broodbench.sky.WorstWindows;

/**
 * Picks the weather that a rig is judged by on paper: of a record its hardest week and its darkest
 * whole month; of generated weather the hardest week of the run and the darkest month that the run
 * touches.
 */
public final class AuditWeather {
  private static final int WEEK = 7;
  private static final long DAY_S = 86_400;

  private AuditWeather() {}

  /**
   * The season of a scenario.
   *
   * @param found its weather
   * @param windowOnly whether only the scenario's window of a record counts; otherwise all of it
   * @param planes planes of hive and modules, the modules last
   * @throws BadInput where the weather holds no day that can be judged
   */
  public static Season of(ScenarioWeather found, boolean windowOnly, List<Plane> planes) {
    Window w = found.scenario().window();
    boolean made = found.scenario().weather().generated() && found.file().isEmpty();
    if (windowOnly || made) {
      found.forcing(planes); // refuses what does not reach over the window
    }
    WeatherSeries series =
        windowOnly && !made ? found.series().between(w.fromEpochS(), w.toEpochS()) : found.series();
    Window week = worstWeek(found, series);
    ScenarioWeather monthWeather = made ? touchedMonth(found.scenario()) : found;
    Window month = made ? monthWeather.scenario().window() : darkestMonth(series).orElse(week);
    String monthName = "darkest month, " + day(month).toString().substring(0, 7);
    return new Season(
        stretch("worst week, from " + day(week), found, week, planes),
        stretch(
            month.equals(week) ? "worst week, for want of a whole month" : monthName,
            monthWeather,
            month,
            planes));
  }

  private static Season.Stretch stretch(
      String name, ScenarioWeather weather, Window window, List<Plane> planes) {
    ScenarioWeather over =
        new ScenarioWeather(
            weather.scenario().withWindow(window),
            weather.series(),
            weather.file(),
            weather.assumed());
    return Season.Stretch.of(
        name, over.forcing(planes), weather.scenario().pv().groups().size(), planes.size());
  }

  private static Window worstWeek(ScenarioWeather found, WeatherSeries series) {
    boolean even = DAY_S % series.stepS() == 0;
    for (int days = WEEK; even && days > 0; days--) {
      List<WorstWindows.Window> worst = WorstWindows.find(series, days, 1, RigClass.SMALL, 0);
      if (!worst.isEmpty()) {
        return new Window(worst.get(0).fromEpochS(), days);
      }
    }
    throw new BadInput(
        List.of(
            new Problem(
                found.file().isEmpty() ? "generated weather" : found.file(),
                0,
                0,
                "",
                "no whole day with air temperature and sunlight",
                "a record of at least one whole UTC day, in steps that divide the day",
                "A week or more is better.")));
  }

  /** The darkest made month of those that the run touches, twelve at most. */
  private static ScenarioWeather touchedMonth(Scenario s) {
    YearMonth first = YearMonth.from(day(s.window()));
    YearMonth last = YearMonth.from(date(s.window().toEpochS() - 1));
    ScenarioWeather darkest = null;
    double least = Double.POSITIVE_INFINITY;
    for (YearMonth m = first; !m.isAfter(last) && m.isBefore(first.plusYears(1)); ) {
      ScenarioWeather made = ScenarioWeather.of(s.withWindow(window(m)), null, List.of());
      double ghi = WeatherSummary.of(made.series()).meanGhiKWhM2Day();
      if (ghi < least) {
        least = ghi;
        darkest = made;
      }
      m = m.plusMonths(1);
    }
    return darkest;
  }

  /** The darkest calendar month that a record holds whole. */
  private static Optional<Window> darkestMonth(WeatherSeries series) {
    return WeatherSummary.of(series).monthly().stream()
        .sorted(Comparator.comparingDouble(WeatherSummary.Month::ghiKWhM2Day))
        .map(m -> window(YearMonth.parse(m.month())))
        .filter(w -> whole(series, w))
        .findFirst();
  }

  private static boolean whole(WeatherSeries series, Window w) {
    if (w.fromEpochS() < series.startEpochS() || w.toEpochS() > series.endEpochS()) {
      return false;
    }
    int first = (int) ((w.fromEpochS() - series.startEpochS()) / series.stepS());
    int last = (int) ((w.toEpochS() - 1 - series.startEpochS()) / series.stepS());
    for (int i = first; i <= last; i++) {
      if (Double.isNaN(series.value(Variable.AIR, i))
          || Double.isNaN(series.value(Variable.GHI, i))) {
        return false;
      }
    }
    return true;
  }

  private static Window window(YearMonth m) {
    return new Window(m.atDay(1).toEpochDay() * DAY_S, m.lengthOfMonth());
  }

  private static LocalDate day(Window w) {
    return date(w.fromEpochS());
  }

  private static LocalDate date(long epochS) {
    return LocalDate.ofInstant(Instant.ofEpochSecond(epochS), ZoneOffset.UTC);
  }
}
