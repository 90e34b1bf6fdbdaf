package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The C form gives the same commands and the same state as the reference, bit for bit. */
class CPortTest {
  private static final int SETTINGS = 0;
  private static final int STEP = 1;
  private static final int POWER_UP = 2;
  private static final int RESTART = 3;
  private static final int POWER_LOSS = 4;
  private static final int SAVE = 5;
  private static final int RESTORE = 6;
  private static final int PROBLEM = 7;
  private static final int FLUSH = 8;

  private static final int STEPS_A_RUN = 2500;
  private static final int BATCH = 250;

  @ParameterizedTest
  @ValueSource(strings = {"gcc", "clang"})
  void theCFormEqualsTheReferenceOverRandomSteps(String compiler) {
    CPort.need(compiler);
    List<String> flags = compiler.equals("gcc") ? CPort.CHECKED : CPort.TRAPPED;
    try (CPort port = CPort.start(compiler, "step_main", flags)) {
      compare(port, 200_000, 1);
    }
  }

  @Test
  @Tag("campaign")
  void theCFormEqualsTheReferenceOverTwelveMillionRandomSteps() {
    CPort.need("gcc");
    try (CPort port = CPort.start("gcc", "step_main", CPort.CHECKED)) {
      compare(port, Campaign.share(2_000_000), 50_000_000);
    }
    try (CPort port = CPort.start("gcc", "step_main", List.of("-O2"))) {
      compare(port, Campaign.share(10_000_000), 1_000_000);
    }
  }

  private static void compare(CPort port, long steps, long firstSeed) {
    long done = 0;
    for (long seed = firstSeed; done < steps; seed++, done += STEPS_A_RUN) {
      run(port, (int) (seed % Rigs.COUNT), seed);
    }
    System.out.println(done + " steps of the C form equal the reference");
  }

  private static void run(CPort port, int rig, long seed) {
    Settings settings = Rigs.of(rig);
    Controller controller = new Controller(settings);
    // of a controller that was used before: every power-up value is put anew
    int[] powerUp = new int[controller.stateWords()];
    controller.save(powerUp);
    port.put(SETTINGS).put(values(settings)).put(SAVE, FLUSH).flush();
    assertArrayEquals(powerUp, port.take(powerUp.length), "power-up state, rig " + rig);
    Random dice = new Random(seed);
    RandomReadings random = new RandomReadings(dice);
    Readings in = random.readings();
    Commands out = new Commands();
    int[][] expected = new int[BATCH][];
    int now = (int) seed * 7919;
    int at = 0;
    for (int step = 0; step < STEPS_A_RUN; step++) {
      now += random.next(out);
      if (dice.nextInt(700) == 0) {
        boolean loss = dice.nextBoolean();
        controller = restarted(controller, settings, loss);
        port.put(loss ? POWER_LOSS : RESTART);
      } else if (dice.nextInt(5000) == 0) {
        controller = new Controller(settings);
        port.put(POWER_UP);
      }
      controller.step(now, in, out);
      port.put(STEP).put(words(now, in));
      expected[at++] = words(out);
      if (at == BATCH || step == STEPS_A_RUN - 1) {
        int[] state = new int[controller.stateWords()];
        controller.save(state);
        port.put(SAVE, FLUSH).flush();
        for (int i = 0; i < at; i++) {
          assertArrayEquals(
              expected[i],
              port.take(expected[i].length),
              "rig " + rig + ", seed " + seed + ", step " + (step - at + 1 + i));
        }
        assertArrayEquals(state, port.take(state.length), "state, rig " + rig + ", seed " + seed);
        at = 0;
      }
    }
  }

  private static Controller restarted(Controller controller, Settings settings, boolean powerLoss) {
    int[] words = new int[controller.stateWords()];
    controller.save(words);
    Controller fresh = new Controller(settings);
    assertTrue(fresh.restore(words));
    if (powerLoss) {
      fresh.powerWasLost();
    }
    return fresh;
  }

