// Gathers the tables getdp printed into the JSON fixture beside this file.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const work = process.argv[2]
const half = Math.PI / 12
const text = (file) => readFileSync(join(work, file), 'utf8')
const rows = (file) =>
  text(file)
    .trim()
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => line.trim().split(/\s+/).map(Number))
const round = (x, digits) => Number(x.toPrecision(digits))
const last = (row) => row[row.length - 1]

/** Points of a table by height and then by the other coordinate, with the field through and along the circle. */
function table(file, key) {
  const points = rows(file).map((row) => {
    const [x, y, z] = row.slice(2, 5)
    const [bx, by] = row.slice(-3)
    const r = Math.hypot(x, y)
    return {
      z: Math.round(z * 1e7),
      at: key(x, y),
      normal: (bx * x + by * y) / r,
      tangential: (by * x - bx * y) / r,
    }
  })
  const heights = [...new Set(points.map(({ z }) => z))].sort((a, b) => a - b)
  return heights.map((z) => points.filter((p) => p.z === z).sort((a, b) => a.at - b.at))
}
/** Trapezoidal mean over equal steps, exact for whole waves. */
const mean = (values) =>
  (values.reduce((a, b) => a + b, 0) - (values[0] + values[values.length - 1]) / 2) / (values.length - 1)
const simpson = (values) =>
  values.reduce((sum, v, i) => sum + v * (i === 0 || i === values.length - 1 ? 1 : i % 2 ? 4 : 2), 0) /
  (3 * (values.length - 1))
const amplitude = (line, order, what) =>
  2 * mean(line.map((p) => p[what] * (what === 'normal' ? Math.cos : Math.sin)(order * p.at)))

function run(tag, radius, more) {
  const gap = table(`${tag}-gap.txt`, (x, y) => Math.atan2(y, x))
  const orders = {}
  for (const order of [6, 18, 30])
    orders[order] = {
      normal_T: round(amplitude(gap[0], order, 'normal'), 5),
      tangential_T: round(amplitude(gap[0], order, 'tangential'), 5),
      normalOverRun_T: round(simpson(gap.map((line) => amplitude(line, order, 'normal'))), 5),
    }
  const flux = simpson(gap.map((line) => mean(line.map((p) => p.normal)))) * 2 * half * radius * 0.06
  const result = {
    ...more,
    unknowns: Number(/System 1\/[12]: (\d+) Dofs/.exec(text(`${tag}.getdp.log`))[1]),
    orders,
    fluxOverRun_Wb: round(flux, 5),
    meanMu0H_T: round(last(rows(`${tag}-hx.txt`)[0]) / last(rows(`${tag}-volume.txt`)[0]), 5),
  }
  if (more.wall !== undefined) {
    const wall = table(`${tag}-yoke.txt`, (x, y) => Math.hypot(x, y)).map((line) =>
      simpson(line.map((p) => p.tangential)),
    )
    result.wallMiddle_T = round(Math.abs(wall[0]), 4)
    result.wallMean_T = round(Math.abs(mean(wall)), 4)
  }
  if (more.farRadius_m !== undefined)
    result.farNormal_T = round(
      amplitude(table(`${tag}-far.txt`, (x, y) => Math.atan2(y, x))[0], 6, 'normal'),
      3,
    )
  return result
}

const winding = 0.0575
const results = {
  what: 'Twelve alternating blocks 60 x 15 x 5 mm on a drum, pitch radius 50 mm, J 1.3 T. ring6, ring2: steel tube inside them, outer radius 47.3 mm, wall 6 or 2 mm. sleeve: steel tube around, inner radius 62 mm, wall 3 mm. both: ring6 and sleeve; both2: ring2 and sleeve. inward: blocks polarised inward at angle zero, steel tube around them, inner radius 53.2 mm, wall 6 mm. Tubes are 60 mm long, 100 mm where named long. ideal: permeability 1e6; thirty: 30; curve: by steel-table.pro. Field 57.5 mm (inward: 42.5 mm) from the axis: amplitudes of the orders in the middle and mean over 60 mm, flux through a full pitch 60 mm long; flux density along the circumference in a tube between two poles, mean over the wall, in the middle and mean over the length; mean mu0 H along J in the block.',
  error:
    'Elements 1 mm in the block and 1.6 to 2 mm in the gap (1.2 to 1.3 times that for ring2 and both2), second order. The open field, known in closed form, comes out 0.02 % off in the fundamental, 0.1 % in the third and 0.04 % in the flux; the rest is taken to be as good. With a curve 18 passes of one permeability for each element: on a coarse mesh six more move the fundamental by 0.003 % and the flux density in the wall by 0.06 %.',
  made: 'drum-sector.geo, drum-sector.pro, steel-table.pro, run.sh with gmsh 4.8.4 and getdp 3.2.0; second-order elements',
  runs: {
    open: run('open', winding, {}),
    'ring6-ideal': run('ring6-ideal', winding, { wall: 'inner' }),
    'ring6-recoil': run('ring6-recoil', winding, { wall: 'inner', recoilPermeability: 1.05 }),
    'ring6-long-ideal': run('ring6-long-ideal', winding, { wall: 'inner' }),
    'ring2-curve': run('ring2-curve', winding, {
      wall: 'inner',
      recoilPermeability: 1.05,
      farRadius_m: 0.038,
    }),
    'ring2-long-thirty': run('ring2-long-thirty', winding, { wall: 'inner', farRadius_m: 0.038 }),
    'both-ideal': run('both-ideal', winding, { wall: 'inner' }),
    'both-sleeve': run('both-sleeve', winding, { wall: 'outer' }),
    'both-long-ideal': run('both-long-ideal', winding, { wall: 'inner' }),
    'both2-curve': run('both2-curve', winding, {
      wall: 'inner',
      recoilPermeability: 1.05,
      farRadius_m: 0.038,
    }),
    'sleeve-ideal': run('sleeve-ideal', winding, { wall: 'outer' }),
    'inward-ideal': run('inward-ideal', 0.0425, { wall: 'outer' }),
  },
}
writeFileSync(join(here, 'drum-sector.json'), `${JSON.stringify(results, null, 1)}\n`)
