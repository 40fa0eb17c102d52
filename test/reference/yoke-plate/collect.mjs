// Reduces the tables getdp printed to the numbers of the JSON fixture beside this file.
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const work = process.argv[2]
// table columns: element type, number, x, y, z, parameters A B C, then the value
const rows = (file) =>
  readFileSync(join(work, file), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length > 8)
const round = (x) => Number(x.toPrecision(6))
const last = (row) => row[row.length - 1]
const vector = (row) => row.slice(-3)
const single = (file) => Number(readFileSync(join(work, file), 'utf8').trim().split(/\s+/).pop())
const cut = Math.PI / 12
const polePairs = 6

/** Bz over (radius 60 … 120 mm by 2.5, angle by half a degree; zero at 15 degrees by symmetry). */
function gapOf(tag) {
  const gap = rows(`${tag}-gap.txt`).map((row) => ({ θ: row[5], r: row[6], B: last(row) }))
  const arc = (r) =>
    gap
      .filter((point) => Math.abs(point.r - r) < 1e-6)
      .sort((a, b) => a.θ - b.θ)
      .map((point) => point.B)
  const radii = Array.from({ length: 25 }, (_, i) => 0.06 + 0.0025 * i)
  const table = radii.map((r) => [...arc(r), 0])
  const harmonic = (order, r) => {
    const list = arc(r)
    const sum = list.reduce(
      (s, B, i) => s + (i === 0 ? 0.5 : 1) * B * Math.cos((order * polePairs * i * Math.PI) / 360),
      0,
    )
    return (2 * sum) / list.length
  }
  const at = (r, θ) => {
    if (θ > cut) return -at(r, 2 * cut - θ)
    const [i, f] = split(θ / (Math.PI / 360), 30)
    const [j, h] = split((r - 0.06) / 0.0025, 24)
    const line = (k) => (1 - f) * table[k][i] + f * table[k][i + 1]
    return (1 - h) * line(j) + h * line(j + 1)
  }
  // 40 mm along the radius by 47 mm across, about the middle of a pole
  let window = 0
  for (let i = 0; i < 80; i++)
    for (let j = 0; j < 94; j++) {
      const x = 0.07 + (i + 0.5) * 5e-4
      const y = (j + 0.5) * 2.5e-4
      window += 2 * at(Math.hypot(x, y), Math.atan2(y, x)) * 5e-4 * 2.5e-4
    }
  return {
    fundamental_T: round(harmonic(1, 0.09)),
    third_T: round(harmonic(3, 0.09)),
    window_Wb: round(window),
  }
}
const split = (x, most) => {
  const i = Math.min(most - 1, Math.floor(x))
  return [i, x - i]
}

/** Mean of B along θ over the section between poles: 20 by 4 equal cells. */
function sectionOf(file) {
  const list = rows(file)
  const along = list.map((row) => vector(row)[1] * Math.cos(cut) - vector(row)[0] * Math.sin(cut))
  return round(Math.abs(along.reduce((sum, B) => sum + B, 0) / list.length))
}

/** Flux of one pole through the air behind, off the rims by the plate's thickness, and the largest |B| there. */
function backOf(file, thickness, inner, outer) {
  const dr = (outer - inner) / 20
  const dθ = Math.PI / 180
  let flux = 0
  let largest = 0
  for (const row of rows(file)) {
    const r = row[6]
    if (r < inner + thickness || r > outer - thickness) continue
    flux += 2 * last(row) * r * dr * dθ
    largest = Math.max(largest, Math.hypot(...vector(row)))
  }
  return { backFlux_Wb: round(Math.abs(flux)), backFluxDensity_T: round(largest) }
}

const peakOf = (file) => round(Math.max(...rows(file).map((row) => Math.hypot(...vector(row)))))

const cases = {
  'two-8': ['two', 8, 4, 65, 115],
  'two-5': ['two', 5, 4, 65, 115],
  'two-3': ['two', 3, 4, 65, 115],
  'two-2': ['two', 2, 4, 65, 115],
  'narrow-4': ['two', 4, 4, 72, 108],
  'wide-3': ['two', 3, 4, 50, 130],
  'single-3': ['single', 3, 4, 65, 115],
  'plain-5-4': ['plain', 5, 4, 65, 115],
  'linear-8': ['two', 8, 4, 65, 115],
}
const fixture = {
  what: 'Twelve blocks 40 (radial) x 20 x 10 mm a disc, J 1.28 T, recoil permeability 1.05, mean radius 90 mm, on steel plates of the thickness and radii given, steel of benchmark problem 13 (linear: relative permeability 2000). two: two magnet discs, 16 mm from face to face. plain: 16 mm from magnet face to a plain steel disc of its own thickness. single: open air, field 8 mm above the face. Fundamental and third of Bz at 90 mm, 8 mm from the faces; flux there through a window of 40 (radial) x 47 mm over a pole; mean of B along the circle over the section of the plate between poles; largest |B| halfway through the plate; potential of the plate over the plane between poles; behind the plate, off the rims by its thickness: flux of a pole and largest |B|.',
  error:
    'Finest elements 2.5 mm (coarse), 1.8 mm (fine, one case only), second order; the mesh error is what two-3-coarse and two-3-fine differ by.',
  made: 'plate-sector.geo, plate-sector.pro, run.sh with gmsh 4.8.4 and getdp 3.2.0; steel by Newton’s method',
  runs: {},
}
for (const [name, [kind, t, plain, inner, outer]] of Object.entries(cases))
  for (const density of ['coarse', 'fine']) {
    const tag = `${name}-${density}`
    if (!existsSync(join(work, `${tag}-hz.txt`))) continue
    const log = readFileSync(join(work, `${tag}.getdp.log`), 'utf8')
    fixture.runs[tag] = {
      kind,
      thickness_mm: t,
      innerRadius_mm: inner,
      outerRadius_mm: outer,
      ...(kind === 'plain' ? { plainThickness_mm: plain } : {}),
      unknowns: Number(/(\d+) Dofs/.exec(log)[1]),
      ...gapOf(tag),
      sectionFluxDensity_T: sectionOf(`${tag}-section.txt`),
      peakFluxDensity_T: peakOf(`${tag}-plate.txt`),
      potential_A: round(Math.max(...rows(`${tag}-potential.txt`).map((row) => Math.abs(last(row))))),
      ...backOf(`${tag}-back.txt`, t / 1000, inner / 1000, outer / 1000),
      ...(kind === 'plain' ? { plainSectionFluxDensity_T: sectionOf(`${tag}-plain-section.txt`) } : {}),
      meanMu0Hz_T: round(single(`${tag}-hz.txt`) / single(`${tag}-volume.txt`)),
    }
  }
writeFileSync(join(here, 'plate-sector.json'), `${JSON.stringify(fixture, null, 1)}\n`)
