package org.broodbench.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.DeflaterOutputStream;
import org.broodbench.calibrate.LogMapping;
import org.broodbench.firmware.FedFirmware;
import org.broodbench.input.BadInput;
import org.broodbench.input.FieldLogReader;
import org.broodbench.input.LogReader;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.Tuning;
import org.broodbench.input.VectorReader;
import org.broodbench.input.weather.ReadOptions;
import org.broodbench.input.weather.WeatherFiles;
import org.broodbench.members.FedMember;
import org.broodbench.recipe.RecipeBytes;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Journal;

/**
 * Everything that reads what somebody else wrote, behind one door: bytes are read, or refused the
 * way that reader refuses; anything else that is thrown is a fault of the program.
 */
public enum Reader {
  /** A scenario, and what tuning, sizing and logs take from it. */
  SCENARIO {
    @Override
    void take(byte[] bytes) {
      scenario(bytes, List.of());
    }
  },
  /** Lines of {@code KEY=VALUE} on top of the demo. */
  SETTINGS {
    @Override
    void take(byte[] bytes) {
      scenario(Demo.BYTES, Arrays.asList(text(bytes).split("\n")));
    }
  },
  /** A weather file of any layout, as a run and as {@code weather} read it. */
  WEATHER {
    @Override
    void take(byte[] bytes) {
      Path file = put(bytes);
      WeatherFiles.read(file, ReadOptions.DEFAULT);
      WeatherFiles.readTogether(List.of(file, file), ReadOptions.DESCRIBE);
    }
  },
  /** Normals that weather is made from; some hundred times slower than the others. */
  MADE_WEATHER {
    @Override
    void take(byte[] bytes) {
      WeatherFiles.read(put(bytes));
    }
  },
  /** A table of weather whose columns the first part, a scenario, describes. */
  MAPPED_WEATHER {
    @Override
    void take(byte[] bytes) {
      byte[][] parts = parts(bytes);
      Scenario s = ScenarioReader.read("a.toml", parts[0], List.of());
      if (s.weather().mapping().isPresent()) {
        WeatherFiles.read(put(parts[1]), s.weather().mapping().get(), ReadOptions.DEFAULT);
      }
    }
  },
  /** A log that {@code conform} checks. */
  LOG {
    @Override
    void take(byte[] bytes) {
      LogReader.read(put(bytes));
    }
  },
  /** A log from the field under the names of the program. */
  FIELD_LOG {
    @Override
    void take(byte[] bytes) {
      FieldLogReader.read(put(bytes), LogMapping.OWN);
    }
  },
  /** A log from the field that the first part describes. */
  MAPPED_LOG {
    @Override
    void take(byte[] bytes) {
      byte[][] parts = parts(bytes);
      FieldLogReader.read(put(parts[1]), FieldLogReader.mapping(put("mapping", parts[0])));
    }
  },
  /** A vector file. */
  VECTORS {
    @Override
    void take(byte[] bytes) {
      VectorReader.read(put(bytes));
    }
  },
  /** Lines of firmware. */
  FIRMWARE {
    @Override
    void take(byte[] bytes) {
      FedFirmware.talk(bytes);
    }
  },
  /** What a member is asked. */
  QUESTION {
    @Override
    void take(byte[] bytes) {
      FedMember.ask(bytes);
    }
  },
  /** What a member answers. */
  ANSWER {
    @Override
    void take(byte[] bytes) {
      FedMember.answer(bytes);
    }
  },
  /** What is said before a connection between members is one. */
  HANDSHAKE {
    @Override
    void take(byte[] bytes) {
      FedMember.shakeHands(bytes);
    }
  },
  /** A recipe, before it is deflated. */
  RECIPE {
    @Override
    void take(byte[] bytes) {
      ByteArrayOutputStream deflated = new ByteArrayOutputStream();
      try (DeflaterOutputStream out = new DeflaterOutputStream(deflated)) {
        out.write(bytes);
      } catch (IOException e) {
        throw new UncheckedIOException(e); // memory does not fail to be written
      }
      try {
        RecipeBytes.read(deflated.toByteArray());
      } catch (IOException refused) {
        told(refused.getMessage());
      }
    }
  },
  /** The journal of a study that was ended. */
  JOURNAL {
    @Override
    void take(byte[] bytes) {
      try (Journal journal = Journal.open(put(bytes), "study")) {
        journal.put("key", "value");
      } catch (IOException e) {
        throw new UncheckedIOException("whatever stands in it, it is begun anew", e);
      }
    }
  };

  private static final byte[] PART = "\n----\n".getBytes(StandardCharsets.US_ASCII);

  /** The demo's bytes, read once. */
  private static final class Demo {
    static final byte[] BYTES = bytes();

    private static byte[] bytes() {
      try (var in = Reader.class.getResourceAsStream("/scenarios/late-split.toml")) {
        return in.readAllBytes();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  abstract void take(byte[] bytes);

  /** Name of the folder with its seeds. */
  public String folder() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Reads bytes.
   *
   * @return true if they were read, false if they were refused
   */
  public boolean read(byte[] bytes) {
    try {
      take(bytes);
      return true;
    } catch (BadInput refused) {
      if (refused.problems().isEmpty()) {
        throw new IllegalStateException("refused for no reason", refused);
      }
      for (Problem p : refused.problems()) {
        told(p.found() + p.allowed());
        if (p.line() < 0 || p.column() < 0) {
          throw new IllegalStateException("a place that is none: " + p, refused);
        }
      }
      return false;
    }
  }

  private static void told(String why) {
    if (why == null || why.isBlank()) {
      throw new IllegalStateException("refused without words");
    }
  }

  private static void scenario(byte[] bytes, List<String> settings) {
    Scenario s = ScenarioReader.read("a.toml", bytes, settings);
    ScenarioReader.sizing("a.toml", bytes, settings);
    Tuning.spec(s, bytes, settings);
    FieldLogReader.mapping("a.toml", bytes, settings);
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** What stands before and behind a line of four hyphens. */
  private static byte[][] parts(byte[] bytes) {
    for (int i = 0; i + PART.length <= bytes.length; i++) {
      if (Arrays.equals(bytes, i, i + PART.length, PART, 0, PART.length)) {
        return new byte[][] {
          Arrays.copyOf(bytes, i), Arrays.copyOfRange(bytes, i + PART.length, bytes.length)
        };
      }
    }
    return new byte[][] {bytes, new byte[0]};
  }

  private static Path put(byte[] bytes) {
    return put("input", bytes);
  }

  /** Into a file: readers take files, of which each process has its own. */
  private static Path put(String name, byte[] bytes) {
    try {
      return Files.write(Scratch.FOLDER.resolve(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A folder in memory where there is one. */
  private static final class Scratch {
    static final Path FOLDER = folder();

    private static Path folder() {
      try {
        Path memory = Path.of("/dev/shm");
        Path folder =
            Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "broodbench-readers")
                : Files.createTempDirectory("broodbench-readers");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder)));
        return folder;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static void remove(Path folder) {
      try (var files = Files.list(folder)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
        Files.delete(folder);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
