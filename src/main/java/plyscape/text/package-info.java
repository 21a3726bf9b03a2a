/**
 * Text that people and other programs read: the one number formatter, tables, nearest names, and
 * characters made safe to print. Goes in: values and strings from anywhere, inputs too. Comes out:
 * plain strings.
 *
 * <p>Always true: {@code Locale.ROOT}, LF line ends, no exponent and no minus zero in a number; the
 * same input gives the same bytes. Uses no other package.
 */
package plyscape.text;
