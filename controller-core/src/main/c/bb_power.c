/* Battery, shedding, supply (sections 6 and 9). */
#include "bb_parts.h"

/* ---- how full the battery is ---- */

void bb_charge_step(bb_charge_measure *m, const int32_t *s, const bb_probes *probes,
                    bb_flag charger_full, bb_flag heater_was_on, bb_flag fan_was_on,
                    bb_flag from_shore) {
  const bb_sample_judge *volts = &probes->volts;
  const bb_sample_judge *current = &probes->battery_current;
  const bb_sample_judge *panel = &probes->panel_power;
  const bb_sample_judge *charge = &probes->state_of_charge;
  int32_t milli_a;
  if (current->trusted) {
    milli_a = current->value;
  } else { /* rule B2 */
    milli_a = -s[BB_BATTERY_BASE_LOAD_MILLI_A];
    if (heater_was_on && !from_shore) {
      milli_a -= s[BB_HEATER_RATED_MILLI_A];
    }
    if (fan_was_on && !from_shore) {
      milli_a -= s[BB_FAN_RATED_MILLI_A];
    }
  }
  /* Rule B1: at most 300 000 mA by 1 000 mOhm, inside 32 bits; cut towards zero. */
  m->corrected_milli_v =
      volts->trusted ? volts->value - milli_a * s[BB_BATTERY_MILLI_OHM] / 1000 : 0;
  bb_flag by_charge = s[BB_SHED_BY_STATE_OF_CHARGE] != 0; /* rule B3 */
  m->trusted = by_charge ? charge->trusted : volts->trusted;
  m->value = by_charge ? charge->value : m->corrected_milli_v;
  m->emergency = volts->usable && volts->raw <= s[BB_SHED_EMERGENCY_MILLI_V]; /* rule B7 */
  bb_flag current_in = current->trusted && current->value >= s[BB_BATTERY_CHARGING_MILLI_A];
  bb_flag panel_in = panel->trusted && panel->value >= s[BB_BATTERY_CHARGING_MILLI_W];
  bb_flag known = current->trusted || panel->trusted;
  m->charging_or_unknown = current_in || panel_in || charger_full || !known; /* rule B4 */
}

/* ---- shed level ---- */

void bb_shedding_reset(bb_shedding *d) {
  d->level = BB_LEVEL_HEAT_SHED;
  d->decided = 0;
  d->shed_armed = 1;
  for (uint8_t i = 0; i < BB_LEVELS; i++) {
    bb_delay_reset(&d->enter_delay[i]);
  }
  bb_delay_reset(&d->leave_delay);
  bb_delay_reset(&d->blind);
  bb_rolling_reset(d->sheds, BB_SHED_PLACES);
  d->blind_now = 0;
  d->shed_now = 0;
}

/* Thresholds stand in pairs, enter then leave, from set-back to standby. */
static int32_t enter(const int32_t *s, uint8_t level) {
  uint8_t first = s[BB_SHED_BY_STATE_OF_CHARGE] ? BB_SHED_SET_BACK_ENTER_PERMILLE
                                                : BB_SHED_SET_BACK_ENTER_MILLI_V;
  return s[first + 2 * (level - BB_LEVEL_SET_BACK)];
}

static int32_t leave(const int32_t *s, uint8_t level) {
  uint8_t first = s[BB_SHED_BY_STATE_OF_CHARGE] ? BB_SHED_SET_BACK_LEAVE_PERMILLE
                                                : BB_SHED_SET_BACK_LEAVE_MILLI_V;
  return s[first + 2 * (level - BB_LEVEL_SET_BACK)];
}

/* Rule B10. */
int32_t bb_shedding_leave_delay(const bb_shedding *d, const int32_t *s, int32_t day_millis) {
  int32_t delay = s[BB_SHED_LEAVE_DELAY_MILLIS];
  uint8_t n = bb_rolling_count(d->sheds, BB_SHED_PLACES);
  for (; n >= s[BB_SHED_DOUBLE_FROM] && delay < day_millis; n--) {
    delay *= 2;
  }
  return delay < day_millis ? delay : day_millis;
}

