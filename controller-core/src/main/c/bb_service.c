/* Button, commissioning test, alarms, daily look (sections 10 and 11). */
#include "bb_parts.h"

/* ---- button ---- */

void bb_button_reset(bb_button *b) {
  b->seen_up = 0;
  b->down = 0;
  b->down_millis = 0;
  b->service_remaining_millis = 0;
  b->short_press = 0;
  b->long_press = 0;
}

void bb_button_step(bb_button *b, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                    bb_flag pressed) {
  b->service_remaining_millis = bb_span_down(b->service_remaining_millis, release_millis);
  b->short_press = 0;
  b->long_press = 0;
  if (pressed) {
    b->down_millis =
        b->down ? bb_span_up(b->down_millis, trip_millis, s[BB_BUTTON_STUCK_MILLIS]) : 0;
    b->down = 1;
    return;
  }
  if (b->down && b->seen_up) { /* rules K1 to K4 */
    b->short_press = b->down_millis < s[BB_BUTTON_LONG_MILLIS];
    b->long_press = b->down_millis >= s[BB_BUTTON_LONG_MILLIS] &&
                    b->down_millis < s[BB_BUTTON_STUCK_MILLIS];
  }
  b->seen_up = 1;
  b->down = 0;
  b->down_millis = 0;
  if (b->short_press) { /* rule K2 */
    b->service_remaining_millis =
        b->service_remaining_millis > 0 ? 0 : s[BB_SERVICE_HOLD_MILLIS];
  }
}

bb_flag bb_button_stuck(const bb_button *b, const int32_t *s) {
  return b->down && b->down_millis >= s[BB_BUTTON_STUCK_MILLIS];
}

void bb_button_words(bb_button *b, bb_words *w) {
  bb_word_flag(w, &b->seen_up);
  bb_word_flag(w, &b->down);
  bb_word_millis(w, &b->down_millis);
  bb_word_millis(w, &b->service_remaining_millis);
}

/* ---- commissioning test ---- */

static void begin(bb_commissioning *t, uint8_t next) {
  t->phase = next;
  t->ran = 0;
  t->ran_millis = 0;
  t->waited_millis = 0;
}

void bb_test_reset(bb_commissioning *t) {
  t->requested = 0;
  begin(t, BB_PHASE_IDLE);
}

void bb_test_step(bb_commissioning *t, const int32_t *s, int32_t trip_millis, bb_flag request,
                  bb_flag cancel, bb_flag heater_was_on, bb_flag fan_was_on) {
  bb_flag edge = request && !t->requested;
  t->requested = request;
  if (cancel) {
    begin(t, BB_PHASE_IDLE);
  } else if (t->phase == BB_PHASE_IDLE) { /* rule K7 */
    if (edge) {
      begin(t, BB_PHASE_HEATER);
    }
  } else { /* rule K8 */
    bb_flag on = t->phase == BB_PHASE_HEATER ? heater_was_on : fan_was_on;
    if (on) {
      t->ran = 1;
      t->ran_millis = bb_span_up(t->ran_millis, trip_millis, s[BB_TEST_MILLIS]);
    } else {
      t->waited_millis = bb_span_up(t->waited_millis, trip_millis, s[BB_TEST_WAIT_MILLIS]);
    }
    if (t->ran_millis >= s[BB_TEST_MILLIS] || t->waited_millis >= s[BB_TEST_WAIT_MILLIS] ||
        (t->ran && !on)) {
      begin(t, t->phase == BB_PHASE_HEATER && s[BB_FITTED_FAN] ? BB_PHASE_FAN : BB_PHASE_IDLE);
    }
  }
}

void bb_test_words(bb_commissioning *t, bb_words *w) {
  bb_word_flag(w, &t->requested);
  bb_word_small(w, &t->phase, BB_PHASE_FAN);
  bb_word_flag(w, &t->ran);
  bb_word_millis(w, &t->ran_millis);
  bb_word_millis(w, &t->waited_millis);
}

/* ---- alarms ---- */

#define BB_CLEAR_MILLIS INT32_C(60000)
#define BB_LONGEST_MILLIS INT32_C(172800000)

void bb_alarms_reset(bb_alarms *a) {
  a->active = 0;
  a->latched = 0;
  for (uint8_t i = 0; i < BB_ALARM_COUNT; i++) {
    bb_delay_reset(&a->delay[i]);
  }
}

