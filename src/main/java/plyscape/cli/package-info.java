/**
 * The commands. Goes in: the command line. Comes out: results on stdout, talk on stderr, files, and
 * one of the exit codes of {@link plyscape.cli.ExitCodes}. The only package that prints or ends the
 * program. Uses all others.
 *
 * <p>Always true: text from inputs is made printable before it is shown; progress is shown only on
 * a terminal; nothing is written but by {@code output}.
 */
package plyscape.cli;
