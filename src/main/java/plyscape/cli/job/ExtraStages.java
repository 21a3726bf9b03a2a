package plyscape.cli.job;

import java.util.List;
import java.util.Set;
import plyscape.files.PlanFiles;
import plyscape.output.FileSink;
import plyscape.plan.Landscape;
import plyscape.plan.Plan;
import plyscape.render.BlockPicture;
import plyscape.render.RiskPicture;
import plyscape.render.SvgSheet;
import plyscape.render.layer.DxfLayers;
import plyscape.render.layer.GeoJsonLayers;
import plyscape.render.layer.LayerFile;

/** Stages that also write what was asked for beyond the usual files. */
record ExtraStages(Stages usual, Set<ExtraFile> extras) implements StagesDecorator {

  @Override
  public List<String> moreFiles() {
    return extras.stream().map(ExtraFile::fileName).sorted().toList();
  }

  @Override
  public void write(Plan plan, FileSink out) {
    usual.write(plan, out);
    Landscape regions = plan.landscape();
    for (ExtraFile extra : extras) {
      switch (extra) {
        case GEOJSON -> layers(GeoJsonLayers.write(regions), out);
        case DXF -> layers(DxfLayers.write(regions), out);
        case SHEET -> out.write(PlanFiles.SHEET, SvgSheet.write(regions));
        case BLOCK -> out.write(PlanFiles.BLOCK, BlockPicture.png(regions));
        case RISK -> out.write(PlanFiles.RISK, RiskPicture.png(regions));
      }
    }
  }

  private static void layers(List<LayerFile> files, FileSink out) {
    for (LayerFile file : files) {
      out.write(PlanFiles.layer(file.name()), file.text());
    }
  }
}
