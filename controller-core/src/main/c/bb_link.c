/* The line protocol of PROTOCOL.md. */
#include "bb_link.h"

enum { START, BODY, SUM, SKIP };

#define SAMPLES 12
#define FIELDS_READINGS (2 + SAMPLES + 1)

/* ---- checksum: polynomial 0x1021, from 0xFFFF, four bits at a time ---- */

static uint16_t add_to_sum(uint16_t sum, char c) {
  static const uint16_t table[16] = {0x0000, 0x1021, 0x2042, 0x3063, 0x4084, 0x50a5,
                                     0x60c6, 0x70e7, 0x8108, 0x9129, 0xa14a, 0xb16b,
                                     0xc18c, 0xd1ad, 0xe1ce, 0xf1ef};
  uint8_t byte = (uint8_t)c;
  sum = (uint16_t)((uint16_t)(sum << 4) ^ table[(sum >> 12) ^ (byte >> 4)]);
  return (uint16_t)((uint16_t)(sum << 4) ^ table[(sum >> 12) ^ (byte & 15)]);
}

/* ---- going out ---- */

static void put(bb_link *l, char c) {
  l->out_sum = add_to_sum(l->out_sum, c);
  l->board->put(c);
}

static void begin_line(bb_link *l, char letter) {
  l->out_sum = 0xFFFF;
  put(l, letter);
}

static char hex_digit(uint8_t value) {
  return (char)(value < 10 ? '0' + value : 'a' + value - 10);
}

static void end_line(bb_link *l) {
  uint16_t sum = l->out_sum;
  l->board->put('*');
  for (int8_t shift = 12; shift >= 0; shift = (int8_t)(shift - 4)) {
    l->board->put(hex_digit((uint8_t)(sum >> shift & 15)));
  }
  l->board->put('\n');
}

static void put_unsigned(bb_link *l, uint32_t value) {
  char digits[10];
  uint8_t count = 0;
  do {
    digits[count++] = (char)('0' + value % 10);
    value /= 10;
  } while (value);
  put(l, ' ');
  while (count) {
    put(l, digits[--count]);
  }
}

static void put_signed(bb_link *l, int32_t value) {
  if (value >= 0) {
    put_unsigned(l, (uint32_t)value);
    return;
  }
  char digits[10];
  uint8_t count = 0;
  uint32_t magnitude = 0 - (uint32_t)value;
  do {
    digits[count++] = (char)('0' + magnitude % 10);
    magnitude /= 10;
  } while (magnitude);
  put(l, ' ');
  put(l, '-');
  while (count) {
    put(l, digits[--count]);
  }
}

static void put_hex(bb_link *l, uint32_t value) {
  put(l, ' ');
  for (int8_t shift = 28; shift >= 0; shift = (int8_t)(shift - 4)) {
    put(l, hex_digit((uint8_t)(value >> shift & 15)));
  }
}

static void put_text(bb_link *l, const char *text) {
  put(l, ' ');
  while (*text) {
    put(l, *text++);
  }
}

static void hello(bb_link *l) {
  begin_line(l, '!');
  put_unsigned(l, BB_LINK_VERSION);
  put_text(l, l->board->fixed ? "fixed" : "open");
  put_text(l, "host");
  put_unsigned(l, BB_SETTINGS_COUNT);
  put_unsigned(l, l->board->ahead);
  put_hex(l, bb_settings_digest(l->board->settings));
  put_text(l, l->board->name);
  end_line(l);
}

static void not_done(bb_link *l, char why) {
  begin_line(l, 'N');
  put_unsigned(l, l->next);
  put(l, ' ');
  put(l, why);
  end_line(l);
}

