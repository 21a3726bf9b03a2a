package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;

/**
 * One zone of the job. Exactly one of {@code plyNumber} and {@code sink} is set. Immutable.
 *
 * @param name label
 * @param file resolved path of the map
 * @param where property name to accepted values, each a Double, Boolean or String (any of them); all entries must hold
 * @param plyNumber ply for the zone, or null
 * @param sink plies below what the terrain alone gives, or null
 * @param widthMm full width on the panel for lines, or null
 * @param groundWidthM full width on the ground for lines, or null
 */
public record ZoneSpec(
    String name,
    Path file,
    SortedMap<String, List<Object>> where,
    Integer plyNumber,
    Integer sink,
    Double widthMm,
    Double groundWidthM) {}
