/**
 * Series of jobs: which there are and whose turn each is ({@link plyscape.batch.JobList}, {@link
 * plyscape.batch.JobTable}, {@link plyscape.batch.Share}), which outputs of an earlier run still
 * hold ({@link plyscape.batch.FinishedOutput}), how each job went ({@link
 * plyscape.batch.BatchJournal}), and a page over what all who shared have made ({@link
 * plyscape.batch.Gathered}, {@link plyscape.batch.SeriesPage}). How many jobs may run at a time
 * goes by the memory that they need ({@link plyscape.batch.Admission}).
 *
 * <p>Always true: an output holds only if all its files are there and it was made by the same
 * version, of the same files, with the same options. A job's share goes by its place in the list
 * alone. Nothing here runs a job. Uses {@code job}, {@code files} and, for pictures, {@code
 * render}.
 */
package plyscape.batch;
