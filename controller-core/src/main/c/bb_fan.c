/* The exhaust fan (section 8). It never runs for cooling together with the heater. */
#include "bb_parts.h"

void bb_fan_reset(bb_fan_control *f, const int32_t *s) {
  f->cool = 0;
  f->damp = 0;
  bb_gate_reset(&f->cold_share);
  bb_gate_reset(&f->purge_share);
  bb_delay_reset(&f->wet_delay);
  bb_delay_reset(&f->dry_delay);
  bb_relay_open(&f->guard, s[BB_FAN_MIN_OFF_MILLIS]);
  f->wet = 0;
  f->timed_millis = s[BB_PURGE_TIMED_EVERY_MILLIS];
  f->purpose = BB_REASON_NONE;
  f->cool_asked = 0;
  f->wish_reason = BB_REASON_NONE;
  f->deny_reason = BB_REASON_NONE;
}

static bb_flag purging(const bb_fan_control *f) {
  return f->guard.on && (f->purpose == BB_REASON_PURGE || f->purpose == BB_REASON_TIMED_PURGE);
}

static bb_flag share_left(const bb_fan_control *f, const int32_t *s, const bb_duty_gate *gate,
                          int32_t allow_millis) {
  return bb_gate_left(gate, allow_millis, f->guard.on, s[BB_FAN_MIN_ON_MILLIS]);
}

/* Rule F7. */
static void judge_wet(bb_fan_control *f, const int32_t *s, int32_t trip_millis,
                      int32_t release_millis, const bb_sample_judge *humidity) {
  bb_flag high = humidity->trusted && humidity->value >= s[BB_PURGE_WET_PERMILLE];
  bb_flag low = humidity->trusted && humidity->value < s[BB_PURGE_WET_PERMILLE];
  if (bb_delay_step(&f->wet_delay, high, trip_millis, s[BB_PURGE_WET_MILLIS],
                    s[BB_PURGE_WET_MILLIS])) {
    f->wet = 1;
  }
  if (bb_delay_step(&f->dry_delay, low, release_millis, s[BB_TRUST_GAIN_MILLIS],
                    s[BB_TRUST_GAIN_MILLIS])) {
    f->wet = 0;
  }
}

/* Rule F10: runs at the start of every period; the remainder carries the phase. */
static bb_flag timed_now(bb_fan_control *f, const int32_t *s, int32_t release_millis) {
  int32_t every = s[BB_PURGE_TIMED_EVERY_MILLIS];
  if (every == 0) {
    return 0;
  }
  /* A period is longer than the longest release time, so one addition is enough. */
  f->timed_millis -= release_millis;
  if (f->timed_millis <= 0) {
    f->timed_millis += every;
  }
  if (f->timed_millis > every) { /* a state saved under a longer period */
    f->timed_millis = every;
  }
  return f->timed_millis > every - s[BB_PURGE_TIMED_FOR_MILLIS];
}

