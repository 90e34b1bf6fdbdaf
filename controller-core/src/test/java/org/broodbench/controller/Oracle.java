package org.broodbench.controller;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * A naive second reading of SPEC.md: settings, ranges, transition tables, ranks, alarms and codes
 * come from its tables as data, the rest from its words. It keeps time as two sums of 64 bits and
 * lists of events where the core keeps remaining durations, and shares nothing with the core but
 * readings and commands.
 */
final class Oracle {
  private static final long DAY = 86_400_000L;
  private static final int NOTHING = Integer.MIN_VALUE;
  private static final String[] TEMPERATURES = {"brood_a", "brood_b", "pan", "top", "outdoor"};

  /** Since when, on some clock, a condition has been true without a break. */
  private static final class Since {
    private boolean on;
    private long at;

    /** How long by now, or -1. */
    long of(boolean condition, long clock) {
      if (condition && !on) {
        at = clock;
      }
      on = condition;
      return on ? clock - at : -1;
    }
  }

  /** One reading and what is known of it. */
  private final class Reading {
    final String name;
    final boolean fitted;
    final int low;
    final int high;
    final boolean codes;
    final boolean rate;
    Integer value;
    boolean trusted;
    boolean usable;
    boolean good;
    int raw;
    long lastGood;
    final Since goodSince = new Since();
    // P7
    Integer last;
    long unchanged;
    boolean otherMoved;
    boolean stuck;
    final Map<String, Integer> marks = new HashMap<>();

    Reading(Map<String, String> row) {
      name = row.get("reading");
      fitted = is("fitted_" + name);
      low = number(row.get("lowest in range"));
      high = number(row.get("highest in range"));
      codes = row.get("codes").equals("yes");
      rate = row.get("rate checked").equals("yes");
    }

    void judge(Sample sample) {
      raw = sample.value;
      usable =
          fitted
              && sample.valid
              && sample.ageMillis >= 0
              && sample.ageMillis <= get("trust_oldest_millis")
              && raw >= low
              && raw <= high
              && !(codes
                  && (raw == get("trust_code_1_centi_c") || raw == get("trust_code_2_centi_c")));
      if (!fitted) {
        return;
      }
      long t = tripClock - lastGood;
      good =
          usable
              && (!rate
                  || value == null
                  || t >= 60_000
                  || Math.abs(raw - value)
                      <= get("trust_step_centi_k") + get("trust_rate_centi_k_per_s") * t / 1000);
      long goodFor = goodSince.of(good, releaseClock);
      if (good) {
        value = raw;
        lastGood = tripClock;
        trusted = trusted || goodFor >= get("trust_gain_millis");
      } else if (t > get("trust_hold_millis")) {
        trusted = false;
      }
    }

    int or(int otherwise) {
      return value == null ? otherwise : value;
    }
  }

  /** G1. */
  private final class Share {
    private final int allow;
    private final int window;
    private long used;
    private long pauseFrom;

    Share(String name) {
      allow = get(name + "_on_millis");
      window = get(name + "_window_millis");
    }

    void count(boolean wasOn) {
      if (wasOn) {
        used += trip;
        pauseFrom = releaseClock;
      } else if (releaseClock - pauseFrom >= window - allow) {
        used = 0;
      }
    }

    boolean spent(boolean running, int minOn) {
      return running ? used >= allow : used > 0 && used + minOn > allow;
    }
  }

  /** Table relay for one relay. */
  private final class Relay {
    private final int minOn;
    private final int minOff;
    private final int most;
    boolean on;
    private boolean permit;
    private boolean wish;
    private long changed;
    private final List<Long> starts = new ArrayList<>();
    private final OracleRules rules;

    Relay(SpecTables spec, int minOn, int minOff, int most) {
      this.minOn = minOn;
      this.minOff = minOff;
      this.most = most;
      Map<String, BooleanSupplier> when = new HashMap<>();
      when.put("permit", () -> permit);
      when.put("wish", () -> wish);
      when.put("min_on_over", () -> minOnLeft() == 0);
      when.put("min_off_over", () -> minOffLeft() == 0);
      when.put("starts_left", this::startsLeft);
      rules = new OracleRules(spec.named("relay"), "when", when);
    }

    void drive(boolean newPermit, boolean newWish) {
      permit = newPermit;
      wish = newWish;
      String to = rules.first("to", "from", on ? "on" : "off");
      if (to != null) {
        on = to.equals("on");
        changed = releaseClock;
        if (on) {
          starts.add(releaseClock);
        }
      }
    }

    boolean startsLeft() {
      starts.removeIf(start -> releaseClock - start >= 3_600_000);
      return most == 0 || starts.size() < most;
    }

