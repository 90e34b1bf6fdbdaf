/* Durations, delays, shares, rolling counts, the relay guard, time, state words. */
#include "bb_parts.h"

/* ---- durations that saturate (rule T4) ---- */

/* What is left after dt_millis; never below zero. */
int32_t bb_span_down(int32_t remaining_millis, int32_t dt_millis) {
  return remaining_millis > dt_millis ? remaining_millis - dt_millis : 0;
}

/* The sum, at most cap_millis. All are at least zero, so the subtraction stays inside 32 bits. */
int32_t bb_span_up(int32_t elapsed_millis, int32_t dt_millis, int32_t cap_millis) {
  return elapsed_millis >= cap_millis - dt_millis ? cap_millis : elapsed_millis + dt_millis;
}

/* ---- a condition that holds (rule T6) ---- */

void bb_delay_reset(bb_delay *d) {
  d->running = 0;
  d->elapsed_millis = 0;
}

bb_flag bb_delay_step(bb_delay *d, bb_flag condition, int32_t dt_millis, int32_t delay_millis,
                      int32_t cap_millis) {
  if (!condition) {
    bb_delay_reset(d);
    return 0;
  }
  d->elapsed_millis = d->running ? bb_span_up(d->elapsed_millis, dt_millis, cap_millis) : 0;
  d->running = 1;
  return d->elapsed_millis >= delay_millis;
}

void bb_delay_words(bb_delay *d, bb_words *w) {
  bb_word_flag(w, &d->running);
  bb_word_millis(w, &d->elapsed_millis);
}

/* ---- a share of on-time (rule G1) ---- */

void bb_gate_reset(bb_duty_gate *g) {
  g->used_millis = 0;
  g->idle_millis = 0;
}

/* Counts the interval that ends now, in which the output was was_on. */
void bb_gate_step(bb_duty_gate *g, int32_t allow_millis, int32_t window_millis, bb_flag was_on,
                  int32_t trip_millis, int32_t release_millis) {
  int32_t pause_millis = window_millis - allow_millis;
  if (was_on) {
    g->used_millis = bb_span_up(g->used_millis, trip_millis, allow_millis);
    g->idle_millis = 0;
  } else {
    g->idle_millis = bb_span_up(g->idle_millis, release_millis, pause_millis);
    if (g->idle_millis >= pause_millis) {
      g->used_millis = 0;
    }
  }
}

bb_flag bb_gate_left(const bb_duty_gate *g, int32_t allow_millis, bb_flag was_on,
                     int32_t need_millis) {
  if (was_on) {
    return g->used_millis < allow_millis;
  }
  return g->used_millis == 0 || g->used_millis <= allow_millis - need_millis;
}

void bb_gate_words(bb_duty_gate *g, bb_words *w) {
  bb_word_millis(w, &g->used_millis);
  bb_word_millis(w, &g->idle_millis);
}

/* ---- events in a rolling window ---- */

void bb_rolling_reset(int32_t *remaining_millis, uint8_t places) {
  for (uint8_t i = 0; i < places; i++) {
    remaining_millis[i] = 0;
  }
}

void bb_rolling_step(int32_t *remaining_millis, uint8_t places, int32_t dt_millis) {
  for (uint8_t i = 0; i < places; i++) {
    remaining_millis[i] = bb_span_down(remaining_millis[i], dt_millis);
  }
}

/* When every place is taken the event that would leave first makes room. */
void bb_rolling_add(int32_t *remaining_millis, uint8_t places, int32_t window_millis) {
  uint8_t first = 0;
  for (uint8_t i = 1; i < places; i++) {
    if (remaining_millis[i] < remaining_millis[first]) {
      first = i;
    }
  }
  remaining_millis[first] = window_millis;
}

uint8_t bb_rolling_count(const int32_t *remaining_millis, uint8_t places) {
  uint8_t count = 0;
  for (uint8_t i = 0; i < places; i++) {
    if (remaining_millis[i] > 0) {
      count++;
    }
  }
  return count;
}

