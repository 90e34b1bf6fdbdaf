package org.broodbench.serve;

import com.sun.net.httpserver.Headers;
import java.util.List;

/**
 * Decides who may ask. A request must be addressed to the loopback address by its own name and
 * port, must not come from the page of another origin, and must carry the cookie or, once, the
 * secret of the printed address.
 */
final class Gate {
  private final Secret token = Secret.drawn();
  private final Secret session = Secret.drawn();
  private final int port;

  Gate(int port) {
    this.port = port;
  }

  /** Path and query of the printed address. */
  String entrance() {
    return "/open?key=" + token.text();
  }

  /** Whether host, origin and the browser's own word on where a request began are ours. */
  boolean ours(String method, Headers h) {
    List<String> hosts = List.of("127.0.0.1:" + port, "localhost:" + port);
    List<String> host = h.getOrDefault("Host", List.of());
    if (host.size() != 1 || !hosts.contains(host.get(0))) {
      return false;
    }
    List<String> origin = h.getOrDefault("Origin", List.of());
    boolean changes = !method.equals("GET") && !method.equals("HEAD");
    if (origin.size() > 1 || (changes && origin.isEmpty())) {
      return false;
    }
    if (!origin.isEmpty() && !origin.get(0).equals("http://" + host.get(0))) {
      return false;
    }
    String site = h.getFirst("Sec-Fetch-Site");
    return site == null || site.equals("same-origin") || site.equals("none") || entering(site, h);
  }

  /** A link in a mail or a terminal may lead to the page; nothing else may come from elsewhere. */
  private static boolean entering(String site, Headers h) {
    return "navigate".equals(h.getFirst("Sec-Fetch-Mode"))
        && "document".equals(h.getFirst("Sec-Fetch-Dest"))
        && (site.equals("cross-site") || site.equals("same-site"));
  }

  /** Whether a request is the exchange of the printed address for the cookie. */
  boolean exchanges(String method, String path, String query) {
    return method.equals("GET")
        && path.equals("/open")
        && query != null
        && query.startsWith("key=")
        && token.is(query.substring("key=".length()));
  }

  /** Whether the cookie is there. */
  boolean known(Headers h) {
    for (String line : h.getOrDefault("Cookie", List.of())) {
      for (String pair : line.split(";")) {
        String[] parts = pair.strip().split("=", 2);
        if (parts.length == 2 && parts[0].equals(cookieName()) && session.is(parts[1])) {
          return true;
        }
      }
    }
    return false;
  }

  /** The cookie; cookies do not tell ports apart, so its name does. */
  String cookie() {
    return cookieName() + "=" + session.text() + "; Path=/; HttpOnly; SameSite=Strict";
  }

  private String cookieName() {
    return "broodbench-" + port;
  }
}
