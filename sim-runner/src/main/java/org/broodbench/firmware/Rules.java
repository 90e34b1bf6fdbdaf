package org.broodbench.firmware;

import static org.broodbench.firmware.CommandField.*;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Setting;
import org.broodbench.controller.ShedLevel;

/**
 * The rules of SPEC.md in a few words each, with how a step that exercises one looks from outside.
 * Rules about form alone (T1, T4, T6 to T8 and others) cannot be seen in a step and are not here.
 */
final class Rules {
  private record Rule(String words, Predicate<Moment> seen) {}

  private static final Map<String, Rule> ALL = all();
  private static final String[] IDS = ALL.keySet().toArray(String[]::new);
  private static final List<Rule> RULES = List.copyOf(ALL.values());

  private Rules() {}

  /** How many there are. */
  static int count() {
    return IDS.length;
  }

  static String id(int index) {
    return IDS[index];
  }

  static boolean seen(int index, Moment moment) {
    return RULES.get(index).seen().test(moment);
  }

  /** What a rule says, in a few words. */
  static String words(String id) {
    Rule rule = ALL.get(id);
    return rule == null ? "see SPEC.md" : rule.words();
  }

  private static Map<String, Rule> all() {
    Map<String, Rule> r = new LinkedHashMap<>();
    time(r);
    probes(r);
    thermostat(r);
    limits(r);
    battery(r);
    relay(r);
    fan(r);
    supply(r);
    button(r);
    alarms(r);
    return r;
  }

  private static void add(
      Map<String, Rule> rules, String id, String words, Predicate<Moment> seen) {
    rules.put(id, new Rule(words, seen));
  }

  private static void time(Map<String, Rule> r) {
    add(r, "T2", "time is a wrapping difference; backwards counts as none", m -> m.dtMillis() < 0);
    add(r, "T3", "a long gap counts 60 s towards releases", m -> m.dtMillis() > 60_000);
    add(r, "T5", "a first step counts no time", m -> m.first() || m.restart() != null);
    add(r, "N3", "a restored state has the same future", m -> m.restart() == Tick.Kind.RESTART);
    add(r, "N4", "settings may change over a restart", m -> m.restart() == Tick.Kind.SETTING);
    add(r, "R7", "a loss of power opens the relays", m -> m.restart() == Tick.Kind.POWER_LOSS);
  }

  private static void probes(Map<String, Rule> r) {
    add(
        r,
        "P1",
        "only a fresh, valid sample in range is usable",
        m -> !m.fresh(Channel.BROOD_A) || !m.fresh(Channel.PAN));
    add(
        r,
        "P2",
        "a change faster than the stated rate is not good",
        m -> m.known() && m.fresh(Channel.BROOD_A) && far(m));
    add(
        r,
        "P3",
        "the last good value is held, then trust is lost",
        m -> m.known() && !m.fresh(Channel.BROOD_A));
    add(r, "P4", "trust is gained by good samples", m -> m.known() && !m.knownBefore());
    add(r, "P7", "a probe that never changes is stuck", m -> m.alarm(Alarm.PROBE_STUCK));
    add(
        r,
        "W1",
        "B at another place never governs",
        m -> m.is(Setting.FITTED_BROOD_B) && !m.is(Setting.BROOD_B_LIKE_PLACE));
    add(
        r,
        "W2",
        "the lower of two calls, the higher stops",
        m -> m.now(GOVERNING_CENTI_C) != m.now(GOVERNING_HIGH_CENTI_C));
    add(r, "W3", "two too far apart: the warmer one counts", m -> m.alarm(Alarm.PROBES_APART));
    add(r, "W4", "one trusted probe is both", m -> m.known() && !m.fresh(Channel.BROOD_B));
    add(r, "W5", "without a brood probe the pan is held", m -> m.reason(Reason.FALLBACK));
    add(r, "W7", "nothing trusted: no heat", m -> m.reason(Reason.TRUST));
  }

  private static boolean far(Moment m) {
    long change = (long) m.value(Channel.BROOD_A) - m.before(GOVERNING_CENTI_C);
    return Math.abs(change) > m.get(Setting.TRUST_STEP_CENTI_K) + m.get(Setting.TRUST_PAIR_CENTI_K);
  }

