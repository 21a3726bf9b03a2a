/**
 * The program's entry: finds the command, runs it, and turns the outcome into one of the exit codes
 * of {@link plyscape.cli.process.ExitCodes}; help, manual pages, completion and a starter job.
 *
 * <p>Commands are grouped by what they work on: {@code cli.job}, {@code cli.shop}, {@code
 * cli.recheck}. This family is the only one that prints or ends the program, and may use all
 * others.
 *
 * <p>Always true: text from inputs is made printable before it is shown; progress is shown only on
 * a terminal; nothing is written but by {@code output}.
 */
package plyscape.cli;
