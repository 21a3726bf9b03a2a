/**
 * The second half of a run, for one panel: toolpaths, G-code, and the proof of that G-code in
 * simulation.
 *
 * <p>In: a {@link plyscape.plan.Landscape}. Out: a {@link plyscape.plan.PanelPlan}, from {@link
 * plyscape.planner.cut.PanelCut}. Lengths mm, depths positive down, times s. Always true: what is
 * proved is the text that will be written, parsed back; what the proof finds wrong is mended and
 * proved again, or refused with a {@link plyscape.fault.VerifyFault}.
 */
package plyscape.planner.cut;
