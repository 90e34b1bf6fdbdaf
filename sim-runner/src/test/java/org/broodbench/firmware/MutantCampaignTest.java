package org.broodbench.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How strong the shipped suites are: mistakes are made mechanically in the C form, and each has to
 * be found. A mistake that the optimising compiler turns into the same code is none and is not
 * counted. What was found and what survived is written to {@code target/mutants.txt}.
 */
@Tag("campaign")
class MutantCampaignTest {
  private static final List<String> FILES =
      List.of(
          "bb_basics.c",
          "bb_probes.c",
          "bb_heater.c",
          "bb_power.c",
          "bb_fan.c",
          "bb_service.c",
          "bb_controller.c");

  private static final long TICKS = 400_000;

  @TempDir Path folder;

  private enum Fate {
    NO_CODE,
    SAME_CODE,
    EQUAL,
    CAUGHT,
    SURVIVED
  }

  @Test
  void theShippedSuitesFindMistakes() throws IOException, InterruptedException {
    Firmwares.need("gcc");
    // a share of them by system property; those listed as equal are only tried when all are
    int every = 100 / Math.max(1, Integer.getInteger("broodbench.campaign.percent", 100));
    List<Script> suites = Suites.shipped(TICKS);
    List<Mutants.Mutant> mutants = new ArrayList<>();
    for (String file : FILES) {
      mutants.addAll(Mutants.of(file, Firmwares.source(file)));
    }
    Set<String> equal = equalMistakes();
    Set<String> wronglyListed = new TreeSet<>(equal);
    Workshop workshop = new Workshop(folder);
    TreeMap<Fate, Integer> fates = new TreeMap<>();
    StringBuilder log = new StringBuilder();
    for (int i = 0; i < mutants.size(); i += every) {
      Mutants.Mutant mutant = mutants.get(i);
      boolean listed = equal.contains(mutant.key());
      if (listed && every > 1) {
        continue;
      }
      Fate fate = fate(workshop, mutant, suites);
      if (fate == Fate.SURVIVED && listed) {
        fate = Fate.EQUAL;
        wronglyListed.remove(mutant.key());
      }
      fates.merge(fate, 1, Integer::sum);
      if (fate != Fate.NO_CODE) {
        log.append(fate).append(' ').append(mutant).append('\n');
        Files.writeString(Path.of("target/mutants.txt"), log);
      }
    }
    int caught = fates.getOrDefault(Fate.CAUGHT, 0);
    int survived = fates.getOrDefault(Fate.SURVIVED, 0);
    System.out.println(fates);
    System.out.printf(
        Locale.ROOT,
        "%d mistakes, %d found: %.2f %%%n",
        caught + survived,
        caught,
        100.0 * caught / (caught + survived));
    assertTrue(caught + survived >= 200 / every, "mistakes " + (caught + survived));
    assertEquals(Set.of(), every > 1 ? Set.of() : wronglyListed, "listed as equal and not seen so");
    assertTrue(caught >= 0.99 * (caught + survived), log.toString());
  }

  /** File and line of each mistake that was shown to change nothing; the reasons stand beside. */
  private static Set<String> equalMistakes() throws IOException {
    Set<String> equal = new HashSet<>();
    try (InputStream in = MutantCampaignTest.class.getResourceAsStream("equal-mistakes.txt")) {
      for (String row : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        if (!row.startsWith("#")) {
          equal.add(row.substring(0, row.lastIndexOf(" | ")).replace("\\|", "|"));
        }
      }
    }
    return equal;
  }

  private static Fate fate(Workshop workshop, Mutants.Mutant mutant, List<Script> suites)
      throws IOException, InterruptedException {
    Path program = workshop.program(mutant);
    if (program == null) {
      return workshop.sameCode() ? Fate.SAME_CODE : Fate.NO_CODE;
    }
    try (Session session = Session.open(ProcessTransport.of(program.toString()), 1000, 0)) {
      for (Script script : suites) {
        if (session.run(script, Long.MAX_VALUE) != null) {
          return Fate.CAUGHT;
        }
      }
      return Fate.SURVIVED;
    } catch (FirmwareFault fault) {
      return Fate.CAUGHT;
    }
  }

  /** Compiles the right sources once and each mistake on top. */
  private static final class Workshop {
    private final Path folder;
    private final List<String> objects = new ArrayList<>();
    private boolean same;

    Workshop(Path folder) throws IOException, InterruptedException {
      this.folder = folder;
      for (String header : List.of("broodbench.h", "bb_parts.h", "bb_settings.h", "bb_link.h")) {
        Files.writeString(folder.resolve(header), Firmwares.source(header));
      }
      List<String> all = new ArrayList<>(FILES);
      all.addAll(List.of("bb_settings.c", "bb_link.c", "host_main.c"));
      for (String file : all) {
        Files.writeString(folder.resolve(file), Firmwares.source(file));
        if (!compile(file, folder.resolve(file + ".o"))) {
          throw new AssertionError(file);
        }
        objects.add(folder.resolve(file + ".o").toString());
      }
    }

    private boolean compile(String file, Path object) throws IOException, InterruptedException {
      return run(
          List.of(
              "gcc",
              "-std=c99",
              "-O2",
              "-w",
              "-I" + folder,
              "-c",
              folder.resolve(file).toString(),
              "-o",
              object.toString()));
    }

    private static boolean run(List<String> command) throws IOException, InterruptedException {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor() == 0;
    }

    boolean sameCode() {
      return same;
    }

    /** The program with the mistake in it, or null where there is none to tell apart. */
    Path program(Mutants.Mutant mutant) throws IOException, InterruptedException {
      same = false;
      String right = Files.readString(folder.resolve(mutant.file()));
      Path object = folder.resolve("mutant.o");
      Files.writeString(folder.resolve(mutant.file()), mutant.text());
      boolean compiled = compile(mutant.file(), object);
      Files.writeString(folder.resolve(mutant.file()), right);
      if (!compiled) {
        return null;
      }
      byte[] rightCode = Files.readAllBytes(folder.resolve(mutant.file() + ".o"));
      if (Arrays.equals(rightCode, Files.readAllBytes(object))) {
        same = true;
        return null;
      }
      List<String> command = new ArrayList<>(List.of("gcc", "-o"));
      Path program = folder.resolve("mutant");
      command.add(program.toString());
      for (String other : objects) {
        command.add(other.endsWith("/" + mutant.file() + ".o") ? object.toString() : other);
      }
      return run(command) ? program : null;
    }
  }
}
