#!/usr/bin/env bash
# What GDAL finds in the maps that the tests read, against the figures that the tests hold us to. Needs ogr2ogr and ogrinfo with SpatiaLite.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../src/test/resources/plyscape/zones/formats"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# file as we name it, file as GDAL does, layer, longest edge in units of its CRS, property
found() {
  ogr2ogr -q -f SQLite -dsco SPATIALITE=YES "$work/utm.sqlite" "$2" "$3" -segmentize "$4" -t_srs EPSG:32630 -nln t -nlt GEOMETRY
  ogrinfo -q "$work/utm.sqlite" -dialect SQLite -sql "select '$1' || ', ' || '$3' || ', $5, ' || \"$5\" || ', ' || count(*) || ', '
    || round(sum(st_area(geometry)), 2) || ', ' || round(sum(st_length(geometry)), 2) || ', ' || round(avg(st_x(st_centroid(geometry))), 2)
    || ', ' || round(avg(st_y(st_centroid(geometry))), 2) as line from t where \"$5\" is not null group by \"$5\"" |
    sed -n 's/^  line (String) = //p'
  rm "$work/utm.sqlite"
}

{
  found areas.shp areas.shp areas 20 kind
  found valley.zip /vsizip/valley.zip areas 20 kind
  found valley.zip /vsizip/valley.zip lanes 0.0001 kind
  found valley.kml valley.kml valley 0.0001 kind
  found walk.gpx walk.gpx tracks 0.0001 name
  found valley.osm valley.osm multipolygons 0.0001 natural
  found valley.osm valley.osm multipolygons 0.0001 building
  found valley.osm valley.osm lines 0.0001 highway
} > "$work/formats.csv"
[ "${1:-}" != --write ] || { { echo "# file, layer of GDAL's, property, value, features, area m2, length m, mean of centroids x, y"; cat "$work/formats.csv"; } > formats.csv; }
diff <(grep -v '^#' formats.csv) "$work/formats.csv" && echo "GDAL finds the same in all of them."
