package org.broodbench.members;

import java.io.IOException;
import java.util.Arrays;

/**
 * Messages that only who knows the secret can have written: the proof, then the words. The words of
 * an answer are proved together with the question, so that no answer passes for that to another.
 */
final class Sealed {
  private static final String QUESTION = "question";
  private static final String ANSWER = "answer";

  private Sealed() {}

  static byte[] question(Secret secret, byte[] words) {
    return joined(secret.prove(QUESTION, words), words);
  }

  static byte[] answer(Secret secret, byte[] question, byte[] words) {
    return joined(secret.prove(ANSWER, question, words), words);
  }

  /** The words of a question, looked at by nobody before its proof is. */
  static byte[] openQuestion(Secret secret, byte[] sealed) throws IOException {
    byte[] words = words(sealed);
    if (!secret.proves(proof(sealed), QUESTION, words)) {
      throw new IOException("a question without the secret");
    }
    return words;
  }

  /** The words of the answer to a question. */
  static byte[] openAnswer(Secret secret, byte[] question, byte[] sealed) throws IOException {
    byte[] words = words(sealed);
    if (!secret.proves(proof(sealed), ANSWER, question, words)) {
      throw new IOException("an answer without the secret");
    }
    return words;
  }

  private static byte[] joined(byte[] proof, byte[] words) {
    byte[] all = Arrays.copyOf(proof, proof.length + words.length);
    System.arraycopy(words, 0, all, proof.length, words.length);
    return all;
  }

  private static byte[] proof(byte[] sealed) {
    return Arrays.copyOf(sealed, Secret.PROOF);
  }

  private static byte[] words(byte[] sealed) throws IOException {
    if (sealed == null || sealed.length < Secret.PROOF) {
      throw new IOException("a message without a proof");
    }
    return Arrays.copyOfRange(sealed, Secret.PROOF, sealed.length);
  }
}
