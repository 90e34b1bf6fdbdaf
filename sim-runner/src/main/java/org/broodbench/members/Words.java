package org.broodbench.members;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** What is asked and answered: one letter, then a text or bytes. */
final class Words {
  /** Asks who it is, telling the build; answered by {@link #FINE} and the number of threads. */
  static final char HELLO = 'h';

  /** Hands over the bytes of a recipe. */
  static final char STUDY = 's';

  /** Asks for a piece: the digest of its recipe, then its name; answered by its line. */
  static final char PIECE = 'p';

  /** It went well. */
  static final char FINE = 'f';

  /** The recipe of that digest is not here: hand it over. */
  static final char WHICH = 'w';

  /** It could not be done, and why. */
  static final char SORRY = 'x';

  /** Letters of a digest. */
  static final int DIGEST = 64;

  private Words() {}

  static byte[] of(char what, byte[] rest) {
    byte[] words = new byte[1 + rest.length];
    words[0] = (byte) what;
    System.arraycopy(rest, 0, words, 1, rest.length);
    return words;
  }

  static byte[] of(char what, String text) {
    return of(what, text.getBytes(StandardCharsets.UTF_8));
  }

  static char what(byte[] words) {
    return words.length == 0 ? SORRY : (char) words[0];
  }

  static byte[] rest(byte[] words) {
    return Arrays.copyOfRange(words, Math.min(1, words.length), words.length);
  }

  static String text(byte[] words) {
    return new String(rest(words), StandardCharsets.UTF_8);
  }

  /** What a recipe is called. */
  static String digest(byte[] recipe) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(recipe));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
