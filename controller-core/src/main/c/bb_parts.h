/* The parts of the controller; broodbench.h puts them together. */
#ifndef BB_PARTS_H
#define BB_PARTS_H

#include <stdint.h>

#include "bb_settings.h"

typedef _Bool bb_flag;

/* ---- what goes in and what comes out (sections 2 and 13) ---- */

typedef struct {
  int32_t value;
  int32_t age_millis;
  bb_flag valid;
} bb_sample;

typedef struct {
  bb_sample brood_a;             /* centi_c */
  bb_sample brood_b;             /* centi_c */
  bb_sample pan;                 /* centi_c */
  bb_sample top;                 /* centi_c */
  bb_sample outdoor;             /* centi_c */
  bb_sample humidity;            /* permille */
  bb_sample battery;             /* milli_v */
  bb_sample battery_current;     /* milli_a, positive into the battery */
  bb_sample state_of_charge;     /* permille */
  bb_sample battery_temperature; /* centi_c, for the record */
  bb_sample heater_current;      /* milli_a */
  bb_sample panel_power;         /* milli_w */
  bb_flag charger_full;
  bb_flag shore_present;
  bb_flag button;
  bb_flag test_request;
} bb_readings;

#define BB_NO_TEMPERATURE INT32_MIN

typedef struct {
  bb_flag heater;
  bb_flag isolation;
  bb_flag fan;
  bb_flag inverter;
  uint8_t supply;
  uint8_t shed_level;
  uint8_t heater_reason;
  uint8_t heater_stop_reason;
  uint8_t fan_reason;
  uint32_t alarms;
  uint32_t latched_alarms;
  int32_t governing_centi_c;
  int32_t governing_high_centi_c;
  int32_t working_set_point_centi_c;
  int32_t min_off_remaining_millis;
  int32_t min_on_remaining_millis;
  int32_t service_remaining_millis;
  uint8_t test_phase;
  int32_t corrected_milli_v;
  int32_t leave_delay_millis;
  uint8_t sheds_in_day;
  int32_t lowest_brood_centi_c;
  int32_t highest_brood_centi_c;
  int32_t heater_seconds;
  int32_t heater_starts;
  int32_t sheds;
} bb_commands;

/* Section 12. The order of the first twelve is their rank (rule G2). */
enum {
  BB_REASON_NONE,
  BB_REASON_ISOLATION,
  BB_REASON_TRIP_LATCHED,
  BB_REASON_PAN_TRIP,
  BB_REASON_BROOD_LIMIT,
  BB_REASON_PAN_LIMIT,
  BB_REASON_TRUST,
  BB_REASON_SUPPLY,
  BB_REASON_SHED,
  BB_REASON_SERVICE,
  BB_REASON_COOLING,
  BB_REASON_EFFECT,
  BB_REASON_BLIND,
  BB_REASON_MIN_OFF,
  BB_REASON_STARTS,
  BB_REASON_MIN_ON,
  BB_REASON_TEST,
  BB_REASON_FALLBACK,
  BB_REASON_WARM_OUTDOORS,
  BB_REASON_COLD_SHARE,
  BB_REASON_HEATER_FIRST,
  BB_REASON_PURGE,
  BB_REASON_TIMED_PURGE,
  BB_REASON_PURGE_ENDED
};
#define BB_REASON_LAST BB_REASON_PURGE_ENDED

/* Rule B5. */
enum {
  BB_LEVEL_FULL,
  BB_LEVEL_SET_BACK,
  BB_LEVEL_SURVIVAL,
  BB_LEVEL_HEAT_SHED,
  BB_LEVEL_FAN_SHED,
  BB_LEVEL_STANDBY
};
#define BB_LEVELS 6

enum { BB_SUPPLY_NONE, BB_SUPPLY_BATTERY, BB_SUPPLY_SHORE };

enum { BB_PHASE_IDLE, BB_PHASE_HEATER, BB_PHASE_FAN };

/* Bits of section 11. */
enum {
  BB_ALARM_TIME,
  BB_ALARM_BROOD_PROBE,
  BB_ALARM_PROBES_APART,
  BB_ALARM_PROBE_STUCK,
  BB_ALARM_PAN_PROBE,
  BB_ALARM_FALLBACK,
  BB_ALARM_PAN_TRIP,
  BB_ALARM_TRIP_LATCHED,
  BB_ALARM_BROOD_LIMIT,
  BB_ALARM_WELDED,
  BB_ALARM_EFFECT,
  BB_ALARM_BROOD_LOW,
  BB_ALARM_BROOD_HIGH,
  BB_ALARM_BLIND,
  BB_ALARM_HEAT_SHED,
  BB_ALARM_MANY_SHEDS,
  BB_ALARM_NO_SUPPLY,
  BB_ALARM_HUMIDITY_WET,
  BB_ALARM_BUTTON_STUCK,
  BB_ALARM_OUTDOOR_PROBE,
  BB_ALARM_EMERGENCY,
  BB_ALARM_COUNT
};

