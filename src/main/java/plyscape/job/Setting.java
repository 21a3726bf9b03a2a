package plyscape.job;

/**
 * A setting given on the command line in place of the job file's. Immutable.
 *
 * @param key dotted path of the key, such as {@code panel.width} or {@code tools.2.feed}; entries
 *     of lists by number from 1 or by their name
 * @param value YAML text of the value
 * @param option what the user typed, for messages, such as {@code --width}
 */
public record Setting(String key, String value, String option) {}
