package org.broodbench.firmware;

import java.nio.charset.StandardCharsets;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/** Lines of the protocol (controller-core/PROTOCOL.md) as bytes: built here, taken apart here. */
final class Wire {
  /** Version of the protocol. */
  static final int VERSION = 1;

  /** How many settings travel in one line. */
  static final int VALUES_A_LINE = 8;

  /** Bit-by-byte table of the polynomial 0x1021 (ITU-T V.41), most significant bit first. */
  private static final int[] SUMS = sums();

  private byte[] bytes = new byte[1 << 16];
  private int length;
  private int lineStart;

  private static int[] sums() {
    int[] table = new int[256];
    for (int i = 0; i < 256; i++) {
      int sum = i << 8;
      for (int bit = 0; bit < 8; bit++) {
        sum = (sum & 0x8000) != 0 ? sum << 1 ^ 0x1021 : sum << 1;
      }
      table[i] = sum & 0xffff;
    }
    return table;
  }

  /** The checksum of so many bytes, from 0xFFFF. */
  static int sum(byte[] bytes, int from, int to) {
    int sum = 0xffff;
    for (int i = from; i < to; i++) {
      sum = (sum << 8 ^ SUMS[(sum >> 8 ^ bytes[i]) & 0xff]) & 0xffff;
    }
    return sum;
  }

  /** A line from its text without checksum. */
  static byte[] line(String text) {
    byte[] plain = text.getBytes(StandardCharsets.US_ASCII);
    String end = String.format(java.util.Locale.ROOT, "*%04x\n", sum(plain, 0, plain.length));
    return (text + end).getBytes(StandardCharsets.US_ASCII);
  }

  // ---- building many lines in a row ----

  int length() {
    return length;
  }

  /** What was built; the buffer is empty afterwards. */
  byte[] take() {
    byte[] taken = java.util.Arrays.copyOf(bytes, length);
    length = 0;
    return taken;
  }

  /** Whether what was built is this line; the buffer is empty afterwards. */
  boolean equalsLine(byte[] line, int lineLength) {
    boolean equal =
        lineLength == length - 1
            && java.util.Arrays.equals(line, 0, lineLength, bytes, 0, lineLength);
    length = 0;
    return equal;
  }

  private void put(int c) {
    if (length == bytes.length) {
      bytes = java.util.Arrays.copyOf(bytes, 2 * length);
    }
    bytes[length++] = (byte) c;
  }

  private void begin(char letter) {
    lineStart = length;
    put(letter);
  }

  private void end() {
    int sum = sum(bytes, lineStart, length);
    put('*');
    for (int shift = 12; shift >= 0; shift -= 4) {
      put("0123456789abcdef".charAt(sum >> shift & 15));
    }
    put('\n');
  }

  private void number(long value) {
    put(' ');
    digits(value);
  }

  private void digits(long value) {
    long rest = value;
    if (rest < 0) {
      put('-');
      rest = -rest;
    }
    long scale = 1;
    while (rest / scale >= 10) {
      scale *= 10;
    }
    for (; scale > 0; scale /= 10) {
      put('0' + (int) (rest / scale % 10));
    }
  }

  /** One entry of a vector. */
  void entry(int number, Tick tick) {
    switch (tick.kind()) {
      case STEP -> readings(number, tick);
      case RESTART -> simple('K', number);
      case POWER_LOSS -> simple('L', number);
      case SETTING -> {
        begin('T');
        number(Integer.toUnsignedLong(number));
        number(tick.setting().ordinal());
        number(tick.settingValue());
        end();
      }
    }
  }

  private void readings(int number, Tick tick) {
    begin('R');
    number(Integer.toUnsignedLong(number));
    number(Integer.toUnsignedLong(tick.nowMillis()));
    for (int i = 0; i < Channel.COUNT; i++) {
      put(' ');
      if (!tick.valid(i)) {
        put('-');
        continue;
      }
      digits(tick.value(i));
      if (tick.ageMillis(i) != 0) {
        put('@');
        digits(tick.ageMillis(i));
      }
    }
    number(tick.switches());
    end();
  }

  private void simple(char letter, int number) {
    begin(letter);
    number(Integer.toUnsignedLong(number));
    end();
  }

  /** What the firmware has to answer to an entry. */
  void expected(int number, Tick tick, int[] commands) {
    if (tick.kind() != Tick.Kind.STEP) {
      simple(letter(tick), number);
      return;
    }
    begin('C');
    number(Integer.toUnsignedLong(number));
    number(Integer.toUnsignedLong(tick.nowMillis()));
    for (int i = 0; i < CommandField.COUNT; i++) {
      boolean bits =
          i == CommandField.ALARMS.ordinal() || i == CommandField.LATCHED_ALARMS.ordinal();
      number(bits ? Integer.toUnsignedLong(commands[i]) : commands[i]);
    }
    end();
  }

  static char letter(Tick tick) {
    return switch (tick.kind()) {
      case STEP -> 'C';
      case RESTART -> 'K';
      case POWER_LOSS -> 'L';
      case SETTING -> 'T';
    };
  }

  /** Settings from an index on. */
  static byte[] settings(Settings settings, int first) {
    StringBuilder text = new StringBuilder("S " + first);
    Setting[] all = Setting.values();
    for (int i = first; i < Math.min(first + VALUES_A_LINE, all.length); i++) {
      text.append(' ').append(settings.get(all[i]));
    }
    return line(text.toString());
  }

  /** FNV-1a, 32 bits, over the bytes of each value, lowest byte first. */
  static int digest(Settings settings) {
    int hash = 0x811c9dc5;
    for (Setting setting : Setting.values()) {
      int word = settings.get(setting);
      for (int b = 0; b < 4; b++) {
        hash = (hash ^ word & 0xff) * 0x01000193;
        word >>>= 8;
      }
    }
    return hash;
  }
}