#define BB_HOUR_MILLIS INT32_C(3600000)
#define BB_DAY_MILLIS INT32_C(86400000)

/* ---- a cursor over state words; one walk serves writing and reading (section 14) ---- */

typedef struct {
  int32_t *out;      /* written when not null */
  const int32_t *in; /* else read */
  int16_t at;
  bb_flag bad;
} bb_words;

void bb_word(bb_words *w, int32_t *value, int32_t low, int32_t high);
void bb_word_millis(bb_words *w, int32_t *millis);
void bb_word_flag(bb_words *w, bb_flag *flag);
void bb_word_small(bb_words *w, uint8_t *value, uint8_t high);
/* A temperature, or INT32_MIN for none; others are small enough that differences fit 32 bits. */
void bb_word_mark(bb_words *w, int32_t *centi_c);

/* ---- basics ---- */

int32_t bb_span_down(int32_t remaining_millis, int32_t dt_millis);
int32_t bb_span_up(int32_t elapsed_millis, int32_t dt_millis, int32_t cap_millis);

/* Rule T6. */
typedef struct {
  bb_flag running;
  int32_t elapsed_millis;
} bb_delay;
void bb_delay_reset(bb_delay *d);
bb_flag bb_delay_step(bb_delay *d, bb_flag condition, int32_t dt_millis, int32_t delay_millis,
                      int32_t cap_millis);
void bb_delay_words(bb_delay *d, bb_words *w);

/* Rule G1. */
typedef struct {
  int32_t used_millis;
  int32_t idle_millis;
} bb_duty_gate;
void bb_gate_reset(bb_duty_gate *g);
void bb_gate_step(bb_duty_gate *g, int32_t allow_millis, int32_t window_millis, bb_flag was_on,
                  int32_t trip_millis, int32_t release_millis);
/* Whether a run may go on, or, when it was off, a run of need_millis may start. */
bb_flag bb_gate_left(const bb_duty_gate *g, int32_t allow_millis, bb_flag was_on,
                     int32_t need_millis);
void bb_gate_words(bb_duty_gate *g, bb_words *w);

/* Events in a rolling window, one remaining duration a place; the places belong to the owner. */
void bb_rolling_reset(int32_t *remaining_millis, uint8_t places);
void bb_rolling_step(int32_t *remaining_millis, uint8_t places, int32_t dt_millis);
void bb_rolling_add(int32_t *remaining_millis, uint8_t places, int32_t window_millis);
uint8_t bb_rolling_count(const int32_t *remaining_millis, uint8_t places);
void bb_rolling_words(int32_t *remaining_millis, uint8_t places, int32_t window_millis, bb_words *w);

/* On at or above one threshold, off at or below the other; off while not known. */
bb_flag bb_hysteresis_step(bb_flag on, bb_flag known, int32_t value, int32_t on_at, int32_t off_at);

/* Rules R1 to R7. */
typedef struct {
  bb_flag on;
  int32_t min_on_remaining_millis;
  int32_t min_off_remaining_millis;
} bb_relay_guard;
void bb_relay_open(bb_relay_guard *r, int32_t min_off_millis);
void bb_relay_pass(bb_relay_guard *r, int32_t release_millis);
/* Gives 1 in the step that closes the relay. */
bb_flag bb_relay_drive(bb_relay_guard *r, bb_flag permit, bb_flag wish, bb_flag starts_left,
                       int32_t min_on_millis, int32_t min_off_millis);
void bb_relay_words(bb_relay_guard *r, bb_words *w);

/* Rules T2, T3, T5. */
typedef struct {
  bb_flag started;
  uint32_t last_millis;
  bb_flag backwards;
  int32_t trip_millis;
  int32_t release_millis;
} bb_ticker;
void bb_ticker_step(bb_ticker *t, uint32_t now_millis);

/* ---- probes ---- */

