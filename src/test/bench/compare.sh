#!/usr/bin/env bash
# fieldsalt and the reference libraries (R gstat; gdal_grid for inverse distance) in turn on the same
# data; medians over rounds and their ratios. Compile first: mvn -q test-compile (for "large":
# mvn -q -DskipTests package)
# usage: src/test/bench/compare.sh [TASK ...]
#   tasks: nearest nearest-10m shared all idw leave-one-out reml large; all of them by default
#   ROUNDS=5 rounds; ALL_CELL=2 cell of gstat's side of "all" in metres (its time is scaled by cells)
set -euo pipefail
export LC_ALL=C
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../../.." && pwd)
rounds=${ROUNDS:-5}
cores=$(nproc)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
java_classes="$root/target/classes:$root/target/test-classes"

times() { java -cp "$java_classes" fieldsalt.surface.KernelTimes "$@"; }

# median of the numbers in a file
median() { sort -g "$1" | awk '{v[NR]=$1} END {print NR % 2 ? v[(NR+1)/2] : (v[NR/2] + v[NR/2+1]) / 2}'; }

# note NAME COMMAND...: the seconds that a command prints, and those of its whole process
note() {
  local name=$1 start=$EPOCHREALTIME
  shift
  "$@" >"$work/out"
  awk -v a="$start" -v b="$EPOCHREALTIME" 'BEGIN {print b - a}' >>"$work/$name.whole"
  tail -n 1 "$work/out" >>"$work/$name.inside"
}

ratio() { awk -v a="$1" -v b="$2" 'BEGIN {printf "%.1f", a / b}'; }

