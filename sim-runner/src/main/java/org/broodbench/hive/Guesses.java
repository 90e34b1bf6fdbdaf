package org.broodbench.hive;

/**
 * Numbers of the air and water inside a hive that nobody has measured well.
 *
 * @param combFilmM2KW resistance between the air and the combs beside the nest, m²K/W
 * @param boxMixingM3S air that movement of bees exchanges between neighbouring boxes with open
 *     gaps, m³/s
 * @param clusterExchangeM3S gas exchange of a tight cluster of 1 kg with the air of its box, m³/s
 * @param runOffM film of water that runs off or drips, m
 * @param lossFactor factor on the conductance of the layers of walls, floor and lid: what a
 *     measured hive loses against the sum of its layers
 */
public record Guesses(
    double combFilmM2KW,
    double boxMixingM3S,
    double clusterExchangeM3S,
    double runOffM,
    double lossFactor) {
  /**
   * Own choices: natural convection at combs, 3 W/(m²K) of 2 to 4; mixing of a few litres a minute;
   * a tenth of a millimetre of water. Cluster: 5 W give 0.8 % more carbon dioxide than in the box;
   * R. Bahreini and R. W. Currie, J. Invertebr. Pathol. (2015), abstract, found 0.09 to 5.26 %, on
   * average 1.29 %, inside clusters in a ventilated store.
   */
  public static final Guesses USUAL = new Guesses(1 / 3.0, 5e-5, 30e-6, 1e-4, 1);
}