    int minOnLeft() {
      return on ? (int) Math.max(0, minOn - (releaseClock - changed)) : 0;
    }

    int minOffLeft() {
      return on ? 0 : (int) Math.max(0, minOff - (releaseClock - changed));
    }
  }

  private final Map<String, Integer> settings = new HashMap<>();
  private final Map<String, Integer> codes = new HashMap<>();
  private final List<Map<String, String>> levels;
  private final Map<String, Reading> readings = new LinkedHashMap<>();

  private boolean started;
  private int lastNow;
  private boolean refused;
  private long trip;
  private long tripClock;
  private long releaseClock;
  private long release;

  private boolean apart;
  private Integer call;
  private Integer stop;

  private boolean wasOn;
  private long heaterChanged;
  private Integer lowestPan;
  private boolean proven;
  private boolean unproven;
  private Integer lookPan;
  private long lookFrom;
  private boolean weldCause;
  private boolean weldLatched;

  private final Map<String, Boolean> flags = new HashMap<>();
  private final List<Long> trips = new ArrayList<>();
  private boolean tripsLatched;
  private boolean believed;

  private boolean seenUp;
  private Long downFrom;
  private boolean buttonStuck;
  private long serviceUntil;

  private int correctedMilliV;
  private boolean emergency;
  private int level = 3;
  private boolean decided;
  private boolean armed = true;
  private boolean shedNow;
  private boolean blind;
  private final Since unseen = new Since();
  private final Since[] below = new Since[6];
  private final Since above = new Since();
  private final List<Long> sheds = new ArrayList<>();

  private int source;
  private int target;
  private int before;
  private boolean batteryThere;
  private long opened;
  private long closed;

  private int phase;
  private boolean requested;
  private boolean ran;
  private long ranFor;
  private long waitedFor;

  private boolean calling;
  private Integer working;
  private long remainder;
  private int broodTarget;
  private int panTarget;
  private boolean fallbackActive;
  private boolean panCalling;

  private boolean hot;
  private boolean damp;
  private boolean wet;
  private final Since wetSince = new Since();
  private final Since drySince = new Since();
  private boolean mayPurge;
  private boolean timed;
  private String fanWish;
  private boolean heaterOff;
  private String purpose = "";
  private boolean shore;
  private boolean heaterWished;
  private String missing;
  private String stopReason = "none";

  private final Relay heater;
  private final Relay fan;
  private final Share effectShare;
  private final Share blindShare;
  private final Share coldShare;
  private final Share purgeShare;
  private final OracleRules thermostatRules;
  private final OracleRules fallbackRules;
  private final OracleRules limitRules;
  private final OracleRules permitRules;
  private final OracleRules supplyRules;
  private final OracleRules wishRules;
  private final OracleRules denyRules;

  private final String[] alarmNames;
  private final int[] raise;
  private final int[] clear;
  private final BooleanSupplier[] alarmWhen;
  private final Since[] alarmSince;
  private final boolean[] alarm;
  private final boolean[] twin;

  private int lowest = NOTHING;
  private int highest = NOTHING;
  private long heatMillis;
  private int starts;
  private int shedCount;

