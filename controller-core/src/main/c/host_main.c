/*
 * The controller as a program: the line protocol of PROTOCOL.md on standard input and output.
 *
 *   cc -std=c99 -O2 -o fw *.c   (in this folder)
 *   broodbench conform --process ./fw
 */
#include <stdio.h>
#include <unistd.h>

#include "bb_link.h"

static int32_t settings[BB_SETTINGS_COUNT] = {BB_DEFAULTS};
static char answers[1 << 16];
static size_t answered;

static void send_answers(void) {
  fwrite(answers, 1, answered, stdout);
  fflush(stdout);
  answered = 0;
}

static void put_char(char c) {
  if (answered == sizeof answers) {
    send_answers();
  }
  answers[answered++] = c;
}

int main(void) {
  static const bb_link_board board = {"reference-c", settings, 0, 2000, put_char};
  static bb_link link;
  static char requests[1 << 16];
  bb_link_init(&link, &board);
  for (;;) {
    ssize_t count = read(0, requests, sizeof requests);
    if (count <= 0) {
      return 0;
    }
    for (ssize_t i = 0; i < count; i++) {
      bb_link_receive(&link, requests[i]);
    }
    send_answers();
  }
}