/* The commands in the order of section 13 of SPEC.md. */
static void commands(bb_link *l) {
  const bb_commands *c = &l->out;
  begin_line(l, 'C');
  put_unsigned(l, l->next - 1);
  put_unsigned(l, l->last_millis);
  put_unsigned(l, c->heater);
  put_unsigned(l, c->isolation);
  put_unsigned(l, c->fan);
  put_unsigned(l, c->inverter);
  put_unsigned(l, c->supply);
  put_unsigned(l, c->shed_level);
  put_unsigned(l, c->heater_reason);
  put_unsigned(l, c->heater_stop_reason);
  put_unsigned(l, c->fan_reason);
  put_unsigned(l, c->alarms);
  put_unsigned(l, c->latched_alarms);
  put_signed(l, c->governing_centi_c);
  put_signed(l, c->governing_high_centi_c);
  put_signed(l, c->working_set_point_centi_c);
  put_signed(l, c->min_off_remaining_millis);
  put_signed(l, c->min_on_remaining_millis);
  put_signed(l, c->service_remaining_millis);
  put_unsigned(l, c->test_phase);
  put_signed(l, c->corrected_milli_v);
  put_signed(l, c->leave_delay_millis);
  put_unsigned(l, c->sheds_in_day);
  put_signed(l, c->lowest_brood_centi_c);
  put_signed(l, c->highest_brood_centi_c);
  put_signed(l, c->heater_seconds);
  put_signed(l, c->heater_starts);
  put_signed(l, c->sheds);
  end_line(l);
}

void bb_link_tell_heater(bb_link *l, bb_flag on) {
  begin_line(l, 'O');
  put_unsigned(l, on);
  end_line(l);
}

/* ---- coming in ---- */

static bb_flag is_digit(char c) { return c >= '0' && c <= '9'; }

/* Reads digits from *at on; refuses none and more than most. */
static bb_flag take_unsigned(const char *text, uint8_t *at, uint32_t most, uint32_t *value) {
  uint32_t sum = 0;
  if (!is_digit(text[*at])) {
    return 0;
  }
  for (; is_digit(text[*at]); (*at)++) {
    uint32_t digit = (uint32_t)(text[*at] - '0');
    if (sum > (most - digit) / 10) {
      return 0;
    }
    sum = sum * 10 + digit;
  }
  *value = sum;
  return 1;
}

static bb_flag take_signed(const char *text, uint8_t *at, int32_t *value) {
  bb_flag negative = text[*at] == '-';
  uint32_t magnitude;
  if (negative) {
    (*at)++;
  }
  if (!take_unsigned(text, at, negative ? UINT32_C(0x80000000) : INT32_MAX, &magnitude)) {
    return 0;
  }
  if (!negative) {
    *value = (int32_t)magnitude;
  } else if (magnitude == UINT32_C(0x80000000)) {
    *value = INT32_MIN;
  } else {
    *value = -(int32_t)magnitude;
  }
  return 1;
}

static bb_flag whole_unsigned(const char *text, uint32_t *value) {
  uint8_t at = 0;
  return take_unsigned(text, &at, UINT32_MAX, value) && text[at] == 0;
}

static bb_flag whole_signed(const char *text, int32_t *value) {
  uint8_t at = 0;
  return take_signed(text, &at, value) && text[at] == 0;
}

static bb_sample *sample(bb_readings *in, uint8_t index) {
  switch (index) {
    case 0:
      return &in->brood_a;
    case 1:
      return &in->brood_b;
    case 2:
      return &in->pan;
    case 3:
      return &in->top;
    case 4:
      return &in->outdoor;
    case 5:
      return &in->humidity;
    case 6:
      return &in->battery;
    case 7:
      return &in->battery_current;
    case 8:
      return &in->state_of_charge;
    case 9:
      return &in->battery_temperature;
    case 10:
      return &in->heater_current;
    default:
      return &in->panel_power;
  }
}

/* "-" for none, a value, or value@age. */
static bb_flag take_sample(const char *text, bb_sample *s) {
  uint8_t at = 0;
  s->valid = !(text[0] == '-' && text[1] == 0);
  s->value = 0;
  s->age_millis = 0;
  if (!s->valid) {
    return 1;
  }
  if (!take_signed(text, &at, &s->value)) {
    return 0;
  }
  if (text[at] == '@') {
    at++;
    if (!take_signed(text, &at, &s->age_millis)) {
      return 0;
    }
  }
  return text[at] == 0;
}

