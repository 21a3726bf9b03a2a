/**
 * The files that plyscape reads and writes, as files: what each one of an output is called and
 * where it lies ({@link plyscape.files.PlanFiles}), and an input read whole, with every way in
 * which that can go wrong said ({@link plyscape.files.InputFile}); its digest, and what several
 * jobs read of it ({@link plyscape.files.InputCache}).
 *
 * <p>Always true: names are relative, with {@code /}, and never lead out of their directory; no
 * other package spells them. What stands in the files is the business of those who write them. Uses
 * {@code fault} and {@code text}.
 */
package plyscape.files;
