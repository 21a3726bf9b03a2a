package plyscape.planar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Noded linework as chains with the faces to their left and right, and the winding vector of each
 * face. Face 0 is the outside, with the zero vector. Noding aside ({@link SnapRounder}), it takes
 * steps in proportion to edges, plus faces times components.
 */
public final class PlanarMap {

  private final List<Chain> chains = new ArrayList<>();
  private final int components;
  private int[] windings;
  private int faces;

  private PlanarMap(int components) {
    this.components = components;
  }

  /** Nodes the lines together and finds the faces. */
  public static PlanarMap of(Linework linework) {
    NodedEdges edges = NodedEdges.of(linework);
    PlanarMap map = new PlanarMap(linework.components());
    int[] sample = new ChainJoiner(edges).join(map.chains);
    FaceFinder finder = new FaceFinder(map.chains);
    map.faces = finder.assign();
    map.wind(edges, sample);
    return map;
  }

  /** Lines between faces. */
  public List<Chain> chains() {
    return chains;
  }

  /** How many faces there are, the outside (0) included. */
  public int faces() {
    return faces;
  }

  /** How often the lines of a component wind around a face. */
  public int winding(int face, int component) {
    return windings[face * components + component];
  }

  /** Winding vectors by walking from face to face, from the outside in. */
  private void wind(NodedEdges edges, int[] sample) {
    windings = new int[Math.multiplyExact(faces, components)];
    int[] first = new int[faces + 1];
    for (Chain chain : chains) {
      first[chain.left + 1]++;
      first[chain.right + 1]++;
    }
    for (int f = 0; f < faces; f++) {
      first[f + 1] += first[f];
    }
    int[] sides = new int[2 * chains.size()];
    int[] fill = Arrays.copyOf(first, faces + 1);
    for (int c = 0; c < chains.size(); c++) {
      sides[fill[chains.get(c).left]++] = c;
      sides[fill[chains.get(c).right]++] = c;
    }
    boolean[] seen = new boolean[faces];
    int[] queue = new int[faces];
    int tail = 1;
    seen[0] = true;
    for (int headAt = 0; headAt < tail; headAt++) {
      int face = queue[headAt];
      for (int k = first[face]; k < first[face + 1]; k++) {
        Chain chain = chains.get(sides[k]);
        boolean toLeft = chain.right == face;
        int other = toLeft ? chain.left : chain.right;
        if (!seen[other]) {
          seen[other] = true;
          queue[tail++] = other;
          System.arraycopy(windings, face * components, windings, other * components, components);
          int along = (sample[sides[k]] & 1) == 0 ? 1 : -1;
          edges.addTo(sample[sides[k]] >> 1, toLeft ? along : -along, windings, other * components);
        }
      }
    }
    if (tail != faces) {
      throw new IllegalStateException("planar map: " + (faces - tail) + " faces can't be reached");
    }
  }
}