  private static void thermostat(Map<String, Rule> r) {
    Predicate<Moment> both = m -> m.known() && m.knownBefore();
    add(
        r,
        "H1",
        "the target follows the shed level",
        m -> m.known() && m.now(SHED_LEVEL) == ShedLevel.SURVIVAL);
    add(
        r,
        "H2",
        "the working set point goes down at once",
        both.and(m -> m.fell(WORKING_SET_POINT_CENTI_C)));
    add(
        r,
        "H3",
        "the working set point goes up by its ramp",
        both.and(m -> m.rose(WORKING_SET_POINT_CENTI_C)));
    add(
        r,
        "H4",
        "the ramp starts at the brood, and anew after long without heat",
        m -> m.known() && !m.knownBefore());
    add(r, "H5", "brood not known: no call", m -> !m.known() && m.knownBefore());
    add(
        r,
        "H6",
        "stop at or above the working set point",
        m -> m.becomes(HEATER, 0) && m.now(HEATER_STOP_REASON) == Reason.NONE);
    add(
        r,
        "H7",
        "call at or below working set point less differential",
        m -> m.becomes(HEATER, 1) && m.reason(Reason.NONE));
    add(
        r,
        "H8",
        "charger full raises the target",
        m -> m.now(WORKING_SET_POINT_CENTI_C) > m.get(Setting.HEAT_SET_POINT_CENTI_C));
    add(
        r,
        "H9",
        "set-back lowers the target",
        m -> m.known() && m.now(SHED_LEVEL) == ShedLevel.SET_BACK);
    add(
        r,
        "H10",
        "the pan target follows the shed level",
        m -> m.reason(Reason.FALLBACK) && m.now(SHED_LEVEL) > ShedLevel.FULL);
  }

  private static void limits(Map<String, Rule> r) {
    add(r, "L1", "pan at its limit: no heat", m -> m.reason(Reason.PAN_LIMIT));
    add(
        r,
        "L2",
        "the pan limit clears at its differential",
        m ->
            m.before(HEATER_REASON) == Reason.PAN_LIMIT
                && m.now(HEATER_REASON) != Reason.PAN_LIMIT);
    add(r, "L3", "pan at its trip", m -> m.alarm(Alarm.PAN_TRIP));
    add(r, "L4", "brood at its limit: no heat", m -> m.alarmRose(Alarm.BROOD_LIMIT));
    add(
        r,
        "L5",
        "the limit of B elsewhere is its own",
        m ->
            m.alarm(Alarm.BROOD_LIMIT)
                && m.is(Setting.FITTED_BROOD_B)
                && !m.is(Setting.BROOD_B_LIKE_PLACE));
    add(r, "L6", "the brood limit clears at its differential", m -> m.alarmFell(Alarm.BROOD_LIMIT));
    add(r, "L7", "so many trips in a day latch heat off", m -> m.alarm(Alarm.TRIP_LATCHED));
    add(r, "L8", "a long press clears the latch", m -> m.alarmFell(Alarm.TRIP_LATCHED));
    add(
        r,
        "D1",
        "current after off: welded",
        m -> m.becomes(ISOLATION, 0) && m.is(Setting.FITTED_HEATER_CURRENT));
    add(
        r,
        "D2",
        "a pan that stays warm long after off: welded",
        m -> m.becomes(ISOLATION, 0) && !m.is(Setting.FITTED_HEATER_CURRENT));
    add(r, "D3", "welded opens the isolation switch", m -> m.now(ISOLATION) == 0);
    add(r, "D4", "a long press clears welded", m -> m.becomes(ISOLATION, 1) && !m.first());
    add(r, "E2", "a run is proven by pan or current", m -> m.alarmFell(Alarm.EFFECT));
    add(r, "E3", "a whole run without effect is unproven", m -> m.alarmRose(Alarm.EFFECT));
    add(r, "E5", "pan not believed: heat in its share", m -> m.reason(Reason.EFFECT));
  }

