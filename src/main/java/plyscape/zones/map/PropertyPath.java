package plyscape.zones.map;

import java.util.Map;

/**
 * Finds a property by its name, or by a path with points through nested ones, such as {@code
 * tags.highway}.
 */
public final class PropertyPath {

  private PropertyPath() {}

  /** The value, or null. A property whose name has the point in it comes before a nested one. */
  public static Object value(Map<?, ?> properties, String path) {
    Object direct = properties.get(path);
    if (direct != null) {
      return direct;
    }
    for (int dot = path.indexOf('.'); dot > 0; dot = path.indexOf('.', dot + 1)) {
      if (properties.get(path.substring(0, dot)) instanceof Map<?, ?> inner) {
        Object value = value(inner, path.substring(dot + 1));
        if (value != null) {
          return value;
        }
      }
    }
    return null;
  }

  /** A property's value as a number, also where it stands as text; null when it is none. */
  public static Double number(Object value) {
    if (value instanceof Double number) {
      return number;
    }
    if (value instanceof String text) {
      try {
        double number = Double.parseDouble(text.strip());
        return Double.isFinite(number) ? number : null;
      } catch (NumberFormatException e) {
        return null;
      }
    }
    return null;
  }
}
