package org.broodbench.firmware;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Every change between what a controller shows (outputs, reasons, level, source, test, service, as
 * seen from outside) that some input leads to, found breadth first from power-up, each by the
 * shortest way. Played with short timings and few inputs, so that a board can take all of it.
 */
final class TransitionWalk {
  private static final CommandField[] SHOWN = {
    CommandField.HEATER,
    CommandField.ISOLATION,
    CommandField.FAN,
    CommandField.SUPPLY,
    CommandField.SHED_LEVEL,
    CommandField.HEATER_REASON,
    CommandField.FAN_REASON,
    CommandField.TEST_PHASE
  };

  /** What changes in the readings, and how much time then goes by. */
  private record Input(Consumer<Readings> change, int dtMillis, Tick.Kind restart) {}

  private record Way(Way before, int input) {}

  private final Settings settings;
  private final List<Input> inputs = new ArrayList<>();

  TransitionWalk(Settings settings) {
    this.settings = settings;
    for (int dt : new int[] {1000, 5000, 30_000, 60_000}) {
      inputs.add(new Input(r -> {}, dt, null));
    }
    temperatures();
    power();
    switches();
    inputs.add(new Input(r -> {}, 0, Tick.Kind.POWER_LOSS));
  }

  private int get(Setting setting) {
    return settings.get(setting);
  }

  private void add(Consumer<Readings> change) {
    inputs.add(new Input(change, 5000, null));
  }

  private void temperatures() {
    int set = get(Setting.HEAT_SET_POINT_CENTI_C);
    for (int brood :
        new int[] {
          set - get(Setting.HEAT_DIFFERENTIAL_CENTI_K),
          set,
          get(Setting.LIMIT_BROOD_CENTI_C),
          get(Setting.FAN_ON_CENTI_C)
        }) {
      add(r -> r.broodA.put(brood));
    }
    add(r -> r.broodA.clear());
    for (int pan :
        new int[] {2000, get(Setting.LIMIT_PAN_CENTI_C), get(Setting.LIMIT_PAN_TRIP_CENTI_C)}) {
      add(r -> r.pan.put(pan));
    }
    add(r -> r.pan.clear());
    for (int outdoor : new int[] {0, get(Setting.PURGE_OUTDOOR_CENTI_C), 3900}) {
      add(r -> r.outdoor.put(outdoor));
    }
    add(r -> r.humidity.put(get(Setting.PURGE_ON_PERMILLE)));
    add(r -> r.humidity.put(400));
  }

  private void power() {
    for (Setting enter :
        new Setting[] {
          Setting.SHED_SET_BACK_ENTER_MILLI_V,
          Setting.SHED_SURVIVAL_ENTER_MILLI_V,
          Setting.SHED_HEAT_ENTER_MILLI_V,
          Setting.SHED_FAN_ENTER_MILLI_V,
          Setting.SHED_EMERGENCY_MILLI_V
        }) {
      add(r -> r.battery.put(get(enter) - 200));
    }
    add(r -> r.battery.put(get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400));
    add(r -> r.battery.put(get(Setting.BATTERY_LOWEST_MILLI_V) - 1000));
    add(r -> r.battery.clear());
    add(r -> r.stateOfCharge.put(250));
    add(r -> r.stateOfCharge.put(100));
    add(r -> r.stateOfCharge.put(900));
    add(r -> r.batteryCurrent.put(3000));
    add(r -> r.heaterCurrent.put(get(Setting.HEATER_RATED_MILLI_A)));
    add(r -> r.heaterCurrent.put(0));
  }

  private void switches() {
    add(r -> r.shorePresent ^= true);
    add(r -> r.button ^= true);
    add(r -> r.chargerFull ^= true);
    add(r -> r.testRequest ^= true);
  }

  private void calm(Readings r) {
    int set = get(Setting.HEAT_SET_POINT_CENTI_C);
    r.broodA.put(set - 500);
    r.broodB.put(set - 500);
    r.pan.put(set - 600);
    r.top.put(set - 700);
    r.outdoor.put(500);
    r.humidity.put(600);
    r.battery.put(get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400);
    r.batteryCurrent.put(-100);
    r.stateOfCharge.put(900);
    r.batteryTemperature.put(1000);
    r.heaterCurrent.put(0);
    r.panelPower.put(0);
  }

  private List<Tick> ticks(Way way, int last) {
    List<Integer> order = new ArrayList<>();
    order.add(last);
    for (Way w = way; w.before() != null; w = w.before()) {
      order.add(0, w.input());
    }
    Readings readings = new Readings();
    calm(readings);
    List<Tick> ticks = new ArrayList<>();
    int now = 0;
    ticks.add(Tick.step(now, readings));
    for (int index : order) {
      Input input = inputs.get(index);
      if (input.restart() != null) {
        ticks.add(Tick.restart(true));
      }
      input.change().accept(readings);
      now += input.dtMillis();
      ticks.add(Tick.step(now, readings));
    }
    return ticks;
  }

  private static List<Integer> shown(int[] commands) {
    List<Integer> shown = new ArrayList<>();
    for (CommandField field : SHOWN) {
      shown.add(commands[field.ordinal()]);
    }
    shown.add(Integer.signum(commands[CommandField.SERVICE_REMAINING_MILLIS.ordinal()]));
    shown.add(commands[CommandField.GOVERNING_CENTI_C.ordinal()] == Integer.MIN_VALUE ? 0 : 1);
    return shown;
  }

  private int[] play(List<Tick> ticks) {
    Reference reference = new Reference(settings);
    int[] commands = new int[CommandField.COUNT];
    for (Tick tick : ticks) {
      commands = CommandField.values(reference.play(tick));
    }
    return commands;
  }

  /**
   * One vector for every way that is not the beginning of a longer one.
   *
   * @param most how many changes at most
   */
  List<Script> vectors(String name, int most) {
    Map<List<Integer>, Way> reached = new HashMap<>();
    Set<List<List<Integer>>> changes = new HashSet<>();
    ArrayDeque<List<Integer>> queue = new ArrayDeque<>();
    List<List<Tick>> ends = new ArrayList<>();
    Way start = new Way(null, -1);
    List<Integer> first = shown(new int[CommandField.COUNT]);
    reached.put(first, start);
    queue.add(first);
    while (!queue.isEmpty() && changes.size() < most) {
      List<Integer> from = queue.remove();
      Way way = reached.get(from);
      for (int i = 0; i < inputs.size(); i++) {
        List<Tick> ticks = ticks(way, i);
        List<Integer> to = shown(play(ticks));
        if (to.equals(from) && i > 3 || !changes.add(Arrays.asList(from, to))) {
          continue;
        }
        Way next = new Way(way, i);
        if (reached.putIfAbsent(to, next) == null) {
          queue.add(to);
        }
        ends.add(ticks);
      }
    }
    List<Script> vectors = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      vectors.add(new Script.Fixed(name + ", change " + (i + 1), settings, ends.get(i)));
    }
    return vectors;
  }
}
