/* From readings to the heater relay (sections 4, 5 and 7). */
#include "bb_parts.h"

/* ---- thermostat ---- */

void bb_demand_reset(bb_heat_demand *d) {
  d->calling = 0;
  d->started = 0;
  d->working_centi_c = 0;
  d->ramp_remainder = 0;
  d->unheated_millis = 0;
}

/* Rule H3. At most 6 000 x 60 000 plus a remainder below 3.6e6: inside 32 bits. */
static void ramp(bb_heat_demand *d, const int32_t *s, int32_t release_millis,
                 int32_t target_centi_c) {
  if (d->working_centi_c < target_centi_c) {
    int32_t parts = d->ramp_remainder + s[BB_HEAT_RAMP_CENTI_K_PER_H] * release_millis;
    d->working_centi_c += parts / BB_HOUR_MILLIS;
    d->ramp_remainder = parts % BB_HOUR_MILLIS;
  }
}

bb_flag bb_demand_step(bb_heat_demand *d, const int32_t *s, int32_t trip_millis,
                       int32_t release_millis, bb_flag heater_was_on, const bb_governing *brood,
                       int32_t target_centi_c) {
  d->unheated_millis = heater_was_on ? 0
                                     : bb_span_up(d->unheated_millis, trip_millis,
                                                  s[BB_HEAT_REBASE_MILLIS] + 1);
  if (brood->mode == BB_MODE_NONE) { /* rule H5 */
    d->calling = 0;
    d->started = 0;
    return 0;
  }
  if (!d->started || d->unheated_millis > s[BB_HEAT_REBASE_MILLIS]) { /* rule H4 */
    int32_t base = brood->call_centi_c + s[BB_HEAT_DIFFERENTIAL_CENTI_K];
    d->working_centi_c =
        base > s[BB_HEAT_RAMP_FLOOR_CENTI_C] ? base : s[BB_HEAT_RAMP_FLOOR_CENTI_C];
    d->ramp_remainder = 0;
    d->started = 1;
  } else {
    ramp(d, s, release_millis, target_centi_c);
  }
  if (d->working_centi_c >= target_centi_c) { /* rule H2 */
    d->working_centi_c = target_centi_c;
    d->ramp_remainder = 0;
  }
  if (brood->stop_centi_c >= d->working_centi_c) { /* rule H6 */
    d->calling = 0;
  } else if (brood->call_centi_c <= d->working_centi_c - s[BB_HEAT_DIFFERENTIAL_CENTI_K]) {
    d->calling = 1; /* rule H7 */
  }
  return d->calling;
}

void bb_demand_words(bb_heat_demand *d, bb_words *w) {
  bb_word_flag(w, &d->calling);
  bb_word_flag(w, &d->started);
  bb_word(w, &d->working_centi_c, -30000, 30000);
  bb_word(w, &d->ramp_remainder, 0, BB_HOUR_MILLIS - 1);
  bb_word(w, &d->unheated_millis, 0, BB_DAY_MILLIS + 1);
}

/* Table targets. */
void bb_target_step(const int32_t *s, uint8_t level, bb_flag charger_full, int32_t *brood_centi_c,
                    int32_t *pan_centi_c) {
  int32_t set_point = s[BB_HEAT_SET_POINT_CENTI_C];
  int32_t survival = s[BB_HEAT_SURVIVAL_CENTI_C];
  int32_t fallback = s[BB_FALLBACK_PAN_CENTI_C];
  if (level >= BB_LEVEL_SURVIVAL) { /* rules H1, H10 */
    *brood_centi_c = survival;
    *pan_centi_c = fallback < survival ? fallback : survival;
  } else if (level == BB_LEVEL_SET_BACK) { /* rule H9 */
    int32_t lowered = set_point - s[BB_HEAT_SET_BACK_CENTI_K];
    *brood_centi_c = lowered > survival ? lowered : survival;
    *pan_centi_c = fallback - s[BB_HEAT_SET_BACK_CENTI_K];
  } else { /* rule H8 */
    *brood_centi_c = charger_full ? set_point + s[BB_HEAT_SOAK_CENTI_K] : set_point;
    *pan_centi_c = fallback;
  }
}

/* Table fallback. */
bb_flag bb_fallback_step(bb_pan_fallback *f, const int32_t *s, bb_flag brood_known,
                         bb_flag pan_trusted, int32_t pan_centi_c, int32_t target_centi_c) {
  f->active = s[BB_FALLBACK_ALLOWED] && !brood_known && pan_trusted;
  if (!f->active || pan_centi_c >= target_centi_c) {
    f->calling = 0;
  } else if (pan_centi_c <= target_centi_c - s[BB_FALLBACK_DIFFERENTIAL_CENTI_K]) {
    f->calling = 1;
  }
  return f->calling;
}

