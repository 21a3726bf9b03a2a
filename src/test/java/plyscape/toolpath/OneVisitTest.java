package plyscape.toolpath;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.ring.Piece;

/** What a deeper piece takes along. */
class OneVisitTest {

  private static final double VISIT_MM = 10;

  /** A closed piece around a square with its lower left corner at the origin. */
  private static Piece square(double side) {
    return new Piece(0, true, new double[] {0, side, side, 0}, new double[] {0, 0, side, side});
  }

  /** A piece along the square's lower side. */
  private static Piece along(int index, double from, double to) {
    return new Piece(index, false, new double[] {from, to}, new double[] {0, 0});
  }

  private static StepWork at(double depthMm, Piece... pieces) {
    return new StepWork(new DepthStep(0, depthMm, true, 0), null, List.of(pieces), 0.6);
  }

  private static int kept(Piece upper, Piece lower) {
    List<StepWork> left = OneVisit.of(List.of(at(1, upper), at(2, lower)), VISIT_MM);
    assertEquals(1, left.get(1).pieces().size(), "the deeper one stays");
    return left.get(0).pieces().size();
  }

  @Test
  void sameRingTwice_upperGoes() {
    assertEquals(0, kept(square(8), square(8)));
  }

  @Test
  void stretchOfALongRing_stays() {
    assertEquals(1, kept(along(0, 1, 7), square(8)));
  }

  @Test
  void stretchOfAboutTheSameLength_goes() {
    assertEquals(0, kept(along(0, 1, 7), along(0, 0, 8)));
  }

  @Test
  void besideEachOther_stays() {
    assertEquals(1, kept(square(8), square(7.9)));
  }

  @Test
  void ringInside_stays() {
    assertEquals(1, kept(along(1, 1, 7), along(0, 0, 8)));
  }
}