  /**
   * @param column column of the settings table for the place: "", "nest edge" or "box air"
   */
  Oracle(SpecTables spec, String column, boolean lithium, Map<String, Integer> changes) {
    for (Map<String, String> row : spec.headed("setting", "lowest", "highest", "default")) {
      String cell = row.get("default");
      if (!column.isEmpty() && !row.get(column).isEmpty()) {
        cell = row.get(column);
      }
      if (lithium && !row.get("lithium").isEmpty()) {
        cell = row.get("lithium");
      }
      settings.put(row.get("setting"), Integer.parseInt(cell));
    }
    settings.putAll(changes);
    for (Map<String, String> row : spec.headed("code", "reason", "kind of stop")) {
      codes.put(row.get("reason"), Integer.parseInt(row.get("code")));
    }
    for (Map<String, String> row : spec.headed("reading", "unit", "lowest in range")) {
      readings.put(row.get("reading"), new Reading(row));
    }
    levels = spec.named("levels");
    for (int i = 1; i < below.length; i++) {
      below[i] = new Since();
    }
    heater =
        new Relay(
            spec,
            get("relay_min_on_millis"),
            get("relay_min_off_millis"),
            get("relay_starts_per_hour"));
    fan = new Relay(spec, get("fan_min_on_millis"), get("fan_min_off_millis"), 0);
    effectShare = new Share("effect_share");
    blindShare = new Share("shed_blind");
    coldShare = new Share("fan_cold");
    purgeShare = new Share("purge");
    Map<String, BooleanSupplier> when = conditions();
    thermostatRules = new OracleRules(spec.named("thermostat"), "when", when);
    fallbackRules = new OracleRules(spec.named("fallback"), "when", when);
    limitRules = new OracleRules(spec.named("limits"), "when", when);
    permitRules = new OracleRules(spec.named("permits"), "missing when", when);
    supplyRules = new OracleRules(spec.named("supply"), "when", when);
    wishRules = new OracleRules(spec.named("fan_wish"), "when", when);
    denyRules = new OracleRules(spec.named("fan_denied"), "when", when);
    List<Map<String, String>> rows = spec.headed("bit", "alarm", "raise", "clear");
    int count = rows.size();
    alarmNames = new String[count];
    raise = new int[count];
    clear = new int[count];
    alarmWhen = new BooleanSupplier[count];
    alarmSince = new Since[count];
    alarm = new boolean[count];
    twin = new boolean[count];
    Map<String, BooleanSupplier> alarmConditions = alarmConditions();
    for (int i = 0; i < count; i++) {
      alarmNames[i] = rows.get(i).get("alarm");
      raise[i] = number(rows.get(i).get("raise"));
      clear[i] = number(rows.get(i).get("clear"));
      alarmWhen[i] = alarmConditions.get(alarmNames[i]);
      alarmSince[i] = new Since();
    }
  }

  private int get(String key) {
    Integer value = settings.get(key);
    if (value == null) {
      throw new AssertionError("no setting " + key);
    }
    return value;
  }

  private boolean is(String key) {
    return get(key) != 0;
  }

  private int number(String cell) {
    return cell.matches("-?\\d+") ? Integer.parseInt(cell) : get(cell);
  }

  private Map<String, BooleanSupplier> conditions() {
    Reading pan = readings.get("pan");
    Reading outdoor = readings.get("outdoor");
    Map<String, BooleanSupplier> when = new HashMap<>();
    when.put("brood_known", () -> call != null);
    when.put("stop_at_or_above_working", () -> stop >= working);
    when.put(
        "call_at_or_below_working_less_differential",
        () -> call <= working - get("heat_differential_centi_k"));
    when.put("fallback_active", () -> fallbackActive);
    when.put("pan_at_or_above_target", () -> pan.value >= panTarget);
    when.put(
        "pan_at_or_below_call",
        () -> pan.value <= panTarget - get("fallback_differential_centi_k"));
    when.put("raw_pan_at_trip", () -> pan.usable && pan.raw >= get("limit_pan_trip_centi_c"));
    when.put("raw_pan_at_limit", () -> pan.usable && pan.raw >= get("limit_pan_centi_c"));
    when.put("pan_not_believed", () -> !believed);
    when.put(
        "pan_at_or_below_release",
        () ->
            pan.value != null
                && pan.value <= get("limit_pan_centi_c") - get("limit_pan_differential_centi_k"));
    when.put("raw_brood_at_limit", () -> broodAtLimit("brood_a") || broodAtLimit("brood_b"));
    when.put(
        "brood_at_or_below_release",
        () -> broodBelowRelease("brood_a") && broodBelowRelease("brood_b"));
    when.put("weld_latched", () -> weldLatched);
    when.put("trips_latched", () -> tripsLatched);
    when.put("pan_tripped", () -> flag("pan_tripped"));
    when.put("brood_high", () -> flag("brood_high"));
    when.put("pan_high", () -> flag("pan_high"));
    when.put("supply_steady", () -> source != 0 && source == before && target == source);
    when.put("level_without_heat", () -> !allows("heat", restricting()));
    when.put("level_without_fan", () -> !allows("fan", restricting()));
    when.put("service_hold", () -> serviceUntil > releaseClock);
    when.put("fan_test", () -> phase == 2);
    when.put("fan_holds_heater_off", this::fanHoldsHeaterOff);
    when.put("effect_share_spent", () -> effectShare.spent(wasOn, get("relay_min_on_millis")));
    when.put("blind", () -> blind);
    when.put("fed_from_shore", () -> source == 2);
    when.put("blind_share_spent", () -> blindShare.spent(wasOn, get("relay_min_on_millis")));
    when.put("source_none", () -> source == 0);
    when.put("dead_over", () -> releaseClock - opened >= get("supply_dead_millis"));
    when.put("best_there", () -> best() != 0);
    when.put("source_lost", () -> source == 1 ? !batteryThere : !shore);
    when.put("transfer_decided", () -> target != source);
    when.put("best_is_source", () -> best() == source);
    when.put("best_is_other", () -> best() != source);
    when.put("dwell_over", () -> releaseClock - closed >= get("supply_dwell_millis"));
    when.put("heater_was_on", () -> wasOn);
    when.put("hot", () -> hot);
    when.put(
        "warm_outdoors",
        () ->
            outdoor.trusted
                && outdoor.value > (stop == null ? 0 : stop) - get("fan_outdoor_centi_k"));
    when.put("damp", () -> damp);
    when.put("timed", () -> timed);
    when.put("may_purge", () -> mayPurge);
    when.put("cold_outdoors", () -> outdoor.trusted && outdoor.value < get("fan_cold_centi_c"));
    when.put("cold_share_spent", () -> coldShare.spent(fan.on, get("fan_min_on_millis")));
    when.put("fan_purging", this::fanPurging);
    when.put("fan_wished", () -> fanWish != null);
    when.put(
        "for_cooling", () -> "cooling".equals(fanWish) || (fan.on && purpose.equals("cooling")));
    when.put("heater_off", () -> heaterOff);
    return when;
  }

