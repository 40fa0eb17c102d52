/** Checks of scenarios: beginnings, work, frost, open phases, thrown magnets, and what each class of use makes of them. */
import { describe, expect, test } from 'vitest'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { safetyClasses } from '../machine/safety-class.ts'
import { normalTurbulenceIntensity } from '../physics/aerodynamics/turbulence.ts'
import { permissibleUnbalance, reachedGrade } from '../physics/mechanics/balance-grade.ts'
import { rotorField } from './air-gap-field.ts'
import { computeDesign } from './compute.ts'
import { severities } from './concern/concern.ts'
import { independentLimiters } from './independent-limiter.ts'
import { loadPoint } from './load-point.ts'
import { magnetStrength } from './magnet-strength.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { openPhaseVoltage } from './open-phase.ts'
import { askedScenarios, scenarios } from './scenario.ts'
import { limitsOf } from './scenario-limit.ts'
import { ratedWind, scenarioRun } from './scenario-run.ts'
import { scenarioTable } from './scenario-table.ts'
import { type Come, type Outcome, verdictOf } from './scenario-verdict.ts'
import { finished } from './step.ts'
import { storm } from './storm.ts'
import { stormMachine } from './storm-machine.ts'
import { gustAbout, stormWind } from './storm-wind.ts'
import { withMagnetOff } from './storm-winding.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will
const chainOf = (base: FixedName, change: (document: any) => void = () => {}) => {
  const document = fixedDocument(base)
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}

const chain = chainOf('twoDiscs')
const { machine } = chain
const parts = finished(stormMachine(chain, machine.site.stormWind, ['phase open', 'magnet off']))
const gust = stormWind(machine, 'operating gust')
const runOf = (key: string, on = parts) => finished(scenarioRun(on, askedScenarios(machine, key)[0]!, gust))

describe('agrees: the breeze that comes up, and the steady states', () => {
  const { storm: run } = runOf('cut-in')
  test('it turns in no less wind than starts it, and current begins at the speed of the generator’s curve', () => {
    expect(run.turns!.wind).toBeGreaterThanOrEqual(chain.startWind - 1e-9)
    expect(run.charges!.time).toBeGreaterThan(run.turns!.time)
    expect(run.charges!.speed / chain.generator.cutIn).toBeCloseTo(1, 1)
  })
  test('hours of steady work end at the amps and copper of the row of that wind', () => {
    const wind = ratedWind(chain)
    const { last, trace } = runOf('rated').storm
    const row = chain.rowAt(wind)
    expect(Math.abs(last.copperTemperature - row.copperTemperature)).toBeLessThan(3)
    expect(trace.current.at(-1)! / row.dcCurrent).toBeCloseTo(1, 1)
  })
})

describe('agrees: the gust upon work and the rules’ own formula', () => {
  test('4.8 standard deviations, less what a rotor averages out, 0.74 of it above the wind', () => {
    const wind = 8
    const deviation = normalTurbulenceIntensity(wind) * wind
    const size = (4.8 * deviation) / (1 + (0.1 * 2 * machine.blades.radius) / (0.7 * machine.site.hubHeight))
    expect(gustAbout(machine, wind).top).toBeCloseTo(wind + 0.74 * size, 9)
  })
  test('never above the storm of the site', () => {
    expect(gustAbout(machine, 0.95 * machine.site.stormWind).top).toBeLessThanOrEqual(
      machine.site.stormWind + 1e-9,
    )
  })
})

describe('agrees: where the storm settles with one phase open, the circuit of the two others takes what the blades give', () => {
  test('within 1.5 %', () => {
    const wind = 8
    const row = chain.rowAt(wind)
    const given = {
      event: 'phase open',
      at: 0,
      limiterWorks: true,
      shortWorks: true,
      dumpWorks: true,
    } as const
    const run = finished(
      storm(parts, stormWind(machine, 'steady storm', wind), { ...given, dump: undefined }, { from: row }),
    )
    const { speed, copperTemperature } = run.last
    const left = openPhaseVoltage(chain.voltage, machine.stator.connection, 0)!
    const seen = { ...machine, stator: { ...machine.stator, connection: left.connection } }
    // warm magnets: I(β E, U) = β I(E, (U + 2 U_D)/β − 2 U_D)
    const β = magnetStrength(machine)(run.most.magnetTemperature)
    const { load, diode } = machine
    if (load.kind !== 'battery') throw new Error('a battery is asked for')
    const U = (load.voltage + 2 * diode.threshold) / β - 2 * diode.threshold
    const battery = { kind: 'battery', voltage: U, resistance: load.resistance } as const
    const point = loadPoint(seen, left.voltage, { speed, copperTemperature, load: battery })
    const drag = chain.drag.at(speed)
    const taken = β * β * point.power.shaft + drag.friction + drag.eddy + drag.parts
    expect(run.trace.current.at(-1)! / (β * point.dcCurrent)).toBeCloseTo(1, 1)
    expect(Math.abs(taken / chain.blades.power(wind, speed) - 1)).toBeLessThan(0.015)
  })
})

