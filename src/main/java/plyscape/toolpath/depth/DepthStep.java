package plyscape.toolpath.depth;

/**
 * One step down. Immutable.
 *
 * @param level index of the level whose pocket bounds it; its depth is at or below this step's
 * @param depthMm its floor: the level's own depth, or between it and the level above
 * @param full over all of the pocket that must get deeper, or only over what shows of the level
 * @param fromMm depth of the full step before, 0 for the first; at most a stepdown above
 */
public record DepthStep(int level, double depthMm, boolean full, double fromMm) {}
