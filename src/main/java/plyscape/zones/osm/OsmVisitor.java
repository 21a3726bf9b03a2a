package plyscape.zones.osm;

import java.util.List;
import java.util.Map;

/** Is given the elements of a file one by one; does nothing with those that it doesn't ask for. */
interface OsmVisitor {

  /**
   * A node.
   *
   * @param lon degrees east
   * @param lat degrees north
   */
  default void node(long id, double lon, double lat, Map<String, Object> tags) {}

  /**
   * A way.
   *
   * @param nodes ids of its nodes in order; not to be changed
   */
  default void way(long id, long[] nodes, Map<String, Object> tags) {}

  /** A relation. */
  default void relation(long id, List<OsmMember> members, Map<String, Object> tags) {}
}
