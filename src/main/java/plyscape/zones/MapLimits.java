package plyscape.zones;

import plyscape.fault.InputFault;
import plyscape.fault.Place;

/** Counts what is read of a map file and refuses what no panel can show, before memory runs out. */
final class MapLimits {

  static final int MOST_FEATURES = 1_000_000;
  static final int MOST_POINTS = 10_000_000;

  private final String file;
  private final int mostFeatures;
  private final int mostPoints;
  private int features;
  private int points;

  MapLimits(String file, int mostFeatures, int mostPoints) {
    this.file = file;
    this.mostFeatures = mostFeatures;
    this.mostPoints = mostPoints;
  }

  /** The usual limits. */
  static MapLimits of(String file) {
    return new MapLimits(file, MOST_FEATURES, MOST_POINTS);
  }

  /** One more feature. */
  void feature() {
    if (++features > mostFeatures) {
      throw tooMuch(mostFeatures, "features");
    }
  }

  /** So many more points of lines and outlines. */
  void points(int count) {
    if (count > mostPoints - points) {
      throw tooMuch(mostPoints, "points");
    }
    points += count;
  }

  private InputFault tooMuch(int most, String what) {
    return new InputFault(
        Place.file(file),
        "more than " + most + " " + what,
        "cut the map to the terrain, or leave out what isn't shown");
  }
}
