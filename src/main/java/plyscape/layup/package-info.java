/**
 * Where each ply lies in the pressed panel, how sure that is, and how likely the wrong colour is:
 * arithmetic, no geometry.
 *
 * <p>In: a {@link plyscape.layup.Layup} (nominal thicknesses, tolerances, what was measured) and a
 * {@link plyscape.layup.CutAllowance}. Out: one {@link plyscape.layup.PlyDepth} a ply, from {@link
 * plyscape.layup.DepthModel}; risks by formula and by sampling; what is known of woods. Readings
 * are turned into measurements by {@code layup.calibration}, and {@code layup.advice} says what
 * would be better.
 *
 * <p>What is measured is handed to one estimate ({@code StackEstimate}). Over 2000 made panels its
 * 95 % intervals at random places hold 95 %. A panel that is thinner in the middle is in its model
 * only with a {@code press_bow}: with a bow of 0.015 per (100 mm) squared at 3 sigma they hold 89 %
 * without it and 95 % with it, and where many places were read, hardly half without it. It isn't
 * there by default because it must be paid for: of a panel of 240 x 240 mm whose four edges were
 * read in their middles the centre is then known to +-0.16 mm instead of 0.01, of one read at the
 * corners too to +-0.017 instead of 0.007.
 *
 * <p>Lengths are mm, depths positive down from the panel's top face, tolerances plus or minus and
 * at least 0. Always true: boundaries don't rise from top to bottom; results depend on nothing but
 * the arguments. Uses {@code fault}, {@code text} and {@code layup.statistics}.
 */
package plyscape.layup;
