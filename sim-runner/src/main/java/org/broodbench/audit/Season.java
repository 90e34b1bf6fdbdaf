package org.broodbench.audit;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Sample;

/**
 * The weather that a rig is judged by, in sums. The light is that on the rig's own planes: whoever
 * turns or shades a module group needs a new season; other sizes do not.
 *
 * @param worstWeek the hardest week of the weather
 * @param darkestMonth its darkest month
 */
public record Season(Stretch worstWeek, Stretch darkestMonth) {

  /**
   * Some days.
   *
   * @param name what they are: "worst week from 2027-04-24"
   * @param days how many
   * @param meanAirC mean outdoor air, °C
   * @param minAirC coldest moment, °C
   * @param meanWindMS mean wind at the hive, m/s
   * @param meanGhiWM2 mean global irradiance, day and night, W/m²
   * @param groups light on the module groups in their order
   */
  public record Stretch(
      String name,
      int days,
      double meanAirC,
      double minAirC,
      double meanWindMS,
      double meanGhiWM2,
      List<Lit> groups) {
    /** Copies the list. */
    public Stretch {
      groups = List.copyOf(groups);
    }

    /**
     * Sums weather up.
     *
     * @param name what it is
     * @param forcing weather whose last planes are those of the module groups
     * @param groups number of module groups
     * @param planes number of all planes of the weather
     */
    public static Stretch of(String name, Forcing forcing, int groups, int planes) {
      Sample s = new Sample(planes);
      int cells = forcing.cells();
      double hours = forcing.cellS() / 3600;
      double air = 0;
      double wind = 0;
      double ghi = 0;
      double low = Double.POSITIVE_INFINITY;
      double[] wh = new double[groups];
      double[] whC = new double[groups];
      double[] whW = new double[groups];
      for (int i = 0; i < cells; i++) {
        forcing.sample((i + 0.5) * forcing.cellS(), s);
        air += s.airC;
        wind += s.windMS;
        ghi += s.ghiWM2;
        low = Math.min(low, s.airC);
        for (int g = 0; g < groups; g++) {
          double w = s.planeWM2[planes - groups + g];
          wh[g] += w * hours;
          whC[g] += w * hours * s.airC;
          whW[g] += w * hours * w;
        }
      }
      double days = cells * hours / 24;
      List<Lit> lit = new ArrayList<>();
      for (int g = 0; g < groups; g++) {
        double sum = Math.max(wh[g], 1e-9);
        lit.add(new Lit(wh[g] / 1000 / days, whC[g] / sum, whW[g] / sum));
      }
      return new Stretch(
          name, (int) Math.round(days), air / cells, low, wind / cells, ghi / cells, lit);
    }
  }

  /**
   * Light on a module group behind its glass.
   *
   * @param kWhM2Day daily sum, kWh/m²
   * @param airC air temperature, each hour weighed by its light, °C
   * @param wM2 irradiance, weighed by itself, W/m²
   */
  public record Lit(double kWhM2Day, double airC, double wM2) {}
}