static void move(bb_shedding *d, const int32_t *s, int32_t day_millis, int32_t release_millis,
                 uint8_t down, const bb_charge_measure *charge, bb_flag charger_full) {
  if (down > d->level) { /* rules B6, B7, B11 */
    d->level = down;
    bb_delay_reset(&d->leave_delay);
    if (d->level >= BB_LEVEL_HEAT_SHED && d->shed_armed) { /* rule B10 */
      bb_rolling_add(d->sheds, BB_SHED_PLACES, day_millis);
      d->shed_armed = 0;
      d->shed_now = 1;
    }
    return;
  }
  bb_flag may = d->level > BB_LEVEL_FULL &&
                (charge->trusted ? charge->value >= leave(s, d->level) : charger_full) &&
                (d->level < BB_LEVEL_STANDBY || charge->charging_or_unknown) && down < d->level;
  if (bb_delay_step(&d->leave_delay, may, release_millis,
                    bb_shedding_leave_delay(d, s, day_millis), day_millis)) { /* rule B8 */
    d->level--;
    d->decided = 1;
    d->shed_armed = 1;
    bb_delay_reset(&d->leave_delay);
  }
}

void bb_shedding_step(bb_shedding *d, const int32_t *s, int32_t day_millis, int32_t trip_millis,
                      int32_t release_millis, const bb_charge_measure *charge,
                      bb_flag shore_present, bb_flag charger_full) {
  int32_t blind_after = s[BB_SHED_BLIND_AFTER_MILLIS];
  int32_t blind_long = s[BB_SHED_BLIND_HEAT_SHED_MILLIS];
  int32_t blind_cap = blind_after > blind_long ? blind_after : blind_long;
  bb_rolling_step(d->sheds, BB_SHED_PLACES, release_millis);
  d->shed_now = 0;
  if (charge->trusted && !d->decided) { /* rule B12 */
    d->level = charge->value < leave(s, BB_LEVEL_HEAT_SHED) ? BB_LEVEL_HEAT_SHED : BB_LEVEL_FULL;
    d->decided = 1;
  }
  bb_flag unseen = !charge->trusted && !shore_present && !charger_full;
  d->blind_now = bb_delay_step(&d->blind, unseen, trip_millis, blind_after, blind_cap);
  bb_flag long_blind = bb_delay_step(&d->blind, unseen, 0, blind_long, blind_cap);
  uint8_t down = BB_LEVEL_FULL;
  for (uint8_t i = BB_LEVEL_SET_BACK; i <= BB_LEVEL_STANDBY; i++) { /* rule B6 */
    if (bb_delay_step(&d->enter_delay[i], charge->trusted && charge->value <= enter(s, i),
                      trip_millis, s[BB_SHED_ENTER_DELAY_MILLIS], s[BB_SHED_ENTER_DELAY_MILLIS])) {
      down = i;
    }
  }
  if (d->blind_now) { /* rule B11 */
    uint8_t blind_level = long_blind ? BB_LEVEL_HEAT_SHED : BB_LEVEL_SURVIVAL;
    if (!d->decided) {
      d->decided = 1;
      d->level = blind_level;
    }
    down = blind_level > down ? blind_level : down;
  }
  if (charge->emergency) { /* rule B7 */
    d->decided = 1;
    down = BB_LEVEL_STANDBY;
  }
  move(d, s, day_millis, release_millis, down, charge, charger_full);
}

void bb_shedding_words(bb_shedding *d, int32_t day_millis, bb_words *w) {
  bb_word_small(w, &d->level, BB_LEVEL_STANDBY);
  bb_word_flag(w, &d->decided);
  bb_word_flag(w, &d->shed_armed);
  for (uint8_t i = 0; i < BB_LEVELS; i++) {
    bb_delay_words(&d->enter_delay[i], w);
  }
  bb_delay_words(&d->leave_delay, w);
  bb_delay_words(&d->blind, w);
  bb_rolling_words(d->sheds, BB_SHED_PLACES, day_millis, w);
}

