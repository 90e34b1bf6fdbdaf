package org.broodbench.members;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;

/** The ends of a connection between members, each fed with bytes as the other end's words. */
public final class FedMember {
  private static final Secret SECRET = new Secret("0123456789abcdef0123456789abcdef");

  private FedMember() {}

  /** A member is asked, with and without a right proof. */
  public static void ask(byte[] words) {
    Hand hand = new Hand(SECRET, "build", 1);
    hand.answer(words);
    byte[] question = Sealed.question(SECRET, words);
    try {
      Sealed.openAnswer(SECRET, question, hand.answer(question));
    } catch (IOException e) {
      throw new IllegalStateException("an answer that its asker cannot open", e);
    }
  }

  /** A member answers, with and without a right proof. */
  public static void answer(byte[] words) {
    for (boolean proved : new boolean[] {true, false}) {
      Member member =
          new Member(
              "fed",
              new Line() {
                @Override
                public byte[] ask(byte[] question) {
                  return proved ? Sealed.answer(SECRET, question, words) : words;
                }

                @Override
                public void close() {}
              },
              SECRET,
              new byte[] {1, 2, 3});
      try {
        member.hello("build");
        member.piece("1");
      } catch (IOException told) {
        if (told.getMessage() == null) {
          throw new IllegalStateException("a refusal without words", told);
        }
      }
    }
  }

  /** Both ends of the handshake. */
  public static void shakeHands(byte[] words) {
    try {
      new Handshake(SECRET).called(new FedSocket(words));
      throw new IllegalStateException("words without the secret were believed");
    } catch (IOException refused) {
      // as it should be
    }
    try {
      new Handshake(SECRET).calls(new FedSocket(words));
      throw new IllegalStateException("words without the secret were believed");
    } catch (IOException refused) {
      // as it should be
    }
  }

  private static final class FedSocket extends Socket {
    private final byte[] words;

    FedSocket(byte[] words) {
      this.words = words;
    }

    @Override
    public void setSoTimeout(int millis) {
      // words that are there at once are not waited for
    }

    @Override
    public InputStream getInputStream() {
      return new ByteArrayInputStream(words);
    }

    @Override
    public OutputStream getOutputStream() {
      return OutputStream.nullOutputStream();
    }
  }
}
