/** Checks of warming in time: closed forms, energy, limits, and the questions asked of the examples. */
import { describe, expect, test } from 'vitest'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { adiabaticHeatingTime } from '../physics/heat/adiabatic-heating.ts'
import { copperNode } from './copper-node.ts'
import { heatStudy } from './heat-study.ts'
import { heatTransient, type PartLimit, partLimits } from './heat-transient.ts'

import { finished } from './step.ts'

const { heat, machine, voltage, wound, layout } = exampleChain('boathouse-two-disc')
const cold = () => new Float64Array(heat.body.nodes.length)
const limit = (temperature: number): PartLimit => ({ name: 'a limit', temperature, part: 'hotSpot' })
const steadyWatts = (copper: number) => () => ({ speed: 40, wind: 8, copper, metal: 0 })

describe('agrees: a short so strong that the copper keeps its heat', () => {
  test('time to 100 K above the air, enamel and resin taking their share', () => {
    const J = 60e6
    const { resistivity, temperatureCoefficient, density } = machine.stator.wire
    const volume = wound.copperMass / density
    const T0 = machine.site.ambient
    const run = heatTransient(heat, {
      start: cold(),
      duration: 60,
      limits: [limit(T0 + 100)],
      flow: (T) => ({
        speed: 40,
        wind: 8,
        metal: 0,
        copper: resistivity * (1 + temperatureCoefficient * (T - 293.15)) * J * J * volume,
      }),
    })
    const alone = adiabaticHeatingTime({
      resistivity,
      coefficient: temperatureCoefficient,
      reference: 293.15,
      currentDensity: J,
      // within some seconds the resin between the wires is as warm as they are
      heatCapacity: (heat.pack.copperCapacity + heat.pack.matrixCapacity) / wound.copperMass,
      density,
      from: T0,
      to: T0 + 100,
    })
    // the resin lags by half a second, some heat does leave
    expect(run.first!.at! / alone).toBeGreaterThan(0.85)
    expect(run.first!.at! / alone).toBeLessThan(1.1)
  })
})

describe('law: warming', () => {
  test('heat born is heat given off and heat kept, to a thousandth', () => {
    for (const watts of [10, 80, 400]) {
      const { energy } = heatTransient(heat, {
        start: cold(),
        flow: steadyWatts(watts),
        limits: [],
        duration: 1e5,
      })
      expect(Math.abs((energy.given + energy.kept) / energy.born - 1)).toBeLessThan(1e-3)
    }
  })
  test('it comes to the steady state of the net, from below and from above', () => {
    const steady = cold()
    heat.net.settle({ speed: 40, wind: 8, sources: heat.sources({ copper: 80, metal: 0 }) }, steady)
    for (const factor of [0, 2]) {
      const { samples, settledAt } = heatTransient(heat, {
        start: steady.map((rise) => factor * rise),
        flow: steadyWatts(80),
        limits: [],
        duration: 1e6,
      })
      const last = samples[samples.length - 1]!
      expect(Math.abs(last.copper - machine.site.ambient - steady[copperNode]!)).toBeLessThan(1)
      expect(settledAt).toBeGreaterThan(0)
    }
  })
  test('a limit above the steady state is never met, one below is, sooner the lower it lies', () => {
    const run = heatTransient(heat, {
      start: cold(),
      flow: steadyWatts(80),
      limits: [310, 320, 900].map(limit),
      duration: 1e5,
    })
    const [low, middle, high] = run.limits.map(({ at }) => at)
    expect(low).toBeLessThan(middle!)
    expect(high).toBeUndefined()
    expect(run.first?.temperature).toBe(310)
  })
})

describe('law: the study of every example', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const study = finished(heatStudy(chain))
      const { born, ways, cases, shortedTurn } = study
      const out = ways.reduce((sum, { power }) => sum + power, 0)
      if (!study.hottest.overheated) expect(Math.abs(out / (born.copper + born.metal) - 1)).toBeLessThan(1e-3)
      expect(study.limits.length).toBeGreaterThanOrEqual(3)
      for (const { run } of cases) {
        const { energy, samples } = run
        if (samples.every(({ copper }) => copper < 1200))
          expect(Math.abs(energy.born - energy.given - energy.kept)).toBeLessThan(
            1e-3 * Math.max(energy.born, Math.abs(energy.kept)),
          )
        for (const sample of samples) expect(Object.values(sample).every(Number.isFinite)).toBe(true)
      }
      expect(cases.some(({ key }) => key === 'heat run')).toBe(true)
      expect(shortedTurn!.temperature).toBeGreaterThan(study.hottest.copperTemperature)
      // a turn's own volts and ohms bound what it can burn
      const coil = chain.voltage.coils[0]!
      expect(shortedTurn!.power).toBeGreaterThan(0)
      expect(coil.fundamental).toBeGreaterThan(0)
    })
  test('a heat run asked for at more amps is hotter', () => {
    const at = (current: number) => {
      const { cases } = finished(heatStudy(exampleChain('boathouse-two-disc'), { current }))
      return cases.find(({ key }) => key === 'heat run')!.run.samples.at(-1)!.copper
    }
    expect(at(8)).toBeGreaterThan(at(5))
    expect(partLimits(machine).map(({ part }) => part)).toContain('magnets')
    expect(voltage.phases.length).toBe(layout.phaseCount)
  })
})
