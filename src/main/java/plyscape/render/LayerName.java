package plyscape.render;

import plyscape.layup.Ply;
import plyscape.text.Slug;

/**
 * File names of layers: the ply's number, so that no two are alike, and what of its name is safe on
 * every system.
 */
final class LayerName {

  private LayerName() {}

  /** Such as {@code 02-wood}: lower case ASCII letters, digits and hyphens only. */
  static String of(Ply ply) {
    return (ply.number() < 10 ? "0" : "") + ply.number() + "-" + Slug.of(ply.name());
  }
}
