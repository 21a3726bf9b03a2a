/**
 * Output directories that are whole or not there. Goes in: the directory that the user asked for
 * and the files' contents. Comes out: that directory, complete, or nothing.
 *
 * <p>Always true: files are built in a hidden directory beside the target and moved into place by
 * one rename; a run that fails or is killed leaves nothing under the asked name, and what it left
 * beside it is cleaned away by the next run for the same target; nothing that plyscape didn't write
 * is ever deleted; no name leads out of the directory. Uses no other package but {@code fault} and
 * {@code text}.
 */
package plyscape.output;
