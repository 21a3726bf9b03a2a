package plyscape.toolpath;

import java.util.List;
import plyscape.machine.Move;

/**
 * One run of one tool at one depth over one or more pockets. The first move starts from wherever
 * the pass before ended, at safe height; the last ends at safe height. Immutable.
 *
 * @param plyNumber ply whose pocket is cut
 * @param depthMm depth of the floor cut here
 * @param stepdownFromMm depth of the stock this pass starts from
 * @param moves in cutting order, panel mm
 */
public record Pass(int plyNumber, double depthMm, double stepdownFromMm, List<Move> moves) {}
