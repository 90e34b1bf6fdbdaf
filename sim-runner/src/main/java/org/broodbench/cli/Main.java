package org.broodbench.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.util.List;
import org.broodbench.controller.IllegalSettings;
import org.broodbench.input.BadInput;
import org.broodbench.input.ProblemText;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;

/**
 * The command line. Exit codes: 0 every requirement met, 1 ran and some requirement missed, 2 bad
 * input and nothing was run, 3 a fault of the program.
 */
@Command(
    name = "broodbench",
    description = {
      "A test bench for the controller of a powered beehive.",
      "A planning aid, not an approval: local electrical codes and a licensed electrician decide."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      RunCommand.class,
      AuditCommand.class,
      StressCommand.class,
      TuneCommand.class,
      SizeCommand.class,
      CardCommand.class,
      ConformCommand.class,
      CalibrateCommand.class,
      WeatherCommand.class,
      ServeCommand.class,
      LendCommand.class
    })
public final class Main {
  /** Exit code of bad input. */
  static final int BAD_INPUT = 2;

  /** Exit code of a fault of the program. */
  static final int FAULT = 3;

  private Main() {}

  /** Reads the version that the build wrote into the jar. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"broodbench " + (version == null ? "(not packaged)" : version)};
    }
  }

  /** Runs one verb and ends the process with its exit code. */
  public static void main(String[] args) {
    Sink sink = new Sink(new FileOutputStream(FileDescriptor.out));
    PrintStream out = new PrintStream(sink, false, StandardCharsets.UTF_8);
    PrintStream err =
        new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    int code = execute(out, err, args);
    out.flush();
    if (sink.refused() != null && code != BAD_INPUT) {
      err.println("Standard output could not be written: " + sink.refused());
      code = FAULT;
    }
    err.flush();
    System.exit(code);
  }

  /**
   * Runs one verb.
   *
   * @param out where results go
   * @param err where messages go
   * @return the exit code
   */
  public static int execute(PrintStream out, PrintStream err, String... args) {
    CommandLine line = line(out, err);
    if (args.length == 0) {
      line.usage(out);
      return BAD_INPUT;
    }
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      err.println("There is not enough memory for this. What stands in the folder is whole.");
      err.println(
          "Give Java more with BROODBENCH_JAVA_OPTS=-Xmx4g, or less to do: fewer threads or seasons.");
    } catch (Error e) {
      fault(err, e);
    }
    return FAULT;
  }

  /** All verbs with their options, and what is said of wrong ones. */
  static CommandLine line(PrintStream out, PrintStream err) {
    Console console = new Console(out, err);
    CommandLine line =
        new CommandLine(
            new Main(),
            new CommandLine.IFactory() {
              @Override
              public <K> K create(Class<K> type) throws Exception {
                if (Verb.class.isAssignableFrom(type)) {
                  return type.getDeclaredConstructor(Console.class).newInstance(console);
                }
                return CommandLine.defaultFactory().create(type);
              }
            });
    line.setOut(new java.io.PrintWriter(out, true, StandardCharsets.UTF_8));
    line.setErr(new java.io.PrintWriter(err, true, StandardCharsets.UTF_8));
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(
        (problem, arguments) -> {
          err.println(problem.getMessage());
          CommandLine.UnmatchedArgumentException.printSuggestions(
              problem, new java.io.PrintWriter(err, true, StandardCharsets.UTF_8));
          err.println(
              "Nothing was run. See "
                  + problem.getCommandLine().getCommandSpec().qualifiedName()
                  + " --help");
          return BAD_INPUT;
        });
    line.setExecutionExceptionHandler(
        (problem, commandLine, result) -> {
          if (problem instanceof BadInput bad) {
            err.print(ProblemText.render(bad.problems()));
            return BAD_INPUT;
          }
          if (problem instanceof IllegalSettings refused) {
            err.println(refused.getMessage());
            return BAD_INPUT;
          }
          if (problem instanceof IOException || problem instanceof UncheckedIOException) {
            Throwable why =
                problem.getCause() instanceof IOException ? problem.getCause() : problem;
            err.println("Not everything could be read or written: " + words(why));
            err.println(
                "Every file in the folder is whole or not there. Is there room, and may you");
            err.println("write there? A study goes on where it was with the same command.");
            return FAULT;
          }
          fault(err, problem);
          return FAULT;
        });
    return line;
  }

  /** The reason that the system gave, with the file where it names one. */
  static String words(Throwable e) {
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + ": permission denied";
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private static void fault(PrintStream err, Throwable problem) {
    err.println("A fault of the program, not of your input: " + problem);
    List<StackTraceElement> trace = List.of(problem.getStackTrace());
    if (!trace.isEmpty()) {
      err.println("  at " + trace.get(0));
    }
    err.println("Please report it with the command that you typed.");
  }

  /** Keeps what a print stream would pass over: that nothing more can be written. */
  private static final class Sink extends FilterOutputStream {
    private String refused;

    Sink(OutputStream out) {
      super(out);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      try {
        out.write(bytes, from, length);
      } catch (IOException e) {
        refused = words(e);
        throw e;
      }
    }

    /** Why; null where all was written, or whoever read it has read enough. */
    String refused() {
      return refused == null || refused.contains("Broken pipe") ? null : refused;
    }
  }
}
