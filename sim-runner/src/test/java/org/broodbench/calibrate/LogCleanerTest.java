package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Logs as they come from the field: what is put right, and what is refused with which words. */
class LogCleanerTest {
  private static final long FROM_S = 1_800_000_000L;
  private static final int ROWS = 3000;

  private static double[] row(double brood, double outdoor) {
    double[] row = new double[LogColumn.COUNT];
    Arrays.fill(row, Double.NaN);
    row[LogColumn.BROOD_A.ordinal()] = brood;
    row[LogColumn.OUTDOOR.ordinal()] = outdoor;
    return row;
  }

  private static double brood(int i) {
    return 33 + StrictMath.sin(i / 300.0);
  }

  private static double outdoor(int i) {
    return 4 + 5 * StrictMath.sin(i / 230.0);
  }

  private static RawLog good() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(brood(i), outdoor(i)));
    }
    return raw;
  }

  private static LogRefused refused(RawLog raw) {
    return assertThrows(LogRefused.class, () -> LogCleaner.clean(raw));
  }

  @Test
  void aGoodLogStaysAsItIs() {
    FieldLog log = LogCleaner.clean(good());
    assertEquals(ROWS, log.rows());
    assertEquals(60, log.stepS());
    assertEquals(brood(1234), log.column(LogColumn.BROOD_A)[1234]);
    assertTrue(log.notes().isEmpty(), log.notes().toString());
  }

  @Test
  void rowsOutOfOrderAreSortedAndDuplicatesDropped() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      int k = i % 10 == 3 ? i + 1 : i % 10 == 4 ? i - 1 : i;
      raw.add(i + 2, FROM_S + 60L * k, row(brood(k), outdoor(k)));
      if (i % 100 == 0) {
        raw.add(i + 2, FROM_S + 60L * k, row(brood(k), outdoor(k)));
      }
    }
    FieldLog log = LogCleaner.clean(raw);
    assertEquals(ROWS, log.rows());
    for (int i = 1; i < log.rows(); i++) {
      assertTrue(log.epochS()[i] > log.epochS()[i - 1]);
    }
    assertTrue(log.notes().get(0).contains("sorted"), log.notes().toString());
    assertTrue(log.notes().get(1).startsWith("30 rows"), log.notes().toString());
  }

  @Test
  void shuffledRowsAndRowsWithTheNewestFirstAreTheSameLog() {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      order.add(i);
    }
    List<Integer> newestFirst = new ArrayList<>(order);
    Collections.reverse(newestFirst);
    Collections.shuffle(order, new Random(1));
    for (List<Integer> rows : List.of(order, newestFirst)) {
      RawLog raw = new RawLog();
      for (int k : rows) {
        raw.add(raw.rows() + 2, FROM_S + 60L * k, row(brood(k), outdoor(k)));
      }
      FieldLog log = LogCleaner.clean(raw);
      assertEquals(60, log.stepS());
      assertEquals(ROWS, log.rows());
      assertEquals(FROM_S, log.fromS());
      assertEquals(brood(1234), log.column(LogColumn.BROOD_A)[1234]);
      assertEquals(1, log.notes().size(), log.notes().toString());
      assertTrue(log.notes().get(0).contains("sorted"), log.notes().toString());
    }
  }

  @Test
  void aLostClockIsContinued() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      boolean lost = i >= 1000 && i < 1100;
      raw.add(i + 2, lost ? 60L * (i - 1000) : FROM_S + 60L * i, row(brood(i), outdoor(i)));
    }
    FieldLog log = LogCleaner.clean(raw);
    assertEquals(ROWS, log.rows());
    assertEquals(FROM_S + 60L * 1050, log.epochS()[1050]);
    assertTrue(log.notes().get(0).contains("lost its clock"), log.notes().toString());
  }

  @Test
  void aGapOfThreeDaysIsTold() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i + (i > 1500 ? 3 * 86_400 : 0), row(brood(i), outdoor(i)));
    }
    FieldLog log = LogCleaner.clean(raw);
    assertTrue(log.notes().stream().anyMatch(n -> n.startsWith("gap of 72.0 h")));
    assertEquals(3 * 86_400 + 60, log.gaps(3600).get(0).lengthS());
  }

  @Test
  void errorCodesOfProbesAreDropped() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(i == 77 ? 85 : i == 99 ? -127 : brood(i), outdoor(i)));
    }
    FieldLog log = LogCleaner.clean(raw);
    assertTrue(Double.isNaN(log.column(LogColumn.BROOD_A)[77]));
    assertTrue(Double.isNaN(log.column(LogColumn.BROOD_A)[99]));
    assertFalse(Double.isNaN(log.column(LogColumn.BROOD_A)[78]));
  }

  @Test
  void anEmptyLogIsRefused() {
    assertEquals("no row", refused(new RawLog()).getMessage());
  }

  @Test
  void aStuckProbeAloneIsRefused() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(33.5, outdoor(i)));
    }
    assertEquals(
        "no temperature inside the hive that ever changes: brood_a reads 33.50 throughout",
        refused(raw).getMessage());
  }

  @Test
  void aStuckOutdoorProbeIsNotUsed() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(brood(i), 8));
    }
    FieldLog log = LogCleaner.clean(raw);
    assertFalse(log.has(LogColumn.OUTDOOR));
    assertTrue(log.notes().get(0).contains("stuck"), log.notes().toString());
  }

  @Test
  void fahrenheitReadAsCelsiusIsSaid() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(brood(i) * 1.8 + 32, outdoor(i) * 1.8 + 32));
    }
    LogRefused e = refused(raw);
    assertEquals("brood_a", e.column());
    assertTrue(e.getMessage().contains("as Fahrenheit they are 33"), e.getMessage());
    assertTrue(e.hint().contains("degF"), e.hint());
  }

  @Test
  void twoHivesWhoseRowsTakeTurnsAreTold() {
    RawLog raw = new RawLog();
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < ROWS; i++) {
      boolean other = random.nextBoolean();
      raw.add(i + 2, FROM_S + 60L * i, row(brood(i) - (other ? 9 : 0), outdoor(i)));
    }
    LogRefused e = refused(raw);
    assertTrue(e.hint().startsWith("Rows of two hives"), e.hint());
  }

  @Test
  void twoHivesAtTheSameMomentsAreTold() {
    RawLog raw = new RawLog();
    for (int i = 0; i < ROWS; i++) {
      raw.add(2 * i + 2, FROM_S + 60L * i, row(brood(i), outdoor(i)));
      raw.add(2 * i + 3, FROM_S + 60L * i, row(brood(i) - 9, outdoor(i)));
    }
    LogRefused e = refused(raw);
    assertTrue(e.hint().startsWith("Two hives"), e.hint());
  }

  @Test
  void halfADayIsTooLittle() {
    RawLog raw = new RawLog();
    for (int i = 0; i < 700; i++) {
      raw.add(i + 2, FROM_S + 60L * i, row(brood(i), outdoor(i)));
    }
    assertTrue(refused(raw).getMessage().contains("0.5 days"));
  }
}