/* ---- limits ---- */

void bb_limits_reset(bb_limits *l) {
  l->pan_high = 0;
  l->pan_tripped = 0;
  l->brood_high = 0;
  l->latched = 0;
  bb_rolling_reset(l->trips, BB_TRIP_PLACES);
}

static bb_flag at_limit(const bb_sample_judge *probe, int32_t limit_centi_c) {
  return probe->usable && probe->raw >= limit_centi_c;
}

static bb_flag below(const bb_sample_judge *probe, const int32_t *s, int32_t limit_centi_c) {
  int32_t release_centi_c = limit_centi_c - s[BB_LIMIT_BROOD_DIFFERENTIAL_CENTI_K];
  return (!probe->usable || probe->raw <= release_centi_c) &&
         (!probe->trusted || probe->value <= release_centi_c);
}

void bb_limits_step(bb_limits *l, const int32_t *s, int32_t day_millis, int32_t release_millis,
                    const bb_sample_judge *a, const bb_sample_judge *b, const bb_sample_judge *pan,
                    bb_flag pan_untrusted) {
  int32_t limit_a = s[BB_LIMIT_BROOD_CENTI_C];
  int32_t limit_b = s[BB_BROOD_B_LIKE_PLACE] ? limit_a : s[BB_LIMIT_BROOD_B_CENTI_C]; /* L5 */
  bb_rolling_step(l->trips, BB_TRIP_PLACES, release_millis);
  if (at_limit(pan, s[BB_LIMIT_PAN_TRIP_CENTI_C])) { /* rule L3 */
    if (!l->pan_tripped) {
      bb_rolling_add(l->trips, BB_TRIP_PLACES, day_millis);
    }
    l->pan_tripped = 1;
  }
  if (at_limit(pan, s[BB_LIMIT_PAN_CENTI_C])) { /* rule L1 */
    l->pan_high = 1;
  } else if (pan_untrusted ||
             pan->value <= s[BB_LIMIT_PAN_CENTI_C] - s[BB_LIMIT_PAN_DIFFERENTIAL_CENTI_K]) {
    l->pan_high = 0; /* rule L2 */
    l->pan_tripped = 0;
  }
  if (at_limit(a, limit_a) || at_limit(b, limit_b)) { /* rule L4 */
    l->brood_high = 1;
  } else if (below(a, s, limit_a) && below(b, s, limit_b)) { /* rule L6 */
    l->brood_high = 0;
  }
  if (bb_rolling_count(l->trips, BB_TRIP_PLACES) >= s[BB_LIMIT_TRIPS_TO_LATCH]) { /* rule L7 */
    l->latched = 1;
  }
}

/* Rule L8. */
void bb_limits_clear_latch(bb_limits *l) {
  if (!l->pan_high && !l->brood_high) {
    l->latched = 0;
    bb_rolling_reset(l->trips, BB_TRIP_PLACES);
  }
}

void bb_limits_words(bb_limits *l, int32_t day_millis, bb_words *w) {
  bb_word_flag(w, &l->pan_high);
  bb_word_flag(w, &l->pan_tripped);
  bb_word_flag(w, &l->brood_high);
  bb_word_flag(w, &l->latched);
  bb_rolling_words(l->trips, BB_TRIP_PLACES, day_millis, w);
}

/* ---- effect of the heater ---- */

void bb_effect_reset(bb_heater_effect *e) {
  e->running = 0;
  e->proven = 0;
  e->unproven = 0;
  e->run_millis = 0;
  e->lowest_pan_centi_c = BB_NO_TEMPERATURE;
  e->last_pan_centi_c = BB_NO_TEMPERATURE;
}

