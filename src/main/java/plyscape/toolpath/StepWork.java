package plyscape.toolpath;

import java.util.List;

/**
 * What one step down cuts.
 *
 * @param step its depth
 * @param field the level whose pocket bounds it
 * @param pieces of rings, in no order
 * @param spacingMm between neighbouring rings
 */
record StepWork(DepthPlan.Step step, LevelField field, List<Piece> pieces, double spacingMm) {}
