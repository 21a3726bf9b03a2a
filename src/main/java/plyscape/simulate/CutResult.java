package plyscape.simulate;

import java.util.List;

/**
 * What a simulated cut gives. Immutable but for the arrays, which callers don't change.
 *
 * @param verification the figures
 * @param field the surface after the cut; of a bent panel in the depths of the flat plan
 * @param targetOf index of the target at each cell of the field, -1 where the panel stays uncut
 * @param verdicts code of {@link CellVerdict} of each cell
 * @param differences connected areas gouged or left uncut, the largest first
 */
public record CutResult(
    Verification verification,
    HeightField field,
    short[] targetOf,
    byte[] verdicts,
    List<Difference> differences) {}