  private Map<String, BooleanSupplier> alarmConditions() {
    Map<String, BooleanSupplier> when = new HashMap<>();
    when.put("time", () -> refused);
    when.put("brood_probe", () -> untrusted("brood_a") || untrusted("brood_b"));
    when.put("probes_apart", () -> apart);
    when.put("probe_stuck", () -> readings.values().stream().anyMatch(r -> r.stuck));
    when.put("pan_probe", () -> untrusted("pan"));
    when.put("fallback", () -> call == null);
    when.put("pan_trip", () -> flag("pan_tripped"));
    when.put("trip_latched", () -> tripsLatched);
    when.put("brood_limit", () -> flag("brood_high"));
    when.put("welded", () -> weldLatched);
    when.put("effect", () -> unproven);
    when.put("brood_low", () -> call != null && call < get("alarm_brood_low_centi_c"));
    when.put("brood_high", () -> call != null && stop > get("alarm_brood_high_centi_c"));
    when.put("blind", () -> blind);
    when.put("heat_shed", () -> level >= 3);
    when.put("many_sheds", () -> shedsInDay() >= get("shed_double_from"));
    when.put("no_supply", () -> source == 0);
    when.put("humidity_wet", () -> wet);
    when.put("button_stuck", () -> buttonStuck);
    when.put("outdoor_probe", () -> untrusted("outdoor"));
    when.put("emergency", () -> emergency);
    return when;
  }

  private boolean flag(String name) {
    return flags.getOrDefault(name, false);
  }

  private boolean untrusted(String name) {
    return readings.get(name).fitted && !readings.get(name).trusted;
  }

  private int broodLimit(String name) {
    return name.equals("brood_b") && !is("brood_b_like_place")
        ? get("limit_brood_b_centi_c")
        : get("limit_brood_centi_c");
  }

  private boolean broodAtLimit(String name) {
    Reading probe = readings.get(name);
    return probe.usable && probe.raw >= broodLimit(name);
  }

  private boolean broodBelowRelease(String name) {
    Reading probe = readings.get(name);
    int release = broodLimit(name) - get("limit_brood_differential_centi_k");
    return !(probe.usable && probe.raw > release) && !(probe.trusted && probe.value > release);
  }

  /** One step, as section 1 orders it. */
  void step(int now, Readings in, Commands out) {
    time(now);
    wasOn = heater.on;
    judge(in);
    govern();
    effect();
    weld(in.heaterCurrent.ageMillis);
    limits();
    button(in.button);
    shore = in.shorePresent;
    battery(in);
    supply(in);
    test(in.testRequest);
    thermostat(in.chargerFull);
    boolean fanFitted = is("fitted_fan");
    if (fanFitted) {
      fanAsks();
    }
    drive();
    if (fanFitted) {
      fanDrive();
    }
    daily();
    alarms();
    show(out, fanFitted);
  }

  private void time(int now) {
    long difference = started ? (now - lastNow) & 0xffff_ffffL : 0;
    refused = difference >= 0x8000_0000L;
    trip = refused ? 0 : difference;
    release = Math.min(trip, 60_000);
    tripClock += trip;
    releaseClock += release;
    started = true;
    lastNow = now;
  }

