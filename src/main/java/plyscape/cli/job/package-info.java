/**
 * Commands that run jobs, one or a series: {@code plan}, {@code preview}, {@code gather}.
 *
 * <p>In: the command line. Out: output directories written through {@code output}, what is said of
 * them, and one of the exit codes. {@link plyscape.cli.job.Stages} is all that commands need of the
 * program's middle. Always true: each job of a series stands alone; lines come in the order of the
 * command line.
 */
package plyscape.cli.job;
