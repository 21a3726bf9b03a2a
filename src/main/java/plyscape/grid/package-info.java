/**
 * Regular cell grids, and how ground lies on the panel.
 *
 * <p>In: values or marks, one a cell, row by row from the south-west. Out: values between cells,
 * exact squared distances to marked cells. Units: mm on the panel (origin at its lower left corner,
 * X right, Y up), the CRS's own on the ground, cells where it says so. Always true: a {@link
 * plyscape.grid.CellFrame} has at least one cell and positive cell sizes; results don't depend on
 * the number of threads. Uses no other package; knows neither terrain nor tools.
 */
package plyscape.grid;
