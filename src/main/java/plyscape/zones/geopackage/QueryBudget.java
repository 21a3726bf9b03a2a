package plyscape.zones.geopackage;

import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.ProgressHandler;

/**
 * Breaks off a query that works on without giving a row. Work is counted in steps of SQLite's own
 * machine, not in seconds, so that the outcome doesn't depend on the computer.
 */
final class QueryBudget extends ProgressHandler {

  /** Steps from one look to the next. */
  private static final int STEPS_A_LOOK = 100_000;

  /**
   * Looks without a row before the query is given up: 100 million steps, a second or two. A scan
   * takes some ten steps a row, so a view may search about ten million rows for one.
   */
  private static final int MOST_LOOKS = 1_000;

  private int looks;

  private QueryBudget() {}

  /** Watches all queries of a connection. */
  static QueryBudget on(Connection connection) throws SQLException {
    QueryBudget budget = new QueryBudget();
    ProgressHandler.setHandler(connection, STEPS_A_LOOK, budget);
    return budget;
  }

  /** A row has come. */
  void refill() {
    looks = 0;
  }

  @Override
  protected int progress() {
    return ++looks > MOST_LOOKS ? 1 : 0;
  }
}
