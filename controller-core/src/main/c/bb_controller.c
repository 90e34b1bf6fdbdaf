/* One step from readings to commands (rule T8), and the state written out and read back. */
#include "broodbench.h"

/* Changes whenever the layout of the state words does. */
#define BB_STATE_VERSION INT32_C(0x42420001)
#define BB_CHECK_SEED UINT32_C(0x5A17)

static void reset(bb_controller *c) {
  const int32_t *s = c->settings;
  bb_probes_reset(&c->probes);
  bb_heater_reset(&c->heater, s);
  bb_shedding_reset(&c->shedding);
  bb_supply_reset(&c->supply, s);
  bb_fan_reset(&c->fan, s);
  bb_button_reset(&c->button);
  bb_test_reset(&c->test);
  bb_alarms_reset(&c->alarms);
  bb_daily_reset(&c->daily);
}

void bb_controller_init(bb_controller *c, const int32_t *settings) {
  c->settings = settings;
  c->ticker.started = 0;
  c->ticker.last_millis = 0;
  c->brood.mode = BB_MODE_NONE;
  c->brood.call_centi_c = 0;
  c->brood.stop_centi_c = 0;
  c->charge.trusted = 0;
  c->charge.value = 0;
  c->charge.corrected_milli_v = 0;
  c->charge.emergency = 0;
  c->charge.charging_or_unknown = 0;
  reset(c);
}

static void press(bb_controller *c, const bb_readings *in) {
  bb_button_step(&c->button, c->settings, c->ticker.trip_millis, c->ticker.release_millis,
                 in->button);
  if (c->button.long_press) { /* rule K3 */
    bb_heater_clear_latches(&c->heater);
    c->alarms.latched = c->alarms.active; /* rule A3 */
  }
  if (c->button.short_press) { /* rule Y3 */
    bb_daily_reset(&c->daily);
  }
}

static void power(bb_controller *c, const bb_readings *in, bb_flag heater_was_on) {
  const int32_t *s = c->settings;
  bb_flag absent = 0;
  if (s[BB_FITTED_BATTERY]) {
    bb_charge_step(&c->charge, s, &c->probes, in->charger_full, heater_was_on, c->fan.guard.on,
                   c->supply.source == BB_SUPPLY_SHORE);
    bb_shedding_step(&c->shedding, s, BB_DAY_MILLIS, c->ticker.trip_millis,
                     c->ticker.release_millis, &c->charge, in->shore_present, in->charger_full);
    absent = in->battery.valid && in->battery.value < s[BB_BATTERY_LOWEST_MILLI_V]; /* rule S1 */
  } else {
    c->shedding.level = BB_LEVEL_FULL; /* rule B13 */
  }
  bb_supply_step(&c->supply, s, c->ticker.release_millis, absent, in->shore_present,
                 c->shedding.level, heater_was_on);
}

/* Table fan_denied, its first three rows. */
static uint8_t fan_block(const bb_controller *c, uint8_t level, bb_flag serviced) {
  if (!bb_supply_steady(&c->supply)) {
    return BB_REASON_SUPPLY;
  }
  if (level >= BB_LEVEL_FAN_SHED) {
    return BB_REASON_SHED;
  }
  return serviced ? BB_REASON_SERVICE : BB_REASON_NONE;
}

/* Rule F6: no air is changed for dryness while the brood lacks heat, shed or not. */
static bb_flag brood_low(const bb_controller *c) {
  const int32_t *s = c->settings;
  return c->brood.mode == BB_MODE_NONE || c->heater.demand.calling ||
         c->brood.call_centi_c <= s[BB_HEAT_SET_POINT_CENTI_C] - s[BB_HEAT_DIFFERENTIAL_CENTI_K];
}

static uint32_t bit(uint8_t alarm, bb_flag condition) {
  return condition ? (uint32_t)1 << alarm : 0;
}