  private static void battery(Map<String, Rule> r) {
    add(
        r,
        "B1",
        "volts are corrected for load",
        m -> m.now(CORRECTED_MILLI_V) != 0 && m.now(CORRECTED_MILLI_V) != m.value(Channel.BATTERY));
    add(
        r,
        "B2",
        "without a current reading the rated loads count",
        m -> !m.is(Setting.FITTED_BATTERY_CURRENT) && m.before(HEATER) == 1);
    add(
        r,
        "B3",
        "the measure is volts or state of charge",
        m -> m.is(Setting.SHED_BY_STATE_OF_CHARGE));
    add(
        r,
        "B4",
        "standby is left only while charging",
        m -> m.before(SHED_LEVEL) == ShedLevel.STANDBY && m.fell(SHED_LEVEL));
    add(
        r,
        "B5",
        "each level sheds more than the one above",
        m -> m.fanReason(Reason.SHED) || m.reason(Reason.SHED));
    add(
        r,
        "B6",
        "at or below enter for its delay: down",
        m -> m.rose(SHED_LEVEL) && !m.alarm(Alarm.EMERGENCY) && !m.alarm(Alarm.BLIND));
    add(r, "B7", "emergency volts: standby at once", m -> m.alarm(Alarm.EMERGENCY));
    add(
        r,
        "B8",
        "above leave for the whole delay: one level up",
        m -> m.now(SHED_LEVEL) == m.before(SHED_LEVEL) - 1);
    add(r, "B10", "from so many sheds on the delay doubles", m -> m.rose(LEAVE_DELAY_MILLIS));
    add(r, "B11", "blind: survival, then heat shed", m -> m.alarm(Alarm.BLIND));
    add(
        r,
        "B12",
        "heat shed is assumed until the first measure",
        m -> m.before(SHED_LEVEL) == ShedLevel.HEAT_SHED && m.now(SHED_LEVEL) == ShedLevel.FULL);
    add(r, "B13", "no battery, no shed", m -> !m.is(Setting.FITTED_BATTERY));
    add(r, "B14", "the inverter follows the level", m -> m.now(INVERTER) != m.before(INVERTER));
    add(
        r,
        "B15",
        "on shore power the level restricts nothing",
        m -> m.now(SHED_LEVEL) >= ShedLevel.HEAT_SHED && m.now(HEATER) == 1);
  }

  private static void relay(Map<String, Rule> r) {
    Predicate<Moment> stops = m -> m.becomes(HEATER, 0) && !m.first();
    add(
        r,
        "G1",
        "at most so much on-time in a window",
        m -> m.reason(Reason.EFFECT) || m.reason(Reason.BLIND) || m.fanReason(Reason.COLD_SHARE));
    add(
        r,
        "G2",
        "the first missing permit is given",
        m -> m.now(HEATER_REASON) > 0 && m.now(HEATER_REASON) <= Reason.BLIND);
    add(
        r,
        "G4",
        "why the heater is as it is",
        m -> m.now(HEATER_REASON) != m.before(HEATER_REASON));
    add(
        r,
        "G5",
        "why the heater last stopped",
        m -> m.now(HEATER_STOP_REASON) != m.before(HEATER_STOP_REASON));
    add(
        r,
        "R1",
        "no permit: off at once",
        stops.and(m -> m.now(HEATER_STOP_REASON) != Reason.NONE));
    add(r, "R2", "on for its minimum", m -> m.reason(Reason.MIN_ON));
    add(r, "R3", "on when permitted, wished, rested", m -> m.becomes(HEATER, 1));
    add(r, "R4", "minimum times count down by release time", m -> m.fell(MIN_OFF_REMAINING_MILLIS));
    add(r, "R5", "at most so many starts an hour", m -> m.reason(Reason.STARTS));
    add(
        r,
        "R6",
        "at power-up minimum off starts anew",
        m -> m.first() && m.now(MIN_OFF_REMAINING_MILLIS) > 0);
  }

  private static void fan(Map<String, Rule> r) {
    add(r, "F1", "cooling from on to off threshold", m -> m.fanReason(Reason.COOLING));
    add(r, "F2", "warm outdoors: no cooling", m -> m.fanReason(Reason.WARM_OUTDOORS));
    add(r, "F3", "cold outdoors: in its share", m -> m.fanReason(Reason.COLD_SHARE));
    add(
        r,
        "F4",
        "never with the heater",
        m -> m.reason(Reason.COOLING) || m.fanReason(Reason.HEATER_FIRST));
    add(r, "F5", "damp air is purged", m -> m.fanReason(Reason.PURGE));
    add(
        r,
        "F6",
        "a purge ends when what allowed it ends",
        m ->
            m.becomes(FAN, 0)
                && (m.before(FAN_REASON) == Reason.PURGE
                    || m.before(FAN_REASON) == Reason.TIMED_PURGE));
    add(r, "F7", "so damp for so long: a wet sensor", m -> m.alarm(Alarm.HUMIDITY_WET));
    add(
        r,
        "F9",
        "the fan has its own guard",
        m -> m.fanReason(Reason.MIN_ON) || m.fanReason(Reason.MIN_OFF));
    add(r, "F10", "a purge by time", m -> m.fanReason(Reason.TIMED_PURGE));
    add(r, "F11", "the fan starts", m -> m.becomes(FAN, 1));
    add(r, "F12", "why the fan is as it is", m -> m.now(FAN_REASON) != m.before(FAN_REASON));
  }

