/**
 * What would make a plan better: cutters that the shop lacks, and the measurement worth taking
 * next.
 *
 * <p>In: a {@link plyscape.plan.Landscape} and its programs. Out: estimates and warnings; nothing
 * here changes a plan. Lengths mm, times s. Estimates are rough: they come from the lower bound of
 * the cutting time, not from a plan with that cutter.
 */
package plyscape.planner.advice;
