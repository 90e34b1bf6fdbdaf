package org.broodbench.firmware;

import java.nio.charset.StandardCharsets;

/**
 * One line of the firmware with a right checksum, taken apart.
 *
 * @param letter what kind of line
 * @param fields what stands after it
 */
record Answer(char letter, String[] fields) {
  /** The line, or null where it is none of the protocol's or damaged. */
  static Answer of(byte[] line, int length) {
    int star = length - 5;
    if (star < 1 || line[star] != '*') {
      return null;
    }
    int given = 0;
    for (int i = star + 1; i < length; i++) {
      int digit = Character.digit(line[i], 16);
      if (digit < 0) {
        return null;
      }
      given = given << 4 | digit;
    }
    if (given != Wire.sum(line, 0, star)) {
      return null;
    }
    String text = new String(line, 0, star, StandardCharsets.ISO_8859_1);
    String rest = text.substring(1).strip();
    return new Answer(text.charAt(0), rest.isEmpty() ? new String[0] : rest.split(" +"));
  }

  /** A field as a whole number. */
  long number(int field) throws FirmwareFault {
    if (field >= fields.length) {
      throw nonsense("a field is missing");
    }
    try {
      return Long.parseLong(fields[field]);
    } catch (NumberFormatException e) {
      throw nonsense("'" + fields[field] + "' is not a whole number");
    }
  }

  /** A field as 32 bits, with or without sign; more would be cut off and could pass for right. */
  int word(int field) throws FirmwareFault {
    long value = number(field);
    if (value < Integer.MIN_VALUE || value > 0xffff_ffffL) {
      throw nonsense("'" + fields[field] + "' has more than 32 bits");
    }
    return (int) value;
  }

  FirmwareFault nonsense(String why) {
    return new FirmwareFault(FirmwareFault.Kind.NONSENSE, why + " in the line '" + this + "'");
  }

  @Override
  public String toString() {
    return letter + " " + String.join(" ", fields);
  }
}
