/**
 * What can go wrong and where: the three kinds of fault that end a run, warnings that don't, and
 * places in the user's input.
 *
 * <p>{@link plyscape.fault.InputFault} ends with exit code 2, {@link plyscape.fault.JobFault} with
 * 1, {@link plyscape.fault.VerifyFault} with 3; the codes themselves are set in {@code cli}. A
 * message always says what was found and what would help. Uses nothing.
 */
package plyscape.fault;
