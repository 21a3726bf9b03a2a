package plyscape.bend;

/** Height of the panel's top face at every place: mm, positive up, in the frame of its readings. */
public interface TopFace {

  /** A panel that lies flat at height 0. */
  TopFace FLAT =
      new TopFace() {
        @Override
        public double heightMm(double x, double y) {
          return 0;
        }

        @Override
        public int piece(double x, double y) {
          return 0;
        }
      };

  /** Height at a place on the panel, mm. Continuous; outside the readings that of the nearest. */
  double heightMm(double x, double y);

  /**
   * Number of the smooth piece of the face that a place lies in: within one piece a straight line
   * on the panel is a parabola at most.
   */
  int piece(double x, double y);
}
