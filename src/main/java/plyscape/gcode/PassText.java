package plyscape.gcode;

import java.util.List;
import plyscape.machine.Move;

/**
 * Moves under one comment. Immutable.
 *
 * @param comment one line for the person at the machine
 * @param moves panel mm, in order
 */
public record PassText(String comment, List<Move> moves) {}
