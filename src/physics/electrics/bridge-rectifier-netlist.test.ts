/** Checks the bridge rectifier against netlists run through a circuit simulator. */
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { netlistCircuit } from '../../../test/netlist.ts'
import { rectifierPoint } from './bridge-rectifier.ts'

const folder = new URL('../../../test/reference/electrics/', import.meta.url)
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8')

type Measured = Readonly<Record<string, number>>
const results = JSON.parse(read('results.json')) as Readonly<Record<string, Measured>>
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.cir'))
  .map((name) => name.replace('.cir', ''))

function compare(name: string, measured: Measured, dc: number, rms: number) {
  const point = rectifierPoint(netlistCircuit(read(`${name}.cir`)))
  const off = (actual: number, wanted: number) => Math.abs(actual / wanted - 1)
  expect(off(point.dcCurrent, measured.dc_mean!), 'dc mean').toBeLessThan(dc)
  expect(off(point.dcCurrentRms, measured.dc_rms!), 'dc rms').toBeLessThan(rms)
  point.phaseCurrentRms.forEach((current, k) => {
    expect(off(current, measured[`phase_${'abc'[k]}_rms`]!), `phase ${k}`).toBeLessThan(rms)
  })
  expect(off(point.power.shaft, measured.shaft!), 'shaft').toBeLessThan(rms)
  expect(point.residual).toBeLessThan(1e-3)
  if (measured.shaft_max === undefined) return
  const ripple = (measured.shaft_max - measured.shaft_min!) / measured.shaft!
  expect(off(point.torqueRipple, ripple), 'torque ripple').toBeLessThan(1e-3)
  const near = (actual: number, wanted: number, what: string) =>
    expect(Math.abs(actual - wanted) / Math.max(...point.phaseCurrentRms), what).toBeLessThan(dc)
  point.phaseCurrentMean.forEach((mean, k) => {
    near(mean, measured[`phase_${'abc'[k]}_mean`]!, `mean of phase ${k}`)
  })
  for (const { line, end, side, current, currentRms } of point.diodes) {
    const name = `diode_${end === 'finish' ? 'm' : 't'}${'abc'[line]}${side === 'positive' ? 'p' : 'n'}`
    near(current, measured[`${name}_mean`]!, name)
    near(currentRms, measured[`${name}_rms`]!, name)
  }
}

// Achieved: 0.02 % in the mean, 0.02 % in rms values and power, 0.05 % in torque ripple, every diode's current within
// 0.05 % of the greatest phase current; the simulator's own tolerance is 1e-5 per step.
describe('agrees: general-purpose circuit simulator, the same piecewise-linear diodes', () => {
  test('every netlist has its result', () => {
    expect(names.length).toBeGreaterThanOrEqual(30)
    expect(
      Object.keys(results)
        .filter((name) => name !== 'program')
        .sort(),
    ).toEqual([...names].sort())
  })
  for (const name of names.filter((name) => name !== 'star-silicon'))
    test(`${name} within 0.1 %`, () => compare(name, results[name]!, 1e-3, 1e-3))
})

describe('agrees: general-purpose circuit simulator, exponential silicon diodes', () => {
  // What the straight-line diode costs: 0.34 % of the mean current.
  test('star-silicon within 0.5 %', () => compare('star-silicon', results['star-silicon']!, 5e-3, 5e-3))
})

const program = spawnSync('ngspice', ['--version'], { encoding: 'utf8' })
describe('agrees: the simulator run here and now', () => {
  test.skipIf(program.status !== 0)('star-resistor repeats its stored result', () => {
    const run = spawnSync('ngspice', ['-b', 'star-resistor.cir'], { cwd: folder, encoding: 'utf8' })
    const measured = Object.fromEntries(
      [...run.stdout.matchAll(/^(dc_mean|dc_rms|phase_[abc]_rms|shaft)\s+=\s+(\S+)/gm)].map((m) => [
        m[1]!,
        Number(m[2]),
      ]),
    )
    for (const [key, value] of Object.entries(results['star-resistor']!))
      expect(Math.abs(measured[key]! / value - 1), key).toBeLessThan(1e-3)
    compare('star-resistor', measured, 1e-3, 1e-3)
  })
})