/* The table of section 11. */
static int32_t raise_millis(const int32_t *s, uint8_t alarm) {
  switch (alarm) {
    case BB_ALARM_BROOD_PROBE:
    case BB_ALARM_PAN_PROBE:
    case BB_ALARM_OUTDOOR_PROBE:
    case BB_ALARM_FALLBACK:
      return 120000;
    case BB_ALARM_PROBES_APART:
      return 600000;
    case BB_ALARM_BROOD_LOW:
      return s[BB_ALARM_BROOD_LOW_MILLIS];
    case BB_ALARM_NO_SUPPLY:
      return 60000;
    default:
      return 0;
  }
}

/* Conditions carry one bit an alarm. */
void bb_alarms_step(bb_alarms *a, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                    uint32_t conditions) {
  for (uint8_t i = 0; i < BB_ALARM_COUNT; i++) {
    uint32_t bit = (uint32_t)1 << i;
    bb_flag condition = (conditions & bit) != 0;
    if (condition == ((a->active & bit) != 0)) {
      bb_delay_reset(&a->delay[i]);
    } else if (bb_delay_step(&a->delay[i], 1, condition ? trip_millis : release_millis,
                             condition ? raise_millis(s, i) : BB_CLEAR_MILLIS,
                             BB_LONGEST_MILLIS)) {
      a->active ^= bit; /* rule A1 */
      if (condition) {
        a->latched |= bit; /* rule A2 */
      }
      bb_delay_reset(&a->delay[i]);
    }
  }
}

void bb_alarms_words(bb_alarms *a, bb_words *w) {
  for (uint8_t i = 0; i < BB_ALARM_COUNT; i++) {
    uint32_t bit = (uint32_t)1 << i;
    bb_flag active = (a->active & bit) != 0;
    bb_flag latched = (a->latched & bit) != 0;
    bb_word_flag(w, &active);
    bb_word_flag(w, &latched);
    a->active = active ? a->active | bit : a->active & ~bit;
    a->latched = latched ? a->latched | bit : a->latched & ~bit;
    bb_delay_words(&a->delay[i], w);
  }
}

/* ---- daily look ---- */

#define BB_MOST INT32_C(1000000000) /* rule Y2 */

void bb_daily_reset(bb_daily_look *y) {
  y->lowest_centi_c = BB_NO_TEMPERATURE;
  y->highest_centi_c = BB_NO_TEMPERATURE;
  y->heater_seconds = 0;
  y->heater_millis = 0;
  y->starts = 0;
  y->sheds = 0;
}

/* Rule Y1. */
void bb_daily_step(bb_daily_look *y, int32_t trip_millis, bb_flag heater_was_on,
                   const bb_governing *brood, bb_flag heater_started, bb_flag shed) {
  if (heater_was_on) {
    int32_t seconds = trip_millis / 1000;
    y->heater_millis += trip_millis % 1000;
    if (y->heater_millis >= 1000) {
      y->heater_millis -= 1000;
      seconds++;
    }
    y->heater_seconds = bb_span_up(y->heater_seconds, seconds, BB_MOST);
  }
  if (brood->mode != BB_MODE_NONE) {
    bb_flag first = y->lowest_centi_c == BB_NO_TEMPERATURE;
    if (first || brood->call_centi_c < y->lowest_centi_c) {
      y->lowest_centi_c = brood->call_centi_c;
    }
    if (first || brood->stop_centi_c > y->highest_centi_c) {
      y->highest_centi_c = brood->stop_centi_c;
    }
  }
  if (heater_started) {
    y->starts = bb_span_up(y->starts, 1, BB_MOST);
  }
  if (shed) {
    y->sheds = bb_span_up(y->sheds, 1, BB_MOST);
  }
}

void bb_daily_words(bb_daily_look *y, bb_words *w) {
  bb_word(w, &y->lowest_centi_c, BB_NO_TEMPERATURE, 30000);
  bb_word(w, &y->highest_centi_c, BB_NO_TEMPERATURE, 30000);
  bb_word(w, &y->heater_seconds, 0, BB_MOST);
  bb_word(w, &y->heater_millis, 0, 999);
  bb_word(w, &y->starts, 0, BB_MOST);
  bb_word(w, &y->sheds, 0, BB_MOST);
}
