package plyscape.fault;

/**
 * Something the user should know that doesn't stop the run. Immutable.
 *
 * @param code stable short code in kebab case, for scripts and tallies, e.g. {@code thin-ply}
 * @param message one sentence for a person, with numbers and what would help
 * @param where the place: a ply, a zone, a file, a panel coordinate; may be ""
 */
public record Warning(String code, String message, String where) {}