  private static int[] values(Settings settings) {
    return Arrays.stream(Setting.values()).mapToInt(settings::get).toArray();
  }

  private static int[] words(int now, Readings in) {
    int[] words = new int[41];
    words[0] = now;
    Sample[] samples = {
      in.broodA,
      in.broodB,
      in.pan,
      in.top,
      in.outdoor,
      in.humidity,
      in.battery,
      in.batteryCurrent,
      in.stateOfCharge,
      in.batteryTemperature,
      in.heaterCurrent,
      in.panelPower
    };
    for (int i = 0; i < samples.length; i++) {
      words[1 + 3 * i] = samples[i].value;
      words[2 + 3 * i] = samples[i].ageMillis;
      words[3 + 3 * i] = samples[i].valid ? 1 : 0;
    }
    words[37] = in.chargerFull ? 1 : 0;
    words[38] = in.shorePresent ? 1 : 0;
    words[39] = in.button ? 1 : 0;
    words[40] = in.testRequest ? 1 : 0;
    return words;
  }

  private static int[] words(Commands c) {
    return new int[] {
      c.heater ? 1 : 0,
      c.isolation ? 1 : 0,
      c.fan ? 1 : 0,
      c.inverter ? 1 : 0,
      c.supply,
      c.shedLevel,
      c.heaterReason,
      c.heaterStopReason,
      c.fanReason,
      c.alarms,
      c.latchedAlarms,
      c.governingCentiC,
      c.governingHighCentiC,
      c.workingSetPointCentiC,
      c.minOffRemainingMillis,
      c.minOnRemainingMillis,
      c.serviceRemainingMillis,
      c.testPhase,
      c.correctedMilliV,
      c.leaveDelayMillis,
      c.shedsInDay,
      c.lowestBroodCentiC,
      c.highestBroodCentiC,
      c.heaterSeconds,
      c.heaterStarts,
      c.sheds
    };
  }

  // ---- exhaustive transitions, part by part ----

  private record Part(String name, Explorer.Model model, Settings settings, int number) {}

  private static List<Part> parts() {
    Settings small = SmallModels.small();
    return List.of(
        new Part("relay guard", new SmallModels.Relay(), small, 0),
        new Part("share gate", new SmallModels.Gate(), small, 1),
        new Part("thermostat", new SmallModels.Demand(), small, 2),
        new Part("limits", new SmallModels.LimitFlags(), small, 3),
        new Part(
            "shedding",
            new SmallModels.Shed(),
            small.with(Setting.BATTERY_MILLI_OHM, 0).with(Setting.FITTED_BATTERY_CURRENT, true),
            4),
        new Part("supply, shore first", new SmallModels.Supply(false), small, 5),
        new Part(
            "supply, battery first",
            new SmallModels.Supply(true),
            small.with(Setting.SUPPLY_PREFER_BATTERY, true),
            5),
        new Part("button", new SmallModels.Press(), small, 6),
        new Part(
            "probe judge",
            new SmallModels.Judge(),
            Bench.comb()
                .with(Setting.TRUST_GAIN_MILLIS, 40_000)
                .with(Setting.TRUST_RATE_CENTI_K_PER_S, 10),
            7),
        new Part("commissioning test", new SmallModels.Test(), small, 8),
        new Part("fan", new SmallModels.Fan(), small, 9),
        new Part("heater path", new SmallModels.Heat(true), small, 10),
        new Part(
            "heater path, no fallback",
            new SmallModels.Heat(false),
            small.with(Setting.FALLBACK_ALLOWED, false),
            10));
  }

  @Test
  void everyTransitionOfABoundedSearchIsTheSameInC() {
    CPort.need("gcc");
    long transitions = 0;
    for (Part part : parts()) {
      transitions += explore(part, 40_000, CPort.CHECKED);
    }
    assertTrue(transitions > 200_000, "transitions " + transitions);
  }

