/**
 * How commands talk: results to stdout, everything else to stderr, both UTF-8 with LF; progress on
 * a terminal, warnings in lines, JSON.
 *
 * <p>Always true: text from inputs is made printable before it is shown; progress is shown only on
 * a terminal. Only this package and the entry print.
 */
package plyscape.cli.talk;
