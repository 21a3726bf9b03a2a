/**
 * Wood that a cut leaves standing, and whether it is likely to break.
 *
 * <p>In: where each ply shows and the pockets (panel mm, exact), the depth of each finished face
 * (mm below the top face, positive down), the grain of each ply, the rule. Out: {@link
 * plyscape.standing.WeakPart}s: fins and posts that are narrower than the rule's least width, or
 * too tall for their width. Always true afterwards: each part lies in the standing wood of its own
 * level; parts of one level don't overlap; the same input gives the same parts in the same order.
 *
 * <p>The standing wood of a level is all wood whose face is that of the level's ply or higher, the
 * panel's border included, which is never cut. A part of it counts when it vanishes as the wood is
 * opened by a disk (shrunk by its radius and grown again) and reaches farther than the disk's
 * diameter from what is left, or touches nothing that is left: corners alone, which any opening
 * rounds, are no fins. The slenderness that wood bears is common practice, without a source.
 *
 * <p>Uses {@code planar} and {@code grid}; knows no tools and no settings.
 */
package plyscape.standing;
