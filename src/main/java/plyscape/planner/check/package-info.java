/**
 * What refuses a job before it is cut: plies that can't be hit, cutters that don't come down to
 * them, axes that are too short.
 *
 * <p>In: a job, or a {@link plyscape.plan.Landscape}. Out: nothing, warnings, or a {@link
 * plyscape.fault.JobFault} that says what would help. Lengths mm, depths positive down. Each check
 * runs as early as it can be sure, so that nobody waits for a refusal.
 */
package plyscape.planner.check;
