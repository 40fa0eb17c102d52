#!/bin/sh
# Remakes the finite-element fixtures of this folder: needs gmsh 4.8 or later, getdp 3.2 or later, node 20.
# Each run stays under five minutes and 4 GB on one core. Usage: sh run.sh [scratch folder]
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
cd "$work"
mesh() { # name variant h
  gmsh -3 -setnumber variant "$2" -setnumber h "$3" "$here/disc-sector.geo" -format msh2 -o "$1.msh" > "$1.gmsh.log"
}
solve() { # mesh tag variant murec mur
  getdp "$here/disc-sector.pro" -name "$work/$2" -msh "$1.msh" -setnumber variant "$3" -setnumber murec "$4" -setnumber mur "$5" \
    -setstring tag "$work/$2" -solve S -pos S > "$2.getdp.log"
}
mesh two-coarse 0 2
mesh two-fine 0 1.25
mesh plain-coarse 1 2
mesh plain-fine 1 1.4
mesh single-coarse 2 2
mesh single-fine 2 1.4
for density in coarse fine; do
  solve two-$density two-105-$density 0 1.05 2000
  solve two-$density two-100-$density 0 1 2000
  solve plain-$density plain-105-$density 1 1.05 2000
  solve plain-$density plain-100-$density 1 1 2000
  solve single-$density single-105-$density 2 1.05 2000
  solve single-$density single-100-$density 2 1 2000
done
solve two-coarse two-110-coarse 0 1.1 2000
solve two-fine two-105-ideal 0 1.05 1e6
for density in coarse fine; do
  size=$([ $density = coarse ] && echo 2 || echo 1)
  gmsh -2 -order 2 -setnumber h "$size" "$here/array-pitch.geo" -format msh2 -o "array-$density.msh" > "array-$density.gmsh.log"
  for between in 100 105; do
    getdp "$here/array-pitch.pro" -name "$work/array-$between-$density" -msh "array-$density.msh" -setnumber murec 1.05 \
      -setnumber mubetween "$(echo $between | sed 's/1/1./')" -setstring tag "$work/array-$between-$density" \
      -solve S -pos S > "array-$between-$density.getdp.log"
  done
done
node "$here/collect.mjs" "$work"