  private void judge(Readings in) {
    readings.get("brood_a").judge(in.broodA);
    readings.get("brood_b").judge(in.broodB);
    readings.get("pan").judge(in.pan);
    readings.get("top").judge(in.top);
    readings.get("outdoor").judge(in.outdoor);
    readings.get("humidity").judge(in.humidity);
    readings.get("battery").judge(in.battery);
    readings.get("battery_current").judge(in.batteryCurrent);
    readings.get("state_of_charge").judge(in.stateOfCharge);
    readings.get("heater_current").judge(in.heaterCurrent);
    readings.get("panel_power").judge(in.panelPower);
    for (String name : TEMPERATURES) {
      stuck(readings.get(name));
    }
    for (String name : TEMPERATURES) {
      Reading probe = readings.get(name);
      if (probe.stuck) {
        probe.trusted = false;
        probe.goodSince.of(false, releaseClock);
      }
    }
  }

  private void stuck(Reading probe) {
    if (!probe.fitted || !probe.good) {
      return;
    }
    if (!probe.value.equals(probe.last)) {
      probe.last = probe.value;
      probe.unchanged = 0;
      probe.otherMoved = false;
      probe.stuck = false;
      probe.marks.clear();
    } else {
      probe.unchanged += trip;
    }
    for (String name : TEMPERATURES) {
      Reading other = readings.get(name);
      if (other == probe || !other.trusted) {
        continue;
      }
      int mark = probe.marks.computeIfAbsent(name, n -> other.value);
      if (Math.abs(other.value - mark) >= get("trust_stuck_other_centi_k")) {
        probe.otherMoved = true;
      }
    }
    probe.stuck = probe.otherMoved && probe.unchanged >= get("trust_stuck_millis");
  }

  private void govern() {
    Reading a = readings.get("brood_a");
    Reading b = readings.get("brood_b");
    boolean useB = b.trusted && is("brood_b_like_place");
    apart = false;
    call = null;
    stop = null;
    if (a.trusted && useB) {
      int low = Math.min(a.value, b.value);
      stop = Math.max(a.value, b.value);
      apart = stop - low > get("trust_pair_centi_k");
      call = apart ? stop : Integer.valueOf(low);
    } else if (a.trusted || useB) {
      call = a.trusted ? a.value : b.value;
      stop = call;
    }
  }

  private Integer trustedPan() {
    Reading pan = readings.get("pan");
    return pan.trusted ? pan.value : null;
  }

  private boolean aboveBoth(Integer pan, int by) {
    Reading outdoor = readings.get("outdoor");
    return pan != null
        && stop != null
        && pan - stop >= by
        && (!outdoor.trusted || pan - outdoor.value >= by);
  }

  private void effect() {
    Integer pan = trustedPan();
    Reading current = readings.get("heater_current");
    if (!wasOn) {
      proven = false;
      lowestPan = pan;
      return;
    }
    if (pan != null && lowestPan != null && pan < lowestPan) {
      lowestPan = pan;
    }
    boolean rose =
        pan != null && lowestPan != null && pan - lowestPan >= get("effect_rise_centi_k");
    boolean flows = current.usable && 2L * current.raw >= get("heater_rated_milli_a");
    if (rose || flows || aboveBoth(pan, get("effect_above_centi_k"))) {
      proven = true;
      unproven = false;
    } else if (!proven
        && tripClock - heaterChanged >= get("effect_judge_millis")
        && ((pan != null && lowestPan != null) || current.trusted)) {
      unproven = true;
    }
  }

  private void weld(int age) {
    Reading current = readings.get("heater_current");
    if (wasOn) {
      weldCause = false;
      lookPan = null;
      return;
    }
    long off = Math.min(tripClock - heaterChanged, get("weld_blank_millis"));
    if (current.usable) {
      lookPan = null;
      weldCause =
          off - age >= get("weld_after_millis") && 2L * current.raw > get("heater_rated_milli_a");
    } else if (off < get("weld_blank_millis")
        || !aboveBoth(trustedPan(), get("weld_above_centi_k"))) {
      lookPan = null;
      weldCause = false;
    } else if (lookPan == null) {
      lookPan = trustedPan();
      lookFrom = tripClock;
    } else if (tripClock - lookFrom >= get("weld_look_millis")) {
      weldCause = trustedPan() >= lookPan;
      lookPan = trustedPan();
      lookFrom = tripClock;
    }
    weldLatched = weldLatched || weldCause;
  }

  private void limits() {
    believed = readings.get("pan").trusted && !unproven;
    trips.removeIf(at -> releaseClock - at >= DAY);
    for (String name : new String[] {"pan_tripped", "pan_high", "brood_high"}) {
      String to = limitRules.first("to", "flag", name);
      if (to != null) {
        boolean on = to.equals("on");
        if (on && !flag(name) && name.equals("pan_tripped")) {
          trips.add(releaseClock);
        }
        flags.put(name, on);
      }
    }
    tripsLatched = tripsLatched || trips.size() >= get("limit_trips_to_latch");
  }

