package plyscape.machine;

/**
 * Lengths of moves in a row, the greatest speed and acceleration along each, and the greatest speed
 * at the start of each, mm and s. Made move by move; for one thread.
 */
final class MoveTrack {

  private final MotionModel model;
  private final AxisLimits limits;
  private final double[] length;
  private final double[] speed;
  private final double[] acceleration;
  private final double[] entry;
  private int moves;

  // Where the last move ended.
  private double x;
  private double y;
  private double depth;

  // Direction at that end, zero before the first; its limits.
  private double lastX;
  private double lastY;
  private double lastZ;
  private double lastSpeed;
  private double lastAcceleration = Double.POSITIVE_INFINITY;

  // Directions at both ends of the move that is being added.
  private double startX;
  private double startY;
  private double endX;
  private double endY;
  private double slope;

  MoveTrack(MotionModel model, AxisLimits limits, int count) {
    this.model = model;
    this.limits = limits;
    length = new double[count];
    speed = new double[count];
    acceleration = new double[count];
    entry = new double[count + 1];
  }

  /** Sets the point from which the first move starts, at rest. */
  void start(double atX, double atY, double atDepth) {
    x = atX;
    y = atY;
    depth = atDepth;
  }

  /** Adds a move. */
  void add(Move move) {
    if (move.isArc()) {
      measureArc(move);
    } else {
      measureLine(move);
    }
    if (length[moves] > 0) {
      if (move.kind() != Move.Kind.RAPID) {
        if (!(move.feedMmPerMin() > 0)) {
          throw new IllegalArgumentException("cutting move " + moves + " has no feed");
        }
        speed[moves] = Math.min(speed[moves], move.feedMmPerMin() / 60);
      }
      join();
    } else {
      entry[moves] = Double.POSITIVE_INFINITY; // goes nowhere: no corner of its own
    }
    x = move.x();
    y = move.y();
    depth = move.depth();
    moves++;
  }

  private void measureLine(Move move) {
    double dx = move.x() - x;
    double dy = move.y() - y;
    double dz = move.depth() - depth;
    length[moves] = Math.sqrt(dx * dx + dy * dy + dz * dz);
    double scale = length[moves] > 0 ? 1 / length[moves] : 0;
    startX = dx * scale;
    startY = dy * scale;
    slope = dz * scale;
    endX = startX;
    endY = startY;
    acceleration[moves] = limits.acceleration(startX, startY, slope);
    speed[moves] = limits.speed(startX, startY, slope);
  }

  private void measureArc(Move move) {
    ArcGeometry arc = ArcGeometry.of(x, y, depth, move);
    length[moves] = arc.length();
    double flat = length[moves] > 0 ? Math.abs(arc.radius() * arc.sweep()) / length[moves] : 0;
    double turn = Math.signum(arc.sweep());
    double end = arc.startAngle() + arc.sweep();
    startX = -Math.sin(arc.startAngle()) * turn * flat;
    startY = Math.cos(arc.startAngle()) * turn * flat;
    endX = -Math.sin(end) * turn * flat;
    endY = Math.cos(end) * turn * flat;
    slope = length[moves] > 0 ? (move.depth() - depth) / length[moves] : 0;
    double most =
        Math.min(limits.acceleration(flat, 0, slope), limits.acceleration(0, flat, slope));
    acceleration[moves] = most;
    speed[moves] =
        Math.min(
            Math.min(limits.speed(flat, 0, slope), limits.speed(0, flat, slope)),
            Math.sqrt(most * arc.radius()) / Math.max(flat, 1e-9));
  }

  /** The speed with which the move may take over from the last. */
  private void join() {
    double corner =
        lastX == 0 && lastY == 0 && lastZ == 0
            ? 0
            : model.cornerSpeed(
                lastX * startX + lastY * startY + lastZ * slope,
                Math.min(acceleration[moves], lastAcceleration));
    entry[moves] = Math.min(Math.min(corner, lastSpeed), speed[moves]);
    lastX = endX;
    lastY = endY;
    lastZ = slope;
    lastSpeed = speed[moves];
    lastAcceleration = acceleration[moves];
  }

  /** Lowers the speeds at the starts to those from which the moves after them can slow down. */
  void slowDownInTime() {
    entry[moves] = 0;
    for (int i = moves - 1; i >= 0; i--) {
      entry[i] = Math.min(entry[i], length[i] > 0 ? reached(i, entry[i + 1]) : entry[i + 1]);
    }
  }

  /** Greatest speed at a move's end when it starts with a speed. */
  double endSpeed(int move, double atStart) {
    return Math.min(entry[move + 1], reached(move, atStart));
  }

  private double reached(int move, double from) {
    return Math.sqrt(from * from + 2 * acceleration[move] * length[move]);
  }

  double lengthMm(int move) {
    return length[move];
  }

  double speed(int move) {
    return speed[move];
  }

  double acceleration(int move) {
    return acceleration[move];
  }
}