/* ---- battery or shore ---- */

void bb_supply_reset(bb_supply_select *u, const int32_t *s) { /* rule S8 */
  u->source = BB_SUPPLY_NONE;
  u->target = BB_SUPPLY_NONE;
  u->dead_remaining_millis = s[BB_SUPPLY_DEAD_MILLIS];
  u->dwell_remaining_millis = 0;
  u->before = BB_SUPPLY_NONE;
}

/* Rule S3. */
static uint8_t best_source(const int32_t *s, bb_flag battery_there, bb_flag shore_present,
                           uint8_t level) {
  if (!battery_there) {
    return shore_present ? BB_SUPPLY_SHORE : BB_SUPPLY_NONE;
  }
  if (!shore_present) {
    return BB_SUPPLY_BATTERY;
  }
  return s[BB_SUPPLY_PREFER_BATTERY] && level < BB_LEVEL_HEAT_SHED ? BB_SUPPLY_BATTERY
                                                                   : BB_SUPPLY_SHORE;
}

static void open_source(bb_supply_select *u, const int32_t *s, uint8_t next) {
  u->source = BB_SUPPLY_NONE;
  u->target = next;
  u->dead_remaining_millis = s[BB_SUPPLY_DEAD_MILLIS];
  u->dwell_remaining_millis = 0;
}

void bb_supply_step(bb_supply_select *u, const int32_t *s, int32_t release_millis,
                    bb_flag battery_absent, bb_flag shore_present, uint8_t level,
                    bb_flag heater_was_on) {
  u->before = u->source;
  bb_flag battery_there = s[BB_FITTED_BATTERY] && !battery_absent;
  if (!s[BB_FITTED_SUPPLY_SELECT]) { /* rule S2 */
    u->source = battery_there                                ? BB_SUPPLY_BATTERY
                : shore_present && !s[BB_FITTED_BATTERY] ? BB_SUPPLY_SHORE
                                                             : BB_SUPPLY_NONE;
    u->target = u->source;
    return;
  }
  u->dead_remaining_millis = bb_span_down(u->dead_remaining_millis, release_millis);
  u->dwell_remaining_millis = bb_span_down(u->dwell_remaining_millis, release_millis);
  uint8_t best = best_source(s, battery_there, shore_present, level);
  bb_flag lost = (u->source == BB_SUPPLY_BATTERY && !battery_there) ||
                 (u->source == BB_SUPPLY_SHORE && !shore_present);
  if (u->source == BB_SUPPLY_NONE) { /* rule S4 */
    u->target = best;
    if (u->dead_remaining_millis == 0 && best != BB_SUPPLY_NONE) {
      u->source = best;
      u->dwell_remaining_millis = s[BB_SUPPLY_DWELL_MILLIS];
    }
  } else if (lost) { /* rule S5 */
    open_source(u, s, best);
  } else if (u->target != u->source) { /* rule S6: the heater is open before the source goes */
    if (best == u->source) {
      u->target = u->source;
    } else if (!heater_was_on) {
      open_source(u, s, best);
    }
  } else if (best != u->source && u->dwell_remaining_millis == 0) {
    u->target = best;
  }
}

/* Rule S7. */
bb_flag bb_supply_steady(const bb_supply_select *u) {
  return u->source != BB_SUPPLY_NONE && u->source == u->before && u->target == u->source;
}

void bb_supply_words(bb_supply_select *u, bb_words *w) {
  bb_word_small(w, &u->source, BB_SUPPLY_SHORE);
  bb_word_small(w, &u->target, BB_SUPPLY_SHORE);
  bb_word_millis(w, &u->dead_remaining_millis);
  bb_word_millis(w, &u->dwell_remaining_millis);
}
