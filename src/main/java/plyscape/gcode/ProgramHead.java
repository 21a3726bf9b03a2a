package plyscape.gcode;

import java.util.List;
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
 * @param cautions that only this file needs
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
    String version,
    List<String> cautions) {

  /** Keeps its own list. */
  public ProgramHead {
    cautions = List.copyOf(cautions);
  }
}
