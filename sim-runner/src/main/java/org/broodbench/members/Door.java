package org.broodbench.members;

import com.hazelcast.nio.MemberSocketInterceptor;
import java.io.IOException;
import java.net.Socket;
import java.util.Properties;

/** Lets the engine talk over a connection only after the {@link Handshake}. */
final class Door implements MemberSocketInterceptor {
  private final Handshake handshake;
  private volatile String refusal = "nobody answers there";

  Door(Secret secret) {
    handshake = new Handshake(secret);
  }

  /** Why the last call failed. */
  String refusal() {
    return refusal;
  }

  @Override
  public void init(Properties properties) {
    // all it needs was handed in
  }

  @Override
  public void onAccept(Socket socket) throws IOException {
    handshake.called(socket);
  }

  @Override
  public void onConnect(Socket socket) throws IOException {
    try {
      handshake.calls(socket);
      refusal = "it hung up";
    } catch (IOException e) {
      refusal = e.getMessage();
      throw e;
    }
  }
}
