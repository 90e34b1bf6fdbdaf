package org.broodbench.rig;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.hive.FanSpec;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PvSpec;
import org.broodbench.power.ShoreSpec;
import org.broodbench.power.WiringSpec;
import org.broodbench.sky.Place;

/**
 * A whole scenario: rig, colony, weather, requirements and what was assumed.
 *
 * @param title what it is, in a line
 * @param fileName name of the file it came from, without folders
 * @param sha256 digest of that file's bytes, in hexadecimal
 * @param place where the hive stands
 * @param weather where the weather comes from
 * @param window the simulated time
 * @param hive the hive
 * @param colony the colony at the start
 * @param heater the heater
 * @param fan the fan
 * @param probes temperature probes, at most one a role
 * @param sensors the other readings
 * @param controller the controller
 * @param pv panel and charge control
 * @param battery battery
 * @param inverter inverter
 * @param wiring copper
 * @param shore shore power
 * @param loads further loads
 * @param requirements what the verdict judges
 * @param events what happens during the run, by time
 * @param run how it is carried out and written
 * @param assumed values that the file left to their defaults, as "key = value"
 * @param paper protection and ratings, which are judged on paper only
 */
public record Scenario(
    String title,
    String fileName,
    String sha256,
    Place place,
    WeatherChoice weather,
    Window window,
    HiveSpec hive,
    ColonySpec colony,
    HeaterSpec heater,
    FanSpec fan,
    List<ProbeSpec> probes,
    SensorSpec sensors,
    ControllerSpec controller,
    PvSpec pv,
    BatterySpec battery,
    InverterSpec inverter,
    WiringSpec wiring,
    ShoreSpec shore,
    List<LoadSpec> loads,
    List<Requirement> requirements,
    List<EventSpec> events,
    RunSpec run,
    List<String> assumed,
    PaperSpec paper) {
  /** Copies the lists. */
  public Scenario {
    probes = List.copyOf(probes);
    loads = List.copyOf(loads);
    requirements = List.copyOf(requirements);
    events = List.copyOf(events);
    assumed = List.copyOf(assumed);
  }

  /** A rig of whose protection nothing was said. */
  public Scenario(
      String title,
      String fileName,
      String sha256,
      Place place,
      WeatherChoice weather,
      Window window,
      HiveSpec hive,
      ColonySpec colony,
      HeaterSpec heater,
      FanSpec fan,
      List<ProbeSpec> probes,
      SensorSpec sensors,
      ControllerSpec controller,
      PvSpec pv,
      BatterySpec battery,
      InverterSpec inverter,
      WiringSpec wiring,
      ShoreSpec shore,
      List<LoadSpec> loads,
      List<Requirement> requirements,
      List<EventSpec> events,
      RunSpec run,
      List<String> assumed) {
    this(
        title,
        fileName,
        sha256,
        place,
        weather,
        window,
        hive,
        colony,
        heater,
        fan,
        probes,
        sensors,
        controller,
        pv,
        battery,
        inverter,
        wiring,
        shore,
        loads,
        requirements,
        events,
        run,
        assumed,
        PaperSpec.UNTOLD);
  }

  /** The same with another colony. */
  public Scenario withColony(ColonySpec other) {
    Parts parts = new Parts(this);
    parts.colony = other;
    return parts.whole();
  }

  /** The same with another heater. */
  public Scenario withHeater(HeaterSpec other) {
    Parts parts = new Parts(this);
    parts.heater = other;
    return parts.whole();
  }

  /** The same with another battery. */
  public Scenario withBattery(BatterySpec other) {
    Parts parts = new Parts(this);
    parts.battery = other;
    return parts.whole();
  }

  /** The same with another hive. */
  public Scenario withHive(HiveSpec other) {
    Parts parts = new Parts(this);
    parts.hive = other;
    return parts.whole();
  }

  /** The same over another window. */
  public Scenario withWindow(Window other) {
    Parts parts = new Parts(this);
    parts.window = other;
    return parts.whole();
  }

  /** The same at another place. */
  public Scenario withPlace(Place other) {
    Parts parts = new Parts(this);
    parts.place = other;
    return parts.whole();
  }

  /** The same with other probes. */
  public Scenario withProbes(List<ProbeSpec> other) {
    Parts parts = new Parts(this);
    parts.probes = other;
    return parts.whole();
  }

  /** The same with other events. */
  public Scenario withEvents(List<EventSpec> other) {
    Parts parts = new Parts(this);
    parts.events = other;
    return parts.whole();
  }

  /** The same with other shore power. */
  public Scenario withShore(ShoreSpec other) {
    Parts parts = new Parts(this);
    parts.shore = other;
    return parts.whole();
  }

  /** The same with another controller. */
  public Scenario withController(ControllerSpec other) {
    Parts parts = new Parts(this);
    parts.controller = other;
    return parts.whole();
  }

  /** The probe that feeds a reading, or null where none is fitted. */
  public ProbeSpec probe(ProbeSpec.Role role) {
    for (ProbeSpec p : probes) {
      if (p.role() == role) {
        return p;
      }
    }
    return null;
  }

  /** The parts of a scenario, of which one is changed. */
  private static final class Parts {
    private String title;
    private String fileName;
    private String sha256;
    private Place place;
    private WeatherChoice weather;
    private Window window;
    private HiveSpec hive;
    private ColonySpec colony;
    private HeaterSpec heater;
    private FanSpec fan;
    private List<ProbeSpec> probes;
    private SensorSpec sensors;
    private ControllerSpec controller;
    private PvSpec pv;
    private BatterySpec battery;
    private InverterSpec inverter;
    private WiringSpec wiring;
    private ShoreSpec shore;
    private List<LoadSpec> loads;
    private List<Requirement> requirements;
    private List<EventSpec> events;
    private RunSpec run;
    private List<String> assumed;
    private PaperSpec paper;

    Parts(Scenario s) {
      title = s.title;
      fileName = s.fileName;
      sha256 = s.sha256;
      place = s.place;
      weather = s.weather;
      window = s.window;
      hive = s.hive;
      colony = s.colony;
      heater = s.heater;
      fan = s.fan;
      probes = s.probes;
      sensors = s.sensors;
      controller = s.controller;
      pv = s.pv;
      battery = s.battery;
      inverter = s.inverter;
      wiring = s.wiring;
      shore = s.shore;
      loads = s.loads;
      requirements = s.requirements;
      events = s.events;
      run = s.run;
      assumed = s.assumed;
      paper = s.paper;
    }

    Scenario whole() {
      return new Scenario(
          title,
          fileName,
          sha256,
          place,
          weather,
          window,
          hive,
          colony,
          heater,
          fan,
          probes,
          sensors,
          controller,
          pv,
          battery,
          inverter,
          wiring,
          shore,
          loads,
          requirements,
          events,
          run,
          assumed,
          paper);
    }
  }
}
