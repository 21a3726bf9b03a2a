package plyscape.job;

import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Decimal;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.YamlNode;
import plyscape.layup.Ply;
import plyscape.text.NearestName;

/** Plies by the name or number that a setting gives. */
final class PlyNames {

  private final List<Ply> plies;

  PlyNames(List<Ply> plies) {
    this.plies = plies;
  }

  /**
   * The number of the ply that the text names.
   *
   * @throws InputFault if there is none
   */
  int number(String text, Place place) {
    String wanted = text.strip();
    for (Ply ply : plies) {
      if (ply.name().equals(wanted)) {
        return ply.number();
      }
    }
    Double number = Decimal.parse(wanted);
    if (number != null && number == Math.rint(number) && number >= 1 && number <= plies.size()) {
      return number.intValue();
    }
    String hint =
        number != null
            ? "the layup has plies 1 to " + plies.size()
            : NearestName.hint(wanted, plies.stream().map(Ply::name).toList());
    throw new InputFault(place, "no ply \"" + wanted + "\" in the layup", hint);
  }

  /** The same for a node. */
  int number(YamlNode node) {
    return number(Keys.textOf(node, "a ply's name"), node.place());
  }
}