/* Lets time pass and decides what the fan is wanted for (tables fan_wish and fan_denied). */
void bb_fan_ask(bb_fan_control *f, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                const bb_governing *brood, const bb_sample_judge *outdoor,
                const bb_sample_judge *humidity, bb_flag brood_low, uint8_t block_reason,
                bb_flag test) {
  bb_relay_pass(&f->guard, release_millis);
  bb_gate_step(&f->cold_share, s[BB_FAN_COLD_ON_MILLIS], s[BB_FAN_COLD_WINDOW_MILLIS], f->guard.on,
               trip_millis, release_millis);
  bb_gate_step(&f->purge_share, s[BB_PURGE_ON_MILLIS], s[BB_PURGE_WINDOW_MILLIS], purging(f),
               trip_millis, release_millis);
  judge_wet(f, s, trip_millis, release_millis, humidity);
  f->cool = bb_hysteresis_step(f->cool, brood->mode != BB_MODE_NONE, brood->stop_centi_c,
                               s[BB_FAN_ON_CENTI_C], s[BB_FAN_OFF_CENTI_C]); /* rule F1 */
  f->damp = bb_hysteresis_step(f->damp, humidity->trusted && !f->wet, humidity->value,
                               s[BB_PURGE_ON_PERMILLE], s[BB_PURGE_OFF_PERMILLE]); /* rule F5 */
  bb_flag timed = timed_now(f, s, release_millis);
  bb_flag warm_outdoors = /* rule F2 */
      outdoor->trusted && outdoor->value > brood->stop_centi_c - s[BB_FAN_OUTDOOR_CENTI_K];
  bb_flag cold_spent = /* rule F3 */
      outdoor->trusted && outdoor->value < s[BB_FAN_COLD_CENTI_C] &&
      !share_left(f, s, &f->cold_share, s[BB_FAN_COLD_ON_MILLIS]);
  bb_flag may_purge = /* rule F6 */
      outdoor->trusted && outdoor->value >= s[BB_PURGE_OUTDOOR_CENTI_C] && !brood_low &&
      share_left(f, s, &f->purge_share, s[BB_PURGE_ON_MILLIS]);
  f->wish_reason = BB_REASON_NONE;
  if (test) {
    f->wish_reason = BB_REASON_TEST;
  } else if (f->cool && !warm_outdoors) {
    f->wish_reason = BB_REASON_COOLING;
  } else if (f->damp && may_purge) {
    f->wish_reason = BB_REASON_PURGE;
  } else if (timed && may_purge) {
    f->wish_reason = BB_REASON_TIMED_PURGE;
  }
  f->deny_reason = block_reason;
  if (f->deny_reason == BB_REASON_NONE && f->cool && warm_outdoors &&
      f->wish_reason != BB_REASON_TEST) {
    f->deny_reason = BB_REASON_WARM_OUTDOORS;
  }
  if (f->deny_reason == BB_REASON_NONE && cold_spent) {
    f->deny_reason = BB_REASON_COLD_SHARE;
  }
  if (f->deny_reason == BB_REASON_NONE && purging(f) && f->wish_reason == BB_REASON_NONE &&
      !may_purge) {
    f->deny_reason = BB_REASON_PURGE_ENDED;
  }
  f->cool_asked = f->wish_reason == BB_REASON_COOLING && f->deny_reason == BB_REASON_NONE;
}

/* Cooling is wanted and allowed, or still running: the heater has to stay off (rule F4). */
bb_flag bb_fan_holds_heater_off(const bb_fan_control *f) {
  return f->cool_asked || (f->guard.on && f->purpose == BB_REASON_COOLING);
}

/* Drives the fan after the heater; heater_off: it was off before this step and is off now. */
void bb_fan_drive(bb_fan_control *f, const int32_t *s, bb_flag heater_off) {
  bb_flag cooling = f->wish_reason == BB_REASON_COOLING ||
                    (f->guard.on && f->purpose == BB_REASON_COOLING);
  if (f->deny_reason == BB_REASON_NONE && cooling && !heater_off) {
    f->deny_reason = BB_REASON_HEATER_FIRST;
  }
  bb_relay_drive(&f->guard, f->deny_reason == BB_REASON_NONE, f->wish_reason != BB_REASON_NONE, 1,
                 s[BB_FAN_MIN_ON_MILLIS], s[BB_FAN_MIN_OFF_MILLIS]); /* rule F9 */
  if (!f->guard.on) { /* rule F8 */
    f->purpose = BB_REASON_NONE;
  } else if (f->wish_reason != BB_REASON_NONE) {
    f->purpose = f->wish_reason;
  }
}

/* Rule F12. */
uint8_t bb_fan_reason(const bb_fan_control *f) {
  bb_flag wished = f->wish_reason != BB_REASON_NONE;
  if (f->guard.on) {
    return wished ? f->wish_reason : BB_REASON_MIN_ON;
  }
  if (f->deny_reason != BB_REASON_NONE && f->deny_reason != BB_REASON_PURGE_ENDED) {
    return wished || f->deny_reason == BB_REASON_WARM_OUTDOORS ? f->deny_reason : BB_REASON_NONE;
  }
  return wished ? BB_REASON_MIN_OFF : BB_REASON_NONE;
}

void bb_fan_words(bb_fan_control *f, bb_words *w) {
  bb_word_flag(w, &f->cool);
  bb_word_flag(w, &f->damp);
  bb_gate_words(&f->cold_share, w);
  bb_gate_words(&f->purge_share, w);
  bb_delay_words(&f->wet_delay, w);
  bb_delay_words(&f->dry_delay, w);
  bb_relay_words(&f->guard, w);
  bb_word_flag(w, &f->wet);
  bb_word_millis(w, &f->timed_millis);
  bb_word_small(w, &f->purpose, BB_REASON_LAST);
}
