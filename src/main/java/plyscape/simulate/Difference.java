package plyscape.simulate;

/**
 * A connected area that isn't as planned. Immutable.
 *
 * @param verdict {@code GOUGED} or {@code UNCUT}
 * @param x of its worst cell, panel mm
 * @param depthMm depth there
 * @param targetMm what it should be
 * @param minX bounds of the area
 */
public record Difference(
    CellVerdict verdict,
    double areaMm2,
    double x,
    double y,
    double depthMm,
    double targetMm,
    double minX,
    double minY,
    double maxX,
    double maxY) {}
