/**
 * {@code setup.html}: the sheet that hangs at the machine while it runs, with the panel as it lies,
 * zero, the room that must be free, and the programs in cutting order.
 *
 * <p>In: a {@link plyscape.plan.PanelPlan}; out: one page of A4 or US Letter in black on white.
 * Lengths mm in the panel's frame. Always true: text from users' files is escaped; the page loads
 * nothing.
 */
package plyscape.report.setup;