  private static void supply(Map<String, Rule> r) {
    Predicate<Moment> select = m -> m.is(Setting.FITTED_SUPPLY_SELECT);
    Predicate<Moment> lost =
        m ->
            m.before(SUPPLY) == Commands.SUPPLY_SHORE
                ? !m.shore()
                : m.tick().valid(Channel.BATTERY.ordinal())
                    && m.value(Channel.BATTERY) < m.get(Setting.BATTERY_LOWEST_MILLI_V);
    add(
        r,
        "S1",
        "very low volts: no battery there",
        m ->
            m.is(Setting.FITTED_BATTERY)
                && m.tick().valid(Channel.BATTERY.ordinal())
                && m.value(Channel.BATTERY) < m.get(Setting.BATTERY_LOWEST_MILLI_V));
    add(r, "S2", "without selection what is there feeds", select.negate());
    add(
        r,
        "S3",
        "the best of two sources",
        select.and(m -> m.rose(SUPPLY) && m.shore() && m.now(SUPPLY) != 0));
    add(r, "S4", "closed after the dead time", select.and(m -> m.rose(SUPPLY)));
    add(r, "S5", "a lost source is opened", select.and(lost).and(m -> m.becomes(SUPPLY, 0)));
    add(
        r,
        "S6",
        "a transfer opens before it closes",
        select.and(lost.negate()).and(m -> m.becomes(SUPPLY, 0) && m.restart() == null));
    add(r, "S7", "loads only while steady", m -> m.reason(Reason.SUPPLY));
    add(r, "S8", "dead time and dwell count by release time", select);
  }

  private static void button(Map<String, Rule> r) {
    add(
        r,
        "K1",
        "a press counts when it ends",
        m -> (m.tick().switches() & 4) != 0 && m.now(SERVICE_REMAINING_MILLIS) == 0);
    add(r, "K2", "a short press holds for service", m -> m.rose(SERVICE_REMAINING_MILLIS));
    add(
        r,
        "K3",
        "a long press clears latches",
        m -> (m.before(LATCHED_ALARMS) & ~m.now(LATCHED_ALARMS)) != 0);
    add(r, "K4", "pressed too long: ignored", m -> m.alarm(Alarm.BUTTON_STUCK));
    add(r, "K5", "service: heater and fan off", m -> m.reason(Reason.SERVICE));
    add(r, "K7", "a test is asked for", m -> m.becomes(TEST_PHASE, 1));
    add(r, "K8", "a test phase ends", m -> m.before(TEST_PHASE) > 0 && m.now(TEST_PHASE) != 1);
    add(
        r,
        "K9",
        "no heat in the fan phase",
        m -> m.now(TEST_PHASE) == 2 && m.reason(Reason.SERVICE));
  }

  private static void alarms(Map<String, Rule> r) {
    add(r, "A1", "raised and cleared after their delays", m -> m.now(ALARMS) != m.before(ALARMS));
    add(
        r,
        "A2",
        "a raised alarm sets its latched twin",
        m -> (m.now(LATCHED_ALARMS) & ~m.before(LATCHED_ALARMS)) != 0);
    add(
        r,
        "A3",
        "a long press sets each twin to its alarm",
        m -> (m.before(LATCHED_ALARMS) & ~m.now(LATCHED_ALARMS)) != 0);
    add(r, "Y1", "the daily look counts", m -> m.rose(HEATER_SECONDS) || m.rose(HEATER_STARTS));
    add(r, "Y3", "a short press starts it anew", m -> m.fell(HEATER_STARTS));
  }
}
