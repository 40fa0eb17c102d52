/** Checks of the map of blades and generator: energy, stability against motion in time, the table of winds, the ribbons. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { type Chain, computeDesign } from './compute.ts'
import { bandCurves } from './match-band.ts'
import { type MatchMap, matchMap } from './match-map.ts'
import { pathKind } from './path-kind.ts'
import { stallShare } from './power-curve.ts'
import { finished } from './step.ts'
import { shaftPower } from './watts.ts'

/** Far too many turns for its blades, nothing that limits: it stalls, and has two states in many winds. */
function stalledChain(): Chain {
  const document = fixedDocument('twoDiscs')
  document.stator.winding.turns = 70
  document.protection = { mechanical: 'none' }
  return computeDesign(designOf(document))
}

const chains: Readonly<Record<string, Chain>> = {
  drum: exampleChain('hen-house-drum'),
  'two discs': exampleChain('boathouse-two-disc'),
  'a resistor': exampleChain('class-room-fan'),
  stalled: stalledChain(),
}
const maps: Readonly<Record<string, MatchMap>> = Object.fromEntries(
  Object.entries(chains).map(([name, chain]) => [name, finished(matchMap(chain))]),
)

const chainOf = (name: string): Chain => chains[name]!
const mapOf = (name: string): MatchMap => maps[name]!

describe('law: every steady state of every map', () => {
  for (const [name, map] of Object.entries(maps))
    test(`${name}: blades give what the watts add up to, and states alternate in speed`, () => {
      const { generator, blades } = chainOf(name)
      let count = 0
      for (const { wind, states } of map.winds) {
        for (const { speed, power, copperTemperature } of states) {
          count += 1
          expect(blades.power(wind, speed)).toBeCloseTo(power, 9)
          const { watts } = generator.at(speed, copperTemperature)
          // the parts of the generator's table are interpolated apart from their sum
          expect(Math.abs(shaftPower(watts) / power - 1)).toBeLessThan(0.03)
        }
        for (let k = 1; k < states.length; k++) expect(states[k]!.stable).not.toBe(states[k - 1]!.stable)
      }
      expect(count).toBeGreaterThan(10)
    })
})

/** Speed after so many seconds of J ω dω/dt = P_blades − P_generator, with the copper as warm as it was. */
function motion(chain: Chain, at: { wind: number; temperature: number }, start: number): number {
  const { blades, generator } = chain
  const surplus = (speed: number) =>
    blades.power(at.wind, speed) - generator.shaftPower(speed, at.temperature)
  // steps so short that the speed changes by a thousandth at the most
  let speed = start
  for (let k = 0; k < 4000; k++) {
    const push = surplus(speed)
    const scale = Math.abs(blades.power(at.wind, start)) + 1e-9
    speed *= 1 + 1e-3 * Math.max(-1, Math.min(1, push / scale))
  }
  return speed
}

describe('agrees: stability by sign and by letting the rotor turn in time', () => {
  for (const name of ['drum', 'stalled'])
    test(name, () => {
      const chain = chainOf(name)
      const seen = { steady: 0, unsteady: 0 }
      for (const { wind, states } of mapOf(name).winds.filter(
        (_, k) => k % 5 === 2 || (name === 'stalled' && k % 2 === 1),
      ))
        for (const { speed, stable, copperTemperature: temperature } of states) {
          // hotter than this the copper is said to be past all use, and no longer settles
          if (temperature > 600) continue
          const away = 0.01
          for (const side of [1 - away, 1 + away]) {
            const miss = Math.abs(motion(chain, { wind, temperature }, speed * side) / speed - 1)
            if (stable) expect(miss).toBeLessThan(away / 2)
            else expect(miss).toBeGreaterThan(1.5 * away)
          }
          seen[stable ? 'steady' : 'unsteady'] += 1
        }
      expect(seen.steady).toBeGreaterThan(3)
      if (name === 'stalled') expect(seen.unsteady).toBeGreaterThan(0)
    })
})

