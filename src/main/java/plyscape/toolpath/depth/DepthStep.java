package plyscape.toolpath.depth;

/**
 * One cut of a {@link DepthSequence}. Immutable.
 *
 * @param level index of the level whose pocket is cut into; its depth is at or below this step's
 * @param depthMm depth of the cut: the level's own, or between it and the level above
 * @param fromMm depth at which the ground stands before, at most a stepdown above
 * @param full over all of the pocket, or only over what shows of the level
 */
public record DepthStep(int level, double depthMm, double fromMm, boolean full) {}
