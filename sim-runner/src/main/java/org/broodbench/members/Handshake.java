package org.broodbench.members;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * What two ends of a new connection say to each other before anything else: both draw a number, and
 * each proves over both numbers that it knows the secret, the one that calls first. Who cannot is
 * hung up on, before any byte of it has been read as anything else.
 */
final class Handshake {
  private static final byte[] GREETING = "broodbench-1".getBytes(StandardCharsets.US_ASCII);
  private static final int CHANCE = 32;

  /** Most time that the other end takes for a word, ms; own choice. */
  private static final int WORD_MILLIS = 10_000;

  private final Secret secret;

  Handshake(Secret secret) {
    this.secret = secret;
  }

  /** The end that was called. */
  void called(Socket socket) throws IOException {
    socket.setSoTimeout(WORD_MILLIS);
    byte[] mine = Secret.chance(CHANCE);
    say(socket, GREETING, mine);
    DataInputStream in = new DataInputStream(socket.getInputStream());
    byte[] its = in.readNBytes(CHANCE);
    byte[] proof = in.readNBytes(Secret.PROOF);
    if (!secret.proves(proof, "caller", mine, its)) {
      throw new IOException("a caller without the secret was refused");
    }
    say(socket, secret.prove("called", mine, its));
    socket.setSoTimeout(0);
  }

  /** The end that calls. */
  void calls(Socket socket) throws IOException {
    socket.setSoTimeout(WORD_MILLIS);
    DataInputStream in = new DataInputStream(socket.getInputStream());
    if (!Arrays.equals(GREETING, in.readNBytes(GREETING.length))) {
      throw new IOException("what listens there is no member");
    }
    byte[] its = in.readNBytes(CHANCE);
    byte[] mine = Secret.chance(CHANCE);
    say(socket, mine, secret.prove("caller", its, mine));
    byte[] proof = new byte[Secret.PROOF];
    try {
      in.readFully(proof);
    } catch (EOFException e) {
      throw new IOException("it refused us: it has another secret", e);
    }
    if (!secret.proves(proof, "called", its, mine)) {
      throw new IOException("it does not know the secret");
    }
    socket.setSoTimeout(0);
  }

  private static void say(Socket socket, byte[]... words) throws IOException {
    OutputStream out = socket.getOutputStream();
    for (byte[] w : words) {
      out.write(w);
    }
    out.flush();
  }
}
