package plyscape.plan;

/** Hears how a run gets on. Implementations decide whether and where anything is shown. */
public interface Progress {

  /** A listener that shows nothing. */
  Progress NONE = stage -> {};

  /** A stage begins; the one before it has ended. */
  void stage(String name);

  /** The regions of a panel stand, and its toolpaths are about to be planned. */
  default void regions(Landscape regions) {}

  /** One of several panels has its turn, the number-th of so many, from 1. */
  default void panel(String name, int number, int of) {}

  /** The run has ended, well or not. */
  default void done() {}
}
