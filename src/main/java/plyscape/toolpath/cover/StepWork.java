package plyscape.toolpath.cover;

import java.util.List;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;

/**
 * What one step down cuts.
 *
 * @param step its depth
 * @param field the level whose pocket bounds it
 * @param pieces of rings, in no order
 * @param spacingMm between neighbouring rings
 */
public record StepWork(DepthStep step, LevelField field, List<Piece> pieces, double spacingMm) {}
