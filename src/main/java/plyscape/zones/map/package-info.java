/**
 * What a map is once it has been read, whatever its format.
 *
 * <p>In: a {@link plyscape.zones.map.MapQuery}, which says what of a map matters. Out: a {@link
 * plyscape.zones.map.MapFile}: features with properties and a geometry, points included, in the
 * file's own CRS, x east and y north. Each format has a package of its own beside this one with one
 * {@link plyscape.zones.map.MapFormat}; it puts what it reads into a {@link
 * plyscape.zones.map.FeatureSink}, which alone decides what is kept, counts the rest and holds the
 * limits.
 *
 * <p>Always true afterwards: features stand in the file's order; properties are text, numbers
 * ({@code Double}), truth values, lists or maps of these, never null; a geometry that can't be used
 * is a feature with its trouble said, not a fault. A file that can't be read at all is an {@link
 * plyscape.fault.InputFault} with the file, and where it can be the line, named.
 *
 * <p>Uses {@code fault}, {@code text} and JTS only.
 */
package plyscape.zones.map;
