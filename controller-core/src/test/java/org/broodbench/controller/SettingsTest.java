package org.broodbench.controller;

import static org.broodbench.controller.Setting.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Rules X1 to X9 and B9: what is refused, and what the messages say. */
@Tag("fast")
class SettingsTest {
  private static final Settings COMB = Bench.comb();

  private static List<String> refused(Settings settings) {
    return settings.problems().stream().map(SettingProblem::setting).toList();
  }

  private static SettingProblem only(Settings settings) {
    List<SettingProblem> problems = settings.problems();
    assertEquals(1, problems.size(), problems::toString);
    return problems.get(0);
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void everyBoundIsTheLastThatIsAllowed(Setting setting) {
    assertTrue(refused(COMB.with(setting, setting.low() - 1)).contains(setting.key()));
    assertTrue(refused(COMB.with(setting, setting.high() + 1)).contains(setting.key()));
    for (int bound : new int[] {setting.low(), setting.high()}) {
      for (SettingProblem problem : COMB.with(setting, bound).problems()) {
        assertNotEquals("bounds of this setting", problem.hint());
      }
    }
  }

  @Test
  void everyProblemIsReportedAtOnce() {
    Settings bad = COMB.with(RELAY_MIN_OFF_MILLIS, -1).with(HEAT_SET_POINT_CENTI_C, 9000);
    IllegalSettings error = assertThrows(IllegalSettings.class, () -> new Controller(bad));
    assertEquals(2, error.problems().size());
    assertEquals(
        "heat_set_point_centi_c: found 90.00 degC, allowed 5.00 degC to 36.00 degC"
            + " (bounds of this setting)\n"
            + "relay_min_off_millis: found -0.001 s, allowed 0.00 s to 3600.00 s"
            + " (bounds of this setting)",
        error.getMessage());
  }

  @Test
  void sagMessageShowsItsArithmetic() {
    SettingProblem problem =
        only(
            COMB.with(HEATER_RATED_MILLI_A, 7800)
                .with(SHED_STANDBY_LEAVE_MILLI_V, 12_300)
                .with(SHED_SET_BACK_LEAVE_MILLI_V, 12_450)
                .with(SHED_SURVIVAL_LEAVE_MILLI_V, 12_450 + 50)
                .with(SHED_SET_BACK_LEAVE_MILLI_V, 12_560));
    assertEquals("shed_set_back_leave_milli_v", problem.setting());
    assertEquals("12.56 V", problem.foundText());
    assertEquals("above 12.56 V", problem.allowedText());
    assertEquals(
        "leave 12.56 V minus enter 12.25 V is 0.31 V; 8.00 A x 30 mOhm + rebound 0.05 V"
            + " + reading error 0.02 V need 0.31 V",
        problem.hint());
    assertEquals(
        List.of(),
        COMB.with(HEATER_RATED_MILLI_A, 7800).with(SHED_SET_BACK_LEAVE_MILLI_V, 12_561).problems());
  }

  private static void edge(Setting setting, int allowed, int refused, Settings base) {
    assertTrue(
        !refused(base.with(setting, allowed)).contains(setting.key()),
        () -> base.with(setting, allowed).problems().toString());
    assertTrue(refused(base.with(setting, refused)).contains(setting.key()), setting.key());
  }

  @Test
  void temperaturesHaveToLeaveRoomForEachOther() {
    edge(LIMIT_BROOD_CENTI_C, 3400, 3399, COMB);
    edge(LIMIT_BROOD_CENTI_C, 3500, 3499, COMB.with(HEAT_SOAK_CENTI_K, 100));
    edge(FAN_ON_CENTI_C, 3650, 3649, COMB.with(FAN_OFF_CENTI_C, 3500));
    edge(FAN_ON_CENTI_C, 3700, 3699, COMB.with(FAN_OFF_CENTI_C, 3690));
    edge(FAN_OFF_CENTI_C, 3301, 3300, COMB);
    edge(FAN_OFF_CENTI_C, 3401, 3400, COMB.with(HEAT_SOAK_CENTI_K, 100));
    edge(HEAT_SURVIVAL_CENTI_C, 2500, 2501, COMB.with(HEAT_SET_POINT_CENTI_C, 2500));
    edge(HEAT_RAMP_FLOOR_CENTI_C, 2500, 2501, COMB.with(HEAT_SET_POINT_CENTI_C, 2500));
    edge(LIMIT_PAN_TRIP_CENTI_C, 3900, 3899, COMB);
    edge(FALLBACK_PAN_CENTI_C, 2600, 2601, COMB.with(LIMIT_PAN_CENTI_C, 2600));
    edge(ALARM_BROOD_LOW_CENTI_C, 3300, 3301, COMB);
    edge(ALARM_BROOD_HIGH_CENTI_C, 3650, 3649, COMB);
  }

  @Test
  void sharesHaveToFitTheirWindowsAndMinimumOn() {
    edge(EFFECT_SHARE_WINDOW_MILLIS, 301_000, 300_999, COMB);
    edge(EFFECT_SHARE_ON_MILLIS, 180_000, 179_999, COMB);
    edge(SHED_BLIND_WINDOW_MILLIS, 901_000, 900_999, COMB);
    edge(SHED_BLIND_ON_MILLIS, 180_000, 179_999, COMB);
    edge(FAN_COLD_WINDOW_MILLIS, 301_000, 300_999, COMB);
    edge(FAN_COLD_ON_MILLIS, 60_000, 59_999, COMB);
    edge(PURGE_WINDOW_MILLIS, 181_000, 180_999, COMB);
    edge(PURGE_ON_MILLIS, 60_000, 59_999, COMB);
  }

  @Test
  void batterySettingsHaveToAgree() {
    edge(BATTERY_WORST_MILLI_OHM, 30, 29, COMB);
    edge(BATTERY_HIGHEST_MILLI_V, 6001, 6000, COMB);
    edge(BATTERY_LOWEST_MILLI_V, 10_800, 10_801, COMB);
    edge(SHED_EMERGENCY_MILLI_V, 11_599, 11_600, COMB);
    edge(SHED_SURVIVAL_ENTER_MILLI_V, 12_249, 12_250, COMB);
    edge(SHED_SURVIVAL_LEAVE_MILLI_V, 12_550, 12_551, COMB);
    edge(SHED_STANDBY_ENTER_MILLI_V, 11_799, 11_800, COMB);
    Settings lithium = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE);
    edge(
        SHED_HEAT_LEAVE_PERMILLE,
        210,
        209,
        lithium.with(SHED_STANDBY_LEAVE_PERMILLE, 200).with(SHED_FAN_LEAVE_PERMILLE, 205));
    edge(SHED_SURVIVAL_ENTER_PERMILLE, 399, 400, lithium);
    edge(SHED_SURVIVAL_LEAVE_PERMILLE, 500, 501, lithium);
    // Thresholds that are not in use are not judged.
    assertEquals(List.of(), lithium.with(SHED_HEAT_LEAVE_MILLI_V, 1).problems());
    assertEquals(List.of(), COMB.with(SHED_HEAT_LEAVE_PERMILLE, 1).problems());
    assertEquals(
        List.of(), COMB.with(FITTED_BATTERY, 0).with(SHED_HEAT_LEAVE_MILLI_V, 1).problems());
  }

