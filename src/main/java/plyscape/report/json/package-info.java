/**
 * {@code plan.json}, {@code tiles.json} and {@code faces.json}: written, and read back for those
 * who check an output or go on from it.
 *
 * <p>In: a {@link plyscape.plan.Plan}; out: text, UTF-8, LF, after section 8 of src/contract.md.
 * Lengths mm, areas mm2, times s, depths positive down, elevations m, as the names of the keys say.
 * Always true: numbers have full precision; the same plan gives the same bytes; readers refuse what
 * they need and don't find.
 */
package plyscape.report.json;
