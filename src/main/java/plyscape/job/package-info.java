/**
 * The settings of a job. Goes in: {@code job.yaml}, {@code layup.yaml} and options that override
 * the job's keys. Comes out: one immutable {@link plyscape.job.Job} with every default filled in;
 * lengths in mm, ground distances in m.
 *
 * <p>Always true afterwards: keys are known, types right, numbers inside a sane range, names
 * resolve, paths are resolved and there is a file at each. Anything else is an {@link
 * plyscape.fault.InputFault} that says file, line, column, key, what was found and what was
 * expected. This is the only reader of settings; the files' form is {@code job.yaml}'s matter. Uses
 * {@code layup}, {@code machine}, {@code grid}.
 */
package plyscape.job;
