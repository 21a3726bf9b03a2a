package plyscape.plan;

import java.util.List;
import plyscape.bands.Bands;
import plyscape.fault.Warning;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.region.Tiling;
import plyscape.simulate.Verification;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * A finished plan: everything that is drawn, reported and written. Immutable.
 *
 * @param job what was asked
 * @param depths every ply of the layup, top to bottom
 * @param thicknessMm of the pressed panel
 * @param terrain the ground over the carved area
 * @param bands elevations to plies
 * @param zones zones on the panel
 * @param tiling regions and pockets
 * @param programs one a used tool, in cutting order; empty for a preview
 * @param time totals; null for a preview
 * @param verification outcome of the simulation; null for a preview
 * @param warnings all, in the order they arose
 * @param version of plyscape
 */
public record Plan(
    Job job,
    List<PlyDepth> depths,
    double thicknessMm,
    Terrain terrain,
    Bands bands,
    List<Zone> zones,
    Tiling tiling,
    List<ToolProgram> programs,
    PlanTime time,
    Verification verification,
    List<Warning> warnings,
    String version) {}
