package org.broodbench.controller;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;

/**
 * Reads the instructions of a class file and tells whether one of them works on float or double.
 * Class file layout: Java Virtual Machine Specification, chapters 4 and 6.
 */
final class FloatingPoint {
  private FloatingPoint() {}

  static boolean usedBy(byte[] classFile) throws IOException {
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(classFile));
    in.skipBytes(8);
    int constants = in.readUnsignedShort();
    String[] texts = new String[constants];
    boolean number = false;
    for (int i = 1; i < constants; i++) {
      int tag = in.readUnsignedByte();
      switch (tag) {
        case 1 -> texts[i] = in.readUTF();
        case 3 -> in.skipBytes(4);
        case 4 -> {
          in.skipBytes(4);
          number = true;
        }
        case 5 -> {
          in.skipBytes(8);
          i++;
        }
        case 6 -> {
          in.skipBytes(8);
          i++;
          number = true;
        }
        case 7, 8, 16, 19, 20 -> in.skipBytes(2);
        case 15 -> in.skipBytes(3);
        default -> in.skipBytes(4);
      }
    }
    in.skipBytes(6);
    in.skipBytes(2 * in.readUnsignedShort());
    boolean found = number;
    for (int kind = 0; kind < 2; kind++) {
      int members = in.readUnsignedShort();
      for (int m = 0; m < members; m++) {
        in.skipBytes(6);
        int attributes = in.readUnsignedShort();
        for (int a = 0; a < attributes; a++) {
          String name = texts[in.readUnsignedShort()];
          byte[] body = in.readNBytes(in.readInt());
          if ("Code".equals(name)) {
            found |= code(body);
          }
        }
      }
    }
    return found;
  }

  private static boolean code(byte[] body) throws IOException {
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(body));
    in.skipBytes(4);
    byte[] code = in.readNBytes(in.readInt());
    int at = 0;
    while (at < code.length) {
      int op = code[at] & 0xff;
      if (floating(op)) {
        return true;
      }
      at += length(code, at, op);
    }
    return false;
  }

  /** fconst, dconst, loads, stores, arithmetic, conversions, comparisons, returns. */
  private static boolean floating(int op) {
    return (op >= 11 && op <= 15)
        || op == 23
        || op == 24
        || (op >= 34 && op <= 41)
        || op == 48
        || op == 49
        || op == 56
        || op == 57
        || (op >= 67 && op <= 74)
        || op == 81
        || op == 82
        || (op >= 96 && op <= 119 && op % 4 >= 2)
        || (op >= 134 && op <= 144 && op != 136 && op != 133)
        || (op >= 149 && op <= 152)
        || op == 174
        || op == 175;
  }

  private static int length(byte[] code, int at, int op) {
    if (op == 170 || op == 171) {
      int pad = (at + 4) & ~3;
      int size =
          op == 170
              ? 12 + 4 * (word(code, pad + 8) - word(code, pad + 4) + 1)
              : 8 + 8 * word(code, pad + 4);
      return pad + size - at;
    }
    if (op == 196) {
      return (code[at + 1] & 0xff) == 132 ? 6 : 4;
    }
    if (op == 16 || op == 18 || (op >= 21 && op <= 25) || (op >= 54 && op <= 58) || op == 169) {
      return 2;
    }
    if (op == 188) {
      return 2;
    }
    if (op == 185 || op == 186 || op == 200 || op == 201) {
      return 5;
    }
    if (op == 197) {
      return 4;
    }
    boolean two =
        op == 17
            || op == 19
            || op == 20
            || op == 132
            || (op >= 153 && op <= 168)
            || (op >= 178 && op <= 184)
            || op == 187
            || op == 189
            || op == 192
            || op == 193
            || op == 198
            || op == 199;
    return two ? 3 : 1;
  }

  private static int word(byte[] code, int at) {
    return (code[at] & 0xff) << 24
        | (code[at + 1] & 0xff) << 16
        | (code[at + 2] & 0xff) << 8
        | (code[at + 3] & 0xff);
  }
}
