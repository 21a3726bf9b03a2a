/**
 * Cutters, the router's limits, the motions it makes and the time they take.
 *
 * <p>In: lists of {@link plyscape.machine.Move} in panel coordinates (mm, X right, Y up, depth
 * positive down; feeds mm/min). Out: {@link plyscape.machine.Times} in seconds and mm. Always true:
 * the same moves give the same times, and no move is faster than its feed or the axes allow. Uses
 * no other package but {@code fault} and {@code text}.
 */
package plyscape.machine;
