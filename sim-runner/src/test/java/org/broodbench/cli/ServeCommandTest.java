package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class ServeCommandTest {
  @Test
  void aPortThatCannotBeIsRefused() throws IOException {
    Program p = Program.run("serve", "--port", "70000");
    assertEquals(2, p.code);
    assertTrue(p.err.contains("--port"), p.err);
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      p = Program.run("serve", "--port", String.valueOf(taken.getLocalPort()));
      assertEquals(2, p.code);
      assertTrue(p.err.contains("a port that is free"), p.err);
      assertEquals("", p.out);
    }
  }

  @Test
  void whatCannotBeReadIsRefusedBeforeItListens() {
    Program p = Program.run("serve", "no-such.toml");
    assertEquals(2, p.code);
    p = Program.run("serve", "--set", "heater.power=much");
    assertEquals(2, p.code);
    assertTrue(p.err.contains("heater.power"), p.err);
  }

  @Test
  void itPrintsItsAddressAloneAnswersAndEndsWhenAsked() throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "org.broodbench.cli.Main",
                "serve")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      String url = out.readLine();
      assertTrue(url.matches("http://127\\.0\\.0\\.1:\\d+/open\\?key=[\\w-]{16,}"), url);
      HttpURLConnection c = (HttpURLConnection) URI.create(url).toURL().openConnection();
      c.setInstanceFollowRedirects(false);
      assertEquals(303, c.getResponseCode());
      process.toHandle().destroy(); // the signal that a terminal's Ctrl-C is a kin of
      assertTrue(process.waitFor(20, TimeUnit.SECONDS), "it goes on");
      assertEquals(null, out.readLine());
    } finally {
      process.destroyForcibly();
    }
  }
}
