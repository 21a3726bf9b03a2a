/**
 * Pictures of a finished plan, and its sheet; vector files of its layers are {@code layer}'s.
 *
 * <p>In: a {@link plyscape.plan.Plan}. Out: bytes of PNG files (top view, cross-section, risk map),
 * text of the SVG sheet, character art for a terminal. Panel coordinates are mm with Y up, depths
 * mm positive down; pictures and SVG have Y down, and only the last step turns it.
 *
 * <p>Always true: the same plan gives the same bytes on every machine. No system font and no
 * platform drawing code is used: text is drawn with {@link plyscape.lettering.StrokeAlphabet},
 * lines by {@link plyscape.render.Canvas}. Nothing here decides anything about the panel; it only
 * reads the plan. Names from the user's files are escaped for the format they go into.
 *
 * <p>Uses: {@code layer}, {@code plan} and the records that a plan holds, {@code fault}, {@code
 * text}.
 */
package plyscape.render;