static void judge_effect(bb_heater_effect *e, const int32_t *s, int32_t pan_centi_c,
                         const bb_governing *brood, const bb_sample_judge *outdoor,
                         const bb_sample_judge *current) {
  bb_flag pan = pan_centi_c != BB_NO_TEMPERATURE && e->lowest_pan_centi_c != BB_NO_TEMPERATURE;
  if (pan && pan_centi_c < e->lowest_pan_centi_c) { /* rule E1 */
    e->lowest_pan_centi_c = pan_centi_c;
  }
  bb_flag rose = pan && pan_centi_c - e->lowest_pan_centi_c >= s[BB_EFFECT_RISE_CENTI_K];
  bb_flag above = pan_centi_c != BB_NO_TEMPERATURE && brood->mode != BB_MODE_NONE &&
                  pan_centi_c - brood->stop_centi_c >= s[BB_EFFECT_ABOVE_CENTI_K] &&
                  (!outdoor->trusted ||
                   pan_centi_c - outdoor->value >= s[BB_EFFECT_ABOVE_CENTI_K]);
  /* Twice the current is at most 400 000 mA. */
  bb_flag flows = current->usable && 2 * current->raw >= s[BB_HEATER_RATED_MILLI_A];
  if (rose || above || flows) { /* rule E2 */
    e->proven = 1;
    e->unproven = 0;
  } else if (!e->proven && e->run_millis >= s[BB_EFFECT_JUDGE_MILLIS] &&
             (pan || current->trusted)) { /* rule E3 */
    e->unproven = 1;
  }
}

void bb_effect_step(bb_heater_effect *e, const int32_t *s, int32_t trip_millis,
                    bb_flag heater_was_on, const bb_sample_judge *pan, const bb_governing *brood,
                    const bb_sample_judge *outdoor, const bb_sample_judge *current) {
  int32_t pan_centi_c = pan->trusted ? pan->value : BB_NO_TEMPERATURE;
  if (heater_was_on) {
    if (!e->running) { /* rule E1 */
      e->running = 1;
      e->proven = 0;
      e->run_millis = 0;
      e->lowest_pan_centi_c = e->last_pan_centi_c;
    }
    e->run_millis = bb_span_up(e->run_millis, trip_millis, s[BB_EFFECT_JUDGE_MILLIS]);
    judge_effect(e, s, pan_centi_c, brood, outdoor, current);
  } else {
    e->running = 0;
  }
  e->last_pan_centi_c = pan_centi_c;
}

void bb_effect_words(bb_heater_effect *e, bb_words *w) {
  bb_word_flag(w, &e->running);
  bb_word_flag(w, &e->proven);
  bb_word_flag(w, &e->unproven);
  bb_word_millis(w, &e->run_millis);
  bb_word_mark(w, &e->lowest_pan_centi_c);
  bb_word_mark(w, &e->last_pan_centi_c);
}

/* ---- welded relay ---- */

void bb_weld_reset(bb_weld_watch *d) {
  d->off_millis = 0;
  d->looking = 0;
  d->looked_millis = 0;
  d->look_pan_centi_c = 0;
  d->cause = 0;
  d->latched = 0;
}

/* Rule D2. */
static void by_pan(bb_weld_watch *d, const int32_t *s, int32_t trip_millis,
                   const bb_sample_judge *pan, const bb_governing *brood,
                   const bb_sample_judge *outdoor) {
  bb_flag warm = d->off_millis >= s[BB_WELD_BLANK_MILLIS] && pan->trusted &&
                 brood->mode != BB_MODE_NONE &&
                 pan->value - brood->stop_centi_c >= s[BB_WELD_ABOVE_CENTI_K] &&
                 (!outdoor->trusted || pan->value - outdoor->value >= s[BB_WELD_ABOVE_CENTI_K]);
  if (!warm) {
    d->looking = 0;
    d->cause = 0;
  } else if (!d->looking) {
    d->looking = 1;
    d->looked_millis = 0;
    d->look_pan_centi_c = pan->value;
  } else {
    d->looked_millis = bb_span_up(d->looked_millis, trip_millis, s[BB_WELD_LOOK_MILLIS]);
    if (d->looked_millis >= s[BB_WELD_LOOK_MILLIS]) {
      d->cause = pan->value >= d->look_pan_centi_c;
      d->looked_millis = 0;
      d->look_pan_centi_c = pan->value;
    }
  }
}

void bb_weld_step(bb_weld_watch *d, const int32_t *s, int32_t trip_millis, bb_flag heater_was_on,
                  const bb_sample_judge *current, int32_t current_age_millis,
                  const bb_sample_judge *pan, const bb_governing *brood,
                  const bb_sample_judge *outdoor) {
  if (heater_was_on) {
    d->off_millis = 0;
    d->looking = 0;
    d->cause = 0;
    return;
  }
  d->off_millis = bb_span_up(d->off_millis, trip_millis, s[BB_WELD_BLANK_MILLIS]);
  if (current->usable) { /* rule D1: a sample from before off proves nothing */
    d->looking = 0;
    d->cause = d->off_millis - current_age_millis >= s[BB_WELD_AFTER_MILLIS] &&
               2 * current->raw > s[BB_HEATER_RATED_MILLI_A];
  } else {
    by_pan(d, s, trip_millis, pan, brood, outdoor);
  }
  d->latched = d->latched || d->cause; /* rule D3 */
}

