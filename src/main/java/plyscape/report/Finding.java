package plyscape.report;

/**
 * Something found by a check.
 *
 * @param good whether it's as it should be; else a person should look
 * @param text one sentence with numbers
 */
record Finding(boolean good, String text) {}
