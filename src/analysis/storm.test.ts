/** Checks of machines in storms: energy, steady states, first seconds, and what each failure leaves. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { conductors } from '../data/conductor.ts'
import { parseDesign } from '../machine/parse.ts'
import { adiabaticHeatingRate } from '../physics/heat/adiabatic-heating.ts'
import { brakeStudy } from './brake-wind.ts'
import { computeDesign } from './compute.ts'
import { magnetStrength } from './magnet-strength.ts'
import { scenarioTable } from './scenario-table.ts'
import { shortCircuit } from './short-circuit.ts'
import { finished } from './step.ts'
import { storm } from './storm.ts'
import type { StormCase } from './storm-case.ts'
import { stormMachine } from './storm-machine.ts'
import { loggedWind, stormWind } from './storm-wind.ts'

const dump = {
  resistance_ohm: 1,
  power_W: 900,
  on_V: 29,
  off_V: 26,
  place: 'behind the bridge',
  withoutPower: 'off',
  ownFuse: false,
}

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will
const chainWith = (change: (document: any) => void) => {
  const document = fixedDocument('twoDiscs')
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}

const chain = chainWith((document) => {
  Object.assign(document.protection, { electrical: 'dump load', dump })
})
const parts = finished(stormMachine(chain, chain.machine.site.stormWind))
const { machine } = chain
const gust = stormWind(machine, 'operating gust')

const quiet: StormCase = {
  event: 'nothing',
  at: 0,
  limiterWorks: true,
  shortWorks: true,
  dumpWorks: true,
  dump: undefined,
}

describe('law: a storm', () => {
  test('the blades’ work is what currents and drag take and what the rotor gains, to a thousandth', () => {
    for (const given of [
      quiet,
      { ...quiet, event: 'load lost', at: gust.rise, limiterWorks: false },
      { ...quiet, event: 'load lost', at: gust.rise, dump: machine.protection.dump },
      { ...quiet, event: 'diode shorted', at: gust.rise, shortAt: 12 },
    ] as const) {
      const run = finished(storm(parts, gust, given))
      const { blades, taken, kinetic } = run.energy
      expect(Math.abs(blades - taken - kinetic) / blades).toBeLessThan(1e-3)
      for (const column of Object.values(run.trace)) expect(column.every(Number.isFinite)).toBe(true)
    }
  })
  test('a heavier rotor overshoots less when the load is lost in a gust', () => {
    const given = { ...quiet, event: 'load lost', at: gust.rise, limiterWorks: false } as const
    const speeds = [0.3, 1, 5].map((share) => {
      const heavier = { ...parts, inertia: { ...parts.inertia, inertia: share * parts.inertia.inertia } }
      return finished(storm(heavier, gust, given)).most.speed
    })
    expect(speeds[0]).toBeGreaterThan(speeds[1]!)
    expect(speeds[1]).toBeGreaterThan(speeds[2]!)
    expect(speeds[0]).toBeLessThan(chain.runaway.speed * 1.001)
  })
})

describe('agrees: a steady wind and the table of steady states', () => {
  test('with its load the machine comes to the speed, amps and copper temperature of its row', () => {
    const wind = 8
    const row = chain.rowAt(wind)
    const run = finished(
      storm(parts, stormWind(machine, 'steady storm', wind), quiet, {
        from: { speed: 0.5 * row.speed, copperTemperature: machine.site.ambient },
        soak: 9000,
      }),
    )
    // the row takes the magnets' warmth by their share at one working speed, the storm by their own node
    expect(Math.abs(run.last.speed / row.speed - 1)).toBeLessThan(0.01)
    expect(run.last.copperTemperature - row.copperTemperature).toBeLessThan(1.5)
    expect(run.last.copperTemperature - row.copperTemperature).toBeGreaterThan(-1.5)
  })
  test('without it the machine comes to its runaway', () => {
    const run = finished(
      storm(parts, stormWind(machine, 'steady storm'), { ...quiet, event: 'load lost', limiterWorks: false }),
    )
    expect(run.last.speed / chain.runaway.speed).toBeCloseTo(1, 3)
  })
  test('shorted, it comes to the speed at which the brake’s torque meets the blades’', () => {
    const wind = 12
    const given = { ...quiet, limiterWorks: false, shortAt: 0 }
    const run = finished(storm(parts, stormWind(machine, 'steady storm', wind), given))
    const { speed, copperTemperature, magnetTemperature } = run.last
    const strength = magnetStrength(machine)(magnetTemperature)
    const { torque } = shortCircuit(machine, chain.voltage, 'far end')(speed, copperTemperature)
    const drag = chain.drag.at(speed)
    const taken = strength ** 2 * torque + (drag.friction + drag.eddy + drag.parts) / speed
    expect(taken / chain.blades.torque(wind, speed)).toBeCloseTo(1, 2)
  })
})

describe('agrees: the first seconds of a short and copper that keeps its heat', () => {
  test('within a quarter, eddy currents in the strands counted: enamel and resin take their share, the gap’s air a little', () => {
    const wind = stormWind(machine, 'steady storm', 20)
    const from = { speed: 0.4 * chain.runaway.speed, copperTemperature: machine.site.ambient }
    const run = finished(storm(parts, wind, { ...quiet, limiterWorks: false, shortAt: 0 }, { from }))
    const { time, copperTemperature, phaseCurrent, speed } = run.trace
    const k = time.findIndex((t) => t > 0.35)
    const copper = conductors.find(({ name }) => name === 'copper')!
    let rise = 0
    for (let i = 1; i <= k; i++)
      rise +=
        (time[i]! - time[i - 1]!) *
        (chain.drag.at(speed[i]!).eddy / (chain.wound.copperMass * copper.heatCapacity_J_per_kgK) +
          adiabaticHeatingRate({
            resistivity: machine.stator.wire.resistivity,
            currentDensity: phaseCurrent[i]! / (chain.wound.conductorArea * chain.layout.groups),
            heatCapacity: copper.heatCapacity_J_per_kgK,
            density: machine.stator.wire.density,
          }))
    expect(rise).toBeGreaterThan(2)
    expect((copperTemperature[k]! - machine.site.ambient) / rise).toBeGreaterThan(0.75)
    expect((copperTemperature[k]! - machine.site.ambient) / rise).toBeLessThan(1.1)
  })
})

describe('law: every failure leaves what it must', () => {
  const table = finished(scenarioTable(parts, gust))
  const row = (key: string) => table.rows.find(({ scenario }) => scenario.key === key)!
  const storms = (key: string) => row(key).run!.storm
  test('an open winding leaves the tail alone; with a stuck limiter and a dump, the dump alone', () => {
    expect(row('winding-open').limitedBy).toBe('the furling tail')
    expect(storms('winding-open').last.current).toBe(false)
    expect(row('lost-limiter').limitedBy).toContain('dump')
    expect(row('lost-limiter').outcome).toBe('damaged')
  })
  test('one open phase brakes less than the whole winding and more than none', () => {
    expect(storms('phase-open').most.speed).toBeGreaterThan(storms('nothing').most.speed)
    expect(storms('phase-open').most.speed).toBeLessThan(storms('winding-open').most.speed)
  })
  test('a dump on the battery’s fuse is lost with it, and stays when the load alone is lost', () => {
    expect(storms('load-lost').most.dumpPower).toBeGreaterThan(0)
    expect(storms('fuse-blown').most.dumpPower).toBe(0)
    expect(storms('fuse-blown').most.speed).toBeGreaterThan(storms('load-lost').most.speed)
  })
  test('a dead dump is as good as none, and never faster than a lost limiter without it', () => {
    expect(storms('lost-dump').most.speed).toBeCloseTo(storms('winding-open').most.speed, 3)
    expect(storms('lost-dump').most.speed).toBeLessThan(chain.runaway.speed)
  })
  test('what it does not have is not listed', () => {
    const keys = table.rows.map(({ scenario }) => scenario.key)
    expect(keys).not.toContain('converter-dead')
    expect(keys).not.toContain('lost-short')
    expect(keys).not.toContain('battery-disconnects')
  })
  test('outdoors whatever is worse than survived blocks', () => {
    for (const { outcome, verdict } of table.rows)
      if (outcome === 'damaged' || outcome === 'runs away') expect(verdict.outdoor).toBe('blocking')
  })
  test('the balance of energy closes to 0.02 % in every scenario', () => {
    for (const { run } of table.rows)
      if (run !== undefined) {
        const { blades, taken, kinetic } = run.storm.energy
        expect(Math.abs(blades - taken - kinetic) / Math.abs(blades)).toBeLessThan(2e-4)
      }
  })
  test('a guess that is told would turn the outcome; a row without one has none to tell', () => {
    for (const { outcome, ends } of table.rows) for (const end of ends) expect(end.outcome).not.toBe(outcome)
    expect(row('cut-in').ends).toEqual([])
  })
})

describe('law: the switch', () => {
  test('that opens the load first lets the rotor gain speed before it brakes', () => {
    const tops = (['short, then disconnect', 'disconnect, then short'] as const).map((order) => {
      const protection = {
        ...machine.protection,
        electrical: 'shorting switch',
        short: { place: 'at the machine', order, actsAt: 45 },
      } as const
      const switched = { ...parts, chain: { ...chain, machine: { ...machine, protection } } }
      const given = { ...quiet, limiterWorks: false }
      const run = finished(storm(switched, stormWind(machine, 'operating gust', 12), given))
      expect(run.last.short).toBe(true)
      return run.most.speed
    })
    expect(tops[1]).toBeGreaterThan(1.2 * tops[0]!)
  })
})

describe('law: the study of the brake', () => {
  test('a faster rotor is never held in a higher wind than a slower one, and heat grows with the wind', () => {
    const study = finished(brakeStudy(parts))
    expect(study.stopsUnloaded).toBeLessThanOrEqual(study.stops)
    expect(study.stops).toBeLessThanOrEqual(study.parks)
    expect(study.parks).toBeGreaterThan(5)
    const hot = study.rows.map(({ parked }) => parked.copperTemperature)
    expect(hot.at(-1)).toBeGreaterThanOrEqual(hot[10]!)
  })
})

describe('law: a logged wind', () => {
  test('begins at its first reading and ends at its last', () => {
    const wind = loggedWind({ times: Float64Array.of(100, 101, 104), winds: Float64Array.of(4, 9, 6) })
    expect([wind.duration, wind.top, wind.at(0), wind.at(2.5)]).toEqual([4, 9, 4, 7.5])
    const run = finished(storm(parts, wind, quiet))
    expect(run.trace.time.at(-1)).toBe(4)
  })
})