/* Rule D4. */
void bb_weld_clear_latch(bb_weld_watch *d) { d->latched = d->cause; }

void bb_weld_words(bb_weld_watch *d, bb_words *w) {
  bb_word_millis(w, &d->off_millis);
  bb_word_flag(w, &d->looking);
  bb_word_millis(w, &d->looked_millis);
  bb_word(w, &d->look_pan_centi_c, -30000, 30000);
  bb_word_flag(w, &d->cause);
  bb_word_flag(w, &d->latched);
}

/* ---- permits, wishes, guard ---- */

void bb_heater_reset(bb_heater_path *h, const int32_t *s) {
  bb_demand_reset(&h->demand);
  h->fallback.active = 0;
  h->fallback.calling = 0;
  bb_limits_reset(&h->limits);
  bb_effect_reset(&h->effect);
  bb_weld_reset(&h->weld);
  bb_gate_reset(&h->effect_share);
  bb_gate_reset(&h->blind_share);
  bb_relay_open(&h->relay, s[BB_RELAY_MIN_OFF_MILLIS]); /* rule R6 */
  bb_rolling_reset(h->starts, BB_START_PLACES);
  h->stop_reason = BB_REASON_NONE;
  h->pan_believed = 0;
  h->was_on = 0;
  h->testing = 0;
  h->wish = 0;
  h->denied = BB_REASON_NONE;
}

/* First part of a step: what the probes say of heater and pan. */
void bb_heater_observe(bb_heater_path *h, const int32_t *s, int32_t day_millis, int32_t trip_millis,
                       int32_t release_millis, const bb_sample_judge *brood_a,
                       const bb_sample_judge *brood_b, const bb_governing *brood,
                       const bb_sample_judge *pan, const bb_sample_judge *outdoor,
                       const bb_sample_judge *heater_current, int32_t heater_current_age_millis) {
  h->was_on = h->relay.on;
  bb_effect_step(&h->effect, s, trip_millis, h->was_on, pan, brood, outdoor, heater_current);
  bb_weld_step(&h->weld, s, trip_millis, h->was_on, heater_current, heater_current_age_millis, pan,
               brood, outdoor);
  h->pan_believed = pan->trusted && !h->effect.unproven; /* rule E4 */
  bb_limits_step(&h->limits, s, day_millis, release_millis, brood_a, brood_b, pan,
                 !h->pan_believed);
}

/* A long press: clears latches whose cause is gone. */
void bb_heater_clear_latches(bb_heater_path *h) {
  bb_weld_clear_latch(&h->weld);
  bb_limits_clear_latch(&h->limits);
}

/* Second part of a step: what is wished (rule G3). */
void bb_heater_want(bb_heater_path *h, const int32_t *s, int32_t trip_millis,
                    int32_t release_millis, uint8_t level, bb_flag charger_full,
                    const bb_governing *brood, const bb_sample_judge *pan, bb_flag heater_test) {
  int32_t brood_target;
  int32_t pan_target;
  bb_target_step(s, level, charger_full, &brood_target, &pan_target);
  bb_flag calling = bb_demand_step(&h->demand, s, trip_millis, release_millis, h->was_on, brood,
                                   brood_target);
  bb_flag pan_calling = bb_fallback_step(&h->fallback, s, brood->mode != BB_MODE_NONE,
                                         h->pan_believed, pan->value, pan_target);
  h->testing = heater_test;
  h->wish = calling || pan_calling || heater_test;
}

static bb_flag starts_left(const bb_heater_path *h, const int32_t *s) { /* rule R5 */
  return bb_rolling_count(h->starts, BB_START_PLACES) < s[BB_RELAY_STARTS_PER_HOUR];
}

static bb_flag spent(const bb_heater_path *h, const int32_t *s, const bb_duty_gate *gate,
                     int32_t allow_millis) {
  return !bb_gate_left(gate, allow_millis, h->was_on, s[BB_RELAY_MIN_ON_MILLIS]);
}

