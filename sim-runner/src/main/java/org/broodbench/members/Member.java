package org.broodbench.members;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;
import org.broodbench.recipe.RecipeBytes;

/** A member as the machine sees it that asks: does pieces of one study as long as it is there. */
final class Member implements AutoCloseable {
  private final String name;
  private final Line line;
  private final Secret secret;
  private final byte[] recipe;
  private final String digest;
  private final AtomicInteger handedOver = new AtomicInteger();
  private int threads;

  /**
   * @param name where it is, as the user wrote it
   * @param recipe bytes of the study, as {@link RecipeBytes} writes them
   */
  Member(String name, Line line, Secret secret, byte[] recipe) {
    this.name = name;
    this.line = line;
    this.secret = secret;
    this.recipe = recipe;
    digest = Words.digest(recipe);
  }

  String name() {
    return name;
  }

  /** How many pieces it does at a time; known after {@link #hello}. */
  int threads() {
    return threads;
  }

  /**
   * Asks who it is.
   *
   * @return null where it is of this build, else which it is of
   */
  String hello(String build) throws IOException {
    byte[] answer = ask(Words.of(Words.HELLO, build));
    if (Words.what(answer) == Words.WHICH) {
      return Words.text(answer);
    }
    String told = fine(answer);
    if (!told.matches("\\d{1,9}")) {
      throw new IOException("it does not say how many threads it has");
    }
    threads = Math.max(1, Math.min(1024, Integer.parseInt(told)));
    return null;
  }

  /**
   * The line of a piece.
   *
   * @throws IOException where the member is gone or cannot do it
   */
  String piece(String piece) throws IOException {
    byte[] question = Words.of(Words.PIECE, digest + piece);
    int before = handedOver.get();
    byte[] answer = ask(question);
    if (Words.what(answer) == Words.WHICH) {
      handOver(before);
      answer = ask(question);
    }
    return fine(answer);
  }

  /** Hands the study over, unless another thread has done so meanwhile. */
  private synchronized void handOver(int before) throws IOException {
    if (handedOver.get() == before) {
      fine(ask(Words.of(Words.STUDY, recipe)));
      handedOver.incrementAndGet();
    }
  }

  private static String fine(byte[] answer) throws IOException {
    if (Words.what(answer) != Words.FINE) {
      throw new IOException("it says: " + Words.text(answer));
    }
    return new String(Words.rest(answer), StandardCharsets.UTF_8);
  }

  private byte[] ask(byte[] words) throws IOException {
    byte[] question = Sealed.question(secret, words);
    return Sealed.openAnswer(secret, question, line.ask(question));
  }

  @Override
  public void close() {
    line.close();
  }
}
