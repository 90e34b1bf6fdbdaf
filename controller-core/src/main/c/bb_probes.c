/* Judging readings, and which temperature counts (sections 2 and 3). */
#include "bb_parts.h"

/* After so long without a good sample any value in range is taken as a new start (rule P2). */
#define BB_RATE_VOID_MILLIS INT32_C(60000)

#define BB_MOST_PERMILLE 1000
#define BB_MOST_MILLI_A INT32_C(200000)
#define BB_MOST_MILLI_W INT32_C(10000000)

void bb_judge_reset(bb_sample_judge *j) {
  j->trusted = 0;
  j->known = 0;
  j->good = 0;
  j->value = 0;
  j->since_good_millis = 0;
  j->good_for_millis = 0;
  j->usable = 0;
  j->raw = 0;
}

/* Rule P1, but for the codes. */
static bb_flag usable(const int32_t *s, const bb_sample *sample, int32_t lowest, int32_t highest) {
  return sample->valid && sample->age_millis >= 0 &&
         sample->age_millis <= s[BB_TRUST_OLDEST_MILLIS] && sample->value >= lowest &&
         sample->value <= highest;
}

/* Rule P2. Both values are in range, so the difference fits 32 bits; so does the product. */
static bb_flag slow_enough(const bb_sample_judge *j, const int32_t *s) {
  if (!j->known || j->since_good_millis >= BB_RATE_VOID_MILLIS) {
    return 1;
  }
  int32_t allowed = s[BB_TRUST_STEP_CENTI_K] +
                    s[BB_TRUST_RATE_CENTI_K_PER_S] * j->since_good_millis / 1000;
  int32_t change = j->raw - j->value;
  return change <= allowed && change >= -allowed;
}

/* Rules P3 and P4. */
static void judge(bb_sample_judge *j, const int32_t *s, bb_flag is_usable, bb_flag rate_checked,
                  const bb_sample *sample, int32_t trip_millis, int32_t release_millis) {
  j->raw = sample->value;
  j->usable = is_usable;
  j->since_good_millis = bb_span_up(j->since_good_millis, trip_millis, BB_RATE_VOID_MILLIS);
  if (j->usable && (!rate_checked || slow_enough(j, s))) {
    j->good_for_millis =
        j->good ? bb_span_up(j->good_for_millis, release_millis, s[BB_TRUST_GAIN_MILLIS]) : 0;
    j->trusted = j->trusted || j->good_for_millis >= s[BB_TRUST_GAIN_MILLIS];
    j->good = 1;
    j->known = 1;
    j->value = j->raw;
    j->since_good_millis = 0;
  } else {
    j->good = 0;
    j->good_for_millis = 0;
    j->trusted = j->trusted && j->since_good_millis <= s[BB_TRUST_HOLD_MILLIS];
  }
}

void bb_judge_temperature(bb_sample_judge *j, const int32_t *s, const bb_sample *sample,
                          int32_t trip_millis, int32_t release_millis) {
  bb_flag is_usable =
      usable(s, sample, s[BB_TRUST_LOWEST_CENTI_C], s[BB_TRUST_HIGHEST_CENTI_C]) &&
      sample->value != s[BB_TRUST_CODE_1_CENTI_C] && sample->value != s[BB_TRUST_CODE_2_CENTI_C];
  judge(j, s, is_usable, 1, sample, trip_millis, release_millis);
}

void bb_judge_ranged(bb_sample_judge *j, const int32_t *s, int32_t lowest, int32_t highest,
                     const bb_sample *sample, int32_t trip_millis, int32_t release_millis) {
  judge(j, s, usable(s, sample, lowest, highest), 0, sample, trip_millis, release_millis);
}

void bb_judge_distrust(bb_sample_judge *j) {
  j->trusted = 0;
  j->good = 0;
  j->good_for_millis = 0;
}

void bb_judge_words(bb_sample_judge *j, int32_t lowest, int32_t highest, bb_words *w) {
  bb_word_flag(w, &j->trusted);
  bb_word_flag(w, &j->known);
  bb_word_flag(w, &j->good);
  bb_word(w, &j->value, lowest < 0 ? lowest : 0, highest);
  bb_word(w, &j->since_good_millis, 0, BB_RATE_VOID_MILLIS);
  bb_word_millis(w, &j->good_for_millis);
}

