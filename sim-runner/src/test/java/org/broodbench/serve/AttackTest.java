package org.broodbench.serve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.SocketException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.broodbench.input.BadInput;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody else on this computer, or a page in the same browser, may try. */
class AttackTest {
  private LiveServer server;
  private int port;
  private String cookie;

  @BeforeEach
  void start() throws IOException {
    server = LiveServer.start(0, new Live(bench(), Wire.noStudies()));
    port = Wire.port(server);
    cookie = Wire.cookie(server);
  }

  @AfterEach
  void stop() {
    server.close();
  }

  private static Bench bench() throws IOException {
    return new Bench(
        new Bench.Source("late-split.toml", Wire.demo(), null, List.of(), List.of()), 1);
  }

  private Wire.Reply get(String path, String withCookie, String... lines) throws IOException {
    return Wire.send(port, Wire.request("GET " + path, port, withCookie, "", lines));
  }

  private String origin() {
    return "Origin: http://127.0.0.1:" + port;
  }

  @Test
  void thePrintedAddressIsExchangedForACookieThatScriptsAndOtherSitesDoNotGet() throws IOException {
    URI url = URI.create(server.url());
    String secret = url.getQuery().substring("key=".length());
    assertTrue(secret.length() >= 16, secret);
    Wire.Reply r = get("/open?key=" + secret, "");
    assertEquals(303, r.status());
    assertEquals("/", r.header("Location"));
    assertTrue(r.header("Set-Cookie").contains("HttpOnly"), r.head());
    assertTrue(r.header("Set-Cookie").contains("SameSite=Strict"), r.head());
    assertFalse(r.header("Set-Cookie").contains(secret), "the cookie is a secret of its own");
    Wire.Reply page = get("/", cookie);
    assertEquals(200, page.status());
    String policy = page.header("Content-Security-Policy");
    assertTrue(policy.contains("default-src 'none'"), policy);
    assertFalse(policy.contains("unsafe"), policy);
    assertEquals("nosniff", page.header("X-Content-Type-Options"));
    try (LiveServer second = LiveServer.start(0, new Live(bench(), Wire.noStudies()))) {
      assertNotEquals(secret, URI.create(second.url()).getQuery().substring(4));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/live.js",
        "/nothing",
        "/api/rig?tab=a",
        "/open",
        "/open?key=",
        "/open?key=guess",
        "/open?key=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"
      })
  void withoutSecretOrCookieEveryPathIsForbidden(String path) throws IOException {
    assertEquals(403, get(path, "").status());
    assertEquals(403, get(path, "broodbench-" + port + "=guess").status());
    assertEquals(
        403,
        Wire.send(port, Wire.request("POST " + path, port, "", "x", origin())).status(),
        "POST");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Host: evil.example",
        "Host: 127.0.0.1",
        "Host: 127.0.0.1:1",
        "Host: localhost.evil:80",
        "Host: 127.0.0.1:80@evil.example",
        "Host: "
      })
  void aForeignHostIsForbidden(String host) throws IOException {
    assertEquals(403, get("/", cookie, host).status());
    URI url = URI.create(server.url());
    assertEquals(403, get("/open?" + url.getQuery(), "", host).status());
  }

  @Test
  void twoHostsAreForbidden() throws IOException {
    String ours = "Host: 127.0.0.1:" + port;
    assertEquals(200, get("/", cookie, ours).status());
    assertEquals(403, get("/", cookie, ours, "Host: evil.example").status());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Origin: http://evil.example", "Origin: null", "Origin: http://127.0.0.1",
        "Origin: https://127.0.0.1", "Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site"
      })
  void aForeignOriginIsForbidden(String origin) throws IOException {
    assertEquals(403, get("/", cookie, origin).status());
    String post = Wire.request("POST /api/rig?tab=a", port, cookie, "x", origin);
    assertEquals(403, Wire.send(port, post).status());
  }

  @Test
  void aPostWithoutOriginIsForbiddenAndWithOursIsAnswered() throws IOException {
    assertEquals(
        403, Wire.send(port, Wire.request("POST /api/rig?tab=a", port, cookie, "x")).status());
    Wire.Reply r =
        Wire.send(port, Wire.request("POST /api/rig?tab=a", port, cookie, "x", origin()));
    assertEquals(200, r.status(), r.body());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../../../etc/passwd",
        "/..%2f..%2f..%2fetc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/live.js/../../page.html",
        "/..\\..\\etc\\passwd",
        "//etc/passwd",
        "/live.js%00.html",
        "/page.html",
        "/api/../live.js",
        "/META-INF/MANIFEST.MF",
        "/org/broodbench/serve/Live.class"
      })
  void noPathLeadsToAFile(String path) throws IOException {
    Wire.Reply r = get(path, cookie);
    assertTrue(Set.of(400, 404).contains(r.status()), r.status() + " " + r.body());
    assertFalse(r.body().contains("root:"), r.body());
  }

  @Test
  void noSettingReadsAFile() throws IOException {
    for (String setting : List.of("weather.file=/etc/passwd", " weather . file =../x.csv")) {
      try {
        bench().scenario(List.of(setting));
        throw new AssertionError("read " + setting);
      } catch (BadInput e) {
        assertFalse(e.getMessage().contains("root:"), e.getMessage());
      }
    }
  }

  @Test
  void anOversizedBodyIsRefused() throws IOException {
    String large = "x".repeat(LiveServer.MOST_BODY_BYTES + 1);
    String whole = Wire.request("POST /api/keep?tab=a", port, cookie, large, origin());
    assertEquals(413, Wire.send(port, whole).status());
    String fits = Wire.request("POST /api/keep?tab=a", port, cookie, large.substring(1), origin());
    assertEquals(200, Wire.send(port, fits).status());
  }

  @Test
  void aBodyInEndlessPiecesIsRefused() throws IOException {
    try (Socket s = new Socket("127.0.0.1", port)) {
      s.setSoTimeout(30_000);
      String head =
          Wire.request(
              "POST /api/keep?tab=a", port, cookie, "", origin(), "Transfer-Encoding: chunked");
      s.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
      byte[] piece = ("1000\r\n" + "x".repeat(4096) + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
      int sent = 0;
      try {
        for (; sent < 4000; sent++) {
          s.getOutputStream().write(piece);
        }
      } catch (SocketException e) {
        // closed by the server, as it should be
      }
      assertTrue(sent < 4000, "16 MB were taken");
    }
    assertEquals(200, get("/", cookie).status());
  }

  @Test
  void aHeadWithoutEndIsRefused() throws IOException {
    try (Socket s = new Socket("127.0.0.1", port)) {
      s.getOutputStream().write("GET / HTTP/1.1\r\n".getBytes(StandardCharsets.ISO_8859_1));
      byte[] line = ("X: " + "y".repeat(8000) + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
      int sent = 0;
      try {
        for (; sent < 20_000; sent++) {
          s.getOutputStream().write(line);
        }
      } catch (SocketException e) {
        // closed by the server, as it should be
      }
      assertTrue(sent < 20_000, "160 MB of head were taken");
    }
    assertEquals(200, get("/", cookie).status());
  }

  @Test
  void aFloodOfRequestsIsSlowedDown() throws IOException {
    Set<Integer> seen = new TreeSet<>();
    for (int i = 0; i < 400 && !seen.contains(429); i++) {
      seen.add(get("/nothing", cookie).status());
    }
    assertEquals(Set.of(404, 429), seen);
  }

  /** Slow ones are cut off; meanwhile and afterwards the page is there. */
  @Test
  void slowClientsAreCutOffAndDoNotKeepOthersOut() throws IOException {
    List<Socket> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 60; i++) {
        Socket s = new Socket("127.0.0.1", port);
        s.getOutputStream().write("GET / HT".getBytes(StandardCharsets.ISO_8859_1));
        slow.add(s);
      }
      assertEquals(200, get("/", cookie).status());
      for (Socket s : slow) {
        s.setSoTimeout((LiveServer.ARRIVES_WITHIN_S + 10) * 1000);
        // the end of the stream or a reset; silence would be a time-out, which fails the test
        try {
          assertEquals(-1, s.getInputStream().read());
        } catch (SocketException e) {
          assertFalse(s.isClosed(), "cut off from the other side");
        }
      }
    } finally {
      for (Socket s : slow) {
        s.close();
      }
    }
    assertEquals(200, get("/", cookie).status());
  }

  @Test
  void aThousandConnectionsAtOnceDoNotBringItDown() throws IOException {
    List<Socket> open = new ArrayList<>();
    try {
      for (int i = 0; i < 1000; i++) {
        Socket s = new Socket();
        s.connect(new InetSocketAddress("127.0.0.1", port), 10_000);
        s.getOutputStream().write("GET /".getBytes(StandardCharsets.ISO_8859_1));
        open.add(s);
      }
      assertEquals(1000, open.size());
      // behind them in the line, but answered when they are cut off
      assertEquals(200, get("/", cookie).status());
    } finally {
      for (Socket s : open) {
        s.close();
      }
    }
    assertEquals(200, get("/", cookie).status());
  }

  @Test
  void onlyTheLoopbackAddressListens() throws IOException {
    List<InetAddress> reached = new ArrayList<>();
    for (NetworkInterface n : Collections.list(NetworkInterface.getNetworkInterfaces())) {
      for (InetAddress a : Collections.list(n.getInetAddresses())) {
        try (Socket s = new Socket()) {
          s.connect(new InetSocketAddress(a, port), 500);
          reached.add(a);
        } catch (IOException e) {
          // nobody listens there
        }
      }
    }
    assertEquals(List.of(InetAddress.getByAddress(new byte[] {127, 0, 0, 1})), reached);
  }

  @Test
  void theFilesOfTheServerAreNoneOfTheFolder() throws IOException {
    assertTrue(Path.of("pom.xml").toFile().exists());
    assertEquals(404, get("/pom.xml", cookie).status());
  }
}
