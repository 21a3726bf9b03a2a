package plyscape.layup;

import plyscape.fault.Place;

/**
 * One measured depth of an interface of a {@link LayerStack} at one place. Immutable.
 *
 * @param interfaceIndex what was measured
 * @param x from the panel's centre, in units of 100 mm
 * @param depthMm what was read
 * @param toleranceMm plus or minus (3 sigma) of this reading alone
 * @param what it is, for messages
 * @param where the user gave it, for messages
 */
public record StackReading(
    int interfaceIndex,
    double x,
    double y,
    double depthMm,
    double toleranceMm,
    String what,
    Place where) {}