/* Rules P1 to P6. */
typedef struct {
  bb_flag trusted;
  bb_flag known;
  bb_flag good;
  int32_t value;
  int32_t since_good_millis;
  int32_t good_for_millis;
  /* of this step only */
  bb_flag usable;
  int32_t raw;
} bb_sample_judge;
void bb_judge_reset(bb_sample_judge *j);
void bb_judge_temperature(bb_sample_judge *j, const int32_t *s, const bb_sample *sample,
                          int32_t trip_millis, int32_t release_millis);
void bb_judge_ranged(bb_sample_judge *j, const int32_t *s, int32_t lowest, int32_t highest,
                     const bb_sample *sample, int32_t trip_millis, int32_t release_millis);
void bb_judge_distrust(bb_sample_judge *j);
void bb_judge_words(bb_sample_judge *j, int32_t lowest, int32_t highest, bb_words *w);

#define BB_TEMPERATURES 5

/* Rule P7: for every probe, where the others stood when it last changed. */
typedef struct {
  int32_t last_centi_c[BB_TEMPERATURES];
  int32_t unchanged_millis[BB_TEMPERATURES];
  bb_flag stuck[BB_TEMPERATURES];
  bb_flag other_moved[BB_TEMPERATURES];
  int32_t mark_centi_c[BB_TEMPERATURES * BB_TEMPERATURES];
} bb_stuck_watch;
void bb_stuck_reset(bb_stuck_watch *k);
void bb_stuck_step(bb_stuck_watch *k, const int32_t *s, bb_sample_judge *judges,
                   int32_t trip_millis);
bb_flag bb_stuck_any(const bb_stuck_watch *k);
void bb_stuck_words(bb_stuck_watch *k, bb_words *w);

enum { BB_BROOD_A, BB_BROOD_B, BB_PAN, BB_TOP, BB_OUTDOOR };

typedef struct {
  bb_sample_judge temperature[BB_TEMPERATURES];
  bb_sample_judge humidity;
  bb_sample_judge volts;
  bb_sample_judge battery_current;
  bb_sample_judge state_of_charge;
  bb_sample_judge heater_current;
  bb_sample_judge panel_power;
  bb_stuck_watch stuck;
} bb_probes;
void bb_probes_reset(bb_probes *p);
void bb_probes_step(bb_probes *p, const int32_t *s, const bb_readings *in, int32_t trip_millis,
                    int32_t release_millis);
void bb_probes_words(bb_probes *p, const int32_t *s, bb_words *w);

enum { BB_MODE_NONE, BB_MODE_A, BB_MODE_B, BB_MODE_PAIR, BB_MODE_APART };

/* Rules W1 to W4. */
typedef struct {
  uint8_t mode;
  int32_t call_centi_c;
  int32_t stop_centi_c;
} bb_governing;
void bb_governing_step(bb_governing *g, const int32_t *s, const bb_sample_judge *a,
                       const bb_sample_judge *b);

/* ---- heater ---- */

/* Rules H1 to H7. */
typedef struct {
  bb_flag calling;
  bb_flag started;
  int32_t working_centi_c;
  int32_t ramp_remainder;
  int32_t unheated_millis;
} bb_heat_demand;
void bb_demand_reset(bb_heat_demand *d);
bb_flag bb_demand_step(bb_heat_demand *d, const int32_t *s, int32_t trip_millis,
                       int32_t release_millis, bb_flag heater_was_on, const bb_governing *brood,
                       int32_t target_centi_c);
void bb_demand_words(bb_heat_demand *d, bb_words *w);

/* Rules H1, H8 to H10. */
void bb_target_step(const int32_t *s, uint8_t level, bb_flag charger_full, int32_t *brood_centi_c,
                    int32_t *pan_centi_c);

/* Rules W5 to W7. */
typedef struct {
  bb_flag active;
  bb_flag calling;
} bb_pan_fallback;
bb_flag bb_fallback_step(bb_pan_fallback *f, const int32_t *s, bb_flag brood_known,
                         bb_flag pan_trusted, int32_t pan_centi_c, int32_t target_centi_c);

#define BB_TRIP_PLACES 8

/* Rules L1 to L8. */
typedef struct {
  bb_flag pan_high;
  bb_flag pan_tripped;
  bb_flag brood_high;
  bb_flag latched;
  int32_t trips[BB_TRIP_PLACES];
} bb_limits;
void bb_limits_reset(bb_limits *l);
void bb_limits_step(bb_limits *l, const int32_t *s, int32_t day_millis, int32_t release_millis,
                    const bb_sample_judge *a, const bb_sample_judge *b, const bb_sample_judge *pan,
                    bb_flag pan_untrusted);