static void raise_alarms(bb_controller *c) {
  const int32_t *s = c->settings;
  const bb_probes *p = &c->probes;
  const bb_limits *l = &c->heater.limits;
  bb_flag known = c->brood.mode != BB_MODE_NONE;
  bb_flag untrusted = (s[BB_FITTED_BROOD_A] && !p->temperature[BB_BROOD_A].trusted) ||
                      (s[BB_FITTED_BROOD_B] && !p->temperature[BB_BROOD_B].trusted);
  uint32_t on = 0;
  on |= bit(BB_ALARM_TIME, c->ticker.backwards);
  on |= bit(BB_ALARM_BROOD_PROBE, untrusted);
  on |= bit(BB_ALARM_PROBES_APART, c->brood.mode == BB_MODE_APART);
  on |= bit(BB_ALARM_PROBE_STUCK, bb_stuck_any(&p->stuck));
  on |= bit(BB_ALARM_PAN_PROBE, s[BB_FITTED_PAN] && !p->temperature[BB_PAN].trusted);
  on |= bit(BB_ALARM_FALLBACK, !known);
  on |= bit(BB_ALARM_PAN_TRIP, l->pan_tripped);
  on |= bit(BB_ALARM_TRIP_LATCHED, l->latched);
  on |= bit(BB_ALARM_BROOD_LIMIT, l->brood_high);
  on |= bit(BB_ALARM_WELDED, c->heater.weld.latched);
  on |= bit(BB_ALARM_EFFECT, c->heater.effect.unproven);
  on |= bit(BB_ALARM_BROOD_LOW, known && c->brood.call_centi_c < s[BB_ALARM_BROOD_LOW_CENTI_C]);
  on |= bit(BB_ALARM_BROOD_HIGH, known && c->brood.stop_centi_c > s[BB_ALARM_BROOD_HIGH_CENTI_C]);
  on |= bit(BB_ALARM_BLIND, c->shedding.blind_now);
  on |= bit(BB_ALARM_HEAT_SHED, c->shedding.level >= BB_LEVEL_HEAT_SHED);
  on |= bit(BB_ALARM_MANY_SHEDS,
            bb_rolling_count(c->shedding.sheds, BB_SHED_PLACES) >= s[BB_SHED_DOUBLE_FROM]);
  on |= bit(BB_ALARM_NO_SUPPLY, c->supply.source == BB_SUPPLY_NONE);
  on |= bit(BB_ALARM_HUMIDITY_WET, c->fan.wet);
  on |= bit(BB_ALARM_BUTTON_STUCK, bb_button_stuck(&c->button, s));
  on |= bit(BB_ALARM_OUTDOOR_PROBE, s[BB_FITTED_OUTDOOR] && !p->temperature[BB_OUTDOOR].trusted);
  on |= bit(BB_ALARM_EMERGENCY, s[BB_FITTED_BATTERY] && c->charge.emergency);
  bb_alarms_step(&c->alarms, s, c->ticker.trip_millis, c->ticker.release_millis, on);
}

/* Section 13. */
static void show(const bb_controller *c, bb_commands *out) {
  const int32_t *s = c->settings;
  bb_flag known = c->brood.mode != BB_MODE_NONE;
  out->heater = c->heater.relay.on;
  out->isolation = !c->heater.weld.latched;
  out->fan = c->fan.guard.on;
  out->supply = c->supply.source;
  out->shed_level = c->shedding.level;
  out->inverter = s[BB_FITTED_INVERTER] && out->supply == BB_SUPPLY_BATTERY && /* rule B14 */
                  (out->shed_level < BB_LEVEL_HEAT_SHED || s[BB_SHED_KEEP_INVERTER]);
  out->heater_reason = bb_heater_reason(&c->heater, s);
  out->heater_stop_reason = c->heater.stop_reason;
  out->fan_reason = bb_fan_reason(&c->fan);
  out->alarms = c->alarms.active;
  out->latched_alarms = c->alarms.latched;
  out->governing_centi_c = known ? c->brood.call_centi_c : BB_NO_TEMPERATURE;
  out->governing_high_centi_c = known ? c->brood.stop_centi_c : BB_NO_TEMPERATURE;
  out->working_set_point_centi_c =
      c->heater.demand.started ? c->heater.demand.working_centi_c : BB_NO_TEMPERATURE;
  out->min_off_remaining_millis = c->heater.relay.min_off_remaining_millis;
  out->min_on_remaining_millis = c->heater.relay.min_on_remaining_millis;
  out->service_remaining_millis = c->button.service_remaining_millis;
  out->test_phase = c->test.phase;
  out->corrected_milli_v = c->charge.corrected_milli_v;
  out->leave_delay_millis = bb_shedding_leave_delay(&c->shedding, s, BB_DAY_MILLIS);
  out->sheds_in_day = bb_rolling_count(c->shedding.sheds, BB_SHED_PLACES);
  out->lowest_brood_centi_c = c->daily.lowest_centi_c;
  out->highest_brood_centi_c = c->daily.highest_centi_c;
  out->heater_seconds = c->daily.heater_seconds;
  out->heater_starts = c->daily.starts;
  out->sheds = c->daily.sheds;
}

