package org.broodbench.members;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;

/** A member that squares numbers, and goes after some of them. */
final class ToyLine implements Line {
  static final Secret SECRET = new Secret("0123456789abcdef0123456789abcdef");

  final AtomicInteger asked = new AtomicInteger();
  final AtomicInteger handedOver = new AtomicInteger();
  private final int goesAfter;
  private final String threads;
  private volatile boolean gone;

  ToyLine(int goesAfter, int threads) {
    this.goesAfter = goesAfter;
    this.threads = String.valueOf(threads);
  }

  /** A member of this line that has said hello. */
  Member member(String name) throws IOException {
    Member member = new Member(name, this, SECRET, new byte[] {1, 2, 3});
    if (member.hello("toy") != null) {
      throw new IllegalStateException("the toy knows no builds");
    }
    return member;
  }

  @Override
  public byte[] ask(byte[] question) throws IOException {
    byte[] asked = Sealed.openQuestion(SECRET, question);
    if (gone) {
      throw new IOException("the toy is gone");
    }
    return Sealed.answer(SECRET, question, answer(asked));
  }

  private byte[] answer(byte[] words) throws IOException {
    switch (Words.what(words)) {
      case Words.HELLO -> {
        return Words.of(Words.FINE, threads);
      }
      case Words.STUDY -> {
        handedOver.incrementAndGet();
        return Words.of(Words.FINE, "");
      }
      default -> {
        if (handedOver.get() == 0) {
          return Words.of(Words.WHICH, "");
        }
        if (asked.incrementAndGet() > goesAfter) {
          gone = true;
          throw new IOException("the toy went");
        }
        return Words.of(Words.FINE, square(Words.text(words).substring(Words.DIGEST)));
      }
    }
  }

  static String square(String name) {
    int n = Integer.parseInt(name);
    return String.valueOf(n * n);
  }

  @Override
  public void close() {
    gone = true;
  }
}
