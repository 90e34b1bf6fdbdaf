/*
 * Test harness: one transition of one part for each request, so that an exhaustive search over the
 * reference can be compared transition for transition. Begins with settings, number of the model,
 * words of state and words beside the state; each request is an input and all these words, each
 * answer the words of state. Inputs are numbered as in the search.
 */
#include <stdio.h>
#include <stdlib.h>

#include "bb_parts.h"

enum { NOTHING = INT32_MIN };

static int32_t s[BB_SETTINGS_COUNT];
static const int32_t trips[] = {0, 1, 3};
static const int32_t releases[] = {0, 1, 2};

/* A judge that trusts exactly what is usable in this step. */
static bb_sample_judge plain(int32_t value, int32_t lowest, int32_t highest) {
  bb_sample_judge j;
  bb_judge_reset(&j);
  if (value != NOTHING && value >= lowest && value <= highest) {
    j.trusted = j.known = j.good = j.usable = 1;
    j.value = j.raw = value;
  }
  return j;
}

static bb_relay_guard relay;
static int32_t starts[BB_START_PLACES];
static bb_duty_gate gate;
static bb_heat_demand demand;
static bb_limits limits;
static bb_shedding shedding;
static bb_supply_select supply;
static bb_button button;
static bb_sample_judge judge;
static bb_commissioning test;
static bb_fan_control fan;
static bb_heater_path path;

static void relay_model(int32_t in) {
  int32_t dt = releases[in / 4];
  bb_relay_pass(&relay, dt);
  bb_rolling_step(starts, BB_START_PLACES, dt);
  if (bb_relay_drive(&relay, in % 2 == 1, in / 2 % 2 == 1,
                     bb_rolling_count(starts, BB_START_PLACES) < 2, 3, 4)) {
    bb_rolling_add(starts, BB_START_PLACES, 12);
  }
}

static void gate_model(int32_t in, const int32_t *aux) {
  int32_t dt = 1 + in / 2;
  bb_gate_step(&gate, 3, 8, aux[1] == 1, dt, dt < 2 ? dt : 2);
}

static void demand_model(int32_t in) {
  static const int32_t calls[] = {1980, 1993, 1997, 1998, 1999, 2000, 2005, NOTHING};
  static const int32_t targets[] = {2000, 1997, 1990};
  bb_sample_judge a = plain(calls[in % 8], 1, 5000);
  bb_sample_judge none = plain(NOTHING, 0, 1);
  bb_governing brood;
  bb_governing_step(&brood, s, &a, &none);
  bb_demand_step(&demand, s, trips[in / 8 % 3], releases[in / 8 % 3], in / 24 % 2 == 1, &brood,
                 targets[in / 48]);
}

static void limits_model(int32_t in) {
  static const int32_t pans[] = {2000, 3600, 3601, 3800, 4299, 4300, NOTHING};
  static const int32_t broods[] = {2000, 2050, 2051, 2100, NOTHING};
  bb_sample_judge pan = plain(pans[in % 7], 0, 12500);
  bb_sample_judge a = plain(broods[in / 7 % 5], 0, 12500);
  bb_sample_judge b = plain(NOTHING, 0, 1);
  bb_limits_step(&limits, s, 6, releases[in / 70 % 3], &a, &b, &pan,
                 in / 35 % 2 == 1 || pans[in % 7] == NOTHING);
  if (in / 420 == 1 && limits.brood_high) {
    bb_rolling_add(limits.trips, BB_TRIP_PLACES, 6);
  }
  if (in / 210 % 2 == 1) {
    bb_limits_clear_latch(&limits);
  }
}

static void shed_model(int32_t in) {
  static const int32_t volts[] = {12800, 12549, 12499, 12449, 12299, 12250,
                                  12199, 12150, 12050, 11800, 11600};
  static bb_probes probes;
  bb_charge_measure charge;
  int32_t kind = in % 15;
  bb_probes_reset(&probes);
  probes.volts = plain(kind == 14 ? 10800 : kind < 11 ? volts[kind] : NOTHING, 6000, 17000);
  probes.battery_current = plain(kind < 2 ? 500 : -500, -200000, 200000);
  bb_charge_step(&charge, s, &probes, kind == 12, 0, 0, 0);
  bb_shedding_step(&shedding, s, 24, trips[1 + in / 15], releases[1 + in / 15], &charge, kind == 13,
                   kind == 12);
}

static void supply_model(int32_t in, const int32_t *aux) {
  bb_flag heater_on = in / 8 % 2 == 1 && supply.source != BB_SUPPLY_NONE && aux[1] == 1;
  bb_supply_step(&supply, s, releases[in / 16], in % 2 == 1, in / 2 % 2 == 1,
                 in / 4 % 2 == 1 ? BB_LEVEL_HEAT_SHED : BB_LEVEL_FULL, heater_on);
}

static void judge_model(int32_t in) {
  static const int32_t times[] = {0, 20000, 40000, 70000};
  static const int32_t values[] = {3000, 3900, 3210, 8500, 20000, NOTHING};
  bb_sample sample = {values[in % 6], 0, values[in % 6] != NOTHING};
  int32_t trip = times[in / 6];
  bb_judge_temperature(&judge, s, &sample, trip, trip < 60000 ? trip : 60000);
}