/* ---- stuck probes (rule P7) ---- */

void bb_stuck_reset(bb_stuck_watch *k) {
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    k->last_centi_c[i] = BB_NO_TEMPERATURE;
    k->unchanged_millis[i] = 0;
    k->other_moved[i] = 0;
    k->stuck[i] = 0;
  }
  for (uint8_t m = 0; m < BB_TEMPERATURES * BB_TEMPERATURES; m++) {
    k->mark_centi_c[m] = BB_NO_TEMPERATURE;
  }
}

static void mark(bb_stuck_watch *k, uint8_t i, const bb_sample_judge *judges) {
  for (uint8_t o = 0; o < BB_TEMPERATURES; o++) {
    k->mark_centi_c[i * BB_TEMPERATURES + o] =
        judges[o].trusted ? judges[o].value : BB_NO_TEMPERATURE;
  }
}

static bb_flag moved(bb_stuck_watch *k, const int32_t *s, uint8_t i,
                     const bb_sample_judge *judges) {
  bb_flag any = 0;
  for (uint8_t o = 0; o < BB_TEMPERATURES; o++) {
    int32_t *from = &k->mark_centi_c[i * BB_TEMPERATURES + o];
    if (o == i || !judges[o].trusted) {
      continue;
    }
    if (*from == BB_NO_TEMPERATURE) {
      *from = judges[o].value;
    }
    int32_t change = judges[o].value - *from;
    any = any || change >= s[BB_TRUST_STUCK_OTHER_CENTI_K] ||
          change <= -s[BB_TRUST_STUCK_OTHER_CENTI_K];
  }
  return any;
}

/* Call after the judges; takes trust away from every stuck probe. */
void bb_stuck_step(bb_stuck_watch *k, const int32_t *s, bb_sample_judge *judges,
                   int32_t trip_millis) {
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    if (!judges[i].good) {
      continue;
    }
    if (judges[i].value != k->last_centi_c[i]) {
      k->last_centi_c[i] = judges[i].value;
      k->unchanged_millis[i] = 0;
      k->other_moved[i] = 0;
      k->stuck[i] = 0;
      mark(k, i, judges);
    } else {
      k->unchanged_millis[i] =
          bb_span_up(k->unchanged_millis[i], trip_millis, s[BB_TRUST_STUCK_MILLIS]);
      k->other_moved[i] = k->other_moved[i] || moved(k, s, i, judges);
      k->stuck[i] = k->other_moved[i] && k->unchanged_millis[i] >= s[BB_TRUST_STUCK_MILLIS];
    }
  }
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    if (k->stuck[i]) {
      bb_judge_distrust(&judges[i]);
    }
  }
}

bb_flag bb_stuck_any(const bb_stuck_watch *k) {
  bb_flag any = 0;
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    any = any || k->stuck[i];
  }
  return any;
}

void bb_stuck_words(bb_stuck_watch *k, bb_words *w) {
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    bb_word_mark(w, &k->last_centi_c[i]);
    bb_word_millis(w, &k->unchanged_millis[i]);
    bb_word_flag(w, &k->other_moved[i]);
    bb_word_flag(w, &k->stuck[i]);
  }
  for (uint8_t m = 0; m < BB_TEMPERATURES * BB_TEMPERATURES; m++) {
    bb_word_mark(w, &k->mark_centi_c[m]);
  }
}

/* ---- all of them ---- */

void bb_probes_reset(bb_probes *p) {
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    bb_judge_reset(&p->temperature[i]);
  }
  bb_judge_reset(&p->humidity);
  bb_judge_reset(&p->volts);
  bb_judge_reset(&p->battery_current);
  bb_judge_reset(&p->state_of_charge);
  bb_judge_reset(&p->heater_current);
  bb_judge_reset(&p->panel_power);
  bb_stuck_reset(&p->stuck);
}

