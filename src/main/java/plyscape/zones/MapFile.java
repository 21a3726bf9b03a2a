package plyscape.zones;

import java.util.List;

/**
 * A map as its file has it. Immutable.
 *
 * @param name file name for messages
 * @param crs code or WKT of its coordinates' CRS
 * @param crsStated whether the file itself says so, or it is the format's rule
 * @param features in the file's order
 */
record MapFile(String name, String crs, boolean crsStated, List<MapFeature> features) {}
