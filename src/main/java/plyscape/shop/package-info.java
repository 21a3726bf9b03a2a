/**
 * Papers and test cuts for the bench: the pressing sheet, the drawing of a layup, the coupon and
 * its gauge, the readings taken from it and the layup file that they change.
 *
 * <p>In: a layup, its depths, and what the shop has (glue, press, tool, machine). Out: numbers in
 * records, text, SVG pages in mm, and the pocket levels of a coupon, which {@code toolpath} turns
 * into moves. Lengths are mm, depths positive down, moisture in percent of dry weight, pressures
 * MPa, forces kN. Always true: the same input gives the same bytes; nothing is written here. Uses
 * {@code layup}, {@code toolpath}, {@code gcode} and what those use.
 */
package plyscape.shop;
