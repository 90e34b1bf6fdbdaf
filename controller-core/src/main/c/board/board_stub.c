/*
 * Stands for the drivers of a board: no probe answers and nothing is switched. Replace the bodies;
 * a watchdog that resets the part and relays that open without power belong to the board itself.
 */
#include "board.h"

static uint32_t counter;

uint32_t board_millis(void) { return counter; }

int16_t board_receive(void) { return -1; }

void board_send(char c) { (void)c; }

static void none(bb_sample *sample) {
  sample->valid = 0;
  sample->value = 0;
  sample->age_millis = 0;
}

void board_read(bb_readings *in) {
  none(&in->brood_a);
  none(&in->brood_b);
  none(&in->pan);
  none(&in->top);
  none(&in->outdoor);
  none(&in->humidity);
  none(&in->battery);
  none(&in->battery_current);
  none(&in->state_of_charge);
  none(&in->battery_temperature);
  none(&in->heater_current);
  none(&in->panel_power);
  in->charger_full = 0;
  in->shore_present = 0;
  in->button = 0;
  in->test_request = 0;
}

void board_drive(const bb_commands *out) { (void)out; }

int main(void) {
  board_setup();
  for (;;) {
    counter += 10; /* a real board reads its timer */
    board_loop();
  }
}
