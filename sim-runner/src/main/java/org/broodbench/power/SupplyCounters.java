package org.broodbench.power;

import java.util.ArrayList;
import java.util.List;

/** Counts along a run what {@link SupplyUse} tells at its end. */
final class SupplyCounters {
  private final SupplySpec spec;
  private final double[] groupJ;
  private final double[] loadWantedS;
  private final double[] loadFedS;
  private final double[] stageS = new double[ChargeControl.Stage.values().length];
  private double belowHalfS;
  private double frostChargeAh;
  private double lowestC;
  private double dischargeA;
  private double chargeA;
  private double highestV;
  private double chargedJ;
  private double dischargedJ;

  SupplyCounters(SupplySpec spec, double batteryC) {
    this.spec = spec;
    groupJ = new double[spec.pv().groups().size()];
    loadWantedS = new double[spec.loads().size()];
    loadFedS = new double[spec.loads().size()];
    lowestC = batteryC;
  }

  void load(int load, boolean fed, double seconds) {
    loadWantedS[load] += seconds;
    loadFedS[load] += fed ? seconds : 0;
  }

  void group(int group, double mostW, double seconds) {
    groupJ[group] += mostW * seconds;
  }

  void battery(
      Battery battery, ChargeControl.Stage stage, double batteryA, double volts, double seconds) {
    stageS[stage.ordinal()] += seconds;
    double batteryC = battery.temperatureC();
    if (battery.stateOfCharge() < 0.5) {
      belowHalfS += seconds;
    }
    if (batteryA < 0 && batteryC < 0 && !spec.battery().chemistry().leadAcid()) {
      frostChargeAh -= batteryA * seconds / 3600;
    }
    double givenJ = batteryA * volts * seconds;
    chargedJ -= givenJ < 0 ? givenJ : 0;
    dischargedJ += givenJ > 0 ? givenJ : 0;
    lowestC = batteryC < lowestC ? batteryC : lowestC;
    dischargeA = batteryA > dischargeA ? batteryA : dischargeA;
    chargeA = -batteryA > chargeA ? -batteryA : chargeA;
    highestV = volts > highestV ? volts : highestV;
  }

  SupplyUse use(List<CutOut> cutOuts) {
    List<SupplyUse.Group> groups = new ArrayList<>();
    for (int g = 0; g < groupJ.length; g++) {
      PvGroup p = spec.pv().groups().get(g);
      groups.add(new SupplyUse.Group(p.powerW(), p.tiltDeg(), p.azimuthDeg(), groupJ[g] / 3600));
    }
    List<SupplyUse.Load> loads = new ArrayList<>();
    for (int i = 0; i < loadFedS.length; i++) {
      LoadSpec l = spec.loads().get(i);
      double fedH = loadFedS[i] / 3600;
      loads.add(new SupplyUse.Load(l.name(), loadWantedS[i] / 3600, fedH, fedH * l.powerW()));
    }
    List<SupplyUse.Opened> opened = new ArrayList<>();
    for (CutOut c : cutOuts) {
      opened.add(
          new SupplyUse.Opened(
              c.name(), c.trips(), c.openS() / 3600, c.returnsByItself(), c.open()));
    }
    return new SupplyUse(
        groups,
        loads,
        opened,
        new SupplyUse.Charging(stageS[0] / 3600, stageS[1] / 3600, stageS[2] / 3600),
        new SupplyUse.BatteryStress(
            belowHalfS / 3600,
            frostChargeAh,
            lowestC,
            dischargeA,
            chargeA,
            highestV,
            chargedJ / 3600,
            dischargedJ / 3600));
  }
}