void bb_rolling_words(int32_t *remaining_millis, uint8_t places, int32_t window_millis,
                      bb_words *w) {
  for (uint8_t i = 0; i < places; i++) {
    bb_word(w, &remaining_millis[i], 0, window_millis);
  }
}

bb_flag bb_hysteresis_step(bb_flag on, bb_flag known, int32_t value, int32_t on_at,
                           int32_t off_at) {
  if (!known || value <= off_at) {
    return 0;
  }
  return on || value >= on_at;
}

/* ---- the relay guard (table relay, rules R4 to R7) ---- */

/* Opens the relay and starts minimum off anew. */
void bb_relay_open(bb_relay_guard *r, int32_t min_off_millis) {
  r->on = 0;
  r->min_on_remaining_millis = 0;
  r->min_off_remaining_millis = min_off_millis;
}

/* Rule R4: lets time pass, before the table is read. */
void bb_relay_pass(bb_relay_guard *r, int32_t release_millis) {
  r->min_on_remaining_millis = bb_span_down(r->min_on_remaining_millis, release_millis);
  r->min_off_remaining_millis = bb_span_down(r->min_off_remaining_millis, release_millis);
}

bb_flag bb_relay_drive(bb_relay_guard *r, bb_flag permit, bb_flag wish, bb_flag starts_left,
                       int32_t min_on_millis, int32_t min_off_millis) {
  if (r->on) {
    if (!permit || (!wish && r->min_on_remaining_millis == 0)) { /* rules R1, R2 */
      bb_relay_open(r, min_off_millis);
    }
    return 0;
  }
  if (permit && wish && r->min_off_remaining_millis == 0 && starts_left) { /* rule R3 */
    r->on = 1;
    r->min_on_remaining_millis = min_on_millis;
    return 1;
  }
  return 0;
}

void bb_relay_words(bb_relay_guard *r, bb_words *w) {
  bb_word_flag(w, &r->on);
  bb_word_millis(w, &r->min_on_remaining_millis);
  bb_word_millis(w, &r->min_off_remaining_millis);
}

/* ---- time ---- */

#define BB_RELEASE_MOST_MILLIS INT32_C(60000)

void bb_ticker_step(bb_ticker *t, uint32_t now_millis) {
  /* Unsigned, so that the counter may wrap. Rule T5: the first step counts no time. */
  uint32_t difference = t->started ? now_millis - t->last_millis : 0;
  t->started = 1;
  t->last_millis = now_millis;
  t->backwards = difference > INT32_MAX; /* rule T2 */
  t->trip_millis = t->backwards ? 0 : (int32_t)difference;
  t->release_millis = /* rule T3 */
      t->trip_millis < BB_RELEASE_MOST_MILLIS ? t->trip_millis : BB_RELEASE_MOST_MILLIS;
}

/* ---- state words ---- */

void bb_word(bb_words *w, int32_t *value, int32_t low, int32_t high) {
  if (w->out) {
    w->out[w->at] = *value;
  } else {
    int32_t word = w->in[w->at];
    if (word < low || word > high) {
      w->bad = 1;
      word = low;
    }
    *value = word;
  }
  w->at++;
}

void bb_word_millis(bb_words *w, int32_t *millis) { bb_word(w, millis, 0, INT32_MAX); }

void bb_word_flag(bb_words *w, bb_flag *flag) {
  int32_t value = *flag;
  bb_word(w, &value, 0, 1);
  *flag = value == 1;
}

void bb_word_small(bb_words *w, uint8_t *value, uint8_t high) {
  int32_t wide = *value;
  bb_word(w, &wide, 0, high);
  *value = (uint8_t)wide;
}

void bb_word_mark(bb_words *w, int32_t *centi_c) {
  bb_word(w, centi_c, BB_NO_TEMPERATURE, 30000);
  if (*centi_c < -30000) {
    *centi_c = BB_NO_TEMPERATURE;
  }
}
