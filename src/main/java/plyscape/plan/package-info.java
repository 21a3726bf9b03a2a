/**
 * What a run of a job came to, for those who draw, write or print it.
 *
 * <p>A {@link plyscape.plan.Plan} is a type a state: a {@link plyscape.plan.Landscape} is depths
 * and regions, a {@link plyscape.plan.PanelPlan} adds the G-code text, times and the outcome of the
 * simulation; {@link plyscape.plan.TiledLandscape} and {@link plyscape.plan.TiledPlan} are the same
 * of several panels. Also here: the options of a run and who hears of its progress. Lengths are mm
 * on the panel, depths positive down, times s, elevations m. Everything is immutable and made by
 * {@code planner}; nothing here runs a stage, writes files or prints.
 */
package plyscape.plan;