  @Test
  @Tag("campaign")
  void everyTransitionOfADeepSearchIsTheSameInC() {
    CPort.need("gcc");
    for (Part part : parts()) {
      explore(part, Campaign.share(6_000_000), List.of("-O2"));
    }
  }

  private record State(int[] words) {
    @Override
    public boolean equals(Object other) {
      return other instanceof State that && Arrays.equals(words, that.words);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(words);
    }
  }

  private static long explore(Part part, long most, List<String> flags) {
    Explorer.Model model = part.model();
    int all = model.words();
    int states = all - model.aux.length;
    long transitions = 0;
    Set<State> seen = new HashSet<>();
    ArrayDeque<State> queue = new ArrayDeque<>();
    int[] now = new int[all];
    model.save(now);
    State first = new State(now.clone());
    seen.add(first);
    queue.add(first);
    // so many answers fit into the pipe that neither side waits for the other
    int batch = Math.max(1, 40_000 / (4 * states));
    int[][] expected = new int[batch][];
    try (CPort port = CPort.start("gcc", "parts_main", flags)) {
      port.put(values(part.settings())).put(part.number(), states, model.aux.length);
      int at = 0;
      while (!queue.isEmpty() && transitions < most) {
        State from = queue.remove();
        for (int input = 0; input < model.inputs(); input++) {
          model.load(from.words());
          model.apply(input);
          model.save(now);
          port.put(input).put(from.words());
          expected[at++] = Arrays.copyOf(now, states);
          transitions++;
          if (at == batch) {
            check(part, port, expected, at, all);
            at = 0;
          }
          State next = new State(now);
          if (!seen.contains(next)) {
            State kept = new State(now.clone());
            seen.add(kept);
            queue.add(kept);
          }
        }
      }
      check(part, port, expected, at, all);
    }
    System.out.printf(
        "%-26s %,10d states %,12d transitions the same in C%n",
        part.name(), seen.size(), transitions);
    return transitions;
  }

  private static void check(Part part, CPort port, int[][] expected, int count, int all) {
    int[] end = new int[1 + all];
    end[0] = -1;
    port.put(end).flush();
    for (int i = 0; i < count; i++) {
      int[] found = port.take(expected[i].length);
      if (!Arrays.equals(expected[i], found)) {
        assertArrayEquals(expected[i], found, part.name());
      }
    }
  }

  // ---- settings and state ----

