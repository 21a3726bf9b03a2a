package plyscape.grid;

/** An axis-parallel rectangle; on the panel in mm, on the ground in units of its CRS. Immutable. */
public record Box(double minX, double minY, double maxX, double maxY) {

  /** Checks that both sides are positive and finite. */
  public Box {
    if (!(maxX > minX)
        || !(maxY > minY)
        || !Double.isFinite(maxX - minX)
        || !Double.isFinite(maxY - minY)) {
      throw new IllegalArgumentException(
          "not a box: " + minX + " " + minY + " " + maxX + " " + maxY);
    }
  }

  /** Extent in X. */
  public double width() {
    return maxX - minX;
  }

  /** Extent in Y. */
  public double height() {
    return maxY - minY;
  }

  /** Width times height. */
  public double area() {
    return width() * height();
  }

  /** Whether the point lies inside or on the edge. */
  public boolean contains(double x, double y) {
    return x >= minX && x <= maxX && y >= minY && y <= maxY;
  }
}