describe('agrees: a magnet that leaves', () => {
  const { storm: run, unbalanced } = runOf('magnet-off')
  const { mass, speed, energy } = unbalanced!.flight!
  const r = machine.rotor.pitchRadius
  test('pulls the rotor with m r ω², leaves along the rim with half of m v²', () => {
    expect(unbalanced!.force).toBeCloseTo(mass * r * unbalanced!.speed ** 2, 9)
    expect(speed).toBeCloseTo(r * runOf('nothing').storm.most.speed, 6)
    expect(energy).toBeCloseTo(0.5 * mass * speed * speed, 9)
    expect(run.happened.map(({ words }) => words)).toContain('a magnet leaves the rotor')
  })
  test('is as far past its limit as the grade that it reaches is past the grade allowed', () => {
    const limit = limitsOf(chain, parts.inertia, {
      run,
      dump: undefined,
      magnetForce: 0,
      unbalance: unbalanced!.force,
      unbalanceSpeed: unbalanced!.speed,
    }).find(({ kind }) => kind === 'unbalance')!
    const turning = parts.inertia.parts.reduce((sum, part) => sum + part.mass, 0)
    const state = { mass: turning, speed: unbalanced!.speed }
    const grade = reachedGrade({ ...state, unbalance: mass * r })
    const allowed = permissibleUnbalance({ ...state, grade: 16e-3 })
    expect(limit.value / limit.limit).toBeCloseTo(grade / 16e-3, 6)
    expect(limit.limit).toBeCloseTo(allowed.total * unbalanced!.speed ** 2, 6)
  })
  test('takes the volts that the field without it takes', () => {
    const without = withMagnetOff(machine)
    const { layout, wound } = chain
    const volts = openCircuitVoltage(without, rotorField(without, machine.site.ambient), layout, wound)
    const most = (of: typeof volts) => Math.max(...of.lines.map(({ rms }) => rms))
    expect(unbalanced!.volts).toBeCloseTo(most(volts) / most(chain.voltage), 9)
    expect(unbalanced!.volts).toBeLessThan(1)
    // one of 2 × 12 magnets: an air gap between two discs loses less than half of one pole of twelve
    expect(unbalanced!.volts).toBeGreaterThan(1 - 1 / machine.rotor.poleCount)
  })
  test('leaves fewer amps at the same speed and volts', () => {
    const { sound, 'magnet off': off } = parts.winding
    const speed = 1.5 * chain.generator.cutIn
    const volts = 0.8 * sound.bus.openVoltage(speed)
    const amps = (tables: typeof sound) => tables.bus.at(293.15).current(speed, volts)
    expect(amps(off!)).toBeLessThan(amps(sound))
    expect(amps(off!)).toBeGreaterThan(0.5 * amps(sound))
  })
})

describe('law: a heavier rotor', () => {
  test('never passes a speed earlier once its load is lost', () => {
    const given = {
      event: 'load lost',
      at: gust.rise,
      limiterWorks: false,
      shortWorks: true,
      dumpWorks: true,
      dump: undefined,
    } as const
    const bound = 1.3 * chain.rowAt(gust.at(0)).speed
    const times = [0.5, 1, 2, 4].map((share) => {
      const heavier = { ...parts, inertia: { ...parts.inertia, inertia: share * parts.inertia.inertia } }
      const { trace } = finished(storm(heavier, gust, given, { from: chain.rowAt(gust.at(0)) }))
      const k = trace.speed.findIndex((speed, at) => trace.time[at]! > gust.rise && speed > bound)
      return k < 0 ? Number.POSITIVE_INFINITY : trace.time[k]!
    })
    for (let k = 1; k < times.length; k++) expect(times[k]!).toBeGreaterThanOrEqual(times[k - 1]!)
  })
})

