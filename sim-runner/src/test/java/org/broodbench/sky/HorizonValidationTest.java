package org.broodbench.sky;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/** Light behind a horizon, and loss by the angle of incidence; source beside each row. */
class HorizonValidationTest {
  @Test
  void horizon() {
    CheckRows.of("HOR").run(16, HorizonValidationTest::horizonRow);
  }

  private static double horizonRow(Row r) {
    if (r.id().startsWith("HOR-U")) {
      return ring(r.number("horizon_deg")).skyShare(0, 180);
    }
    if (r.id().startsWith("HOR-T")) {
      return outline(r.text("horizon")).skyShare(r.number("tilt_deg"), r.number("plane_az_deg"));
    }
    if (r.id().startsWith("HOR-L")) {
      List<Horizon.Point> points = new ArrayList<>();
      for (String pair : r.text("profile").split(" ")) {
        String[] both = pair.split(":");
        points.add(new Horizon.Point(Double.parseDouble(both[0]), Double.parseDouble(both[1])));
      }
      return new Horizon(points, 0).elevationDeg(r.number("az_deg"));
    }
    return crossing(r);
  }

  private static Horizon ring(double deg) {
    return new Horizon(List.of(new Horizon.Point(0, deg)), 0);
  }

  private static Horizon outline(String words) {
    if (words.startsWith("uniform")) {
      return ring(Double.parseDouble(words.substring(8)));
    }
    // a step of a quadrant to the south-east
    return new Horizon(
        List.of(
            new Horizon.Point(89.999, 5),
            new Horizon.Point(90, 25),
            new Horizon.Point(180, 25),
            new Horizon.Point(180.001, 5)),
        0);
  }

  /** Hour at which direct light comes or goes: bisection between noon and the night before it. */
  private static double crossing(Row r) {
    Place place = new Place(r.number("lat_deg"), r.number("lon_deg"), 0);
    Horizon horizon = ring(r.number("horizon_deg"));
    long day = LocalDate.parse(r.text("date")).toEpochDay() * 86_400;
    double bright = 12 - r.number("lon_deg") / 15;
    double dark = r.id().endsWith("UP") ? bright - 10 : bright + 10;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (bright + dark);
      Sun.Position sun = Sun.position(day + middle * 3600, place);
      if (horizon.beamShare(sun.elevationDeg(), sun.azimuthDeg()) == 1) {
        bright = middle;
      } else {
        dark = middle;
      }
    }
    return bright;
  }

  @Test
  void incidence() {
    CheckRows.of("PV-IAM")
        .run(
            10,
            r -> {
              boolean glass = r.id().startsWith("PV-IAMP");
              Cover cover = new Cover(glass ? Cover.Law.GLASS : Cover.Law.LINEAR, 1);
              return cover.beamShare(StrictMath.cos(StrictMath.toRadians(r.number("theta_deg"))));
            });
  }
}
