/**
 * What would make a layup better: changes that make a thin ply sure to hit, the next measurement by
 * place, and the trade's rules for a panel that stays flat.
 *
 * <p>In: a {@link plyscape.layup.Layup}, its {@link plyscape.layup.Depths} and a {@link
 * plyscape.layup.CutAllowance}. Out: figures, one change at a time with all else as it is; nothing
 * here changes a layup. Lengths mm.
 */
package plyscape.layup.advice;
