#!/bin/sh
# Remakes the finite-element fixture of this folder: needs gmsh 4.8 or later, getdp 3.2 or later, node 20.
# Each run stays under four minutes and 3 GB on one core. Usage: sh run.sh [scratch folder]
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
cd "$work"
run() { # tag h variant t plain inner outer linear
  gmsh -3 -setnumber h "$2" -setnumber variant "$3" -setnumber t "$4" -setnumber plain "$5" -setnumber inner "$6" \
    -setnumber outer "$7" "$here/plate-sector.geo" -format msh2 -o "$1.msh" > "$1.gmsh.log"
  getdp "$here/plate-sector.pro" -name "$work/$1" -msh "$1.msh" -setnumber variant "$3" -setnumber t "$4" \
    -setnumber plain "$5" -setnumber inner "$6" -setnumber outer "$7" -setnumber linear "$8" \
    -setstring tag "$work/$1" -solve S -pos S > "$1.getdp.log"
  rm -f "$1.pre" "$1.res" "$1.msh"
}
run two-3-coarse 2.5 0 3 0 65 115 0
run two-8-coarse 2.5 0 8 0 65 115 0
run two-5-coarse 2.5 0 5 0 65 115 0
run two-2-coarse 2.5 0 2 0 65 115 0
run plain-5-4-coarse 2.5 1 5 4 65 115 0
run single-3-coarse 2.5 2 3 0 65 115 0
run narrow-4-coarse 2.5 0 4 0 72 108 0
run wide-3-coarse 2.5 0 3 0 50 130 0
run linear-8-coarse 2.5 0 8 0 65 115 1
run two-3-fine 1.8 0 3 0 65 115 0
node "$here/collect.mjs" "$work"
