package plyscape.zones.osm;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A relation that is drawn: an area that its member ways enclose, or lines that they are.
 * Immutable.
 *
 * @param id the relation's id
 * @param tags the relation's tags
 * @param area whether it is an area
 * @param members its ways, each once, in the file's order; no nodes and relations
 */
record OsmRelation(long id, Map<String, Object> tags, boolean area, List<OsmMember> members) {

  /**
   * A relation as it is drawn, or null for one of a kind that isn't, or that has no tag but its
   * type: its ways have their own.
   */
  static OsmRelation of(long id, List<OsmMember> members, Map<String, Object> tags) {
    Object type = tags.get("type");
    boolean area = "multipolygon".equals(type) || "boundary".equals(type);
    boolean lines = "route".equals(type) || "waterway".equals(type);
    if (!area && !lines || tags.size() < 2) {
      return null;
    }
    Map<Long, OsmMember> ways = new LinkedHashMap<>();
    for (OsmMember member : members) {
      if (member.kind() == OsmKind.WAY) {
        ways.putIfAbsent(member.id(), member);
      }
    }
    return new OsmRelation(
        id, tags, area, Collections.unmodifiableList(new ArrayList<>(ways.values())));
  }
}
