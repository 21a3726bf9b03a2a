package plyscape.region;

import plyscape.planar.Chain;
import plyscape.planar.Sets;

/**
 * How much line groups of faces share with the plies beside them, and with which ply most: what is
 * given away goes there.
 */
final class SharedLines {

  private final Sets groups;

  /** Lengths by ply, mm; null for a group that shares nothing. */
  private final double[][] lengths;

  private final int plies;

  /** Of as many faces as there are sets; ply numbers are below {@code plies}. */
  SharedLines(Sets groups, int faces, int plies) {
    this.groups = groups;
    this.plies = plies;
    lengths = new double[faces][];
  }

  /** A line between a face of a group and a ply. */
  void add(int face, int ply, Chain chain) {
    int group = groups.find(face);
    if (lengths[group] == null) {
      lengths[group] = new double[plies];
    }
    lengths[group][ply] += chain.length();
  }

  /** The ply that the face's group shares most with, the upper of equals; 0 for none. */
  int longest(int face) {
    double[] own = lengths[groups.find(face)];
    int best = 0;
    for (int p = 1; own != null && p < own.length; p++) {
      best = own[p] > own[best] ? p : best;
    }
    return best;
  }
}
