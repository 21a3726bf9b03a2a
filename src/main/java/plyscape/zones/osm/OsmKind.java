package plyscape.zones.osm;

/** The three kinds of elements. */
enum OsmKind {
  NODE,
  WAY,
  RELATION
}
