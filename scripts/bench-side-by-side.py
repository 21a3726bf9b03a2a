"""Reference half of bench-side-by-side.sh: the same raster through GDAL and scipy, in-process, after reading."""

import sys
import time

import numpy
from osgeo import gdal, ogr
from scipy import ndimage

gdal.UseExceptions()
directory = sys.argv[1]
SIDE = 4096
mask = numpy.fromfile(directory + "/mask.u8", numpy.uint8).reshape(SIDE, SIDE)
relief = numpy.fromfile(directory + "/relief.f32", numpy.float32).reshape(SIDE, SIDE)
breaks = sorted(float(line) for line in open(directory + "/breaks.txt"))


def timed(what, runs, work):
    best = 1e9
    for _ in range(runs):
        start = time.perf_counter()
        result = work()
        best = min(best, time.perf_counter() - start)
    print(f"{what:62s} {best:7.3f} s", flush=True)
    return result


timed("scipy     distance_transform_edt", 3, lambda: ndimage.distance_transform_edt(mask))
timed("scipy     distance_transform_edt, with indices", 2,
      lambda: ndimage.distance_transform_edt(mask, return_indices=True))


def raster(array, kind):
    source = gdal.GetDriverByName("MEM").Create("", SIDE, SIDE, 1, kind)
    source.SetGeoTransform((0, 1, 0, SIDE, 0, -1))
    source.GetRasterBand(1).WriteArray(array[::-1])
    return source


def layer():
    data = ogr.GetDriverByName("Memory").CreateDataSource("")
    made = data.CreateLayer("x", geom_type=ogr.wkbUnknown)
    for name in ("low", "high"):
        made.CreateField(ogr.FieldDefn(name, ogr.OFTReal))
    return data, made


def contour(source):
    data, made = layer()
    levels = ",".join(repr(level) for level in breaks)
    gdal.ContourGenerateEx(source.GetRasterBand(1), made, options=[
        "FIXED_LEVELS=" + levels, "POLYGONIZE=TRUE", "ELEV_FIELD_MIN=0", "ELEV_FIELD_MAX=1"])
    return data, made.GetFeatureCount()


def polygonize(source):
    data, made = layer()
    gdal.Polygonize(source.GetRasterBand(1), None, made, 0, [])
    return data, made.GetFeatureCount()


heights = raster(relief, gdal.GDT_Float32)
timed(f"gdal {gdal.__version__} contour, polygons (as gdal_contour -p)", 2, lambda: contour(heights))
classes = raster(numpy.digitize(relief, breaks).astype(numpy.uint8), gdal.GDT_Byte)
timed(f"gdal {gdal.__version__} polygonize of the nine classes", 2, lambda: polygonize(classes))
