package plyscape.layup;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the shop needs to know of a species. Shrinkage from green to oven-dry and the coefficients
 * of change are those of the <i>Wood Handbook</i> (USDA Forest Products Laboratory, FPL-GTR-190),
 * tables 4-3 and 13-5; specific gravities are those of its table 5-3, from memory, and only used to
 * choose a pressure. Yellow-poplar, mahogany and basswood's gravity are from memory too.
 *
 * @param name common name
 * @param key word by which it is found in a ply's free text
 * @param specificGravity at 12 % moisture
 * @param radialShrinkage percent
 * @param tangentialShrinkage percent
 * @param radialChange share of the size a percent of moisture, within 6 to 14 %
 */
public record Wood(
    String name,
    String key,
    double specificGravity,
    double radialShrinkage,
    double tangentialShrinkage,
    double radialChange,
    double tangentialChange) {

  private static final List<Wood> ALL =
      List.of(
          new Wood("black walnut", "walnut", 0.55, 5.5, 7.8, 0.00190, 0.00274),
          new Wood("black cherry", "cherry", 0.50, 3.7, 7.1, 0.00126, 0.00248),
          new Wood("white ash", "ash", 0.60, 4.9, 7.8, 0.00169, 0.00274),
          new Wood("American beech", "beech", 0.64, 5.5, 11.9, 0.00190, 0.00431),
          new Wood("yellow birch", "birch", 0.62, 7.3, 9.5, 0.00256, 0.00338),
          new Wood("basswood", "basswood", 0.37, 6.6, 9.3, 0.00230, 0.00330),
          new Wood("sugar maple", "maple", 0.63, 4.8, 9.9, 0.00165, 0.00353),
          new Wood("white oak", "oak", 0.68, 5.6, 10.5, 0.00180, 0.00365),
          new Wood("yellow-poplar", "poplar", 0.42, 4.6, 8.2, 0.00158, 0.00289),
          new Wood("mahogany", "mahogany", 0.50, 3.0, 4.1, 0.00172, 0.00238));

  /**
   * The species named by a word of the text, such as {@code dyed poplar}; the first of the table if
   * several are.
   */
  public static Optional<Wood> in(String text) {
    List<String> words = List.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    return ALL.stream().filter(w -> words.contains(w.key)).findFirst();
  }

  /**
   * Whether two plies' woods are alike for balance: the same species where both are known, dye and
   * all other words left out of account; else the same words.
   */
  public static boolean alike(String a, String b) {
    Optional<Wood> first = in(a);
    Optional<Wood> second = in(b);
    return first.isPresent() && second.isPresent()
        ? first.equals(second)
        : a.strip().equalsIgnoreCase(b.strip());
  }
}
