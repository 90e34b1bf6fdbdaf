package org.broodbench.members;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;

class HandshakeTest {
  private static final Secret ONE = new Secret("0123456789abcdef0123456789abcdef");
  private static final Secret OTHER = new Secret("0123456789abcdef0123456789abcdeF");

  /** One end of a conversation. */
  private interface End {
    void talk(Socket socket) throws IOException;
  }

  /** What became of the end that was called: its message, or empty where all was well. */
  private static String called(End called, End calls) throws Exception {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      CompletableFuture<String> end =
          CompletableFuture.supplyAsync(
              () -> {
                try (Socket socket = server.accept()) {
                  called.talk(socket);
                  return "";
                } catch (IOException e) {
                  return e.getMessage();
                }
              });
      try (Socket socket = new Socket(server.getInetAddress(), server.getLocalPort())) {
        calls.talk(socket);
      }
      return end.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void bothEndsWithTheSecretComeTogetherAndTalkOn() throws Exception {
    String said =
        called(
            socket -> {
              new Handshake(ONE).called(socket);
              socket.getOutputStream().write(42);
            },
            socket -> {
              new Handshake(ONE).calls(socket);
              assertEquals(42, socket.getInputStream().read(), "nothing is read too far");
            });
    assertEquals("", said);
  }

  @Test
  void aCallerWithAnotherSecretIsRefused() throws Exception {
    String said =
        called(
            new Handshake(ONE)::called,
            socket -> {
              IOException e =
                  assertThrows(IOException.class, () -> new Handshake(OTHER).calls(socket));
              assertTrue(e.getMessage().contains("it has another secret"), e.getMessage());
            });
    assertEquals("a caller without the secret was refused", said);
  }

  @Test
  void aCalledEndThatDoesNotKnowTheSecretIsLeft() throws Exception {
    called(
        socket -> {
          // an impostor who lets everybody in and proves by what it can compute
          byte[] greeting = "broodbench-1".getBytes(StandardCharsets.US_ASCII);
          socket.getOutputStream().write(greeting);
          socket.getOutputStream().write(new byte[32]);
          byte[] its = socket.getInputStream().readNBytes(64);
          socket.getOutputStream().write(its, 32, 32); // its own proof, sent back
        },
        socket -> {
          IOException e = assertThrows(IOException.class, () -> new Handshake(ONE).calls(socket));
          assertEquals("it does not know the secret", e.getMessage());
        });
  }

  @Test
  void whatIsNoMemberIsLeftAndWhatIsNoCallerIsRefused() throws Exception {
    String said =
        called(
            new Handshake(ONE)::called,
            socket -> {
              socket.getOutputStream().write(new byte[64]);
              socket.getInputStream().readAllBytes();
            });
    assertEquals("a caller without the secret was refused", said);
    called(
        socket -> socket.getOutputStream().write("SSH-2.0-something-else".getBytes()),
        socket -> {
          IOException e = assertThrows(IOException.class, () -> new Handshake(ONE).calls(socket));
          assertEquals("what listens there is no member", e.getMessage());
        });
  }

  /** A proof that was overheard opens no second connection: the numbers are drawn anew. */
  @Test
  void proofsAreGoodForOneConnection() throws Exception {
    byte[][] overheard = new byte[1][];
    called(
        socket -> {
          socket.getOutputStream().write("broodbench-1".getBytes(StandardCharsets.US_ASCII));
          socket.getOutputStream().write(new byte[32]);
          overheard[0] = socket.getInputStream().readNBytes(64);
        },
        socket -> assertThrows(IOException.class, () -> new Handshake(ONE).calls(socket)));
    String said =
        called(
            new Handshake(ONE)::called,
            socket -> {
              socket.getOutputStream().write(overheard[0]);
              socket.getInputStream().readAllBytes();
            });
    assertEquals("a caller without the secret was refused", said);
  }

  @Test
  void secretsAreLongAndDrawnAnew() {
    assertThrows(IllegalArgumentException.class, () -> new Secret("short"));
    assertEquals(64, Secret.drawn().length());
    assertNotEquals(Secret.drawn(), Secret.drawn());
  }
}
