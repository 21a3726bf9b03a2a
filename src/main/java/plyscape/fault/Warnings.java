package plyscape.fault;

import java.util.ArrayList;
import java.util.List;

/**
 * Collects the warnings of one run in the order they arise. Not safe for use by several threads.
 */
public final class Warnings {

  private final List<Warning> list = new ArrayList<>();

  /** Adds one. */
  public void add(String code, String message, String where) {
    list.add(new Warning(code, message, where));
  }

  /** All so far, in order. */
  public List<Warning> list() {
    return List.copyOf(list);
  }
}