/* A reading that is not fitted is never usable and never trusted. */
void bb_probes_step(bb_probes *p, const int32_t *s, const bb_readings *in, int32_t trip_millis,
                    int32_t release_millis) {
  const bb_sample *temperatures[BB_TEMPERATURES] = {&in->brood_a, &in->brood_b, &in->pan, &in->top,
                                                    &in->outdoor};
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    if (s[BB_FITTED_BROOD_A + i]) {
      bb_judge_temperature(&p->temperature[i], s, temperatures[i], trip_millis, release_millis);
    }
  }
  if (s[BB_FITTED_HUMIDITY]) {
    bb_judge_ranged(&p->humidity, s, 0, BB_MOST_PERMILLE, &in->humidity, trip_millis,
                    release_millis);
  }
  if (s[BB_FITTED_BATTERY]) {
    bb_judge_ranged(&p->volts, s, s[BB_BATTERY_LOWEST_MILLI_V], s[BB_BATTERY_HIGHEST_MILLI_V],
                    &in->battery, trip_millis, release_millis);
  }
  if (s[BB_FITTED_BATTERY_CURRENT]) {
    bb_judge_ranged(&p->battery_current, s, -BB_MOST_MILLI_A, BB_MOST_MILLI_A,
                    &in->battery_current, trip_millis, release_millis);
  }
  if (s[BB_FITTED_STATE_OF_CHARGE]) {
    bb_judge_ranged(&p->state_of_charge, s, 0, BB_MOST_PERMILLE, &in->state_of_charge, trip_millis,
                    release_millis);
  }
  if (s[BB_FITTED_HEATER_CURRENT]) {
    bb_judge_ranged(&p->heater_current, s, -BB_MOST_MILLI_A, BB_MOST_MILLI_A, &in->heater_current,
                    trip_millis, release_millis);
  }
  if (s[BB_FITTED_PANEL_POWER]) {
    bb_judge_ranged(&p->panel_power, s, 0, BB_MOST_MILLI_W, &in->panel_power, trip_millis,
                    release_millis);
  }
  bb_stuck_step(&p->stuck, s, p->temperature, trip_millis);
}

void bb_probes_words(bb_probes *p, const int32_t *s, bb_words *w) {
  for (uint8_t i = 0; i < BB_TEMPERATURES; i++) {
    bb_judge_words(&p->temperature[i], s[BB_TRUST_LOWEST_CENTI_C], s[BB_TRUST_HIGHEST_CENTI_C], w);
  }
  bb_judge_words(&p->humidity, 0, BB_MOST_PERMILLE, w);
  bb_judge_words(&p->volts, s[BB_BATTERY_LOWEST_MILLI_V], s[BB_BATTERY_HIGHEST_MILLI_V], w);
  bb_judge_words(&p->battery_current, -BB_MOST_MILLI_A, BB_MOST_MILLI_A, w);
  bb_judge_words(&p->state_of_charge, 0, BB_MOST_PERMILLE, w);
  bb_judge_words(&p->heater_current, -BB_MOST_MILLI_A, BB_MOST_MILLI_A, w);
  bb_judge_words(&p->panel_power, 0, BB_MOST_MILLI_W, w);
  bb_stuck_words(&p->stuck, w);
}

/* ---- which temperature counts ---- */

static void one(bb_governing *g, uint8_t mode, int32_t centi_c) {
  g->mode = mode;
  g->call_centi_c = centi_c;
  g->stop_centi_c = centi_c;
}

void bb_governing_step(bb_governing *g, const int32_t *s, const bb_sample_judge *a,
                       const bb_sample_judge *b) {
  bb_flag b_trusted = b->trusted && s[BB_BROOD_B_LIKE_PLACE]; /* rule W1 */
  if (a->trusted && b_trusted) {
    int32_t low = a->value < b->value ? a->value : b->value;
    int32_t high = a->value < b->value ? b->value : a->value;
    g->mode = high - low > s[BB_TRUST_PAIR_CENTI_K] ? BB_MODE_APART : BB_MODE_PAIR;
    g->call_centi_c = g->mode == BB_MODE_APART ? high : low; /* rules W2, W3 */
    g->stop_centi_c = high;
  } else if (a->trusted) { /* rule W4 */
    one(g, BB_MODE_A, a->value);
  } else if (b_trusted) {
    one(g, BB_MODE_B, b->value);
  } else {
    one(g, BB_MODE_NONE, 0);
  }
}
