package org.broodbench.controller;

/** Plays a {@link Trace} against a controller and shows every step to a watcher. */
final class Player {
  /** Sees every step. */
  interface Watcher {
    /**
     * @param trueMillis time that really went by since the last step
     * @param counted whether the controller can know it: false after restarts and backward jumps
     */
    void step(long trueMillis, boolean counted, Readings in, Commands out);

    /** Power was lost: every output went off. */
    default void powerLost() {}

    /** The controller as it stands before the next step, for watchers that keep a double. */
    default void replaced(Controller controller) {}
  }

  private static final long[] GAPS_MILLIS = {61_000L, 600_000L, 7_200_000L, 90_000_000L};
  private static final long[] IDLE_MILLIS = {25L * 86_400_000, 50L * 86_400_000, 100L * 86_400_000};

  private final Settings settings;
  private final Trace trace;
  private final Trace.Segment[] shapes = new Trace.Segment[Trace.Channel.values().length];
  private final Readings in = new Readings();
  private final Commands out = new Commands();
  Controller controller;
  private int nowMillis;
  private int phase;

  Player(Trace trace) {
    this.settings = Rigs.of(trace.rig());
    this.trace = trace;
    this.controller = new Controller(settings);
    this.nowMillis = trace.startMillis();
  }

  Settings settings() {
    return settings;
  }

  Readings readings() {
    return in;
  }

  void play(Watcher watcher) {
    Bench.calm(in);
    step(0, false, watcher);
    for (Trace.Segment segment : trace.segments()) {
      if (segment.channel() == Trace.Channel.TIME) {
        event(segment, watcher);
      } else {
        shapes[segment.channel().ordinal()] = segment;
      }
      for (int i = 0; i < segment.steps(); i++) {
        // Jitter that a trace can be replayed with.
        step(segment.dtMillis() + (i % 3 == 2 ? 37 : 0), true, watcher);
      }
    }
  }

  /** One more step with the readings as they stand (the caller may have put them). */
  Commands step(long trueMillis, boolean counted, Watcher watcher) {
    nowMillis += (int) trueMillis;
    phase++;
    for (Trace.Channel channel : Trace.Channel.values()) {
      apply(channel, shapes[channel.ordinal()]);
    }
    controller.step(nowMillis, in, out);
    watcher.step(trueMillis, counted, in, out);
    return out;
  }

  /** Ends every shape: readings stay as the caller puts them. */
  void release() {
    java.util.Arrays.fill(shapes, null);
    in.button = false;
    in.shorePresent = false;
    in.chargerFull = false;
    in.testRequest = false;
  }

  private void event(Trace.Segment segment, Watcher watcher) {
    int which = Math.floorMod(segment.other() + segment.steps(), 3);
    switch (segment.value()) {
      case Trace.GAP -> step(GAPS_MILLIS[which], true, watcher);
      case Trace.LONG_IDLE -> step(IDLE_MILLIS[which], false, watcher);
      case Trace.BACKWARDS -> {
        nowMillis -= 5000;
        step(0, false, watcher);
      }
      case Trace.NEAR_WRAP -> step((int) (0x7fff_fff0L - nowMillis) & 0x3fff_ffffL, true, watcher);
      default -> restart(segment.value() == Trace.POWER_LOSS, watcher);
    }
  }

  private void restart(boolean powerLoss, Watcher watcher) {
    int[] words = new int[controller.stateWords()];
    controller.save(words);
    controller = new Controller(settings);
    if (!controller.restore(words)) {
      throw new AssertionError("own words were refused");
    }
    if (powerLoss) {
      controller.powerWasLost();
      watcher.powerLost();
    }
    watcher.replaced(controller);
    nowMillis = 12345;
    step(0, false, watcher);
  }

  private void apply(Trace.Channel channel, Trace.Segment shape) {
    if (shape == null) {
      return;
    }
    int value = shape.value();
    switch (channel) {
      case BUTTON -> in.button = flag(shape);
      case SHORE -> in.shorePresent = flag(shape);
      case FULL -> in.chargerFull = flag(shape);
      case TEST -> in.testRequest = flag(shape);
      case BROOD_A -> wave(in.broodA, shape, value);
      case BROOD_B -> wave(in.broodB, shape, value);
      case PAN -> wave(in.pan, shape, value);
      case OUTDOOR -> wave(in.outdoor, shape, value);
      case HUMIDITY -> wave(in.humidity, shape, value);
      case VOLTS -> wave(in.battery, shape, value);
      case CURRENT -> wave(in.batteryCurrent, shape, value);
      case CHARGE -> wave(in.stateOfCharge, shape, value);
      case HEATER_CURRENT -> wave(in.heaterCurrent, shape, value);
      default -> throw new AssertionError(channel);
    }
  }

  private boolean flag(Trace.Segment shape) {
    return shape.shape() == Trace.Shape.SAWTOOTH ? phase % 40 < 20 : shape.value() == 1;
  }

  private void wave(Sample sample, Trace.Segment shape, int value) {
    switch (shape.shape()) {
      case CONSTANT -> sample.put(value);
      case SAWTOOTH -> {
        int low = Math.min(value, shape.other());
        int high = Math.max(value, shape.other());
        int beat = phase % 60;
        sample.put(low + (high - low) * (beat < 30 ? beat : 60 - beat) / 30);
      }
      case GLITCH -> sample.put(phase % 7 == 0 ? shape.other() : value);
      case MISSING -> sample.clear();
      case STALE -> {
        sample.put(value);
        sample.ageMillis = phase % 2 == 0 ? 60_001 : -1;
      }
      case CODE -> sample.put(phase % 2 == 0 ? 8500 : -12700);
      case EXTREME -> sample.put(phase % 2 == 0 ? Integer.MIN_VALUE : Integer.MAX_VALUE);
    }
  }
}