  private void button(boolean pressed) {
    buttonStuck = false;
    if (pressed) {
      downFrom = downFrom == null ? Long.valueOf(tripClock) : downFrom;
      lastDown = tripClock;
      buttonStuck = lastDown - downFrom >= get("button_stuck_millis");
      return;
    }
    if (downFrom != null && seenUp) {
      long length = lastDown - downFrom;
      if (length < get("button_long_millis")) {
        serviceUntil =
            serviceUntil > releaseClock ? releaseClock : releaseClock + get("service_hold_millis");
        lowest = NOTHING;
        highest = NOTHING;
        heatMillis = 0;
        starts = 0;
        shedCount = 0;
      } else if (length < get("button_stuck_millis")) {
        weldLatched = weldCause;
        if (!flag("pan_high") && !flag("brood_high")) {
          tripsLatched = false;
          trips.clear();
        }
        System.arraycopy(alarm, 0, twin, 0, alarm.length);
      }
    }
    seenUp = true;
    downFrom = null;
  }

  private long lastDown;

  private int shedsInDay() {
    sheds.removeIf(at -> releaseClock - at >= DAY);
    return sheds.size();
  }

  private long leaveDelay() {
    long delay = get("shed_leave_delay_millis");
    for (int n = get("shed_double_from"); n <= shedsInDay(); n++) {
      delay = Math.min(delay * 2, DAY);
    }
    return delay;
  }

  private void battery(Readings in) {
    shedNow = false;
    if (!is("fitted_battery")) {
      level = 0;
      return;
    }
    Reading volts = readings.get("battery");
    Reading current = readings.get("battery_current");
    Reading panel = readings.get("panel_power");
    boolean byCharge = is("shed_by_state_of_charge");
    long milliA = -get("battery_base_load_milli_a");
    if (current.trusted) {
      milliA = current.value;
    } else if (source != 2) {
      milliA -= wasOn ? get("heater_rated_milli_a") : 0;
      milliA -= fan.on ? get("fan_rated_milli_a") : 0;
    }
    correctedMilliV =
        volts.trusted ? (int) (volts.value - milliA * get("battery_milli_ohm") / 1000) : 0;
    Reading measure = byCharge ? readings.get("state_of_charge") : volts;
    boolean trusted = measure.trusted;
    int value = byCharge ? measure.or(0) : correctedMilliV;
    emergency = volts.usable && volts.raw <= get("shed_emergency_milli_v");
    boolean charging =
        (current.trusted && current.value >= get("battery_charging_milli_a"))
            || (panel.trusted && panel.value >= get("battery_charging_milli_w"))
            || in.chargerFull
            || (!current.trusted && !panel.trusted);
    String unit = byCharge ? "_permille" : "_milli_v";
    if (trusted && !decided) {
      decided = true;
      level = value < get("shed_heat_leave" + unit) ? 3 : 0;
    }
    long dark = unseen.of(!trusted && !in.shorePresent && !in.chargerFull, tripClock);
    blind = dark >= get("shed_blind_after_millis");
    int asked = 0;
    for (int i = 1; i <= 5; i++) {
      boolean under = trusted && value <= get(levels.get(i).get("enter") + unit);
      if (below[i].of(under, tripClock) >= get("shed_enter_delay_millis")) {
        asked = i;
      }
    }
    if (blind) {
      int darkLevel = dark >= get("shed_blind_heat_shed_millis") ? 3 : 2;
      level = decided ? level : darkLevel;
      decided = true;
      asked = Math.max(asked, darkLevel);
    }
    if (emergency) {
      decided = true;
      asked = 5;
    }
    if (asked > level) {
      level = asked;
      above.of(false, releaseClock);
      if (level >= 3 && armed) {
        shedsInDay();
        sheds.add(releaseClock);
        armed = false;
        shedNow = true;
      }
      return;
    }
    boolean holds =
        level > 0
            && (trusted ? value >= get(levels.get(level).get("leave") + unit) : in.chargerFull)
            && (level < 5 || charging)
            && asked < level;
    if (above.of(holds, releaseClock) >= leaveDelay()) {
      level--;
      decided = true;
      armed = true;
      above.of(false, releaseClock);
    }
  }

  private boolean allows(String load, int atLevel) {
    return levels.get(atLevel).get(load).equals("yes");
  }

  private int restricting() {
    return source == 2 ? 0 : level;
  }

  private int best() {
    if (!batteryThere) {
      return shore ? 2 : 0;
    }
    return shore && (!is("supply_prefer_battery") || level >= 3) ? 2 : 1;
  }

