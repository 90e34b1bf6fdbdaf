package org.broodbench.audit;

import java.util.HashMap;
import java.util.Map;
import org.broodbench.controller.Settings;
import org.broodbench.rig.Scenario;

/**
 * Audits one rig under one settings after the other. The heat that a set point asks for is most of
 * the work; it is worked out once a set point.
 *
 * <p>Not for several threads at once.
 */
public final class SettingsAudit {
  private final Scenario rig;
  private final Season season;
  private final Map<Double, HeatNeeds> known = new HashMap<>();

  /**
   * @param rig the rig, under whatever settings
   * @param season the weather that it is judged by
   */
  public SettingsAudit(Scenario rig, Season season) {
    this.rig = rig;
    this.season = season;
  }

  /** The whole audit of the rig under these settings, as {@link Audit#of} makes it. */
  public AuditReport of(Settings settings) {
    Scenario s = rig.withController(rig.controller().withSettings(settings));
    HeatNeeds needs =
        known.computeIfAbsent(HeatNeed.setPointC(s), setPointC -> HeatNeeds.of(s, season));
    return Audit.of(new Facts(s, season, needs));
  }
}