void bb_controller_step(bb_controller *c, uint32_t now_millis, const bb_readings *in,
                        bb_commands *out) {
  const int32_t *s = c->settings;
  const bb_sample_judge *t = c->probes.temperature;
  bb_ticker_step(&c->ticker, now_millis);
  int32_t trip = c->ticker.trip_millis;
  int32_t release = c->ticker.release_millis;
  bb_flag heater_was_on = c->heater.relay.on;
  bb_probes_step(&c->probes, s, in, trip, release);
  bb_governing_step(&c->brood, s, &t[BB_BROOD_A], &t[BB_BROOD_B]);
  bb_heater_observe(&c->heater, s, BB_DAY_MILLIS, trip, release, &t[BB_BROOD_A], &t[BB_BROOD_B],
                    &c->brood, &t[BB_PAN], &t[BB_OUTDOOR], &c->probes.heater_current,
                    in->heater_current.age_millis);
  press(c, in);
  power(c, in, heater_was_on);
  bb_flag from_shore = c->supply.source == BB_SUPPLY_SHORE;
  uint8_t level = from_shore ? BB_LEVEL_FULL : c->shedding.level; /* rule B15 */
  bb_flag serviced = c->button.service_remaining_millis > 0;      /* rule K5 */
  bb_test_step(&c->test, s, trip, in->test_request, serviced || bb_button_stuck(&c->button, s),
               heater_was_on, c->fan.guard.on);
  bb_heater_want(&c->heater, s, trip, release, level, in->charger_full, &c->brood, &t[BB_PAN],
                 c->test.phase == BB_PHASE_HEATER);
  bb_flag fan_test = c->test.phase == BB_PHASE_FAN;
  if (s[BB_FITTED_FAN]) {
    bb_fan_ask(&c->fan, s, trip, release, &c->brood, &t[BB_OUTDOOR], &c->probes.humidity,
               brood_low(c), fan_block(c, level, serviced), fan_test);
  }
  bb_flag on = bb_heater_drive(&c->heater, s, BB_HOUR_MILLIS, BB_DAY_MILLIS, trip, release,
                               &c->brood, bb_supply_steady(&c->supply), level,
                               serviced || fan_test, /* rule K9 */
                               bb_fan_holds_heater_off(&c->fan),
                               c->shedding.blind_now && !from_shore);
  if (s[BB_FITTED_FAN]) {
    bb_fan_drive(&c->fan, s, !heater_was_on && !on);
  }
  bb_daily_step(&c->daily, trip, heater_was_on, &c->brood, on && !heater_was_on,
                c->shedding.shed_now);
  raise_alarms(c);
  show(c, out);
}

/* ---- state (section 14) ---- */

static void walk(bb_controller *c, bb_words *w) {
  int32_t version = BB_STATE_VERSION;
  int32_t count = BB_STATE_WORDS;
  bb_word(w, &version, BB_STATE_VERSION, BB_STATE_VERSION);
  bb_word(w, &count, BB_STATE_WORDS, BB_STATE_WORDS);
  bb_probes_words(&c->probes, c->settings, w);
  bb_heater_words(&c->heater, BB_HOUR_MILLIS, BB_DAY_MILLIS, w);
  bb_shedding_words(&c->shedding, BB_DAY_MILLIS, w);
  bb_supply_words(&c->supply, w);
  bb_fan_words(&c->fan, w);
  bb_button_words(&c->button, w);
  bb_test_words(&c->test, w);
  bb_alarms_words(&c->alarms, w);
  bb_daily_words(&c->daily, w);
}

/* Rotate and add, in 32 wrapping bits. */
static uint32_t check(const int32_t *words) {
  uint32_t sum = BB_CHECK_SEED;
  for (int16_t i = 0; i < BB_STATE_WORDS - 1; i++) {
    sum = ((sum << 5) | (sum >> 27)) + (uint32_t)words[i];
  }
  return sum;
}

void bb_controller_save(bb_controller *c, int32_t *words) {
  bb_words w = {words, 0, 0, 0};
  walk(c, &w);
  words[BB_STATE_WORDS - 1] = (int32_t)check(words);
}

bb_flag bb_controller_restore(bb_controller *c, const int32_t *words) {
  bb_words w = {0, words, 0, 0};
  bb_flag good = (uint32_t)words[BB_STATE_WORDS - 1] == check(words);
  c->ticker.started = 0; /* rule T5 */
  if (good) {
    walk(c, &w);
    good = !w.bad;
  }
  if (!good) {
    reset(c); /* rule N2 */
  }
  return good;
}

void bb_controller_power_was_lost(bb_controller *c) {
  bb_relay_open(&c->heater.relay, c->settings[BB_RELAY_MIN_OFF_MILLIS]);
  bb_relay_open(&c->fan.guard, c->settings[BB_FAN_MIN_OFF_MILLIS]);
  c->fan.purpose = BB_REASON_NONE;
  bb_supply_reset(&c->supply, c->settings);
}