  private void supply(Readings in) {
    before = source;
    boolean fitted = is("fitted_battery");
    batteryThere =
        fitted && !(in.battery.valid && in.battery.value < get("battery_lowest_milli_v"));
    if (!is("fitted_supply_select")) {
      source = batteryThere ? 1 : !fitted && shore ? 2 : 0;
      target = source;
      return;
    }
    if (source == 0) {
      target = best();
    }
    String event = supplyRules.first("event");
    switch (event == null ? "wait" : event) {
      case "close_best" -> {
        source = best();
        closed = releaseClock;
      }
      case "open" -> {
        source = 0;
        target = best();
        opened = releaseClock;
      }
      case "stay" -> target = source;
      case "decide" -> target = best();
      default -> {}
    }
  }

  private void test(boolean request) {
    boolean rises = request && !requested;
    requested = request;
    if (serviceUntil > releaseClock || buttonStuck) {
      begin(0);
    } else if (phase == 0) {
      if (rises) {
        begin(1);
      }
    } else {
      boolean on = phase == 1 ? wasOn : fan.on;
      boolean wentOff = ran && !on;
      ran = ran || on;
      ranFor += on ? trip : 0;
      waitedFor += on ? 0 : trip;
      if (wentOff || ranFor >= get("test_millis") || waitedFor >= get("test_wait_millis")) {
        begin(phase == 1 && is("fitted_fan") ? 2 : 0);
      }
    }
  }

  private void begin(int next) {
    phase = next;
    ran = false;
    ranFor = 0;
    waitedFor = 0;
  }

  private void thermostat(boolean chargerFull) {
    int set = get("heat_set_point_centi_c");
    int survival = get("heat_survival_centi_c");
    int fallback = get("fallback_pan_centi_c");
    switch (restricting()) {
      case 0 -> {
        broodTarget = set + (chargerFull ? get("heat_soak_centi_k") : 0);
        panTarget = fallback;
      }
      case 1 -> {
        broodTarget = Math.max(set - get("heat_set_back_centi_k"), survival);
        panTarget = fallback - get("heat_set_back_centi_k");
      }
      default -> {
        broodTarget = survival;
        panTarget = Math.min(fallback, survival);
      }
    }
    if (call == null) {
      working = null;
      calling = false;
    } else {
      boolean cold = !wasOn && tripClock - heaterChanged > get("heat_rebase_millis");
      if (working == null || cold) {
        working = Math.max(call + get("heat_differential_centi_k"), get("heat_ramp_floor_centi_c"));
        remainder = 0;
      } else if (working < broodTarget) {
        remainder += release * get("heat_ramp_centi_k_per_h");
        working += (int) (remainder / 3_600_000);
        remainder %= 3_600_000;
      }
      if (working >= broodTarget) {
        working = broodTarget;
        remainder = 0;
      }
      String to = thermostatRules.first("to");
      calling = to == null ? calling : to.equals("on");
    }
    fallbackActive = is("fallback_allowed") && call == null && believed;
    String to = fallbackRules.first("to");
    panCalling = to == null ? panCalling : to.equals("on");
  }

  private boolean fanPurging() {
    return fan.on && (purpose.equals("purge") || purpose.equals("timed_purge"));
  }

  private void fanAsks() {
    Reading humidity = readings.get("humidity");
    Reading outdoor = readings.get("outdoor");
    coldShare.count(fan.on);
    purgeShare.count(fanPurging());
    int wetFrom = get("purge_wet_permille");
    boolean trusted = humidity.trusted;
    if (wetSince.of(trusted && humidity.value >= wetFrom, tripClock) >= get("purge_wet_millis")) {
      wet = true;
    }
    if (drySince.of(trusted && humidity.value < wetFrom, releaseClock)
        >= get("trust_gain_millis")) {
      wet = false;
    }
    if (stop == null || stop <= get("fan_off_centi_c")) {
      hot = false;
    } else if (stop >= get("fan_on_centi_c")) {
      hot = true;
    }
    if (!trusted || wet || humidity.value <= get("purge_off_permille")) {
      damp = false;
    } else if (humidity.value >= get("purge_on_permille")) {
      damp = true;
    }
    int every = get("purge_timed_every_millis");
    timed = every > 0 && releaseClock % every < get("purge_timed_for_millis");
    mayPurge =
        outdoor.trusted
            && outdoor.value >= get("purge_outdoor_centi_c")
            && call != null
            && !calling
            && call > get("heat_set_point_centi_c") - get("heat_differential_centi_k")
            && !purgeShare.spent(fan.on, get("fan_min_on_millis"));
    fanWish = wishRules.first("reason");
    heaterOff = true;
    fanDenied = denyRules.first("reason");
  }

