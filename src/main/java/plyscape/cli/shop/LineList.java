package plyscape.cli.shop;

import java.util.List;

/** Line numbers for people: runs are joined, {@code 1-4, 7}. */
final class LineList {

  private LineList() {}

  /** Of rising numbers. */
  static String of(List<Integer> numbers) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < numbers.size(); ) {
      int end = i;
      while (end + 1 < numbers.size() && numbers.get(end + 1) == numbers.get(end) + 1) {
        end++;
      }
      out.append(out.length() == 0 ? "" : ", ").append(numbers.get(i));
      out.append(end == i ? "" : "-" + numbers.get(end));
      i = end + 1;
    }
    return out.toString();
  }
}
