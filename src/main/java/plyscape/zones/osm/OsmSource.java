package plyscape.zones.osm;

import java.io.IOException;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;

/** A file of elements that can be gone through more than once. */
interface OsmSource extends AutoCloseable {

  /** The part of the globe that the file is an extract of, degrees, or null if it doesn't say. */
  Envelope bounds();

  /** Gives the visitor all elements of some kinds, in the file's order. */
  void visit(Set<OsmKind> kinds, OsmVisitor visitor) throws IOException;

  @Override
  void close() throws IOException;
}