  private String fanDenied;

  private boolean fanHoldsHeaterOff() {
    return is("fitted_fan")
        && (("cooling".equals(fanWish) && fanDenied == null)
            || (fan.on && purpose.equals("cooling")));
  }

  private void drive() {
    effectShare.count(wasOn);
    blindShare.count(wasOn);
    missing = permitRules.first("reason");
    heaterWished = calling || panCalling || phase == 1;
    heater.drive(missing == null, heaterWished);
    if (heater.on != wasOn) {
      heaterChanged = tripClock;
    }
    if (wasOn && !heater.on) {
      stopReason = missing == null ? "none" : missing;
      if ("brood_limit".equals(missing)) {
        trips.add(releaseClock);
      }
    }
  }

  private void fanDrive() {
    heaterOff = !wasOn && !heater.on;
    fanDenied = denyRules.first("reason");
    fan.drive(fanDenied == null, fanWish != null);
    if (!fan.on) {
      purpose = "";
    } else if (fanWish != null) {
      purpose = fanWish;
    }
  }

  private void daily() {
    heatMillis += wasOn ? trip : 0;
    if (call != null) {
      lowest = lowest == NOTHING ? call : Math.min(lowest, call);
      highest = highest == NOTHING ? stop : Math.max(highest, stop);
    }
    starts += heater.on && !wasOn ? 1 : 0;
    shedCount += shedNow ? 1 : 0;
  }

  private void alarms() {
    for (int i = 0; i < alarm.length; i++) {
      boolean condition = alarmWhen[i].getAsBoolean();
      long held = alarmSince[i].of(condition != alarm[i], condition ? tripClock : releaseClock);
      if (held >= 0 && held >= (condition ? raise[i] : clear[i])) {
        alarm[i] = condition;
        twin[i] = twin[i] || condition;
        alarmSince[i].of(false, 0);
      }
    }
  }

  private int code(String reason) {
    return codes.get(reason);
  }

  private int heaterReason() {
    if (heater.on) {
      if (phase == 1) {
        return code("test");
      }
      return code(fallbackActive ? "fallback" : heaterWished ? "none" : "min_on");
    }
    if (missing != null) {
      return code(heaterWished || wasOn || missing.equals("trust") ? missing : "none");
    }
    if (!heaterWished) {
      return code("none");
    }
    return code(heater.minOffLeft() == 0 && !heater.startsLeft() ? "starts" : "min_off");
  }

  private int fanReason(boolean fitted) {
    if (!fitted) {
      return code("none");
    }
    if (fan.on) {
      return code(fanWish != null ? fanWish : "min_on");
    }
    if (fanDenied != null && !fanDenied.equals("purge_ended")) {
      return code(fanWish != null || fanDenied.equals("warm_outdoors") ? fanDenied : "none");
    }
    return code(fanWish != null ? "min_off" : "none");
  }

  private void show(Commands out, boolean fanFitted) {
    out.heater = heater.on;
    out.isolation = !weldLatched;
    out.fan = fan.on;
    out.supply = source;
    out.shedLevel = level;
    out.inverter =
        is("fitted_inverter")
            && source == 1
            && (allows("inverter", level) || is("shed_keep_inverter"));
    out.heaterReason = heaterReason();
    out.heaterStopReason = code(stopReason);
    out.fanReason = fanReason(fanFitted);
    out.alarms = 0;
    out.latchedAlarms = 0;
    for (int i = 0; i < alarm.length; i++) {
      out.alarms |= alarm[i] ? 1 << i : 0;
      out.latchedAlarms |= twin[i] ? 1 << i : 0;
    }
    out.governingCentiC = call == null ? NOTHING : call;
    out.governingHighCentiC = stop == null ? NOTHING : stop;
    out.workingSetPointCentiC = working == null ? NOTHING : working;
    out.minOffRemainingMillis = heater.minOffLeft();
    out.minOnRemainingMillis = heater.minOnLeft();
    out.serviceRemainingMillis = (int) Math.max(0, serviceUntil - releaseClock);
    out.testPhase = phase;
    out.correctedMilliV = correctedMilliV;
    out.leaveDelayMillis = (int) leaveDelay();
    out.shedsInDay = shedsInDay();
    out.lowestBroodCentiC = lowest;
    out.highestBroodCentiC = highest;
    out.heaterSeconds = (int) Math.min(heatMillis / 1000, 1_000_000_000);
    out.heaterStarts = starts;
    out.sheds = shedCount;
  }
}
