package org.broodbench.firmware;

import static org.broodbench.firmware.CommandField.*;

import java.util.List;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Setting;
import org.broodbench.controller.ShedLevel;

/**
 * Which rule of SPEC.md a difference is about. What lies upstream in the order of a step (rule T8)
 * is named before what follows from it: a working set point that differs explains a heater that
 * differs.
 */
final class RuleFinder {
  /** What else follows from, in the order of a step. */
  private static final List<CommandField> UPSTREAM =
      List.of(
          GOVERNING_CENTI_C,
          GOVERNING_HIGH_CENTI_C,
          CORRECTED_MILLI_V,
          SHED_LEVEL,
          SERVICE_REMAINING_MILLIS,
          SUPPLY,
          ISOLATION,
          TEST_PHASE,
          WORKING_SET_POINT_CENTI_C);

  private static final String[] PERMIT_RULES = {
    "H6", "D3", "L7", "L3", "L4", "L1", "W7", "S7", "B6", "K5", "F4", "E5", "B11"
  };

  private final Moment moment;
  private final Difference difference;

  private RuleFinder(Moment moment, Difference difference) {
    this.moment = moment;
    this.difference = difference;
  }

  /** The field to name first: an output if one differs. */
  static CommandField field(Difference difference) {
    List<CommandField> fields = difference.fields();
    return fields.stream().filter(CommandField::output).findFirst().orElse(fields.get(0));
  }

  /**
   * The rule.
   *
   * @param moment the step as the reference has it
   */
  static String rule(Difference difference, Moment moment) {
    return new RuleFinder(moment, difference).find();
  }

  private int got(CommandField field) {
    return difference.got()[field.ordinal()];
  }

  private String find() {
    List<CommandField> fields = difference.fields();
    if (moment.restart() == Tick.Kind.POWER_LOSS
        && (fields.contains(HEATER) || fields.contains(MIN_OFF_REMAINING_MILLIS))) {
      return "R7";
    }
    for (CommandField field : UPSTREAM) {
      if (fields.contains(field)) {
        return rule(field);
      }
    }
    return rule(field(difference));
  }

  private String rule(CommandField field) {
    return switch (field) {
      case HEATER -> heater();
      case ISOLATION -> isolation();
      case FAN -> fan();
      case INVERTER -> "B14";
      case SUPPLY -> supply();
      case SHED_LEVEL -> level();
      case HEATER_REASON -> reason();
      case HEATER_STOP_REASON -> "G5";
      case FAN_REASON -> "F12";
      case ALARMS -> "A1";
      case LATCHED_ALARMS ->
          (difference.expected()[LATCHED_ALARMS.ordinal()] & ~got(LATCHED_ALARMS)) != 0
              ? "A2"
              : "A3";
      case GOVERNING_CENTI_C, GOVERNING_HIGH_CENTI_C -> governing();
      case WORKING_SET_POINT_CENTI_C -> working();
      case MIN_OFF_REMAINING_MILLIS -> moment.first() ? "R6" : "R4";
      case MIN_ON_REMAINING_MILLIS -> "R4";
      case SERVICE_REMAINING_MILLIS -> "K2";
      case TEST_PHASE -> moment.before(TEST_PHASE) == 0 ? "K7" : "K8";
      case CORRECTED_MILLI_V ->
          difference.expected()[CORRECTED_MILLI_V.ordinal()] == 0 || got(CORRECTED_MILLI_V) == 0
              ? "P4"
              : "B1";
      case LEAVE_DELAY_MILLIS, SHEDS_IN_DAY -> "B10";
      default -> moment.now(HEATER_STARTS) == 0 ? "Y3" : "Y1";
    };
  }

  /** A permit code that says why there should be no heat. */
  private static String permit(int code) {
    return code >= 0 && code < PERMIT_RULES.length ? PERMIT_RULES[code] : "G2";
  }

  private String heater() {
    boolean was = moment.before(HEATER) == 1;
    int why = moment.now(HEATER_REASON);
    if (moment.now(HEATER) == 0) {
      if (why > Reason.NONE && why <= Reason.BLIND) {
        return permit(why);
      }
      if (why == Reason.MIN_OFF) {
        return "R3";
      }
      if (why == Reason.STARTS) {
        return "R5";
      }
      if (was) {
        return moment.known() ? "H6" : "W5";
      }
      return moment.known() ? "H7" : "W5";
    }
    int theirs = got(HEATER_REASON);
    if (difference.reported()[HEATER_REASON.ordinal()]
        && theirs > Reason.NONE
        && theirs <= Reason.BLIND) {
      return permit(theirs);
    }
    return switch (why) {
      case Reason.MIN_ON -> "R2";
      case Reason.TEST -> "K8";
      case Reason.FALLBACK -> "W5";
      default ->
          was ? "H6" : theirs == Reason.STARTS ? "R5" : theirs == Reason.MIN_OFF ? "R3" : "H7";
    };
  }

