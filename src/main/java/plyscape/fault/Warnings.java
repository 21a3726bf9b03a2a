package plyscape.fault;

import java.util.ArrayList;
import java.util.List;

/**
 * Collects the warnings of one run in the order they arise. Not safe for use by several threads.
 */
public final class Warnings {

  private final List<Warning> list = new ArrayList<>();
  private final Warnings whole;
  private final String place;

  /** Of a whole run. */
  public Warnings() {
    this(null, "");
  }

  private Warnings(Warnings whole, String place) {
    this.whole = whole;
    this.place = place;
  }

  /**
   * Those of a part of the run, which reach the whole as well.
   *
   * @param name put before the place of each on its way to the whole; may be ""
   */
  public Warnings part(String name) {
    return new Warnings(this, name);
  }

  /** Adds one. */
  public void add(String code, String message, String where) {
    list.add(new Warning(code, message, where));
    if (whole != null) {
      whole.add(code, message, (place + " " + where).strip());
    }
  }

  /** Adds them one after the other. */
  public void addAll(List<Warning> more) {
    more.forEach(warning -> add(warning.code(), warning.message(), warning.where()));
  }

  /** All so far, in order. */
  public List<Warning> list() {
    return List.copyOf(list);
  }
}
