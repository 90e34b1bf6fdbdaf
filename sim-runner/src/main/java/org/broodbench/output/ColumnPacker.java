package org.broodbench.output;

import java.io.ByteArrayOutputStream;
import java.util.Base64;

/**
 * Packs a column of whole numbers into few characters, the same ones on every machine.
 *
 * <p>Blocks of {@link #BLOCK} numbers are told from the one or two numbers before (previous value,
 * or the straight line through the previous two), and what is left over is written as Rice codes
 * (R. F. Rice, JPL Publication 79-22, 1979) with the best parameter of the block; the same scheme
 * is used for lossless sound (T. Robinson, SHORTEN, Cambridge CUED/F-INFENG/TR.156, 1994). Bits are
 * filled from the high end. A block begins with two bits: 0, 1 or 2 numbers looked at, or 3 for a
 * block that repeats the number before it and holds nothing else; then four bits of parameter.
 */
final class ColumnPacker {
  /** Numbers in a block. */
  static final int BLOCK = 256;

  /** Quotients from here on are written as a plain 32-bit number instead. */
  static final int ESCAPE = 24;

  private static final int MAX_PARAMETER = 15;
  private static final int REPEAT = 3;

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private int current;
  private int filled;

  private ColumnPacker() {}

  /** The packed column in Base64; numbers must stay within ±2^28. */
  static String pack(int[] values) {
    ColumnPacker p = new ColumnPacker();
    for (int from = 0; from < values.length; from += BLOCK) {
      p.block(values, from, Math.min(values.length, from + BLOCK));
    }
    p.flush();
    return Base64.getEncoder().encodeToString(p.bytes.toByteArray());
  }

  private void block(int[] v, int from, int to) {
    int bestOrder = REPEAT;
    int bestK = 0;
    if (!repeats(v, from, to)) {
      long best = Long.MAX_VALUE;
      for (int order = 0; order <= 2; order++) {
        for (int k = 0; k <= MAX_PARAMETER; k++) {
          long bits = cost(v, from, to, order, k);
          if (bits < best) {
            best = bits;
            bestOrder = order;
            bestK = k;
          }
        }
      }
    }
    bits(bestOrder, 2);
    if (bestOrder == REPEAT) {
      return;
    }
    bits(bestK, 4);
    for (int i = from; i < to; i++) {
      int u = folded(v, i, bestOrder);
      int quotient = u >>> bestK;
      if (quotient < ESCAPE) {
        bits((1L << quotient + 1) - 2, quotient + 1);
        bits(u & (1L << bestK) - 1, bestK);
      } else {
        bits((1L << ESCAPE) - 1, ESCAPE);
        bits(u & 0xffffffffL, 32);
      }
    }
  }

  private static boolean repeats(int[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      if (v[i] != before(v, i, 1)) {
        return false;
      }
    }
    return true;
  }

  private static long cost(int[] v, int from, int to, int order, int k) {
    long sum = 0;
    for (int i = from; i < to; i++) {
      int quotient = folded(v, i, order) >>> k;
      sum += quotient < ESCAPE ? quotient + 1 + k : ESCAPE + 32;
    }
    return sum;
  }

  /** What the prediction leaves over, folded to 0, −1, 1, −2, ... as 0, 1, 2, 3. */
  private static int folded(int[] v, int i, int order) {
    int predicted =
        switch (order) {
          case 0 -> 0;
          case 1 -> before(v, i, 1);
          default -> 2 * before(v, i, 1) - before(v, i, 2);
        };
    int r = v[i] - predicted;
    return r << 1 ^ r >> 31;
  }

  private static int before(int[] v, int i, int back) {
    return i >= back ? v[i - back] : 0;
  }

  private void bits(long value, int count) {
    for (int b = count - 1; b >= 0; b--) {
      current = current << 1 | (int) (value >>> b & 1);
      if (++filled == 8) {
        bytes.write(current);
        current = 0;
        filled = 0;
      }
    }
  }

  private void flush() {
    if (filled > 0) {
      bytes.write(current << 8 - filled);
    }
  }
}
