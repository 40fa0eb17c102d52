#!/bin/sh
# Remakes the finite-element fixtures of this folder: needs gmsh 4.8, getdp 3.2, node 20. Usage: sh run.sh [scratch folder]
# Each run stays under four minutes and 2 GB on one core.
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
cd "$work" || exit 1
mesh() { # name ring ringThickness sleeve halfIron h
  gmsh -3 -setnumber ring "$2" -setnumber ringThickness "$3" -setnumber sleeve "$4" -setnumber halfIron "$5" -setnumber h "$6" \
    "$here/drum-sector.geo" -format msh2 -o "$1.msh" > "$1.gmsh.log"
}
solve() { # mesh tag curve mur murec, then more settings
  m=$1; tag=$2; curve=$3; mur=$4; rec=$5; shift 5
  getdp "$here/drum-sector.pro" -name "$work/$tag" -msh "$m.msh" -setnumber curve "$curve" -setnumber mur "$mur" -setnumber murec "$rec" \
    "$@" -setstring tag "$work/$tag" -solve S -pos S > "$tag.getdp.log"
}
ring6="-setnumber r1 41.3e-3 -setnumber r2 47.3e-3"
ring2="-setnumber r1 45.3e-3 -setnumber r2 47.3e-3"
sleeve="-setnumber r1 62e-3 -setnumber r2 65e-3"
outer6="-setnumber r1 53.2e-3 -setnumber r2 59.2e-3 -setnumber inward 1 -setnumber rw 42.5e-3 -setnumber rb 65e-3"
long="-setnumber zi 50e-3"
mesh open 0 6 0 30 1
solve open open 0 1 1 $ring6
mesh ring2 1 2 0 30 1.3
solve ring2 ring2-curve 1 1 1.05 $ring2
mesh ring6 1 6 0 30 1
solve ring6 ring6-ideal 0 1e6 1 $ring6
solve ring6 ring6-recoil 0 1e6 1.05 $ring6
mesh ring6-long 1 6 0 50 1
solve ring6-long ring6-long-ideal 0 1e6 1 $ring6 $long
mesh both-long 1 6 1 50 1
solve both-long both-long-ideal 0 1e6 1 $ring6 $long
mesh both 1 6 1 30 1
solve both both-ideal 0 1e6 1 $ring6
solve both both-sleeve 0 1e6 1 $sleeve
mesh sleeve 0 6 1 30 1
solve sleeve sleeve-ideal 0 1e6 1 $sleeve
mesh inward 2 6 0 30 1
solve inward inward-ideal 0 1e6 1 $outer6
mesh ring2-long 1 2 0 50 1.2
solve ring2-long ring2-long-thirty 0 30 1 $ring2 $long
mesh both2 1 2 1 30 1.3
solve both2 both2-curve 1 1 1.05 $ring2
node "$here/collect.mjs" "$work"
