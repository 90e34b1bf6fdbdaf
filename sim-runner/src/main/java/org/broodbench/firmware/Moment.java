package org.broodbench.firmware;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * One step as seen from outside.
 *
 * @param settings in force
 * @param tick its readings; of a restart that came before it, {@code restart} tells
 * @param dtMillis time since the step before; negative where it ran backwards
 * @param first the first step since power-up
 * @param restart what came between the step before and this one, or null
 * @param before commands of the step before, by {@link CommandField}
 * @param now commands of this step
 */
public record Moment(
    Settings settings,
    Tick tick,
    int dtMillis,
    boolean first,
    Tick.Kind restart,
    int[] before,
    int[] now) {
  int now(CommandField field) {
    return now[field.ordinal()];
  }

  int before(CommandField field) {
    return before[field.ordinal()];
  }

  boolean rose(CommandField field) {
    return now(field) > before(field);
  }

  boolean fell(CommandField field) {
    return now(field) < before(field);
  }

  boolean becomes(CommandField field, int value) {
    return now(field) == value && before(field) != value;
  }

  boolean is(Setting setting) {
    return settings.is(setting);
  }

  int get(Setting setting) {
    return settings.get(setting);
  }

  boolean alarm(int bit) {
    return (now(CommandField.ALARMS) & 1 << bit) != 0;
  }

  boolean alarmRose(int bit) {
    return alarm(bit) && (before(CommandField.ALARMS) & 1 << bit) == 0;
  }

  boolean alarmFell(int bit) {
    return !alarm(bit) && (before(CommandField.ALARMS) & 1 << bit) != 0;
  }

  boolean reason(int code) {
    return now(CommandField.HEATER_REASON) == code;
  }

  boolean fanReason(int code) {
    return now(CommandField.FAN_REASON) == code;
  }

  boolean known() {
    return now(CommandField.GOVERNING_CENTI_C) != Commands.NO_TEMPERATURE;
  }

  boolean knownBefore() {
    return before(CommandField.GOVERNING_CENTI_C) != Commands.NO_TEMPERATURE;
  }

  /** Rule P1 for a channel, but for its range. */
  boolean fresh(Channel channel) {
    int i = channel.ordinal();
    return channel.fitted(settings)
        && tick.valid(i)
        && tick.ageMillis(i) >= 0
        && tick.ageMillis(i) <= get(Setting.TRUST_OLDEST_MILLIS);
  }

  int value(Channel channel) {
    return tick.value(channel.ordinal());
  }

  boolean shore() {
    return (tick.switches() & 2) != 0;
  }

  boolean chargerFull() {
    return (tick.switches() & 1) != 0;
  }
}
