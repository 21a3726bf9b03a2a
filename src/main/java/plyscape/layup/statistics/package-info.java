/**
 * The mathematics of uncertain measurements, which knows nothing of wood.
 *
 * <p>Best linear unbiased estimates from correlated readings, linear systems, tails of the normal
 * and Student distributions, seeded normal values, and the chance to leave an interval. In and out:
 * plain numbers and arrays; a tolerance is plus or minus, {@code ColourRisk.SIGMAS} standard
 * deviations. Always true: the same arguments give the same bits on every machine. Uses nothing.
 */
package plyscape.layup.statistics;
