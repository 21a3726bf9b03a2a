package plyscape.toolpath.face;

/**
 * A stretch of one line that is cut in one go: tip depths along U at one V of a {@link
 * FaceLattice}, straight in between. The arrays are shared, not changed.
 *
 * @param v of the line
 * @param u rising
 * @param depth of the tip, mm, positive down
 */
record FaceRun(double v, double[] u, double[] depth) {

  /** Number of points. */
  int size() {
    return u.length;
  }
}