void bb_limits_clear_latch(bb_limits *l);
void bb_limits_words(bb_limits *l, int32_t day_millis, bb_words *w);

/* Rules E1 to E6. */
typedef struct {
  bb_flag running;
  bb_flag proven;
  bb_flag unproven;
  int32_t run_millis;
  int32_t lowest_pan_centi_c;
  int32_t last_pan_centi_c;
} bb_heater_effect;
void bb_effect_reset(bb_heater_effect *e);
void bb_effect_step(bb_heater_effect *e, const int32_t *s, int32_t trip_millis,
                    bb_flag heater_was_on, const bb_sample_judge *pan, const bb_governing *brood,
                    const bb_sample_judge *outdoor, const bb_sample_judge *current);
void bb_effect_words(bb_heater_effect *e, bb_words *w);

/* Rules D1 to D4. */
typedef struct {
  int32_t off_millis;
  bb_flag looking;
  int32_t looked_millis;
  int32_t look_pan_centi_c;
  bb_flag cause;
  bb_flag latched;
} bb_weld_watch;
void bb_weld_reset(bb_weld_watch *d);
void bb_weld_step(bb_weld_watch *d, const int32_t *s, int32_t trip_millis, bb_flag heater_was_on,
                  const bb_sample_judge *current, int32_t current_age_millis,
                  const bb_sample_judge *pan, const bb_governing *brood,
                  const bb_sample_judge *outdoor);
void bb_weld_clear_latch(bb_weld_watch *d);
void bb_weld_words(bb_weld_watch *d, bb_words *w);

#define BB_START_PLACES 12

/* Sections 4, 5 and 7. */
typedef struct {
  bb_heat_demand demand;
  bb_pan_fallback fallback;
  bb_limits limits;
  bb_heater_effect effect;
  bb_weld_watch weld;
  bb_duty_gate effect_share;
  bb_duty_gate blind_share;
  bb_relay_guard relay;
  int32_t starts[BB_START_PLACES];
  uint8_t stop_reason;
  /* of this step only */
  bb_flag pan_believed;
  bb_flag was_on;
  bb_flag testing;
  bb_flag wish;
  uint8_t denied;
} bb_heater_path;
void bb_heater_reset(bb_heater_path *h, const int32_t *s);
void bb_heater_observe(bb_heater_path *h, const int32_t *s, int32_t day_millis, int32_t trip_millis,
                       int32_t release_millis, const bb_sample_judge *brood_a,
                       const bb_sample_judge *brood_b, const bb_governing *brood,
                       const bb_sample_judge *pan, const bb_sample_judge *outdoor,
                       const bb_sample_judge *heater_current, int32_t heater_current_age_millis);
void bb_heater_clear_latches(bb_heater_path *h);
void bb_heater_want(bb_heater_path *h, const int32_t *s, int32_t trip_millis,
                    int32_t release_millis, uint8_t level, bb_flag charger_full,
                    const bb_governing *brood, const bb_sample_judge *pan, bb_flag heater_test);
bb_flag bb_heater_drive(bb_heater_path *h, const int32_t *s, int32_t hour_millis,
                        int32_t day_millis, int32_t trip_millis, int32_t release_millis,
                        const bb_governing *brood, bb_flag supply_steady, uint8_t level,
                        bb_flag serviced, bb_flag fan_holds, bb_flag blind);
uint8_t bb_heater_reason(const bb_heater_path *h, const int32_t *s);
void bb_heater_words(bb_heater_path *h, int32_t hour_millis, int32_t day_millis, bb_words *w);

/* ---- battery and supply ---- */

/* Rules B1 to B4; owns no state. */
typedef struct {
  bb_flag trusted;
  int32_t value;
  int32_t corrected_milli_v;
  bb_flag emergency;
  bb_flag charging_or_unknown;
} bb_charge_measure;
void bb_charge_step(bb_charge_measure *m, const int32_t *s, const bb_probes *probes,
                    bb_flag charger_full, bb_flag heater_was_on, bb_flag fan_was_on,
                    bb_flag from_shore);

#define BB_SHED_PLACES 16

/* Rules B5 to B13. */
typedef struct {
  uint8_t level;
  bb_flag decided;
  bb_flag shed_armed;
  bb_delay enter_delay[BB_LEVELS];
  bb_delay leave_delay;
  bb_delay blind;
  int32_t sheds[BB_SHED_PLACES];
  /* of this step only */
  bb_flag blind_now;
  bb_flag shed_now;
} bb_shedding;
void bb_shedding_reset(bb_shedding *d);
void bb_shedding_step(bb_shedding *d, const int32_t *s, int32_t day_millis, int32_t trip_millis,
                      int32_t release_millis, const bb_charge_measure *charge,
                      bb_flag shore_present, bb_flag charger_full);