# row TITLE REFERENCE_SECONDS_INSIDE REFERENCE_SECONDS_WHOLE: prints one line of the table
row() {
  local one two cold
  one=$(median "$work/one.inside") two=$(median "$work/two.inside") cold=$(median "$work/cold.whole")
  printf '| %s | %.3f | %.3f | %.3f | %.3f | %.3f | %s | %s | %s |\n' "$1" "$2" "$3" "$one" "$two" \
    "$cold" "$(ratio "$2" "$one")" "$(ratio "$2" "$two")" "$(ratio "$3" "$cold")"
  rm -f "$work"/*.inside "$work"/*.whole
}

# map TITLE TASK CSV CELL WARM_REPETITIONS GSTAT_NMAX GSTAT_CELL
map() {
  local title=$1 task=$2 csv=$3 cell=$4 warm=$5 nmax=$6 gcell=$7 scale
  for _ in $(seq "$rounds"); do
    note reference Rscript "$here/kriging.R" "$csv" "$nmax" "$gcell" "$work/reference.raw"
    note one times "$task" "$csv" "$cell" 1 "$warm"
    note two times "$task" "$csv" "$cell" "$cores" "$warm"
    note cold times "$task" "$csv" "$cell" "$cores" 1 "$work/ours.raw"
  done
  if [ "$cell" = "$gcell" ] && [ "$task" != shared-96 ]; then
    Rscript "$here/equal.R" "$work/ours.raw" "$work/reference.raw" >&2
  fi
  scale=$(awk -v g="$gcell" -v c="$cell" 'BEGIN {print (g / c) ^ 2}')
  row "$title" "$(awk -v t="$(median "$work/reference.inside")" -v s="$scale" 'BEGIN {print t * s}')" \
    "$(awk -v i="$(median "$work/reference.inside")" -v w="$(median "$work/reference.whole")" \
      -v s="$scale" 'BEGIN {print i * s + w - i}')"
}

idw() {
  printf '%s\n' '<OGRVRTDataSource><OGRVRTLayer name="p">' \
    "<SrcDataSource>CSV:$work/points50000.csv</SrcDataSource><SrcLayer>points50000</SrcLayer>" \
    '<GeometryType>wkbPoint</GeometryType><GeometryField encoding="PointFromColumns" x="x" y="y" z="z"/>' \
    '</OGRVRTLayer></OGRVRTDataSource>' >"$work/points.vrt"
  for _ in $(seq "$rounds"); do
    note reference gdal_grid -q -a invdistnn:power=2:radius=30:max_points=12 -l p -txe 0 2000 \
      -tye 2000 0 -outsize 1000 1000 -ot Float32 --config GDAL_NUM_THREADS ALL_CPUS \
      "$work/points.vrt" "$work/idw.tif"
    note one times idw-12 "$work/points50000.csv" 2 1 6
    note two times idw-12 "$work/points50000.csv" 2 "$cores" 6
    note cold times idw-12 "$work/points50000.csv" 2 "$cores" 1 "$work/ours.raw"
  done
  cp "$work/reference.whole" "$work/reference.inside"
  row "inverse distance, 12 nearest, against gdal_grid" "$(median "$work/reference.whole")" \
    "$(median "$work/reference.whole")"
}

# small TASK REFERENCE_TITLE COMMAND...: a task of milliseconds on 500 points
small() {
  local task=$1 title=$2 repetitions=$3
  shift 3
  for _ in $(seq "$rounds"); do
    note reference "$@"
    note one times "$task" "$work/points500.csv" 2 1 "$repetitions"
  done
  awk -v t="$title" -v a="$(median "$work/reference.inside")" -v b="$(median "$work/one.inside")" \
    'BEGIN {printf "| %s | %.6f | | %.6f | | | %.2f | | |\n", t, a, b, a / b}'
  rm -f "$work"/*.inside "$work"/*.whole
}

# 10,000,000 cells streamed into two GeoTIFFs, each round in a new process, against the same computation alone
large() {
  local program=(java -cp "$java_classes:$root/target/lib/*" fieldsalt.handover.LargeRasterTimes "$many")
  for _ in $(seq "$rounds"); do
    "${program[@]}" >"$work/out" && awk '{print $1}' "$work/out" >>"$work/alone"
    "${program[@]}" "$work" >"$work/out"
    awk '{print $1}' "$work/out" >>"$work/both"
    awk '{print $2}' "$work/out" >>"$work/memory"
  done
  local alone both
  alone=$(median "$work/alone") both=$(median "$work/both")
  printf '\n10,000,000 cells: computation alone %.2f s, with two rasters written %.2f s, ratio %s; most memory of the process %s MB\n' \
    "$alone" "$both" "$(ratio "$both" "$alone")" "$(median "$work/memory")"
}

times data "$work"
many="$work/points50000.csv"
few="$work/points500.csv"
echo "| work | reference, in process, s | its whole process, s | 1 core, warm, s | $cores cores, warm, s | whole process, cold, $cores cores, s | ratio warm 1 core | ratio warm $cores cores | ratio cold |"
echo "| --- | --- | --- | --- | --- | --- | --- | --- | --- |"
for task in ${@:-nearest nearest-10m shared all idw leave-one-out reml large}; do
  case $task in
    nearest) map "exact 32 nearest of 50,000, 1,000,000 cells" nearest-32 "$many" 2 4 32 2 ;;
    nearest-10m) map "exact 32 nearest of 50,000, 40,000 cells of 10 m" nearest-32 "$many" 10 20 32 10 ;;
    shared) map "shared 96 of 50,000, 1,000,000 cells" shared-96 "$many" 2 6 32 "${SHARED_CELL:-2}" ;;
    all) map "all of 500, 1,000,000 cells" all "$few" 2 2 0 "${ALL_CELL:-2}" ;;
    idw) idw ;;
    leave-one-out) small leave-one-out "leave-one-out, 500 points, against krige.cv" 200 \
      Rscript "$here/crossvalidation.R" "$few" ;;
    reml) small reml "bare Cholesky of 500 against one REML evaluation" 2000 \
      times cholesky "$few" 2 1 2000 ;;
    large) large ;;
    *) echo "no such task: $task" >&2; exit 2 ;;
  esac
done
