/**
 * Runs the stages of a job in order, from settings to a proved plan.
 *
 * <p>In: a checked {@link plyscape.job.Job}. Out: an immutable {@link plyscape.plan.Plan}. Always
 * true: the programs in a plan have been parsed back from their text and simulated, and neither
 * gouge nor collide; otherwise {@link plyscape.fault.VerifyFault} is thrown. A landscape over
 * several panels is split here; each panel is cut by {@code planner.cut} and given to a {@link
 * plyscape.plan.PanelStore} before the next. Lengths are mm on the panel, depths positive down,
 * times s, elevations m. Uses every package from {@code layup} to {@code simulate}; nothing here
 * writes files or prints.
 */
package plyscape.planner;
