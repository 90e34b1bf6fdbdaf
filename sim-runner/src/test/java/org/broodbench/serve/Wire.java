package org.broodbench.serve;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** Speaks HTTP byte by byte, as an attacker would. */
final class Wire {
  /** What came back. */
  record Reply(int status, String head, String body) {
    String header(String name) {
      for (String line : head.split("\r\n")) {
        if (line.regionMatches(true, 0, name + ":", 0, name.length() + 1)) {
          return line.substring(name.length() + 1).strip();
        }
      }
      return "";
    }
  }

  private Wire() {}

  /** Sends bytes and reads all that comes until the other side closes. */
  static Reply send(int port, String request) throws IOException {
    try (Socket s = new Socket("127.0.0.1", port)) {
      s.setSoTimeout(30_000);
      s.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      s.getOutputStream().flush();
      return read(s.getInputStream());
    }
  }

  static Reply read(InputStream in) throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    in.transferTo(all);
    String text = all.toString(StandardCharsets.ISO_8859_1);
    int end = text.indexOf("\r\n\r\n");
    if (end < 0) {
      return new Reply(0, text, "");
    }
    return new Reply(
        Integer.parseInt(text.split(" ")[1]), text.substring(0, end), text.substring(end + 4));
  }

  /** A request of the page itself but for what is changed in its lines. */
  static String request(String start, int port, String cookie, String body, String... lines) {
    StringBuilder out = new StringBuilder(start).append(" HTTP/1.1\r\n");
    boolean host = false;
    for (String line : lines) {
      out.append(line).append("\r\n");
      host |= line.startsWith("Host:");
    }
    if (!host) {
      out.append("Host: 127.0.0.1:").append(port).append("\r\n");
    }
    if (!cookie.isEmpty()) {
      out.append("Cookie: ").append(cookie).append("\r\n");
    }
    if (!body.isEmpty()) {
      out.append("Content-Length: ").append(body.length()).append("\r\n");
    }
    return out.append("Connection: close\r\n\r\n").append(body).toString();
  }

  /** Starts nothing that is there. */
  static Studies noStudies() {
    return new Studies(List.of("/nowhere/java"), Path.of("nowhere"));
  }

  /** The demo's file. */
  static byte[] demo() throws IOException {
    try (InputStream in = Wire.class.getResourceAsStream("/scenarios/late-split.toml")) {
      return in.readAllBytes();
    }
  }

  static int port(LiveServer server) {
    return URI.create(server.url()).getPort();
  }

  /** Exchanges the printed address for the cookie. */
  static String cookie(LiveServer server) throws IOException {
    URI url = URI.create(server.url());
    Reply r =
        send(
            url.getPort(),
            request("GET " + url.getPath() + "?" + url.getQuery(), url.getPort(), "", ""));
    return r.header("Set-Cookie").split(";")[0];
  }
}
