/**
 * Finishing sculpted faces: round-ended cutters dropped on them along parallel lines.
 *
 * <p>In: the depth at every place of each region, the roughing already planned, cutters. Out: one
 * more {@link plyscape.toolpath.task.ToolRun} a finishing cutter ({@link
 * plyscape.toolpath.face.FacePlanner}, the only entry). A panel that lies bent ({@link
 * plyscape.toolpath.face.PanelFit}) is finished as it lies: the cutter is dropped on the bent
 * faces, over the stock that bent roughing leaves, so these passes aren't bent again.
 *
 * <p>Always true afterwards: the cutter's surface is nowhere below the face by more than the
 * lattice's interpolation allows; no line takes more than the cutter's stepdown at once; between
 * lines no ridge stands higher than the cusp asked for, off walls.
 *
 * <p>Uses {@code order} for the tour of lines and {@code motion} for lists of moves.
 */
package plyscape.toolpath.face;