  @Test
  void lithiumByLeadAcidVoltsIsRefused() {
    Settings volts =
        Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE)
            .with(SHED_BY_STATE_OF_CHARGE, false)
            .with(SHED_EMERGENCY_MILLI_V, 10_800);
    SettingProblem problem = only(volts);
    assertEquals("shed_heat_enter_milli_v", problem.setting());
    assertEquals("at least 12.80 V", problem.allowedText());
    assertEquals(List.of(), volts.with(FITTED_BATTERY, false).problems());
  }

  @Test
  void probesAndReadingsHaveToBeFitted() {
    assertEquals(List.of("fitted_brood_a"), refused(COMB.with(FITTED_BROOD_A, 0)));
    assertEquals(
        List.of("fitted_brood_b"), refused(COMB.with(FITTED_BROOD_A, 0).with(FITTED_BROOD_B, 1)));
    Settings lithium =
        Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE)
            .with(FITTED_STATE_OF_CHARGE, 0);
    assertEquals(List.of("shed_by_state_of_charge"), refused(lithium));
    assertEquals(List.of(), refused(lithium.with(FITTED_BATTERY, 0)));
  }

  @Test
  void purgesHaveToEnd() {
    edge(PURGE_OFF_PERMILLE, 840, 841, COMB);
    edge(PURGE_TIMED_EVERY_MILLIS, 120_000, 119_999, COMB);
    edge(PURGE_TIMED_EVERY_MILLIS, 0, 1, COMB);
  }

  @Test
  void messagesShowEveryUnit() {
    assertEquals("0.05 K", show(HEAT_DIFFERENTIAL_CENTI_K, 5));
    assertEquals("-60.00 degC", show(TRUST_LOWEST_CENTI_C, -6000));
    assertEquals("100.001 V", show(BATTERY_LOWEST_MILLI_V, 100_001));
    assertEquals("0.009 A", show(HEATER_RATED_MILLI_A, 9));
    assertEquals("100.1 %", show(PURGE_ON_PERMILLE, 1001));
    assertEquals("2", show(FITTED_FAN, 2));
    assertEquals("0.90 s", show(TRUST_GAIN_MILLIS, 900));
    assertEquals("0.25 s", show(TRUST_GAIN_MILLIS, 250));
  }

  private static String show(Setting setting, int value) {
    return COMB.with(setting, value).problems().stream()
        .filter(p -> p.setting().equals(setting.key()))
        .findFirst()
        .orElseThrow()
        .foundText();
  }

  @Test
  void settingsAreValues() {
    assertEquals(COMB, COMB.with(FITTED_FAN, false).with(FITTED_FAN, true));
    assertEquals(COMB.hashCode(), Bench.comb().hashCode());
    assertNotEquals(COMB, COMB.with(FITTED_FAN, 0));
    assertNotEquals(COMB, Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.FLOODED));
    assertNotEquals(COMB, Settings.defaults(ProbePlace.BOX_AIR, Chemistry.AGM));
    assertNotEquals(COMB, "settings");
    assertNotEquals(COMB.hashCode(), COMB.with(FITTED_FAN, 0).hashCode());
    assertTrue(COMB.toString().startsWith("BROOD_COMB AGM fitted_brood_a=1 "));
    assertTrue(COMB.is(FITTED_FAN));
  }

  @Test
  void otherNominalVoltsScaleEveryVoltSetting() {
    Settings twice = COMB.atNominalVolts(24);
    assertEquals(24_100, twice.get(SHED_HEAT_ENTER_MILLI_V));
    assertEquals(100, twice.get(BATTERY_REBOUND_MILLI_V));
    assertEquals(5000, twice.get(HEATER_RATED_MILLI_A));
    assertEquals(List.of(), twice.problems());
    assertEquals(COMB, COMB.atNominalVolts(12));
    assertEquals(List.of(), COMB.atNominalVolts(48).problems());
    for (int volts : new int[] {0, 13, 60}) {
      assertThrows(IllegalArgumentException.class, () -> COMB.atNominalVolts(volts));
    }
  }
}
