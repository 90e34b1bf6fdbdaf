/*
 * Test harness: drives the whole controller over standard input and output, in whole words of 32 bits
 * of this machine. Each request is an operation and its words; each answer is words alone.
 */
#include <stdio.h>
#include <stdlib.h>

#include "broodbench.h"

enum { SETTINGS, STEP, POWER_UP, RESTART, POWER_LOSS, SAVE, RESTORE, PROBLEM, FLUSH };

static int32_t settings[BB_SETTINGS_COUNT];
static bb_controller controller;

static void take(int32_t *words, size_t count) {
  if (fread(words, 4, count, stdin) != count) {
    exit(1);
  }
}

static void give(const int32_t *words, size_t count) {
  if (fwrite(words, 4, count, stdout) != count) {
    exit(1);
  }
}

static void sample(bb_sample *s, const int32_t *words) {
  s->value = words[0];
  s->age_millis = words[1];
  s->valid = words[2] != 0;
}

static void step(void) {
  int32_t w[1 + 12 * 3 + 4];
  take(w, sizeof w / sizeof *w);
  bb_readings in;
  bb_sample *all[12] = {&in.brood_a,        &in.brood_b,
                        &in.pan,            &in.top,
                        &in.outdoor,        &in.humidity,
                        &in.battery,        &in.battery_current,
                        &in.state_of_charge, &in.battery_temperature,
                        &in.heater_current, &in.panel_power};
  for (int i = 0; i < 12; i++) {
    sample(all[i], w + 1 + 3 * i);
  }
  in.charger_full = w[37] != 0;
  in.shore_present = w[38] != 0;
  in.button = w[39] != 0;
  in.test_request = w[40] != 0;
  bb_commands c;
  bb_controller_step(&controller, (uint32_t)w[0], &in, &c);
  int32_t out[26] = {c.heater,
                     c.isolation,
                     c.fan,
                     c.inverter,
                     c.supply,
                     c.shed_level,
                     c.heater_reason,
                     c.heater_stop_reason,
                     c.fan_reason,
                     (int32_t)c.alarms,
                     (int32_t)c.latched_alarms,
                     c.governing_centi_c,
                     c.governing_high_centi_c,
                     c.working_set_point_centi_c,
                     c.min_off_remaining_millis,
                     c.min_on_remaining_millis,
                     c.service_remaining_millis,
                     c.test_phase,
                     c.corrected_milli_v,
                     c.leave_delay_millis,
                     c.sheds_in_day,
                     c.lowest_brood_centi_c,
                     c.highest_brood_centi_c,
                     c.heater_seconds,
                     c.heater_starts,
                     c.sheds};
  give(out, 26);
}

int main(void) {
  int32_t op;
  int32_t words[BB_STATE_WORDS];
  while (fread(&op, 4, 1, stdin) == 1) {
    switch (op) {
      case SETTINGS:
        take(settings, BB_SETTINGS_COUNT);
        bb_controller_init(&controller, settings);
        break;
      case STEP:
        step();
        break;
      case POWER_UP:
        bb_controller_init(&controller, settings);
        break;
      case RESTART:
      case POWER_LOSS:
        bb_controller_save(&controller, words);
        bb_controller_init(&controller, settings);
        if (!bb_controller_restore(&controller, words)) {
          return 2;
        }
        if (op == POWER_LOSS) {
          bb_controller_power_was_lost(&controller);
        }
        break;
      case SAVE:
        bb_controller_save(&controller, words);
        give(words, BB_STATE_WORDS);
        break;
      case RESTORE: {
        take(words, BB_STATE_WORDS);
        int32_t good = bb_controller_restore(&controller, words);
        give(&good, 1);
        break;
      }
      case PROBLEM: {
        int32_t some[BB_SETTINGS_COUNT];
        take(some, BB_SETTINGS_COUNT);
        int32_t answer[2] = {bb_settings_problem(some), (int32_t)bb_settings_digest(some)};
        give(answer, 2);
        break;
      }
      case FLUSH:
        fflush(stdout);
        break;
      default:
        return 3;
    }
  }
  return 0;
}
