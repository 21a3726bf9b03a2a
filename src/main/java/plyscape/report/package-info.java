/**
 * What a finished plan says to a person: {@code report.html}, {@code index.html} over several
 * panels, the table of plies for the console. {@code report.json} is for programs, {@code
 * report.setup} for the machine.
 *
 * <p>In: a {@link plyscape.plan.Plan}; out: text, UTF-8, LF. Lengths mm, areas mm2, times s, depths
 * positive down, elevations m. Always true: the page shows the numbers of {@code plan.json},
 * rounded; everything that came from the user's files is escaped; the page loads nothing from
 * anywhere; the same plan gives the same bytes.
 *
 * <p>Uses {@code plan} and the records it holds, {@code render} for pictures, {@code text}, {@code
 * fault}.
 */
package plyscape.report;
