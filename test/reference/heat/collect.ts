/** Gathers the tables getdp printed into the JSON fixture beside this file. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { faceOf, sliceOf, type WindingName, winding, windings } from './slice.ts'

const work = process.argv[2]!
const rows = (file: string) =>
  readFileSync(join(work, file), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
const digits = (x: number) => Number(x.toPrecision(6))
const regions = { pack: 1, covers: 2, casting: 3, nearCover: 11, nearPack: 12, farPack: 13, farCover: 14 }
const mean = (tag: string, region: number, row: number) =>
  rows(`${tag}-warm-${region}.txt`)[row]![1]! / rows(`${tag}-size-${region}.txt`)[0]![1]!

/** Mean warmth by region [K]; shares of the heat that leave by each face of the pack and of the casting. */
function rest(tag: string) {
  const out = (region: number) => rows(`${tag}-out-${region}.txt`)[0]![1]!
  const leaving = { nearPack: out(11), farPack: out(14), nearCasting: out(15), farCasting: out(16) }
  const all = Object.values(leaving).reduce((sum, each) => sum + each, 0)
  const hottest = rows(`${tag}-nodes.txt`)
    .slice(1)
    .reduce((most, [, warmth]) => Math.max(most, warmth!), 0)
  const size = (region: number) => rows(`${tag}-size-${region}.txt`)[0]![1]!
  return {
    hotSpot: digits(hottest),
    ...Object.fromEntries(
      Object.entries(regions)
        .filter(([, region]) => size(region) > 0)
        .map(([key, region]) => [key, digits(mean(tag, region, 0))]),
    ),
    share: Object.fromEntries(Object.entries(leaving).map(([key, heat]) => [key, digits(heat / all)])),
  }
}

const times = [10, 30, 60, 120, 300, 600, 1200]
const runs = Object.keys(windings).map((name, number) => {
  const wound = winding(name as WindingName)
  const step = rows(`${number}-step-warm-1.txt`)
  return {
    name,
    copper_W: wound.copper,
    slice: Object.fromEntries(
      Object.entries(sliceOf(wound)).map(([key, x]) => [key, Number(x.toPrecision(9))]),
    ),
    near: faceOf(wound, 'near'),
    far: faceOf(wound, 'far'),
    rest_K: {
      coarse: rest(`${number}-coarse`),
      fine: rest(`${number}-fine`),
      ...(existsSync(join(work, `${number}-uneven-nodes.txt`)) ? { uneven: rest(`${number}-uneven`) } : {}),
    },
    // air and magnets as cool as the site
    step: times.map((time) => {
      const row = step.findIndex(([at]) => Math.abs(at! - time) < 1e-6)
      return {
        time_s: time,
        pack_K: digits(mean(`${number}-step`, regions.pack, row)),
        nearCover_K: digits(mean(`${number}-step`, regions.nearCover, row)),
      }
    }),
  }
})
writeFileSync(
  new URL('heat.json', import.meta.url),
  `${JSON.stringify(
    {
      what: 'A winding as a smeared body, heated evenly, its covers and the casting beside it in the plane across the wires (drum: round the shaft, ends insulated). Films and warmths of air and magnets are given, all kelvin above the air of the site. uneven: the same casting, two thirds of it on one side of the bundle. step: from cold, all air and magnets cold, theta 0.5, steps of 2 s.',
      error:
        'Second-order elements of 1 mm (coarse) and 0.4 mm (fine); the two differ by the discretisation.',
      made: 'slice.ts, settings.ts, slice.geo, slice.pro, collect.ts, run.sh with gmsh 4.8.4 and getdp 3.2.0',
      runs,
    },
    null,
    1,
  )}\n`,
)
