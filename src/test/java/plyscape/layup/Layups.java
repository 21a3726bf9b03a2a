package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/** Layups and allowances for tests. */
public final class Layups {

  private Layups() {}

  /** No cut error at all, nothing sanded, no least clearance. */
  static CutAllowance bare(Method method) {
    return new CutAllowance(0, method, 0, new Sanding(0, 0), Top.LEAVE, 0);
  }

  /** The defaults of src/contract.md, section 5. */
  public static CutAllowance standard() {
    return new CutAllowance(0.10, Method.RSS, 0.03, new Sanding(0.10, 0.05), Top.LEAVE, 1.0);
  }

  /** Plies of the given thicknesses, all with one tolerance. */
  public static Layup of(
      double glue, double glueTolerance, double tolerance, double... thicknesses) {
    List<Ply> plies = new ArrayList<>();
    for (int i = 0; i < thicknesses.length; i++) {
      plies.add(
          new Ply(
              i + 1, "ply" + (i + 1), 0x808080, thicknesses[i], tolerance, 90 * (i % 2), "poplar"));
    }
    return new Layup(
        "layup.yaml", "test", plies, new GlueLine(glue, glueTolerance), Measured.NOTHING, 0);
  }

  /** A random layup of 3 to 9 plies, measured or not. */
  public static Layup random(Random random) {
    int n = 3 + random.nextInt(7);
    List<Ply> plies = new ArrayList<>();
    for (int i = 1; i <= n; i++) {
      plies.add(
          new Ply(
              i,
              "p" + i,
              0,
              0.2 + 0.5 * random.nextDouble(),
              0.04 + 0.16 * random.nextDouble(),
              0,
              ""));
    }
    double glue = random.nextInt(4) == 0 ? 0 : 0.02 + 0.08 * random.nextDouble();
    Layup plain =
        new Layup(
            "random.yaml",
            "",
            plies,
            new GlueLine(glue, glue * 0.3 * random.nextDouble()),
            Measured.NOTHING,
            0.1 * random.nextDouble());
    PressedPanel nominal = PressedPanel.of(plain, true);
    double stretch = 0.93 + 0.14 * random.nextDouble();
    SortedMap<Integer, Double> bottoms = new TreeMap<>();
    boolean measured = random.nextBoolean();
    for (int i = 1; measured && i < n; i++) {
      if (random.nextInt(3) == 0) {
        bottoms.put(i, nominal.depthMm(LayerStack.bottomOf(i)) * stretch);
      }
    }
    Layup withBottoms = plain.withBottoms(bottoms, 0.03 * random.nextDouble());
    return random.nextBoolean()
        ? withBottoms.withThickness(
            nominal.depthMm(2 * n - 1) * stretch, 0.05 * random.nextDouble())
        : withBottoms;
  }
}