describe('law: frost', () => {
  const at = (ambient_degC: number) =>
    chainOf('twoDiscs', (document) => {
      document.site.ambient_degC = ambient_degC
      document.load.chemistry = 'LiFePO4'
      document.load.disconnect = { above_V: 60, below_degC: 0 }
    })
  test('does not happen at a site of 20 °C, and says so', () => {
    const row = scenarios(at(20).machine).find(({ key }) => key === 'frost')!
    expect(row.cannot).toContain('winter nights')
    const warm = at(20)
    const table = finished(
      scenarioTable(finished(stormMachine(warm, warm.machine.site.stormWind, [])), gust, 'frost'),
    )
    expect(table.rows[0]!.outcome).toBe('cannot happen')
    expect(table.rows[0]!.run).toBeUndefined()
    for (const name of safetyClasses) expect(table.verdict[name]).toBeUndefined()
  })
  test('takes the load off at a site of 5 °C, in denser air than the year’s', () => {
    const cold = at(5)
    const tables = finished(stormMachine(cold, cold.machine.site.stormWind, []))
    const run = (key: string) => {
      const scenario = askedScenarios(cold.machine, key)[0]!
      return finished(scenarioRun(tables, { ...scenario, limiterWorks: false }, gust)).storm
    }
    expect(run('frost').happened.map(({ words }) => words)).toContain(
      'the battery refuses charge in the frost',
    )
    expect(run('frost').most.speed).toBeGreaterThan(run('battery-disconnects').most.speed)
  })
})

describe('law: what each class makes of it', () => {
  const quiet = { volts: { alternating: 0, direct: 0 }, surroundings: 'dry' } as const
  const limit = (kind: 'magnet' | 'copper', state: 'near' | 'passed') =>
    ({ name: kind, kind, value: 2, limit: 1, unit: 'N', state }) as const
  const rank = (severity: (typeof severities)[number] | undefined) =>
    severity === undefined ? severities.length : severities.indexOf(severity)
  test('outdoors no rotor, magnet or copper past its limit is taken more lightly than in a class room or on a bench', () => {
    for (const outcome of ['held', 'survived', 'damaged', 'runs away'] satisfies Outcome[])
      for (const limits of [[], [limit('magnet', 'passed')], [limit('copper', 'passed')]]) {
        const verdict = verdictOf({ ...quiet, outcome, limits })
        for (const name of ['demonstration', 'bench'] as const)
          expect(rank(verdict.outdoor)).toBeLessThanOrEqual(rank(verdict[name]))
      }
  })
  test('volts that children may touch block a class room before they block outdoors', () => {
    const come: Come = { ...quiet, outcome: 'held', limits: [], volts: { alternating: 30, direct: 40 } }
    expect(verdictOf(come)).toEqual({ demonstration: 'blocking', bench: 'note', outdoor: 'warning' })
  })
  test('a magnet that may fly blocks a class room; hot copper there is a warning', () => {
    const thrown = verdictOf({ ...quiet, outcome: 'damaged', limits: [limit('magnet', 'passed')] })
    const hot = verdictOf({ ...quiet, outcome: 'damaged', limits: [limit('copper', 'passed')] })
    expect(thrown.demonstration).toBe('blocking')
    expect(hot.demonstration).toBe('warning')
  })
})

describe('law: two limiters that do not depend on each other', () => {
  const rows = (outcomes: Readonly<Record<string, Outcome>>) =>
    Object.entries(outcomes).map(([key, outcome]) => ({ scenario: { key }, outcome }))
  const protection = (
    mechanical: 'none' | 'furling tail',
    electrical: 'none' | 'dump load' | 'shorting switch',
  ) => ({ ...machine, protection: { ...machine.protection, mechanical, electrical } }) as typeof machine
  const outdoor = (of: typeof machine, outcomes: Readonly<Record<string, Outcome>>) =>
    independentLimiters(of, rows(outcomes)).verdict.outdoor
  test('both holding is enough, a mechanical one a warning, an electrical one or none blocks', () => {
    const both = protection('furling tail', 'dump load')
    expect(outdoor(both, { 'winding-open': 'held', 'lost-limiter': 'survived' })).toBeUndefined()
    expect(outdoor(both, { 'winding-open': 'held', 'lost-limiter': 'damaged' })).toBe('warning')
    expect(outdoor(both, { 'winding-open': 'damaged', 'lost-limiter': 'held' })).toBe('blocking')
    expect(outdoor(protection('none', 'none'), { 'load-lost': 'held' })).toBe('blocking')
  })
  test('a switch that waits for a hand does not count', () => {
    const { alone, verdict } = independentLimiters(
      protection('furling tail', 'shorting switch'),
      rows({ 'winding-open': 'held', 'lost-limiter': 'held', 'short-alone': 'held' }),
    )
    expect(alone.map(({ holds }) => holds)).toEqual([true, false])
    expect(verdict.outdoor).toBe('warning')
  })
})
