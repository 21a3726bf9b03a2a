/**
 * Cuts a height field from parsed programs and compares it with the target depths: the proof of a
 * plan by other means than it was made.
 *
 * <p>In: {@link plyscape.simulate.Cut}s (programs and tools), {@link plyscape.simulate.Target}s as
 * plain rings, the {@link plyscape.simulate.Setup}; mm, panel coordinates, depth positive down.
 * Out: a {@link plyscape.simulate.CutResult} with the {@link plyscape.simulate.Verification}.
 * Always true: depths at cell centres are exact to a float; the same input gives the same result on
 * any number of processors; each move's bite is measured as it cuts ({@link
 * plyscape.simulate.Bite}); nothing here comes from {@code toolpath} or JTS. A panel that lies bent
 * ({@link plyscape.simulate.BentPanel}) is cut as it lies and then compared in the depths of the
 * flat plan; its top face is interpolated here, by code of its own. Uses {@code gcode}, {@code
 * machine} and {@code grid}.
 */
package plyscape.simulate;
