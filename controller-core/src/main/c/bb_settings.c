/* Checks settings before a controller is built (section 15). A board with fixed settings that were
   checked beforehand need not link this file. */
#include "bb_settings.h"

static const int32_t bounds[BB_SETTINGS_COUNT][2] = {
#define BB_BOUNDS(name, lowest, highest, base) {lowest, highest},
    BB_SETTINGS(BB_BOUNDS)
#undef BB_BOUNDS
};

typedef struct {
  const int32_t *s;
  int16_t first; /* lowest index refused, -1 for none */
} check_state;

static void refuse(check_state *c, int16_t setting) {
  if (c->first < 0 || setting < c->first) {
    c->first = setting;
  }
}

static void at_least(check_state *c, int16_t setting, int32_t bound) {
  if (c->s[setting] < bound) {
    refuse(c, setting);
  }
}

static void at_most(check_state *c, int16_t setting, int32_t bound) {
  if (c->s[setting] > bound) {
    refuse(c, setting);
  }
}

/* Rule X5. */
static void share(check_state *c, int16_t on, int16_t window, int16_t min_on) {
  at_least(c, window, c->s[on] + 1000);
  at_least(c, on, c->s[min_on]);
}

/* Rules X4 and B9. */
static void shedding(check_state *c) {
  const int32_t *s = c->s;
  int32_t by_charge = s[BB_SHED_BY_STATE_OF_CHARGE];
  int16_t first = by_charge ? BB_SHED_SET_BACK_ENTER_PERMILLE : BB_SHED_SET_BACK_ENTER_MILLI_V;
  /* At most 120 000 mA by 2 000 mOhm: inside 32 bits. */
  int32_t need = (s[BB_HEATER_RATED_MILLI_A] + s[BB_FAN_RATED_MILLI_A]) *
                     (s[BB_BATTERY_WORST_MILLI_OHM] - s[BB_BATTERY_MILLI_OHM]) / 1000 +
                 s[BB_BATTERY_REBOUND_MILLI_V] + s[BB_BATTERY_ERROR_MILLI_V];
  for (int16_t level = 0; level < 5; level++) {
    int16_t enter = (int16_t)(first + 2 * level);
    int16_t leave = (int16_t)(enter + 1);
    at_least(c, leave, s[enter] + (by_charge ? 10 : need + 1));
    if (level > 0) {
      at_most(c, enter, s[enter - 2] - 1);
      at_most(c, leave, s[leave - 2]);
    }
  }
  if (!by_charge) {
    at_most(c, BB_SHED_EMERGENCY_MILLI_V, s[BB_SHED_STANDBY_ENTER_MILLI_V] - 1);
  }
}

int16_t bb_settings_problem(const int32_t *s) {
  check_state c = {s, -1};
  for (int16_t i = 0; i < BB_SETTINGS_COUNT; i++) {
    at_least(&c, i, bounds[i][0]);
    at_most(&c, i, bounds[i][1]);
  }
  if (c.first >= 0) {
    return c.first; /* sums below fit 32 bits only inside the bounds */
  }
  if (!s[BB_FITTED_BROOD_A]) { /* rule X8 */
    refuse(&c, BB_FITTED_BROOD_A);
  }
  if (s[BB_SHED_BY_STATE_OF_CHARGE] && s[BB_FITTED_BATTERY] && !s[BB_FITTED_STATE_OF_CHARGE]) {
    refuse(&c, BB_SHED_BY_STATE_OF_CHARGE);
  }
  int32_t set_point = s[BB_HEAT_SET_POINT_CENTI_C];
  int32_t warmest = set_point + s[BB_HEAT_SOAK_CENTI_K];
  at_least(&c, BB_LIMIT_BROOD_CENTI_C, warmest + 100); /* rule X1 */
  at_least(&c, BB_FAN_ON_CENTI_C, s[BB_LIMIT_BROOD_CENTI_C]);
  at_least(&c, BB_FAN_OFF_CENTI_C, warmest + 1);
  at_least(&c, BB_FAN_ON_CENTI_C, s[BB_FAN_OFF_CENTI_C] + 10);
  at_most(&c, BB_HEAT_SURVIVAL_CENTI_C, set_point); /* rule X2 */
  at_most(&c, BB_HEAT_RAMP_FLOOR_CENTI_C, set_point);
  at_least(&c, BB_LIMIT_PAN_TRIP_CENTI_C, s[BB_LIMIT_PAN_CENTI_C] + 100); /* rule X3 */
  at_most(&c, BB_FALLBACK_PAN_CENTI_C, s[BB_LIMIT_PAN_CENTI_C]);
  at_most(&c, BB_ALARM_BROOD_LOW_CENTI_C, set_point);
  at_least(&c, BB_ALARM_BROOD_HIGH_CENTI_C, s[BB_LIMIT_BROOD_CENTI_C]);
  share(&c, BB_EFFECT_SHARE_ON_MILLIS, BB_EFFECT_SHARE_WINDOW_MILLIS, BB_RELAY_MIN_ON_MILLIS);
  share(&c, BB_SHED_BLIND_ON_MILLIS, BB_SHED_BLIND_WINDOW_MILLIS, BB_RELAY_MIN_ON_MILLIS);
  share(&c, BB_FAN_COLD_ON_MILLIS, BB_FAN_COLD_WINDOW_MILLIS, BB_FAN_MIN_ON_MILLIS);
  share(&c, BB_PURGE_ON_MILLIS, BB_PURGE_WINDOW_MILLIS, BB_FAN_MIN_ON_MILLIS);
  at_least(&c, BB_BATTERY_WORST_MILLI_OHM, s[BB_BATTERY_MILLI_OHM]); /* rule X6 */
  at_least(&c, BB_BATTERY_HIGHEST_MILLI_V, s[BB_BATTERY_LOWEST_MILLI_V] + 1);
  at_most(&c, BB_BATTERY_LOWEST_MILLI_V, s[BB_SHED_EMERGENCY_MILLI_V]);
  if (s[BB_FITTED_BATTERY]) {
    shedding(&c);
  }
  at_most(&c, BB_PURGE_OFF_PERMILLE, s[BB_PURGE_ON_PERMILLE] - 10); /* rule X7 */
  if (s[BB_PURGE_TIMED_EVERY_MILLIS]) {
    at_least(&c, BB_PURGE_TIMED_EVERY_MILLIS, s[BB_PURGE_TIMED_FOR_MILLIS] + 60000);
  }
  return c.first;
}

uint32_t bb_settings_digest(const int32_t *s) {
  uint32_t hash = UINT32_C(2166136261);
  for (int16_t i = 0; i < BB_SETTINGS_COUNT; i++) {
    uint32_t word = (uint32_t)s[i];
    for (uint8_t b = 0; b < 4; b++) {
      hash = (hash ^ (word & 0xff)) * UINT32_C(16777619);
      word >>= 8;
    }
  }
  return hash;
}
