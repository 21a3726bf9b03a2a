/**
 * Text as strokes and outlines: for pictures, and for letters cut into the panel.
 *
 * <p>In: text, sizes in mm, a place on the panel, perhaps a TrueType font's file. Out: strokes, or
 * polygons in panel mm. Always true afterwards: the same text and font give the same coordinates on
 * every machine, as no font of the system is used; letters read from left to right and upwards seen
 * from above, never mirrored. Letters that a cutter can't cut legibly are found by measuring their
 * stems and counters.
 *
 * <p>Uses {@code grid}; knows no plies and no files but fonts.
 */
package plyscape.lettering;
