/*
 * The controller on a board: a tick a second from the probes to the relays, and the line protocol of
 * PROTOCOL.md on the serial port while a bench is connected. What differs from board to board stands
 * in board_stub.c alone.
 *
 * A bench that falls silent for three seconds gives the outputs back to the board's own tick: they
 * open first, and the controller begins with its minimum off.
 */
#include "../bb_link.h"
#include "board.h"

#define TICK_MILLIS 1000
#define BENCH_SILENT_MILLIS 3000

static int32_t settings[BB_SETTINGS_COUNT] = {BB_DEFAULTS};

static const bb_link_board board = {"sketch", settings, 1, 1, board_send};
static bb_link bench;
static bb_controller controller;
static bb_readings readings;
static bb_commands commands;

static void outputs_off(void) {
  commands.heater = 0;
  commands.isolation = 0;
  commands.fan = 0;
  commands.inverter = 0;
  commands.supply = BB_SUPPLY_NONE;
  board_drive(&commands);
}

void board_setup(void) {
  outputs_off();
  bb_controller_init(&controller, settings);
  bb_link_init(&bench, &board);
}

void board_loop(void) {
  static uint32_t last_tick;
  static uint32_t last_heard;
  static bb_flag benched;
  int16_t c;
  uint32_t now = board_millis();
  while ((c = board_receive()) >= 0) {
    bb_link_receive(&bench, (char)c);
    last_heard = now;
    benched = 1;
    board_drive(&bench.out);
  }
  if (benched) {
    if (now - last_heard < BENCH_SILENT_MILLIS) {
      return;
    }
    benched = 0;
    outputs_off();
    bb_link_tell_heater(&bench, 0);
    bb_controller_init(&controller, settings);
  }
  if (now - last_tick >= TICK_MILLIS) {
    last_tick = now;
    board_read(&readings);
    bb_controller_step(&controller, now, &readings, &commands);
    board_drive(&commands);
  }
}