int32_t bb_shedding_leave_delay(const bb_shedding *d, const int32_t *s, int32_t day_millis);
void bb_shedding_words(bb_shedding *d, int32_t day_millis, bb_words *w);

/* Rules S1 to S9. */
typedef struct {
  uint8_t source;
  uint8_t target;
  int32_t dead_remaining_millis;
  int32_t dwell_remaining_millis;
  uint8_t before; /* of this step only */
} bb_supply_select;
void bb_supply_reset(bb_supply_select *u, const int32_t *s);
void bb_supply_step(bb_supply_select *u, const int32_t *s, int32_t release_millis,
                    bb_flag battery_absent, bb_flag shore_present, uint8_t level,
                    bb_flag heater_was_on);
bb_flag bb_supply_steady(const bb_supply_select *u);
void bb_supply_words(bb_supply_select *u, bb_words *w);

/* ---- fan ---- */

/* Rules F1 to F12. */
typedef struct {
  bb_flag cool;
  bb_flag damp;
  bb_duty_gate cold_share;
  bb_duty_gate purge_share;
  bb_delay wet_delay;
  bb_delay dry_delay;
  bb_relay_guard guard;
  bb_flag wet;
  int32_t timed_millis;
  uint8_t purpose;
  /* of this step only */
  bb_flag cool_asked;
  uint8_t wish_reason;
  uint8_t deny_reason;
} bb_fan_control;
void bb_fan_reset(bb_fan_control *f, const int32_t *s);
void bb_fan_ask(bb_fan_control *f, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                const bb_governing *brood, const bb_sample_judge *outdoor,
                const bb_sample_judge *humidity, bb_flag brood_low, uint8_t block_reason,
                bb_flag test);
bb_flag bb_fan_holds_heater_off(const bb_fan_control *f);
void bb_fan_drive(bb_fan_control *f, const int32_t *s, bb_flag heater_off);
uint8_t bb_fan_reason(const bb_fan_control *f);
void bb_fan_words(bb_fan_control *f, bb_words *w);

/* ---- button, test, alarms, daily look ---- */

/* Rules K1 to K6. */
typedef struct {
  bb_flag seen_up;
  bb_flag down;
  int32_t down_millis;
  int32_t service_remaining_millis;
  /* of this step only */
  bb_flag short_press;
  bb_flag long_press;
} bb_button;
void bb_button_reset(bb_button *b);
void bb_button_step(bb_button *b, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                    bb_flag pressed);
bb_flag bb_button_stuck(const bb_button *b, const int32_t *s);
void bb_button_words(bb_button *b, bb_words *w);

/* Rules K7 to K10. */
typedef struct {
  bb_flag requested;
  uint8_t phase;
  bb_flag ran;
  int32_t ran_millis;
  int32_t waited_millis;
} bb_commissioning;
void bb_test_reset(bb_commissioning *t);
void bb_test_step(bb_commissioning *t, const int32_t *s, int32_t trip_millis, bb_flag request,
                  bb_flag cancel, bb_flag heater_was_on, bb_flag fan_was_on);
void bb_test_words(bb_commissioning *t, bb_words *w);

/* Rules A1 to A4. */
typedef struct {
  uint32_t active;
  uint32_t latched;
  bb_delay delay[BB_ALARM_COUNT];
} bb_alarms;
void bb_alarms_reset(bb_alarms *a);
void bb_alarms_step(bb_alarms *a, const int32_t *s, int32_t trip_millis, int32_t release_millis,
                    uint32_t conditions);
void bb_alarms_words(bb_alarms *a, bb_words *w);

/* Rules Y1 to Y3. */
typedef struct {
  int32_t lowest_centi_c;
  int32_t highest_centi_c;
  int32_t heater_seconds;
  int32_t heater_millis;
  int32_t starts;
  int32_t sheds;
} bb_daily_look;
void bb_daily_reset(bb_daily_look *y);
void bb_daily_step(bb_daily_look *y, int32_t trip_millis, bb_flag heater_was_on,
                   const bb_governing *brood, bb_flag heater_started, bb_flag shed);
void bb_daily_words(bb_daily_look *y, bb_words *w);

#endif
