/**
 * Checks a written output again: reads a plan's figures, layers and programs back from its
 * directory, cuts the programs in simulation and says what isn't as planned.
 *
 * <p>In: a directory that {@code plan} wrote, or its plan.json with programs of any origin ({@link
 * plyscape.recheck.WrittenPlanReader}). Out: an {@link plyscape.recheck.Outcome}, and its words as
 * text or JSON; the proof that a program which takes a stopped run up again makes the same panel
 * ({@link plyscape.recheck.RestartProof}). Always true: nothing here comes from the planner's
 * memory, only from files; what is asked for and isn't there is an {@link
 * plyscape.fault.InputFault}. Uses {@code simulate}, {@code gcode}, {@code machine}, {@code grid},
 * {@code files}, and of {@code report} and {@code render} the readers of what they wrote.
 */
package plyscape.recheck;
