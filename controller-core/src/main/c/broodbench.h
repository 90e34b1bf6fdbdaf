/*
 * The controller of SPEC.md in C99: whole numbers only, no heap, no clock, no library. One step turns
 * readings into commands. Names and order follow the reference form; rule numbers in comments are
 * those of SPEC.md. Flags are _Bool, quantities int32_t with the unit in the name.
 *
 *   static const int32_t settings[BB_SETTINGS_COUNT] = {BB_DEFAULTS};
 *   static bb_controller controller;
 *   bb_controller_init(&controller, settings);
 *   for (;;) bb_controller_step(&controller, millis(), &readings, &commands);
 */
#ifndef BROODBENCH_H
#define BROODBENCH_H

#include "bb_parts.h"

/* How many words bb_controller_save writes. */
#define BB_STATE_WORDS 318

typedef struct {
  const int32_t *settings; /* stays in place as long as the controller is used */
  bb_ticker ticker;
  bb_probes probes;
  bb_governing brood;
  bb_heater_path heater;
  bb_charge_measure charge;
  bb_shedding shedding;
  bb_supply_select supply;
  bb_fan_control fan;
  bb_button button;
  bb_commissioning test;
  bb_alarms alarms;
  bb_daily_look daily;
} bb_controller;

/* Puts the power-up state. The settings have to pass bb_settings_problem. */
void bb_controller_init(bb_controller *c, const int32_t *settings);

/* One step. now_millis is a counter that wraps at 32 bits; out is filled anew. */
void bb_controller_step(bb_controller *c, uint32_t now_millis, const bb_readings *in,
                        bb_commands *out);

/* Writes the whole state, BB_STATE_WORDS long (rule N1). */
void bb_controller_save(bb_controller *c, int32_t *words);

/*
 * Reads what bb_controller_save wrote (rules N2 to N4). The next step counts no time. After a loss of
 * power call bb_controller_power_was_lost too. Gives 0 when the words were refused; the controller
 * is then at its power-up state.
 */
bb_flag bb_controller_restore(bb_controller *c, const int32_t *words);

/* Outputs were off for an unknown time since the state was saved (rule R7). */
void bb_controller_power_was_lost(bb_controller *c);

#endif
