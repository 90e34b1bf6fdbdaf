package org.broodbench.members;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * What members and the machine that asks them have in common. Proves and checks by HMAC-SHA256 (RFC
 * 2104, FIPS 180-4); the secret itself is never sent. Draws chance as well: it decides who may ask,
 * and no result depends on it.
 */
public final class Secret {
  /** Shortest secret, characters: one of hexadecimal digits then has 128 bits; own choice. */
  public static final int SHORTEST = 32;

  /** Length of a proof, bytes. */
  static final int PROOF = 32;

  private static final String ALGORITHM = "HmacSHA256";

  private final byte[] key;

  /**
   * A secret.
   *
   * @param text at least {@link #SHORTEST} characters
   */
  public Secret(String text) {
    if (text.length() < SHORTEST) {
      throw new IllegalArgumentException("a secret of fewer than " + SHORTEST + " characters");
    }
    key = text.getBytes(StandardCharsets.UTF_8);
  }

  /** A new one of 256 bits, in hexadecimal. */
  public static String drawn() {
    return HexFormat.of().formatHex(chance(32));
  }

  /** So many bytes that nobody can foretell. */
  static byte[] chance(int bytes) {
    byte[] drawn = new byte[bytes];
    new SecureRandom().nextBytes(drawn);
    return drawn;
  }

  /**
   * Proves that whoever says these parts for this purpose knows the secret.
   *
   * @param purpose keeps proofs of one kind from serving as another
   */
  byte[] prove(String purpose, byte[]... parts) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      update(mac, purpose.getBytes(StandardCharsets.UTF_8));
      for (byte[] part : parts) {
        update(mac, part);
      }
      return mac.doFinal();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java platform has " + ALGORITHM, e);
    }
  }

  private static void update(Mac mac, byte[] part) {
    mac.update(ByteBuffer.allocate(Integer.BYTES).putInt(part.length).array());
    mac.update(part);
  }

  /** Whether a proof is right; takes as long however much of it is. */
  boolean proves(byte[] proof, String purpose, byte[]... parts) {
    return MessageDigest.isEqual(proof, prove(purpose, parts));
  }
}
