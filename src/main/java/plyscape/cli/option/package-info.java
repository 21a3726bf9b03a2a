/**
 * Options and arguments that several commands share, and how a size, a place, a path or a setting
 * is typed. In: strings of the command line; out: values in mm, paths. A slip is an {@link
 * plyscape.fault.InputFault} that names the option.
 */
package plyscape.cli.option;
