package plyscape.region;

import org.locationtech.jts.geom.Polygon;

/** A connected area of the panel with one ply, in panel mm. */
public record Region(int plyNumber, Polygon polygon) {}
