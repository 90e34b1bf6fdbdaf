/* What a board has to offer. */
#ifndef BOARD_H
#define BOARD_H

#include "../broodbench.h"

/* A counter of milliseconds that wraps at 32 bits. */
uint32_t board_millis(void);

/* The next character of the serial port, or -1. */
int16_t board_receive(void);

/* Sends one character. */
void board_send(char c);

/* Every probe and switch; a probe that did not answer is not valid. */
void board_read(bb_readings *in);

/* Relays and switches. */
void board_drive(const bb_commands *out);

/* Called once, then again and again. */
void board_setup(void);
void board_loop(void);

#endif
