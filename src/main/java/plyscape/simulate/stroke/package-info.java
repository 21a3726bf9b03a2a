/**
 * One motion of one cutter in closed form: where its centre line runs, and how deep it takes each
 * point.
 *
 * <p>In: a parsed {@link plyscape.gcode.Program} and the form of a {@link plyscape.machine.Tool};
 * mm, panel coordinates, depth positive down. Out: {@link plyscape.simulate.stroke.Stroke}s in the
 * program's order, arcs of at most half a turn. Always true: depths are exact but for rounding; a
 * stroke holds no state. Uses {@code gcode} and {@code machine}.
 */
package plyscape.simulate.stroke;
