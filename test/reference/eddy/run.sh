#!/bin/sh
# Remakes the finite-element fixture of this folder: needs gmsh 4.8 or later, getdp 3.2 or later, node 20.
# Each run takes seconds and less than 300 MB. Usage: sh run.sh [scratch folder]
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
cd "$work"
# conductors in a uniform field of 1 T peak: kind, frequencies at which d/δ is 0.5, 1, 2, 4, 8 for 2 mm of copper
for density in coarse fine; do
  size=$([ $density = coarse ] && echo 2 || echo 1)
  for kind in 0 1; do
    gmsh -2 -order 2 -setnumber kind $kind -setnumber h "$size" "$here/strand.geo" -format msh2 -o "strand-$kind-$density.msh" > "strand-$kind-$density.gmsh.log"
    for f in 273 1092 4366 17466 69863; do
      for angle in 0 90; do
        [ $kind = 0 ] && [ $angle = 0 ] && continue
        tag="strand-$kind-$angle-$f-$density"
        getdp "$here/strand.pro" -name "$work/$tag" -msh "strand-$kind-$density.msh" -setnumber f $f -setnumber angle $angle \
          -setstring tag "$work/$tag" -solve S -pos S > "$tag.getdp.log"
      done
    done
  done
  for f in 1 10 100; do
    tag="steel-$f-$density"
    getdp "$here/strand.pro" -name "$work/$tag" -msh "strand-0-$density.msh" -setnumber f $f -setnumber mur 200 -setnumber rho 1.4e-7 \
      -setstring tag "$work/$tag" -solve S -pos S > "$tag.getdp.log"
  done
done
# a plate over a moving row of magnets
for density in coarse fine; do
  size=$([ $density = coarse ] && echo 2 || echo 1)
  for thick in 1 3 8; do
    gmsh -2 -order 2 -setnumber thick $thick -setnumber h "$size" "$here/plate.geo" -format msh2 -o "plate-$thick-$density.msh" > "plate-$thick-$density.gmsh.log"
    for v in 0 3 15 60; do
      tag="plate-$thick-$v-$density"
      getdp "$here/plate.pro" -name "$work/$tag" -msh "plate-$thick-$density.msh" -setnumber v $v -setstring tag "$work/$tag" \
        -solve S -pos S > "$tag.getdp.log"
    done
  done
done
node "$here/collect.mjs" "$work"
