package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.broodbench.loop.RunResult;
import org.broodbench.study.Outcome;
import org.junit.jupiter.api.Test;

/** The days' lines add up to what the whole run counted on its own way. */
class DayRowVerificationTest {
  private final Outcome outcome = TestOutcomes.sixDays();
  private final RunResult run = outcome.main();
  private final List<DayRow> days =
      DayRow.of(run, outcome.scenario().run().bandLowC(), outcome.scenario().run().bandHighC());

  @Test
  void thereIsOneLineADay() {
    assertEquals(6, days.size());
  }

  @Test
  void startsAndHeaterHoursAddUp() {
    assertEquals(run.heaterCommanded().starts(), days.stream().mapToInt(DayRow::starts).sum());
    assertEquals(run.heaterCommanded().onS() / 3600, sum(DayRow::heaterHours), 1e-6);
  }

  @Test
  void energiesAddUp() {
    assertEquals(
        run.power().pvUsedJ / 3600, sum(DayRow::panelWh), 1e-6 * run.power().pvUsedJ / 3600);
  }

  /** The run counts whole steps of up to 10 s, the events stand at ticks: a step at each change. */
  @Test
  void hoursShedAddUp() {
    long changes = run.events().stream().filter(e -> e.what().equals("shed level")).count();
    assertEquals(run.hoursShed(), sum(DayRow::shedHours), changes * 10 / 3600.0);
  }

  /**
   * The run counts steps of up to 10 s, a line counts rows of a minute: a minute at each crossing.
   */
  @Test
  void hoursOutOfBandAddUp() {
    assertEquals(run.brood().hoursBelow(), sum(DayRow::hoursBelow), 0.3);
    assertEquals(run.brood().hoursAbove(), sum(DayRow::hoursAbove), 0.3);
  }

  /** A row stands every minute, in which the comb moves by far less than 0.05 K. */
  @Test
  void extremesAgree() {
    assertEquals(
        run.brood().low().value(),
        days.stream().mapToDouble(DayRow::broodMinC).min().orElseThrow(),
        0.05);
    assertEquals(
        run.brood().high().value(),
        days.stream().mapToDouble(DayRow::broodMaxC).max().orElseThrow(),
        0.05);
    assertEquals(
        run.battery().lowestSoc().value(),
        days.stream().mapToDouble(DayRow::lowestSoc).min().orElseThrow(),
        0.001);
    assertEquals(run.brood().meanC(), sum(DayRow::broodMeanC) / days.size(), 0.01);
  }

  private double sum(ToDoubleFunction<DayRow> what) {
    return days.stream().mapToDouble(what).sum();
  }
}
