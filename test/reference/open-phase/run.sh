#!/bin/sh
# Runs every netlist of this folder through ngspice and writes what it measured to results.json.
set -e
cd "$(dirname "$0")"
out=results.json.new
version=$(ngspice --version | grep -o 'ngspice-[0-9.]*' | head -1)
printf '{\n  "program": "%s"' "$version" >"$out"
for netlist in *.cir; do
  printf ',\n  "%s": { ' "${netlist%.cir}" >>"$out"
  ngspice -b "$netlist" 2>/dev/null |
    awk '/^(dc_(mean|rms)|phase_[abc]_(rms|mean)|diode_[tm][abc][pn]_(rms|mean)|shaft|shaft_(max|min)) +=/ { printf "%s\"%s\": %.6g", (n++ ? ", " : ""), $1, $3 }' >>"$out"
  printf ' }' >>"$out"
done
printf '\n}\n' >>"$out"
mv "$out" results.json
