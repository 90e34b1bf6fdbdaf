package org.broodbench.serve;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/** The web server of the live page. Bound to the loopback address; checks every request first. */
public final class LiveServer implements AutoCloseable {
  /** Largest body of a request; own choice, a hundred times what the page sends. */
  static final int MOST_BODY_BYTES = 64 * 1024;

  /** Most time for a request to arrive, s; own choice. */
  static final int ARRIVES_WITHIN_S = 10;

  /** Requests that are read or worked on at a time; own choice. */
  private static final int THREADS = 128;

  /** Requests that may wait for that; own choice. */
  private static final int WAITING = 2048;

  private static final double REQUESTS_PER_S = 50;
  private static final double REQUESTS_AT_ONCE = 150;

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private final HttpServer server;
  private final ThreadPoolExecutor pool;
  private final Gate gate;
  private final Pacer pacer = new Pacer(REQUESTS_PER_S, REQUESTS_AT_ONCE);
  private final Function<Question, Answer> answers;

  private LiveServer(HttpServer server, Function<Question, Answer> answers) {
    this.server = server;
    this.answers = answers;
    gate = new Gate(server.getAddress().getPort());
    pool =
        new ThreadPoolExecutor(
            THREADS,
            THREADS,
            20,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(WAITING),
            task -> {
              Thread t = new Thread(task, "live page");
              t.setDaemon(true);
              return t;
            });
    pool.allowCoreThreadTimeOut(true);
  }

  /**
   * Starts to listen.
   *
   * @param port 0 takes a free one
   * @throws IOException where the port cannot be had
   */
  public static LiveServer start(int port, Live live) throws IOException {
    return start(port, live::answer);
  }

  static LiveServer start(int port, Function<Question, Answer> answers) throws IOException {
    bound();
    InetAddress loopback = InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
    HttpServer http = HttpServer.create(new InetSocketAddress(loopback, port), 0);
    LiveServer server = new LiveServer(http, answers);
    http.createContext("/", server::handle);
    http.setExecutor(server.pool);
    http.start();
    return server;
  }

  /** What the library itself bounds; it reads these once, before the first server is made. */
  private static void bound() {
    System.setProperty("sun.net.httpserver.maxReqTime", String.valueOf(ARRIVES_WITHIN_S));
    System.setProperty("sun.net.httpserver.maxRspTime", "120");
    System.setProperty("sun.net.httpserver.idleInterval", "30");
    System.setProperty("sun.net.httpserver.maxReqHeaders", "64");
    System.setProperty("sun.net.httpserver.maxReqHeaderSize", "32768");
    System.setProperty("sun.net.httpserver.drainAmount", String.valueOf(MOST_BODY_BYTES));
  }

  /** The address to open, with its secret. */
  public String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + gate.entrance();
  }

  @Override
  public void close() {
    stop();
  }

  /** Listens no longer; what is under way is cut off. */
  public void stop() {
    server.stop(0);
    pool.shutdownNow();
  }

  private void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      Answer answer = checked(exchange);
      Headers h = exchange.getResponseHeaders();
      h.set("Content-Security-Policy", answer.policy() == null ? POLICY : answer.policy());
      h.set("X-Content-Type-Options", "nosniff");
      h.set("Referrer-Policy", "no-referrer");
      h.set("Cross-Origin-Opener-Policy", "same-origin");
      h.set("Cross-Origin-Resource-Policy", "same-origin");
      h.set("Cache-Control", "no-store");
      h.set("Content-Type", answer.type());
      if (answer.fileName() != null) {
        h.set("Content-Disposition", "attachment; filename=\"" + answer.fileName() + "\"");
      }
      if (answer.status() >= 400) {
        h.set("Connection", "close");
      }
      boolean head = exchange.getRequestMethod().equals("HEAD");
      boolean empty = answer.body().length == 0 || head;
      exchange.sendResponseHeaders(answer.status(), empty ? -1 : answer.body().length);
      if (!empty) {
        try (OutputStream out = exchange.getResponseBody()) {
          out.write(answer.body());
        }
      }
    }
  }

  private Answer checked(HttpExchange exchange) throws IOException {
    String method = exchange.getRequestMethod();
    Headers h = exchange.getRequestHeaders();
    String path = exchange.getRequestURI().getRawPath();
    String query = exchange.getRequestURI().getRawQuery();
    if (!gate.ours(method, h)) {
      return Answer.refused(403, "Not for you.");
    }
    if (gate.exchanges(method, path, query)) {
      exchange.getResponseHeaders().add("Set-Cookie", gate.cookie());
      exchange.getResponseHeaders().set("Location", "/");
      return new Answer(303, Answer.HTML, new byte[0], null);
    }
    if (!gate.known(h)) {
      return Answer.refused(403, "Open the page by the address that the program printed.");
    }
    if (!pacer.admits()) {
      return Answer.refused(429, "Too many requests at once.");
    }
    byte[] body;
    try (InputStream in = exchange.getRequestBody()) {
      body = in.readNBytes(MOST_BODY_BYTES + 1);
    }
    if (body.length > MOST_BODY_BYTES) {
      return Answer.refused(413, "Too large.");
    }
    String tab = query != null && query.matches("tab=[A-Za-z0-9]{1,40}") ? query.substring(4) : "";
    try {
      return answers.apply(
          new Question(method, path, tab, new String(body, StandardCharsets.UTF_8)));
    } catch (RuntimeException e) {
      return Answer.refused(500, "A fault of the program: " + e);
    }
  }
}
