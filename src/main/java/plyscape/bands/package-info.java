/**
 * Elevation to ply, one class a method.
 *
 * <p>In: the terrain (metres), the listed plies with their mid-ply depths (mm), and the method.
 * Out: {@link plyscape.bands.Bands}: falling breaks in metres between plies in layup order; a value
 * on a break belongs to the upper ply.
 *
 * <p>Always true: breaks fall strictly, there is one fewer than plies, and a listed ply whose band
 * would be empty is left out. Flat ground takes the top listed ply.
 *
 * <p>Uses {@code layup}, {@code terrain}, and the settings record of {@code job}.
 */
package plyscape.bands;
