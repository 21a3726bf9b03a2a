package plyscape.zones.map;

import plyscape.fault.InputFault;
import plyscape.fault.Limit;
import plyscape.fault.Place;

/** Counts what is read of a map file and refuses what no panel can show, before memory runs out. */
public final class MapLimits {

  private final String file;
  private final long mostFeatures;
  private final long mostPoints;
  private int features;
  private long points;

  public MapLimits(String file, long mostFeatures, long mostPoints) {
    this.file = file;
    this.mostFeatures = mostFeatures;
    this.mostPoints = mostPoints;
  }

  /** The limits that hold. */
  public static MapLimits of(String file) {
    return new MapLimits(file, Limit.FEATURES.value(), Limit.POINTS.value());
  }

  /** One more feature. */
  public void feature() {
    if (++features > mostFeatures) {
      throw tooMuch(mostFeatures, Limit.FEATURES);
    }
  }

  /** So many more points of lines and outlines. */
  public void points(int count) {
    if (count > mostPoints - points) {
      throw tooMuch(mostPoints, Limit.POINTS);
    }
    points += count;
  }

  private InputFault tooMuch(long most, Limit limit) {
    return new InputFault(
        Place.file(file),
        "more than " + most + " " + limit.word(),
        "cut the map to the terrain, or leave out what isn't shown; " + limit.help());
  }
}
