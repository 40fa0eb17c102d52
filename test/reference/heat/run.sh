#!/bin/sh
# Remakes the finite-element fixture of this folder: needs gmsh 4.8 or later, getdp 3.2 or later, node 20.
# Each run stays under two minutes and 200 MB. Usage: sh run.sh [scratch folder]
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
npx tsx "$here/settings.ts" > "$work/runs.txt"
cd "$work"
while IFS='|' read -r tag mesh settings; do
  # shellcheck disable=SC2086
  gmsh -2 -order 2 $mesh "$here/slice.geo" -format msh2 -o "$tag.msh" > "$tag.gmsh.log" < /dev/null
  # shellcheck disable=SC2086
  getdp "$here/slice.pro" -name "$work/$tag" -msh "$tag.msh" $settings -setstring tag "$work/$tag" -solve S -pos S \
    > "$tag.getdp.log" < /dev/null
done < runs.txt
cd "$here"
npx tsx collect.ts "$work"
