// Gathers the tables getdp printed into the JSON fixtures beside this file.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const work = process.argv[2]
const rows = (file) =>
  readFileSync(join(work, file), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
const last = (row) => row[row.length - 1]
const round = (x, digits) => Number(x.toFixed(digits))
const elements = (name) =>
  Number(/(\d+) nodes (\d+) elements/.exec(readFileSync(join(work, `${name}.gmsh.log`), 'utf8'))[2])
const unknowns = (name) => Number(/(\d+) Dofs/.exec(readFileSync(join(work, `${name}.getdp.log`), 'utf8'))[1])
const meanField = (tag) => last(rows(`${tag}-hz.txt`)[0]) / last(rows(`${tag}-volume.txt`)[0])

const machine = (tag, mesh, more) => ({
  ...more,
  elements: elements(mesh),
  unknowns: unknowns(tag),
  // table columns: element type, number, x, y, z, parameters (3), Bx, By, Bz
  arc: {
    angle_rad: rows(`${tag}-arc.txt`).map((r) => round(r[5], 7)),
    Bz_T: rows(`${tag}-arc.txt`).map((r) => round(last(r), 6)),
  },
  radius: {
    radius_m: rows(`${tag}-radius.txt`).map((r) => round(r[2], 5)),
    Bz_T: rows(`${tag}-radius.txt`).map((r) => round(last(r), 6)),
  },
  meanMu0Hz_T: round(meanField(tag), 6),
})
const discs = {
  what: 'Twelve blocks 40 (radial) x 20 x 10 mm a disc, J 1.28 T, mean radius 90 mm, 16 mm from magnet face to magnet face or plain steel, discs 8 mm thick from 50 to 130 mm radius; Bz 8 mm from the magnet face. two: two magnet discs. plain: one magnet disc and a plain steel disc. single: one magnet disc. ideal: steel of relative permeability 1e6.',
  error:
    'Finest elements 2 mm (coarse), 1.25 mm (fine, two) and 1.4 mm (fine, plain and single). Bz over the pole centre moves from coarse to fine by 0.1 % (two), 0.03 % (plain) and 0.33 % (single), the fundamental by at most 0.2 %; the error of the fine runs is of that size or less.',
  made: 'disc-sector.geo, disc-sector.pro, run.sh with gmsh 4.8.4 and getdp 3.2.0; second-order elements',
  runs: {},
}
for (const kind of ['two', 'plain', 'single'])
  for (const murec of ['105', '100'])
    for (const density of ['coarse', 'fine'])
      discs.runs[`${kind}-${murec}-${density}`] = machine(
        `${kind}-${murec}-${density}`,
        `${kind}-${density}`,
        {
          recoilPermeability: Number(murec) / 100,
          steelPermeability: 2000,
        },
      )
discs.runs['two-110-coarse'] = machine('two-110-coarse', 'two-coarse', {
  recoilPermeability: 1.1,
  steelPermeability: 2000,
})
discs.runs['two-105-ideal'] = machine('two-105-ideal', 'two-fine', {
  recoilPermeability: 1.05,
  steelPermeability: 1e6,
})
writeFileSync(join(here, 'disc-sector.json'), `${JSON.stringify(discs, null, 1)}\n`)

const array = {
  what: 'Two facing infinite arrays between ideal iron, pole pitch 62.8 mm, magnets 30 mm wide and 10 mm thick, gap 16 mm between magnets, Br 1.26 T, recoil permeability 1.05; normal flux density on the middle of the gap from pole centre to between poles. air: the space between the magnets of a row is air. filled: it has the magnets’ permeability, as the layered series assumes.',
  error:
    'Elements 0.8 mm (coarse) and 0.4 mm (fine), finer at the magnet’s corners; the fundamental moves by 0.01 % from coarse to fine.',
  made: 'array-pitch.geo, array-pitch.pro, run.sh with gmsh 4.8.4 and getdp 3.2.0; second-order elements',
  runs: {},
}
for (const [name, between] of [
  ['air', '100'],
  ['filled', '105'],
])
  for (const density of ['coarse', 'fine']) {
    const tag = `array-${between}-${density}`
    const table = rows(`${tag}-pitch.txt`)
    array.runs[`${name}-${density}`] = {
      unknowns: unknowns(tag),
      x_m: table.map((r) => round(r[2], 7)),
      By_T: table.map((r) => round(r[r.length - 2], 7)),
      meanMu0Hy_T: round(meanField(tag), 7),
    }
  }
writeFileSync(join(here, 'array-pitch.json'), `${JSON.stringify(array, null, 1)}\n`)
