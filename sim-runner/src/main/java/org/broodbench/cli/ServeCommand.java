package org.broodbench.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.rig.Scenario;
import org.broodbench.serve.Bench;
import org.broodbench.serve.Live;
import org.broodbench.serve.LiveServer;
import org.broodbench.serve.Studies;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code serve}: the live page on this computer, until Ctrl-C. */
@Command(
    name = "serve",
    description = {
      "Serves a page on this computer alone: move a slider and see at once what the hive does.",
      "Prints the address to open in a browser; opens nothing by itself. Ctrl-C ends it."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class ServeCommand extends Verb {
  @Mixin private ScenarioOptions options;

  @Option(
      names = "--days",
      paramLabel = "N",
      description = "Length of the window; as the scenario says when left out.")
  private Integer days;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "0",
      description = "Port of the loopback address; 0, the default, takes a free one.")
  private int port;

  ServeCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    if (port < 0 || port > 65_535) {
      throw new BadInput(
          List.of(new Problem("--port", 0, 0, "", String.valueOf(port), "0 to 65535", "")));
    }
    Scenario scenario = options.read(days);
    options.weather(scenario); // refuses here what cannot be used
    Path folder = Path.of("broodbench-out", RunCommand.baseName(scenario.fileName()));
    Studies studies = new Studies(program(), folder);
    Live live = new Live(new Bench(source(), threads()), studies);
    try (studies;
        LiveServer server = LiveServer.start(port, live)) {
      Thread warm = new Thread(live::warmUp, "first run");
      warm.setDaemon(true);
      warm.start();
      console().out().println(server.url());
      console().out().flush();
      console().err().println("Open this address in a browser. Ctrl-C ends it.");
      CountDownLatch ends = new CountDownLatch(1);
      Runtime.getRuntime()
          .addShutdownHook(
              new Thread(
                  () -> {
                    studies.stop();
                    server.stop();
                  },
                  "end the live page"));
      ends.await();
      return 0;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 0;
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--port",
                  0,
                  0,
                  "",
                  port + ": " + e.getMessage(),
                  "a port that is free",
                  "Leave it out, or give 0, and a free one is taken.")));
    }
  }

  /** Words that start this program again, up to its verb. */
  private static List<String> program() {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-cp",
        System.getProperty("java.class.path"),
        Main.class.getName());
  }

  private static int threads() {
    return Math.max(1, Math.min(5, Runtime.getRuntime().availableProcessors()));
  }

  private Bench.Source source() {
    Path file = options.file();
    return new Bench.Source(
        options.fileName(),
        options.bytes(),
        file == null ? null : file.toAbsolutePath().getParent(),
        options.weatherFiles(),
        options.settings(days));
  }
}
