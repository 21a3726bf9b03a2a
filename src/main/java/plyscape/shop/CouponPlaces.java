package plyscape.shop;

import java.util.List;
import plyscape.grid.Box;
import plyscape.layup.PanelPoint;
import plyscape.machine.Move;

/**
 * Where a coupon is cut: once on an offcut of its own, or several times in the waste of a panel, in
 * the panel's coordinates. Immutable.
 *
 * @param widthMm of the wood that the program's zero belongs to, X
 * @param heightMm of it, Y
 * @param coupon what is cut
 * @param centres of the carved coupons on the panel; empty for an offcut
 */
public record CouponPlaces(
    double widthMm, double heightMm, Coupon coupon, List<PanelPoint> centres) {

  /** Keeps a copy. */
  public CouponPlaces {
    centres = List.copyOf(centres);
  }

  /** On an offcut. */
  public static CouponPlaces offcut(Coupon coupon) {
    return new CouponPlaces(coupon.widthMm(), coupon.heightMm(), coupon, List.of());
  }

  /** Shifts from the offcut's coordinates, one a coupon. */
  public List<double[]> shifts() {
    Box carved = coupon.carved();
    return centres.isEmpty()
        ? List.of(new double[] {0, 0})
        : centres.stream()
            .map(
                c ->
                    new double[] {
                      c.xMm() - (carved.minX() + carved.maxX()) / 2,
                      c.yMm() - (carved.minY() + carved.maxY()) / 2
                    })
            .toList();
  }

  /** All of the wood that is looked at, waste included. */
  public Box wood() {
    if (centres.isEmpty()) {
      return new Box(0, 0, widthMm, heightMm);
    }
    Box all = carved();
    return new Box(
        Math.min(0, all.minX() - 5),
        Math.min(0, all.minY() - 5),
        Math.max(widthMm, all.maxX() + 5),
        Math.max(heightMm, all.maxY() + 5));
  }

  /** A box around all that is cut. */
  public Box carved() {
    Box carved = coupon.carved();
    Box all = null;
    for (double[] shift : shifts()) {
      Box here =
          new Box(
              carved.minX() + shift[0],
              carved.minY() + shift[1],
              carved.maxX() + shift[0],
              carved.maxY() + shift[1]);
      all =
          all == null
              ? here
              : new Box(
                  Math.min(all.minX(), here.minX()),
                  Math.min(all.minY(), here.minY()),
                  Math.max(all.maxX(), here.maxX()),
                  Math.max(all.maxY(), here.maxY()));
    }
    return all;
  }

  /** Moves shifted. */
  static List<Move> shifted(List<Move> moves, double[] by) {
    return moves.stream()
        .map(
            m ->
                new Move(
                    m.kind(),
                    m.x() + by[0],
                    m.y() + by[1],
                    m.depth(),
                    m.centreX() + by[0],
                    m.centreY() + by[1],
                    m.feedMmPerMin()))
        .toList();
  }
}
