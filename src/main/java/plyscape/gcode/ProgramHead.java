package plyscape.gcode;

import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * What the head of a G-code file says. Immutable.
 *
 * @param title of the job
 * @param widthMm panel size in X
 * @param heightMm panel size in Y
 * @param thicknessMm of the pressed panel
 * @param machine for zero, travel and safe height
 * @param tool the one tool of the file
 * @param deepestMm deepest cut in the file
 * @param timeS expected time, without spindle start
 * @param version of plyscape
 */
public record ProgramHead(
    String title,
    double widthMm,
    double heightMm,
    double thicknessMm,
    Machine machine,
    Tool tool,
    double deepestMm,
    double timeS,
    String version) {}
