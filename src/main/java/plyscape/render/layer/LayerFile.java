package plyscape.render.layer;

/**
 * A text file of one layer. Immutable.
 *
 * @param name file name without a directory, such as {@code 02-wood.svg}
 * @param text content, LF line ends
 */
public record LayerFile(String name, String text) {}
