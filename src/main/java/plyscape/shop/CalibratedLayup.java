package plyscape.shop;

import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.job.LayupReader;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.Method;
import plyscape.layup.PlyDepth;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.layup.calibration.Calibration;

/**
 * The text of a layup file with what a calibration found: the old text with two keys changed, or a
 * clean new file.
 */
public final class CalibratedLayup {

  private CalibratedLayup() {}

  /**
   * The new text. The old one, comments and all, is kept wherever changing its lines gives what is
   * meant, which is checked by reading it; else a clean file is written.
   */
  public static String text(String oldText, Calibration found) {
    Measured wanted = found.layup().measured();
    String changed = oldText;
    if (found.boundaries().stream().anyMatch(b -> b.at() == null)) {
      changed = LayupRewrite.withBottoms(changed, wanted.bottoms());
    }
    if (found.boundaries().stream().anyMatch(b -> b.at() != null)) {
      changed = LayupRewrite.withPlaces(changed, wanted.places());
    }
    return readsAs(found.layup(), changed)
        ? changed
        : LayupYaml.text(
            found.layup(), "Written anew: the old file's lines couldn't be changed one by one.");
  }

  private static boolean readsAs(Layup wanted, String text) {
    try {
      Layup read = LayupReader.of(Path.of(wanted.file()), text);
      // Written numbers are the same to the last digit that is written.
      String head = "";
      return LayupYaml.text(read, head).equals(LayupYaml.text(wanted, head));
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
    Layup plain =
        l.withMeasured(l.measured().withPlaces(List.of())).withBottoms(new TreeMap<>(), 0);
    return DepthModel.depths(
        plain, new CutAllowance(0, Method.RSS, 0, new Sanding(0, 0), Top.LEAVE, 0), true);
  }
}