static bb_flag take_readings(bb_link *l, uint8_t field, const char *text) {
  if (field == 0) {
    return whole_unsigned(text, &l->number);
  }
  if (field == 1) {
    return whole_unsigned(text, &l->now_millis);
  }
  if (field < 2 + SAMPLES) {
    return take_sample(text, sample(&l->in, (uint8_t)(field - 2)));
  }
  uint32_t switches;
  if (field > 2 + SAMPLES || !whole_unsigned(text, &switches) || switches > 15) {
    return 0;
  }
  l->in.charger_full = (switches & 1) != 0;
  l->in.shore_present = (switches & 2) != 0;
  l->in.button = (switches & 4) != 0;
  l->in.test_request = (switches & 8) != 0;
  return 1;
}

/* A token has ended; field counts from the one after the letter. */
static void token(bb_link *l) {
  l->token[l->token_length] = 0;
  bb_flag good;
  if (l->letter == 'R') {
    good = take_readings(l, l->field, l->token);
  } else if ((l->letter == 'S' || l->letter == 'T') && l->field > 0) {
    good = l->field <= BB_LINK_VALUES && whole_signed(l->token, &l->values[l->field - 1]);
  } else {
    good = l->field == 0 && whole_unsigned(l->token, &l->number);
  }
  if (!good) {
    l->bad = 1;
  }
  if (l->field < 255) {
    l->field++;
  }
  l->token_length = 0;
}

/* ---- requests ---- */

static void all_off(bb_commands *out) {
  out->heater = 0;
  out->isolation = 0;
  out->fan = 0;
  out->inverter = 0;
  out->supply = BB_SUPPLY_NONE;
}

static void begin(bb_link *l) {
  int16_t problem = bb_settings_problem(l->board->settings);
  l->begun = problem < 0;
  l->next = 0;
  l->last = 0;
  all_off(&l->out);
  if (l->begun) {
    bb_controller_init(&l->controller, l->board->settings);
  }
  begin_line(l, 'B');
  put_unsigned(l, l->number);
  put_signed(l, problem);
  put_hex(l, bb_settings_digest(l->board->settings));
  end_line(l);
}

static void take_settings(bb_link *l) {
  uint8_t count = (uint8_t)(l->field - 1);
  if (l->board->fixed) {
    not_done(l, 'u');
  } else if (l->number >= BB_SETTINGS_COUNT || count > BB_SETTINGS_COUNT - l->number) {
    not_done(l, 'f');
  } else {
    for (uint8_t i = 0; i < count; i++) {
      l->board->settings[l->number + i] = l->values[i];
    }
    l->begun = 0; /* the controller must not run on settings that were not checked */
    all_off(&l->out);
    begin_line(l, 'S');
    put_unsigned(l, l->number);
    put_unsigned(l, count);
    end_line(l);
  }
}

static void give_settings(bb_link *l) {
  if (l->number >= BB_SETTINGS_COUNT) {
    not_done(l, 'f');
    return;
  }
  begin_line(l, 'V');
  put_unsigned(l, l->number);
  for (uint8_t i = 0; i < BB_LINK_VALUES && l->number + i < BB_SETTINGS_COUNT; i++) {
    put_signed(l, l->board->settings[l->number + i]);
  }
  end_line(l);
}

/* The state goes through words, as it would through memory that outlives the power. */
static void restart(bb_link *l) {
  int32_t words[BB_STATE_WORDS];
  bb_controller_save(&l->controller, words);
  bb_controller_init(&l->controller, l->board->settings);
  bb_controller_restore(&l->controller, words);
  if (l->letter == 'L') {
    bb_controller_power_was_lost(&l->controller);
  }
}

static void acknowledge(bb_link *l) {
  if (l->last == 'R') {
    commands(l);
  } else {
    begin_line(l, l->last);
    put_unsigned(l, l->next - 1);
    end_line(l);
  }
}

/* Another value for one setting while the controller runs (rule N4). */
static bb_flag change_setting(bb_link *l) {
  int32_t index = l->values[0];
  if (index < 0 || index >= BB_SETTINGS_COUNT) {
    return 0;
  }
  int32_t before = l->board->settings[index];
  l->board->settings[index] = l->values[1];
  if (bb_settings_problem(l->board->settings) >= 0) {
    l->board->settings[index] = before;
    return 0;
  }
  restart(l);
  return 1;
}

