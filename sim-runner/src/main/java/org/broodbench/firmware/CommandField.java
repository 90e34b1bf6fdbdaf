package org.broodbench.firmware;

import java.util.Locale;
import java.util.function.ObjIntConsumer;
import java.util.function.ToIntFunction;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Reason;
import org.broodbench.controller.ShedLevel;

/** The commands in the order of section 13 of SPEC.md, which is that of the line protocol. */
public enum CommandField {
  HEATER(c -> c.heater ? 1 : 0, (c, v) -> c.heater = v != 0),
  ISOLATION(c -> c.isolation ? 1 : 0, (c, v) -> c.isolation = v != 0),
  FAN(c -> c.fan ? 1 : 0, (c, v) -> c.fan = v != 0),
  INVERTER(c -> c.inverter ? 1 : 0, (c, v) -> c.inverter = v != 0),
  SUPPLY(c -> c.supply, (c, v) -> c.supply = v),
  SHED_LEVEL(c -> c.shedLevel, (c, v) -> c.shedLevel = v),
  HEATER_REASON(c -> c.heaterReason, (c, v) -> c.heaterReason = v),
  HEATER_STOP_REASON(c -> c.heaterStopReason, (c, v) -> c.heaterStopReason = v),
  FAN_REASON(c -> c.fanReason, (c, v) -> c.fanReason = v),
  ALARMS(c -> c.alarms, (c, v) -> c.alarms = v),
  LATCHED_ALARMS(c -> c.latchedAlarms, (c, v) -> c.latchedAlarms = v),
  GOVERNING_CENTI_C(c -> c.governingCentiC, (c, v) -> c.governingCentiC = v),
  GOVERNING_HIGH_CENTI_C(c -> c.governingHighCentiC, (c, v) -> c.governingHighCentiC = v),
  WORKING_SET_POINT_CENTI_C(c -> c.workingSetPointCentiC, (c, v) -> c.workingSetPointCentiC = v),
  MIN_OFF_REMAINING_MILLIS(c -> c.minOffRemainingMillis, (c, v) -> c.minOffRemainingMillis = v),
  MIN_ON_REMAINING_MILLIS(c -> c.minOnRemainingMillis, (c, v) -> c.minOnRemainingMillis = v),
  SERVICE_REMAINING_MILLIS(c -> c.serviceRemainingMillis, (c, v) -> c.serviceRemainingMillis = v),
  TEST_PHASE(c -> c.testPhase, (c, v) -> c.testPhase = v),
  CORRECTED_MILLI_V(c -> c.correctedMilliV, (c, v) -> c.correctedMilliV = v),
  LEAVE_DELAY_MILLIS(c -> c.leaveDelayMillis, (c, v) -> c.leaveDelayMillis = v),
  SHEDS_IN_DAY(c -> c.shedsInDay, (c, v) -> c.shedsInDay = v),
  LOWEST_BROOD_CENTI_C(c -> c.lowestBroodCentiC, (c, v) -> c.lowestBroodCentiC = v),
  HIGHEST_BROOD_CENTI_C(c -> c.highestBroodCentiC, (c, v) -> c.highestBroodCentiC = v),
  HEATER_SECONDS(c -> c.heaterSeconds, (c, v) -> c.heaterSeconds = v),
  HEATER_STARTS(c -> c.heaterStarts, (c, v) -> c.heaterStarts = v),
  SHEDS(c -> c.sheds, (c, v) -> c.sheds = v);

  /** How many there are. */
  public static final int COUNT = 26;

  private static final CommandField[] ALL = values();
  private static final String[] SUPPLIES = {"none", "battery", "shore"};
  private static final String[] PHASES = {"none", "heater", "fan"};

  private final ToIntFunction<Commands> get;
  private final ObjIntConsumer<Commands> set;

  CommandField(ToIntFunction<Commands> get, ObjIntConsumer<Commands> set) {
    this.get = get;
    this.set = set;
  }

  /** The name as SPEC.md writes it. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** An output that a wire hangs on. */
  public boolean output() {
    return ordinal() <= SUPPLY.ordinal();
  }

  int get(Commands commands) {
    return get.applyAsInt(commands);
  }

  void set(Commands commands, int value) {
    set.accept(commands, value);
  }

  /** Every value, in order. */
  static int[] values(Commands commands) {
    int[] values = new int[COUNT];
    for (int i = 0; i < COUNT; i++) {
      values[i] = ALL[i].get(commands);
    }
    return values;
  }

  /** A value in words for people. */
  public String words(int value) {
    return switch (this) {
      case HEATER, FAN -> value == 1 ? "on" : value == 0 ? "off" : String.valueOf(value);
      case ISOLATION -> value == 1 ? "closed" : value == 0 ? "open" : String.valueOf(value);
      case INVERTER -> value == 1 ? "enabled" : value == 0 ? "off" : String.valueOf(value);
      case SUPPLY -> name(value, SUPPLIES);
      case TEST_PHASE -> name(value, PHASES);
      case SHED_LEVEL ->
          value >= 0 && value <= ShedLevel.STANDBY ? ShedLevel.name(value) : String.valueOf(value);
      case HEATER_REASON, HEATER_STOP_REASON, FAN_REASON ->
          value >= 0 && value <= Reason.LAST ? Reason.name(value) : String.valueOf(value);
      case ALARMS, LATCHED_ALARMS -> alarms(value);
      case GOVERNING_CENTI_C,
          GOVERNING_HIGH_CENTI_C,
          WORKING_SET_POINT_CENTI_C,
          LOWEST_BROOD_CENTI_C,
          HIGHEST_BROOD_CENTI_C ->
          value == Commands.NO_TEMPERATURE ? "not known" : decimal(value, 100, 2) + " °C";
      case MIN_OFF_REMAINING_MILLIS,
          MIN_ON_REMAINING_MILLIS,
          SERVICE_REMAINING_MILLIS,
          LEAVE_DELAY_MILLIS ->
          decimal(value, 1000, 3) + " s";
      case CORRECTED_MILLI_V -> decimal(value, 1000, 3) + " V";
      default -> String.valueOf(value);
    };
  }

  private static String name(int value, String[] names) {
    return value >= 0 && value < names.length ? names[value] : String.valueOf(value);
  }

  private static String decimal(int value, int scale, int digits) {
    return String.format(Locale.ROOT, "%." + digits + "f", (double) value / scale);
  }

  /** Names of the alarms that are set. */
  static String alarms(int bits) {
    StringBuilder text = new StringBuilder();
    for (int bit = 0; bit < Alarm.COUNT; bit++) {
      if ((bits & 1 << bit) != 0) {
        text.append(text.length() == 0 ? "" : " ").append(Alarm.name(bit));
      }
    }
    if (bits >>> Alarm.COUNT != 0) {
      text.append(text.length() == 0 ? "" : " ").append("and bits that no alarm has");
    }
    return text.length() == 0 ? "none" : text.toString();
  }
}