  /**
   * The same heater for another reason. Where a missing permit is plain to see, the two differ in
   * what they wish.
   */
  private String reason() {
    int why = moment.now(HEATER_REASON);
    int theirs = got(HEATER_REASON);
    boolean denied = why > Reason.NONE && why <= Reason.BLIND;
    boolean theyDeny = theirs > Reason.NONE && theirs <= Reason.BLIND;
    if (denied && theirs == Reason.NONE) {
      return moment.known() ? "H7" : "W5";
    }
    if (theyDeny && why == Reason.NONE && plain(theirs)) {
      boolean stops = moment.now(GOVERNING_HIGH_CENTI_C) >= moment.now(WORKING_SET_POINT_CENTI_C);
      return !moment.known() ? "W5" : stops ? "H6" : "H7";
    }
    if (denied || theyDeny) {
      return permit(denied ? why : theirs);
    }
    return why == Reason.STARTS || theirs == Reason.STARTS ? "R5" : "G4";
  }

  /** Whether the reference shows that this permit is missing. */
  private boolean plain(int permit) {
    return switch (permit) {
      case Reason.ISOLATION -> moment.now(ISOLATION) == 0;
      case Reason.TRIP_LATCHED -> moment.alarm(Alarm.TRIP_LATCHED);
      case Reason.PAN_TRIP -> moment.alarm(Alarm.PAN_TRIP);
      case Reason.BROOD_LIMIT -> moment.alarm(Alarm.BROOD_LIMIT);
      case Reason.SUPPLY -> moment.now(SUPPLY) == Commands.SUPPLY_NONE;
      case Reason.SHED -> moment.now(SHED_LEVEL) >= ShedLevel.HEAT_SHED;
      case Reason.SERVICE -> moment.now(SERVICE_REMAINING_MILLIS) > 0;
      case Reason.COOLING -> moment.now(FAN) == 1;
      default -> false;
    };
  }

  private String isolation() {
    if (moment.before(ISOLATION) == 0) {
      return "D4";
    }
    return moment.fresh(Channel.HEATER_CURRENT) ? "D1" : "D2";
  }

  private String fan() {
    int why = moment.now(FAN) == 1 ? moment.now(FAN_REASON) : got(FAN_REASON);
    if (moment.now(FAN) == 0 && moment.now(FAN_REASON) != Reason.NONE) {
      why = moment.now(FAN_REASON);
    }
    return switch (why) {
      case Reason.SUPPLY -> "S7";
      case Reason.SHED -> "B5";
      case Reason.SERVICE -> "K5";
      case Reason.COOLING -> "F1";
      case Reason.WARM_OUTDOORS -> "F2";
      case Reason.COLD_SHARE -> "F3";
      case Reason.HEATER_FIRST -> "F4";
      case Reason.PURGE -> moment.is(Setting.FITTED_HUMIDITY) ? "F5" : "F6";
      case Reason.TIMED_PURGE -> "F10";
      case Reason.MIN_ON, Reason.MIN_OFF -> "F9";
      case Reason.TEST -> "K8";
      default -> "F11";
    };
  }

  private String supply() {
    if (!moment.is(Setting.FITTED_SUPPLY_SELECT)) {
      return "S2";
    }
    if (moment.before(SUPPLY) == Commands.SUPPLY_NONE) {
      return "S4";
    }
    boolean lost = moment.before(SUPPLY) == Commands.SUPPLY_SHORE ? !moment.shore() : absent();
    return lost ? "S5" : "S6";
  }

  private boolean absent() {
    return moment.tick().valid(Channel.BATTERY.ordinal())
        && moment.value(Channel.BATTERY) < moment.get(Setting.BATTERY_LOWEST_MILLI_V);
  }

  private String level() {
    int was = moment.before(SHED_LEVEL);
    int now = moment.now(SHED_LEVEL);
    int theirs = got(SHED_LEVEL);
    if (moment.first() || was == ShedLevel.HEAT_SHED && now == ShedLevel.FULL) {
      return "B12";
    }
    boolean emergency =
        moment.fresh(Channel.BATTERY)
            && moment.value(Channel.BATTERY) <= moment.get(Setting.SHED_EMERGENCY_MILLI_V);
    if (emergency) {
      return "B7";
    }
    if (moment.alarm(Alarm.BLIND)) {
      return "B11";
    }
    return now > was || theirs > was ? "B6" : "B8";
  }

  private String governing() {
    boolean theirs = got(GOVERNING_CENTI_C) != Commands.NO_TEMPERATURE;
    if (moment.known() != theirs) {
      return moment.knownBefore() ? "P3" : "P4";
    }
    if (moment.now(GOVERNING_CENTI_C) == moment.now(GOVERNING_HIGH_CENTI_C)
        && moment.fresh(Channel.BROOD_B)) {
      return "W3";
    }
    return moment.fresh(Channel.BROOD_B) ? "W2" : "P2";
  }

  private String working() {
    int was = moment.before(WORKING_SET_POINT_CENTI_C);
    int now = moment.now(WORKING_SET_POINT_CENTI_C);
    if (moment.first() || !moment.knownBefore() || was == Commands.NO_TEMPERATURE) {
      return "H4";
    }
    if (now < was) {
      return moment.before(HEATER) == 0 && moment.now(SHED_LEVEL) <= moment.before(SHED_LEVEL)
          ? "H4"
          : "H2";
    }
    if (now > moment.get(Setting.HEAT_SET_POINT_CENTI_C)) {
      return "H8";
    }
    return "H3";
  }
}
