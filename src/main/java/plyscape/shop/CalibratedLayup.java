package plyscape.shop;

import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.job.LayupReader;
import plyscape.layup.Calibration;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.Method;
import plyscape.layup.PlyDepth;
import plyscape.layup.Sanding;
import plyscape.layup.Top;

/**
 * The text of a layup file with what a calibration found: the old text with two keys changed, or a
 * clean new file.
 */
public final class CalibratedLayup {

  /** Depths are written to 0.0001 mm. */
  private static final double WRITTEN_MM = 1e-4;

  private CalibratedLayup() {}

  /**
   * The new text. The old one, comments and all, is kept wherever changing its lines gives what is
   * meant, which is checked by reading it; else a clean file is written.
   *
   * @throws InputFault if the depths can't stand together with the rest of the layup
   */
  public static String text(Layup layup, String oldText, Calibration found) {
    SortedMap<Integer, Double> bottoms = new TreeMap<>();
    found
        .bottomsMm()
        .forEach((ply, depth) -> bottoms.put(ply, Math.round(depth / WRITTEN_MM) * WRITTEN_MM));
    double tolerance = Math.ceil(found.toleranceMm() / WRITTEN_MM - 1e-6) * WRITTEN_MM;
    Layup wanted = layup.withBottoms(bottoms, tolerance);
    DepthModel.thicknessMm(wanted); // measured depths in order, or a fault that names the two
    String changed = LayupRewrite.withBottoms(oldText, bottoms, tolerance);
    return readsAs(wanted, changed)
        ? changed
        : LayupYaml.text(
            wanted, "Written anew: the old file's lines couldn't be changed one by one.");
  }

  private static boolean readsAs(Layup wanted, String text) {
    try {
      Layup read = LayupReader.of(Path.of(wanted.file()), text);
      boolean same =
          read.plies().equals(wanted.plies())
              && read.measured().bottomsMm().keySet().equals(wanted.measured().bottomsMm().keySet())
              && Math.abs(
                      read.measured().bottomsToleranceMm() - wanted.measured().bottomsToleranceMm())
                  < 1e-9
              && read.flatnessMm() == wanted.flatnessMm()
              && read.glueLine().thicknessMm() == wanted.glueLine().thicknessMm();
      for (int ply : wanted.measured().bottomsMm().keySet()) {
        same &=
            same
                && Math.abs(
                        read.measured().bottomsMm().get(ply)
                            - wanted.measured().bottomsMm().get(ply))
                    < 1e-9;
      }
      return same;
    } catch (InputFault e) {
      return false;
    }
  }

  /** Where the layup alone, without measured bottoms, puts the bottom of each ply, mm. */
  public static double[] nominalBottoms(Layup layup) {
    return plain(layup).stream().mapToDouble(PlyDepth::bottomMm).toArray();
  }

  /**
   * The largest plus or minus on any of those depths, the bottom face left out, mm; 0 for a single
   * ply.
   */
  public static double worstTolerance(Layup layup) {
    return plain(layup).stream()
        .limit(layup.plies().size() - 1L)
        .mapToDouble(PlyDepth::bottomToleranceMm)
        .max()
        .orElse(0);
  }

  private static Depths plain(Layup l) {
    Layup plain = l.withBottoms(new TreeMap<>(), 0);
    return DepthModel.depths(
        plain, new CutAllowance(0, Method.RSS, 0, new Sanding(0, 0), Top.LEAVE, 0), true);
  }
}
