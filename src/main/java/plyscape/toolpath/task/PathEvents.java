package plyscape.toolpath.task;

/** Hears how the planning of paths gets on, so that other work can be done beside it. */
public interface PathEvents {

  /** A listener that does nothing. */
  PathEvents NONE = new PathEvents() {};

  /**
   * What all processors were needed for is done; from here on some are idle for much of the time.
   */
  default void spare() {}

  /**
   * The first cutter's run stands, the very one that comes first in the result, and those after it
   * are still to be planned; not heard when there is only one.
   */
  default void first(ToolRun run) {}
}