/* R, K, L and T are numbered: each is done once, however often it comes. */
static void numbered(bb_link *l) {
  if (!l->begun) {
    not_done(l, 'b');
  } else if (l->last && l->number == l->next - 1 && l->letter == l->last) {
    acknowledge(l);
  } else if (l->number != l->next) {
    not_done(l, 's');
  } else if (l->letter == 'T' && l->board->fixed) {
    not_done(l, 'u');
  } else if (l->letter == 'T' && !change_setting(l)) {
    not_done(l, 'f');
  } else {
    if (l->letter == 'R') {
      bb_controller_step(&l->controller, l->now_millis, &l->in, &l->out);
      l->last_millis = l->now_millis;
    } else if (l->letter != 'T') {
      restart(l);
    }
    l->last = l->letter;
    l->next++;
    acknowledge(l);
  }
}

static void request(bb_link *l) {
  uint8_t fields = l->field;
  switch (l->letter) {
    case '?':
      if (fields == 1 && l->number == BB_LINK_VERSION) {
        hello(l);
        return;
      }
      break;
    case 'S':
      if (fields >= 2) {
        take_settings(l);
        return;
      }
      break;
    case 'G':
      if (fields == 1) {
        give_settings(l);
        return;
      }
      break;
    case 'B':
      if (fields == 1) {
        begin(l);
        return;
      }
      break;
    case 'R':
      if (fields == FIELDS_READINGS) {
        numbered(l);
        return;
      }
      break;
    case 'T':
      if (fields == 3) {
        numbered(l);
        return;
      }
      break;
    case 'K':
    case 'L':
      if (fields == 1) {
        numbered(l);
        return;
      }
      break;
    default:
      break;
  }
  not_done(l, 'f');
}

/* ---- characters ---- */

static void new_line(bb_link *l) {
  l->phase = START;
  l->field = 0;
  l->bad = 0;
  l->sum = 0xFFFF;
  l->sum_given = 0;
  l->sum_digits = 0;
  l->token_length = 0;
}

void bb_link_init(bb_link *l, const bb_link_board *board) {
  l->board = board;
  l->begun = 0;
  l->next = 0;
  l->last = 0;
  l->last_millis = 0;
  l->number = 0;
  all_off(&l->out);
  new_line(l);
}

static void end_of_line(bb_link *l) {
  if (l->phase == SUM && l->sum_digits == 4) {
    if (l->sum_given != l->sum) {
      not_done(l, 'c');
    } else if (l->bad) {
      not_done(l, 'f');
    } else {
      request(l);
    }
  } else if (l->phase != START) {
    not_done(l, 'c'); /* half a line, or no checksum */
  }
  new_line(l);
}

static void sum_digit(bb_link *l, char c) {
  uint8_t digit;
  if (is_digit(c)) {
    digit = (uint8_t)(c - '0');
  } else if (c >= 'a' && c <= 'f') {
    digit = (uint8_t)(c - 'a' + 10);
  } else {
    l->phase = SKIP;
    return;
  }
  if (l->sum_digits == 4) {
    l->phase = SKIP;
    return;
  }
  l->sum_given = (uint16_t)(l->sum_given << 4 | digit);
  l->sum_digits++;
}

void bb_link_receive(bb_link *l, char c) {
  if (c == '\n') {
    end_of_line(l);
    return;
  }
  if (c == '\r' || l->phase == SKIP) {
    return;
  }
  if (l->phase == SUM) {
    sum_digit(l, c);
    return;
  }
  if (c == '*') {
    if (l->token_length) {
      token(l);
    }
    l->phase = SUM;
    return;
  }
  l->sum = add_to_sum(l->sum, c);
  if (l->phase == START) {
    l->letter = c;
    l->phase = BODY;
  } else if (c == ' ') {
    if (l->token_length) {
      token(l);
    }
  } else if (l->token_length < sizeof l->token - 1) {
    l->token[l->token_length++] = c;
  } else {
    l->bad = 1;
  }
}
