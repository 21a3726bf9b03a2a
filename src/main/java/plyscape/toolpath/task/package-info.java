/**
 * What the planner is asked for and what it gives: the pockets of the levels, how paths are laid,
 * and the passes and runs that come out.
 *
 * <p>In and out: plain immutable records, mm on the panel, depths positive down, feeds in mm/min. A
 * {@link plyscape.toolpath.task.PocketLevel} is one ply that is cut; pockets nest, the deeper
 * inside the upper. A {@link plyscape.toolpath.task.Pass} starts and ends at safe height; a {@link
 * plyscape.toolpath.task.ToolRun} is all that one cutter does, in cutting order. {@link
 * plyscape.toolpath.task.PathOptions} checks its ranges.
 *
 * <p>This is the package that others may read. Uses {@code machine}.
 */
package plyscape.toolpath.task;