static void fan_model(int32_t in, const int32_t *aux) {
  static const int32_t broods[] = {3500, 3650, 3700, NOTHING};
  static const int32_t outdoors[] = {NOTHING, 400, 1100, 3690};
  static const int32_t damps[] = {NOTHING, 700, 800, 860, 995};
  bb_sample_judge a = plain(broods[in % 4], 0, 12500);
  bb_sample_judge none = plain(NOTHING, 0, 1);
  bb_sample_judge outdoor = plain(outdoors[in / 4 % 4], 0, 12500);
  bb_sample_judge humidity = plain(damps[in / 16 % 5], 0, 1000);
  bb_governing brood;
  bb_governing_step(&brood, s, &a, &none);
  int32_t dt = 1 + in / 640;
  bb_fan_ask(&fan, s, dt, dt, &brood, &outdoor, &humidity,
             in / 80 % 2 == 1 || broods[in % 4] == NOTHING,
             in / 160 % 2 == 1 ? BB_REASON_SHED : BB_REASON_NONE, 0);
  bb_flag heater = in / 320 % 2 == 1 && !bb_fan_holds_heater_off(&fan);
  bb_fan_drive(&fan, s, aux[0] != 1 && !heater);
}

static void heat_model(int32_t in) {
  static const int32_t broods[] = {1990, 1999, 2000, 2100, NOTHING};
  static const int32_t pans[] = {2100, 2595, 2850, 3800, 4300, NOTHING};
  int32_t other = in / 30 % 8;
  int32_t trip = trips[1 + in / 240];
  int32_t release = releases[1 + in / 240];
  uint8_t level = other == 1   ? BB_LEVEL_HEAT_SHED
                  : other == 2 ? BB_LEVEL_SURVIVAL
                               : BB_LEVEL_FULL;
  bb_sample_judge a = plain(broods[in % 5], 0, 12500);
  bb_sample_judge pan = plain(pans[in / 5 % 6], 0, 12500);
  bb_sample_judge none = plain(NOTHING, 0, 1);
  bb_governing brood;
  bb_governing_step(&brood, s, &a, &none);
  bb_heater_observe(&path, s, 6, trip, release, &a, &none, &brood, &pan, &none, &none, 0);
  if (other == 7) {
    bb_heater_clear_latches(&path);
  }
  bb_heater_want(&path, s, trip, release, level, 0, &brood, &pan, 0);
  bb_heater_drive(&path, s, 7, 6, trip, release, &brood, other != 3, level, other == 4, other == 5,
                  other == 6);
}

/* Reads or writes the state of a model. */
static void walk(int32_t model, bb_words *w) {
  switch (model) {
    case 0:
      bb_relay_words(&relay, w);
      bb_rolling_words(starts, BB_START_PLACES, 12, w);
      break;
    case 1:
      bb_gate_words(&gate, w);
      break;
    case 2:
      bb_demand_words(&demand, w);
      break;
    case 3:
      bb_limits_words(&limits, 6, w);
      break;
    case 4:
      bb_shedding_words(&shedding, 24, w);
      break;
    case 5:
      bb_supply_words(&supply, w);
      break;
    case 6:
      bb_button_words(&button, w);
      break;
    case 7:
      bb_judge_words(&judge, s[BB_TRUST_LOWEST_CENTI_C], s[BB_TRUST_HIGHEST_CENTI_C], w);
      break;
    case 8:
      bb_test_words(&test, w);
      break;
    case 9:
      bb_fan_words(&fan, w);
      break;
    default:
      bb_heater_words(&path, 7, 6, w);
      break;
  }
}

static void apply(int32_t model, int32_t in, const int32_t *aux) {
  switch (model) {
    case 0:
      relay_model(in);
      break;
    case 1:
      gate_model(in, aux);
      break;
    case 2:
      demand_model(in);
      break;
    case 3:
      limits_model(in);
      break;
    case 4:
      shed_model(in);
      break;
    case 5:
      supply_model(in, aux);
      break;
    case 6:
      bb_button_step(&button, s, trips[in / 2], releases[in / 2], in % 2 == 1);
      break;
    case 7:
      judge_model(in);
      break;
    case 8:
      bb_test_step(&test, s, trips[in / 16], in % 2 == 1, in / 2 % 2 == 1, aux[0] == 1,
                   aux[1] == 1);
      break;
    case 9:
      fan_model(in, aux);
      break;
    default:
      heat_model(in);
      break;
  }
}

int main(void) {
  int32_t head[3];
  int32_t words[512];
  int32_t out[512];
  if (fread(s, 4, BB_SETTINGS_COUNT, stdin) != BB_SETTINGS_COUNT || fread(head, 4, 3, stdin) != 3) {
    return 1;
  }
  size_t states = (size_t)head[1];
  size_t all = 1 + states + (size_t)head[2];
  if (all > sizeof words / sizeof *words) {
    return 2;
  }
  while (fread(words, 4, all, stdin) == all) {
    if (words[0] < 0) {
      fflush(stdout);
      continue;
    }
    bb_words in = {0, words + 1, 0, 0};
    walk(head[0], &in);
    if (in.bad || (size_t)in.at != states) {
      return 3;
    }
    apply(head[0], words[0], words + 1 + states);
    bb_words written = {out, 0, 0, 0};
    walk(head[0], &written);
    if (fwrite(out, 4, states, stdout) != states) {
      return 1;
    }
  }
  return 0;
}
