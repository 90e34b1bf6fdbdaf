/*
 * The line protocol of PROTOCOL.md around one controller: characters go in one by one, answers come
 * out one by one. No heap, no library, no line buffer: a line takes effect only when its checksum
 * was right.
 */
#ifndef BB_LINK_H
#define BB_LINK_H

#include "broodbench.h"

#define BB_LINK_VERSION 1
#define BB_LINK_VALUES 8 /* settings in one line */

typedef struct {
  const char *name;      /* no spaces */
  int32_t *settings;     /* BB_SETTINGS_COUNT values, written only when not fixed */
  bb_flag fixed;         /* the board keeps its own settings */
  uint16_t ahead;        /* how many lines may be on their way to here */
  void (*put)(char c);   /* sends one character */
} bb_link_board;

typedef struct {
  const bb_link_board *board;
  bb_controller controller;
  bb_readings in;
  bb_commands out; /* of the last step; all off before the first */
  bb_flag begun;
  uint32_t next;        /* number of the next request that counts */
  uint32_t last_millis; /* of the last step */
  char last;            /* letter of the last request that counted, 0 for none */
  /* the line that is coming in */
  uint8_t phase;
  char letter;
  uint8_t field;
  bb_flag bad;
  uint16_t sum;
  uint16_t sum_given;
  uint8_t sum_digits;
  uint32_t number;
  uint32_t now_millis;
  int32_t values[BB_LINK_VALUES];
  char token[24];
  uint8_t token_length;
  uint16_t out_sum;
} bb_link;

void bb_link_init(bb_link *l, const bb_link_board *board);

/* Takes one character; answers when it ends a line. */
void bb_link_receive(bb_link *l, char c);

/* Says on its own how the heater output stands. */
void bb_link_tell_heater(bb_link *l, bb_flag on);

#endif