describe('agrees: map and table of winds, which settle copper and speed in turns', () => {
  for (const [name, map] of Object.entries(maps))
    test(name, () => {
      const { rows, fallingRows } = chainOf(name)
      let compared = 0
      for (const each of map.winds) {
        const k = rows.findIndex(({ wind }) => Math.abs(wind - each.wind) < 1e-9)
        if (k < 0) continue
        for (const [row, index] of [
          [rows[k]!, each.rising],
          [fallingRows[k]!, each.falling],
        ] as const) {
          if (row.state === 'held' || row.overheated) continue
          compared += 1
          const speed = index < 0 ? 0 : each.states[index]!.speed
          // a state on the border of stall may fall on either side of it
          if (Math.abs(speed / each.stallSpeed - 1) > 0.01) expect(pathKind(each, index)).toBe(row.state)
          // both settle the copper to some hundredths of a kelvin, and stalled blades are steep in nothing
          expect(Math.abs(speed - row.speed)).toBeLessThan(4e-3 * row.speed + 1e-9)
        }
      }
      expect(compared).toBeGreaterThan(12)
    })
})

describe('law: zones', () => {
  test('on the stall line the blades give two thirds of their best, left of its ratio', () => {
    for (const [name, { winds }] of Object.entries(maps)) {
      const { blades, rotor } = chainOf(name)
      for (const { wind, stallSpeed } of winds) {
        const share = blades.power(wind, stallSpeed) / blades.available(wind) / rotor.best.power
        expect(share).toBeCloseTo(stallShare, 6)
        expect(blades.tipSpeedRatio(wind, stallSpeed)).toBeLessThan(rotor.best.tipSpeedRatio)
      }
    }
  })
  test('every state that stalls lies left of it, no other that charges does', () => {
    for (const { winds } of Object.values(maps))
      for (const { states, stallSpeed } of winds)
        for (const { kind, speed } of states)
          if (kind !== 'turning') expect(kind === 'stalled').toBe(speed < stallSpeed)
    expect(mapOf('stalled').zones.stalledWinds.length).toBeGreaterThan(4)
    expect(mapOf('two discs').zones.stalledWinds).toEqual([])
  })
  test('the machine that two states share has a wind in which rising and falling part', () => {
    const parted = mapOf('stalled').winds.filter(({ rising, falling }) => rising !== falling)
    expect(parted.length).toBeGreaterThan(0)
    for (const { rising, falling, states } of parted)
      if (rising >= 0 && falling >= 0) expect(states[falling]!.speed).toBeGreaterThan(states[rising]!.speed)
  })
  test('the starting margin passes one in the wind that starts the rotor', () => {
    for (const [name, { winds }] of Object.entries(maps))
      for (const { wind, startingMargin } of winds)
        expect(startingMargin >= 1).toBe(wind >= chainOf(name).startWind)
  })
})

describe('agrees: the battery’s ribbon', () => {
  const chain = chainOf('two discs')
  const speeds = mapOf('two discs').generator.settled.speed
  const temperature = 330
  const request = { speeds, temperatureAt: () => temperature }
  const { load } = chain.machine
  if (load.kind !== 'battery') throw new Error('the example charges a battery')
  const banded = (band: readonly [number, number]): Chain => ({
    ...chain,
    machine: { ...chain.machine, load: { ...load, band } },
  })
  test('with the battery as it is, the few nodes give the generator’s own curve', () => {
    const own = finished(bandCurves(banded([load.voltage, load.voltage]), request))!
    const most = chain.generator.shaftPower(speeds.at(-1)!, temperature)
    own.low.power.forEach((power, k) => {
      const curve = chain.generator.shaftPower(speeds[k]!, temperature)
      expect(Math.abs(power - curve)).toBeLessThan(0.02 * curve + 0.003 * most)
    })
  })
  test('scaled from the curve at hand, as for unlike magnets, it lies beside the solved one', () => {
    const [low, high] = load.band
    const solved = finished(bandCurves(banded([low, high]), request))!
    const scaled = finished(
      bandCurves({ ...banded([low, high]), voltage: { ...chain.voltage, order: 2 } }, request),
    )!
    for (const side of ['low', 'high'] as const) {
      const most =
        solved[side].power[speeds.filter((speed) => speed < 2.5 * chain.generator.cutIn).length - 1]!
      solved[side].power.forEach((power, k) => {
        // far past all use the inductance, which does not scale, comes in
        if (speeds[k]! > 2.5 * chain.generator.cutIn) return
        expect(Math.abs(scaled[side].power[k]! - power)).toBeLessThan(0.03 * power + 0.005 * most)
      })
    }
  })
  test('an empty battery takes more than a full one near where current begins', () => {
    const { low, high } = mapOf('two discs').battery!
    const k = speeds.findIndex((speed) => speed > 1.3 * chain.generator.cutIn)
    expect(low.power[k]!).toBeGreaterThan(high.power[k]!)
  })
})
