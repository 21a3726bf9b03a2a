package plyscape.gcode;

import java.util.List;

/**
 * A written program. Immutable.
 *
 * @param text the file, ASCII, LF
 * @param passLines for each pass the line of its comment, from 1
 */
public record GcodeText(String text, List<Integer> passLines) {}
