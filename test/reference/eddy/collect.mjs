// Gathers the tables getdp printed into the JSON fixture beside this file.
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
const value = (file) => rows(file)[0][1]
const digits = (x) => Number(x.toPrecision(7))
const densities = ['coarse', 'fine']

const strands = []
for (const [kind, angle, name] of [
  [0, 90, 'round, 2 mm'],
  [1, 0, 'strip, field along its width'],
  [1, 90, 'strip, field across its width'],
])
  for (const f of [273, 1092, 4366, 17466, 69863])
    strands.push({
      name,
      frequency_Hz: f,
      lossPerVolume_W_per_m3: Object.fromEntries(
        densities.map((density) => {
          const tag = `strand-${kind}-${angle}-${f}-${density}`
          return [density, digits(value(`${tag}-loss.txt`) / value(`${tag}-area.txt`))]
        }),
      ),
    })
const steel = [1, 10, 100].map((f) => ({
  frequency_Hz: f,
  lossPerVolume_W_per_m3: Object.fromEntries(
    densities.map((density) => {
      const tag = `steel-${f}-${density}`
      return [density, digits(value(`${tag}-loss.txt`) / value(`${tag}-area.txt`))]
    }),
  ),
}))
const plates = []
for (const thick of [1, 3, 8]) {
  const face = rows(`plate-${thick}-0-fine-face.txt`)
  plates.push({
    thickness_mm: thick,
    // with the plate at rest, on its face
    x_m: face.map((r) => Number(r[2].toFixed(7))),
    By_T: face.map((r) => Number(r[r.length - 2].toFixed(7))),
    runs: [3, 15, 60].map((v) => ({
      speed_m_per_s: v,
      lossPerLength_W_per_m: Object.fromEntries(
        densities.map((density) => [density, digits(value(`plate-${thick}-${v}-${density}-loss.txt`))]),
      ),
      dragPerLength_N_per_m: digits(-value(`plate-${thick}-${v}-fine-drag.txt`)),
    })),
  })
}
writeFileSync(
  join(here, 'eddy.json'),
  `${JSON.stringify(
    {
      what: 'strands: copper (1/58e6 ohm m) in a uniform field of 1 T peak; the strip is 4 mm wide, 1.5 mm thick, corners of 0.5 mm. steel: round, 2 mm, 1.4e-7 ohm m, relative permeability 200. plates: aluminium (2.8264e-8 ohm m) moving past a row of magnets 18 mm wide, 10 mm high, Br 1.2 T, in a pole pitch of 30 mm, without iron; from magnet to plate 5 mm; per pole pitch.',
      error:
        'Elements of 0.12 mm (coarse) and 0.06 mm (fine) in the conductors, 0.7 mm and 0.35 mm in the plates, second order; the two differ by the discretisation, the far boundary at 60 mm adds at most 0.1 % to a strand.',
      made: 'strand.geo, strand.pro, plate.geo, plate.pro, run.sh with gmsh 4.8.4 and getdp 3.2.0',
      strands,
      steel,
      plates,
    },
    null,
    1,
  )}\n`,
)