  @Test
  void bothRefuseTheSameSettings() {
    CPort.need("gcc");
    Random dice = new Random(7);
    int refused = 0;
    int rounds = 20_000;
    try (CPort port = CPort.start("gcc", "step_main", CPort.CHECKED)) {
      for (int round = 0; round < rounds; round++) {
        Settings settings =
            Rigs.of(dice.nextInt(Rigs.COUNT)).with(Setting.FITTED_STATE_OF_CHARGE, dice.nextInt(2));
        for (int changes = dice.nextInt(3); changes >= 0; changes--) {
          Setting setting = Setting.values()[dice.nextInt(Setting.values().length)];
          int span = setting.high() - setting.low();
          int near = settings.get(setting) + dice.nextInt(201) - 100;
          settings =
              settings.with(
                  setting,
                  switch (dice.nextInt(6)) {
                    case 0 -> setting.low();
                    case 1 -> setting.high();
                    case 2 -> setting.low() - 1;
                    case 3 -> setting.high() + 1;
                    case 4 -> near;
                    default -> setting.low() + dice.nextInt(span + 1);
                  });
        }
        // rule X9 needs the chemistry, which C does not have
        Settings alike = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM);
        for (Setting setting : Setting.values()) {
          alike = alike.with(setting, settings.get(setting));
        }
        boolean problem = !alike.problems().isEmpty();
        port.put(PROBLEM).put(values(alike)).put(FLUSH).flush();
        assertEquals(problem, port.take(2)[0] >= 0, alike::toString);
        refused += problem ? 1 : 0;
      }
    }
    assertTrue(refused > rounds / 10 && refused < rounds * 9 / 10, "refused " + refused);
  }

  @Test
  void bothRefuseTheSameDamagedState() {
    CPort.need("gcc");
    Random dice = new Random(11);
    int refused = 0;
    try (CPort port = CPort.start("gcc", "step_main", CPort.CHECKED)) {
      for (int round = 0; round < 400; round++) {
        Settings settings = Rigs.of(round % Rigs.COUNT);
        Controller controller = new Controller(settings);
        RandomReadings random = new RandomReadings(new Random(round));
        Commands out = new Commands();
        int now = 0;
        for (int step = 0; step < 60; step++) {
          now += random.next(out);
          controller.step(now, random.readings(), out);
        }
        int[] words = new int[controller.stateWords()];
        controller.save(words);
        int where = dice.nextInt(words.length);
        int[] odd = {-1, 2, 30_001, Integer.MIN_VALUE, Integer.MAX_VALUE, words[where] + 1};
        words[where] = odd[dice.nextInt(odd.length)];
        if (dice.nextInt(4) > 0) {
          words[words.length - 1] = checksum(words);
        }
        boolean taken = controller.restore(words);
        refused += taken ? 0 : 1;
        port.put(SETTINGS).put(values(settings)).put(RESTORE).put(words).put(SAVE, FLUSH).flush();
        assertEquals(taken, port.take(1)[0] == 1, "word " + where);
        controller.save(words);
        assertArrayEquals(words, port.take(words.length), "word " + where);
      }
    }
    assertTrue(refused > 100 && refused < 400, "refused " + refused);
  }

  private static int checksum(int[] words) {
    int sum = 0x5A17;
    for (int i = 0; i < words.length - 1; i++) {
      sum = ((sum << 5) | (sum >>> 27)) + words[i];
    }
    return sum;
  }

  @Test
  void settingsOfTheHeaderAreThoseOfTheReference() throws IOException {
    String header = Files.readString(CPort.SOURCES.resolve("bb_settings.h"));
    Matcher rows = Pattern.compile("X\\((\\w+), (-?\\d+), (-?\\d+), (-?\\d+)\\)").matcher(header);
    Settings defaults = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM);
    for (Setting setting : Setting.values()) {
      assertTrue(rows.find(), setting.key());
      assertEquals(setting.name(), rows.group(1));
      assertEquals(setting.low(), Integer.parseInt(rows.group(2)), setting.key());
      assertEquals(setting.high(), Integer.parseInt(rows.group(3)), setting.key());
      assertEquals(defaults.get(setting), Integer.parseInt(rows.group(4)), setting.key());
    }
    assertFalse(rows.find(), "a setting too many");
  }

  /** No heap, no floating point, no header but stdint.h and the core's own. */
  @Test
  void theCoreIsFreestanding() throws IOException {
    for (Path file : CPort.core()) {
      String text = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "");
      Matcher includes = Pattern.compile("#include\\s+(\\S+)").matcher(text);
      while (includes.find()) {
        assertTrue(
            includes.group(1).matches("<stdint.h>|\"(bb_\\w+|broodbench).h\""),
            file + " includes " + includes.group(1));
      }
      assertFalse(
          Pattern.compile("\\b(float|double|malloc|free|memcpy|memset|long)\\b")
              .matcher(text)
              .find(),
          file.toString());
    }
  }

  @Test
  void everyRuleThatTheCFormCitesStandsInTheSpecification() throws IOException {
    String spec = SpecTables.text();
    Pattern cited = Pattern.compile("[Rr]ules? ([A-Z]\\d+)");
    int count = 0;
    for (Path file : CPort.core()) {
      Matcher rule = cited.matcher(Files.readString(file));
      while (rule.find()) {
        count++;
        assertTrue(
            spec.contains("**" + rule.group(1) + "**")
                || spec.contains("| " + rule.group(1) + " |"),
            file + " cites " + rule.group(1));
      }
    }
    assertTrue(count > 60, "cited " + count);
  }
}
