package plyscape.grid;

/**
 * How ground lies on the panel: the ground plane is turned about a point, and a box of the turned
 * plane is mapped to the panel box, one scale for both axes. Without a turn north is up. Immutable.
 *
 * @param crs authority code such as {@code EPSG:32632} or WKT of the (projected, axis order
 *     east-north) ground CRS, or "" when the terrain has none
 * @param ground extent of the carved area on the turned plane, in CRS units
 * @param panel extent of the carved area on the panel, mm
 * @param metresPerUnit length of one CRS unit in metres
 * @param turn of the ground plane before the box is taken
 */
public record GroundFrame(String crs, Box ground, Box panel, double metresPerUnit, Turn turn) {

  /** With north up. */
  public GroundFrame(String crs, Box ground, Box panel, double metresPerUnit) {
    this(crs, ground, panel, metresPerUnit, Turn.NONE);
  }

  /**
   * The frame of a part, on a panel of its own.
   *
   * @param part of the panel box, mm
   * @param own where that part lies on its own panel, mm; of the same size
   */
  public GroundFrame part(Box part, Box own) {
    double x = 1 / mmPerUnit();
    double y = ground.height() / panel.height();
    Box under =
        new Box(
            ground.minX() + (part.minX() - panel.minX()) * x,
                ground.minY() + (part.minY() - panel.minY()) * y,
            ground.minX() + (part.maxX() - panel.minX()) * x,
                ground.minY() + (part.maxY() - panel.minY()) * y);
    return new GroundFrame(crs, under, own, metresPerUnit, turn);
  }

  /** Panel mm per ground unit. */
  public double mmPerUnit() {
    return panel.width() / ground.width();
  }

  /** Ground metres that one panel mm stands for. */
  public double metresPerMm() {
    return metresPerUnit / mmPerUnit();
  }

  /** Panel X, mm, of an X on the turned ground plane. */
  public double panelX(double groundX) {
    return panel.minX() + (groundX - ground.minX()) * mmPerUnit();
  }

  /** Panel Y, mm, of a Y on the turned ground plane. */
  public double panelY(double groundY) {
    return panel.minY() + (groundY - ground.minY()) * panel.height() / ground.height();
  }
}
