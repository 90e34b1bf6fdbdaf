package org.broodbench.serve;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;

/**
 * A secret drawn at the start of the server. The only place with unseeded chance: it decides who
 * may ask, and no result depends on it.
 */
final class Secret {
  /** 192 bits, 32 characters: beyond guessing; own choice. */
  private static final int BYTES = 24;

  private final String text;

  private Secret(String text) {
    this.text = text;
  }

  static Secret drawn() {
    byte[] bytes = new byte[BYTES];
    new SecureRandom().nextBytes(bytes);
    return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
  }

  String text() {
    return text;
  }

  /** Whether a text is the secret; takes as long however much of it is right. */
  boolean is(String offered) {
    return offered != null
        && MessageDigest.isEqual(
            text.getBytes(StandardCharsets.UTF_8), offered.getBytes(StandardCharsets.UTF_8));
  }
}
