/**
 * From readings of ply edges to a layup with measured bottoms.
 *
 * <p>In: a {@link plyscape.layup.Layup} and {@link plyscape.layup.calibration.Reading}s off a test
 * cut or a panel's edge, mm, positive down. Out: a {@link plyscape.layup.calibration.Calibration}:
 * the layup with what was measured, which readings were set aside and why, how readings scatter.
 * Always true: what is set aside is listed; results don't depend on the order of readings.
 */
package plyscape.layup.calibration;