/* Table permits, by rank (rule G2). */
static uint8_t denied(const bb_heater_path *h, const int32_t *s, const bb_governing *brood,
                      bb_flag supply_steady, uint8_t level, bb_flag serviced, bb_flag fan_holds,
                      bb_flag blind) {
  if (h->weld.latched) {
    return BB_REASON_ISOLATION;
  }
  if (h->limits.latched) {
    return BB_REASON_TRIP_LATCHED;
  }
  if (h->limits.pan_tripped) {
    return BB_REASON_PAN_TRIP;
  }
  if (h->limits.brood_high) {
    return BB_REASON_BROOD_LIMIT;
  }
  if (h->limits.pan_high) {
    return BB_REASON_PAN_LIMIT;
  }
  if (brood->mode == BB_MODE_NONE && !h->fallback.active) { /* rule W7 */
    return BB_REASON_TRUST;
  }
  if (!supply_steady) {
    return BB_REASON_SUPPLY;
  }
  if (level >= BB_LEVEL_HEAT_SHED) {
    return BB_REASON_SHED;
  }
  if (serviced) {
    return BB_REASON_SERVICE;
  }
  if (fan_holds) {
    return BB_REASON_COOLING;
  }
  if (!h->pan_believed && spent(h, s, &h->effect_share, s[BB_EFFECT_SHARE_ON_MILLIS])) {
    return BB_REASON_EFFECT;
  }
  if (blind && spent(h, s, &h->blind_share, s[BB_SHED_BLIND_ON_MILLIS])) {
    return BB_REASON_BLIND;
  }
  return BB_REASON_NONE;
}

/* Last part of a step: permits, then the guard. */
bb_flag bb_heater_drive(bb_heater_path *h, const int32_t *s, int32_t hour_millis,
                        int32_t day_millis, int32_t trip_millis, int32_t release_millis,
                        const bb_governing *brood, bb_flag supply_steady, uint8_t level,
                        bb_flag serviced, bb_flag fan_holds, bb_flag blind) {
  bb_relay_pass(&h->relay, release_millis);
  bb_rolling_step(h->starts, BB_START_PLACES, release_millis);
  bb_gate_step(&h->effect_share, s[BB_EFFECT_SHARE_ON_MILLIS], s[BB_EFFECT_SHARE_WINDOW_MILLIS],
               h->was_on, trip_millis, release_millis); /* rule E6 */
  bb_gate_step(&h->blind_share, s[BB_SHED_BLIND_ON_MILLIS], s[BB_SHED_BLIND_WINDOW_MILLIS],
               h->was_on, trip_millis, release_millis);
  h->denied = denied(h, s, brood, supply_steady, level, serviced, fan_holds, blind);
  if (bb_relay_drive(&h->relay, h->denied == BB_REASON_NONE, h->wish, starts_left(h, s),
                     s[BB_RELAY_MIN_ON_MILLIS], s[BB_RELAY_MIN_OFF_MILLIS])) {
    bb_rolling_add(h->starts, BB_START_PLACES, hour_millis);
  }
  if (h->was_on && !h->relay.on) { /* rule G5 */
    h->stop_reason = h->denied;
    if (h->denied == BB_REASON_BROOD_LIMIT) {
      bb_rolling_add(h->limits.trips, BB_TRIP_PLACES, day_millis); /* rule L6 */
    }
  }
  return h->relay.on;
}

/* Rule G4. */
uint8_t bb_heater_reason(const bb_heater_path *h, const int32_t *s) {
  if (h->relay.on) {
    if (h->testing) {
      return BB_REASON_TEST;
    }
    if (h->fallback.active) {
      return BB_REASON_FALLBACK;
    }
    return h->wish ? BB_REASON_NONE : BB_REASON_MIN_ON;
  }
  if (h->denied != BB_REASON_NONE) {
    return h->wish || h->was_on || h->denied == BB_REASON_TRUST ? h->denied : BB_REASON_NONE;
  }
  if (!h->wish) {
    return BB_REASON_NONE;
  }
  return starts_left(h, s) || h->relay.min_off_remaining_millis > 0 ? BB_REASON_MIN_OFF
                                                                    : BB_REASON_STARTS;
}

void bb_heater_words(bb_heater_path *h, int32_t hour_millis, int32_t day_millis, bb_words *w) {
  bb_demand_words(&h->demand, w);
  bb_word_flag(w, &h->fallback.calling);
  bb_limits_words(&h->limits, day_millis, w);
  bb_effect_words(&h->effect, w);
  bb_weld_words(&h->weld, w);
  bb_gate_words(&h->effect_share, w);
  bb_gate_words(&h->blind_share, w);
  bb_relay_words(&h->relay, w);
  bb_rolling_words(h->starts, BB_START_PLACES, hour_millis, w);
  bb_word_small(w, &h->stop_reason, BB_REASON_BLIND);
}
