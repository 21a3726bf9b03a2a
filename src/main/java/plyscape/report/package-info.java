/**
 * What a finished plan says in words and numbers: {@code plan.json} (written and read back), {@code
 * report.html}, {@code setup.html} for the machine, {@code index.html} over several panels, the
 * table of plies for the console.
 *
 * <p>In: a {@link plyscape.plan.Plan}; out: text, UTF-8, LF. Lengths mm, areas mm2, times s, depths
 * positive down, elevations m, as the names of the keys say. Always true: numbers in {@code
 * plan.json} have full precision, the page shows the same numbers rounded; everything that came
 * from the user's files is escaped; the page loads nothing from anywhere; the same plan gives the
 * same bytes.
 *
 * <p>Uses {@code plan} and the records it holds, {@code render} for pictures, {@code text}, {@code
 * fault}.
 */
package plyscape.report;
