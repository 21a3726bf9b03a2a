/**
 * Moves to G-code text and text back to moves; knows tools and machine limits, no polygons.
 *
 * <p>In and out: moves in panel coordinates (mm, depth positive down), text in the program's own
 * frame (Z positive up), which {@link plyscape.gcode.ProgramFrame} alone translates. Always true:
 * what {@link plyscape.gcode.GcodeWriter} writes, {@link plyscape.gcode.GcodeParser} reads to the
 * same moves within half a last place; what the parser doesn't understand is an {@link
 * plyscape.fault.InputFault} with line and column, never skipped. Uses {@code machine} and {@code
 * fault}.
 */
package plyscape.gcode;
