/** Checks of many builds of one drawing: chance, watts, goals, yield. */
import { describe, expect, test } from 'vitest'
import { exampleDocument } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { toleranceNames } from '../machine/tolerance.ts'
import { sampleMoments } from '../numerics/sample-moment.ts'
import { buildDraws, errorGroups } from './build-draw.ts'
import { turnsOff } from './build-error.ts'
import { type BuildTolerance, buildFigureNames, buildTolerance } from './build-tolerance.ts'
import { scaledVoltage, wattsSurface, wattsWith } from './build-watts.ts'
import { type Chain, chainOf } from './compute.ts'
import { finished } from './step.ts'
import { tellingWind } from './telling-wind.ts'

type Change = (document: ReturnType<typeof fixedDocument>) => void

function chainFrom(document: unknown): Chain {
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return finished(chainOf(resolveDesign(parsed.design)))
}

function fixedChain(name: FixedName, change: Change = () => {}): Chain {
  const document = fixedDocument(name)
  change(document)
  return chainFrom(document)
}

const study = (chain: Chain, builds = 128, seed = 1): BuildTolerance =>
  finished(buildTolerance(chain, { builds, seed }))

const disc = fixedChain('disc')
const discStudy = study(disc)

const none = Object.fromEntries(toleranceNames.map((name) => [name, 0]))

describe('law: chance', () => {
  const chain = disc
  const groups = errorGroups(chain.machine, chain.layout)
  test('every number of a draw is normal and knows no other, the shared mean notwithstanding', () => {
    const count = 2048
    const draws = buildDraws(groups, count, 3)
    const all = Array.from({ length: count }, (_, n) => draws(n))
    const limit = 4 / Math.sqrt(count)
    for (const name of [
      'magnetAround_mm',
      'coilHeight_mm',
      'statorTilt_mm',
      'wireDiameter_percent',
    ] as const) {
      const first = sampleMoments(all.map((draw) => draw[name][0]!))
      expect(Math.abs(first.mean)).toBeLessThan(limit)
      expect(Math.abs(first.deviation - 1)).toBeLessThan(limit)
    }
    const product = sampleMoments(all.map((draw) => draw.magnetAround_mm[0]! * draw.magnetAround_mm[5]!))
    expect(Math.abs(product.mean)).toBeLessThan(limit)
    const across = sampleMoments(all.map((draw) => draw.magnetAround_mm[2]! * draw.magnetAcross_mm[2]!))
    expect(Math.abs(across.mean)).toBeLessThan(limit)
  })
  test('the first builds of a seed stay the same when more are asked for', () => {
    const [few, many] = [buildDraws(groups, 64, 9), buildDraws(groups, 256, 9)]
    for (const n of [0, 17, 63]) expect(many(n)).toEqual(few(n))
  })
  test('miscounted coils: their share, as many too few as too many, none beyond the most', () => {
    const numbers = Array.from({ length: 10_000 }, (_, k) => turnsOff((k + 0.5) / 10_000, 0.3, 3))
    for (const n of [-3, -2, -1, 1, 2, 3]) expect(numbers.filter((one) => one === n)).toHaveLength(500)
    expect(numbers.filter((one) => one === 0)).toHaveLength(7000)
    expect(turnsOff(0.001, 0, 3)).toBe(0)
  })
})

describe('agrees: whole chains from the volts on', () => {
  for (const name of ['drum', 'twoDiscs', 'disc'] as const)
    test(`${name}: watts and energy of other volts, phase by phase, and ohms to 1 % of the drawing’s`, () => {
      const chain = fixedChain(name)
      const surface = finished(wattsSurface(chain, { volts: 0.08, ohms: 0.08, mayCirculate: true }))
      expect(surface.drawn.useful / tellingWind(chain).row.watts.useful).toBeCloseTo(1, 9)
      for (const [mean, ohms] of [
        [1.05, 1.03],
        [0.94, 0.97],
      ] as const) {
        const volts = chain.voltage.phases.map((_, k) => mean + 0.012 * (k - 1))
        const full = finished(wattsWith(chain, scaledVoltage(chain.machine, chain.voltage, volts, ohms)))
        const found = surface.at({ volts, ohms, extraLoss: 0 })
        expect(Math.abs(found.useful - full.useful) / surface.drawn.useful).toBeLessThan(0.01)
        expect(Math.abs(found.energy - full.energy) / surface.drawn.energy).toBeLessThan(0.01)
      }
      const { speed } = tellingWind(chain).row
      const loss = 0.04 * surface.drawn.useful
      const full = finished(wattsWith(chain, chain.voltage, { loss, speed }))
      const found = surface.at({ volts: chain.voltage.phases.map(() => 1), ohms: 1, extraLoss: loss })
      expect(Math.abs(found.useful - full.useful)).toBeLessThan(0.05 * loss)
    })
  test('a machine whose magnets differ one by one: watts to 0.3 %', () => {
    // three weak magnets and two beside their places, through the whole chain and by their mean volts alone
    const chain = disc
    const defects = [
      { kind: 'weak magnet', position: 2, strength: 0.9 },
      { kind: 'weak magnet', position: 5, strength: 0.94 },
      { kind: 'weak magnet', position: 6, strength: 0.92 },
      { kind: 'shifted magnet', position: 3, shift_mm: 1.2 },
      { kind: 'shifted magnet', position: 8, shift_mm: -0.8 },
    ]
    const unlike = fixedChain('disc', (document) => Object.assign(document, { defects }))
    const volts = chain.voltage.phases.map(({ rms }, k) => unlike.voltage.phases[k]!.rms / rms)
    const surface = finished(wattsSurface(chain, { volts: 0.08, ohms: 0.02, mayCirculate: false }))
    const found = surface.at({ volts, ohms: 1, extraLoss: 0 })
    expect(volts[0]).toBeLessThan(0.98)
    expect(Math.abs(found.useful / tellingWind(unlike).row.watts.useful - 1)).toBeLessThan(3e-3)
  })
})

describe('law: many builds', () => {
  test('without tolerances every build is the drawing', () => {
    const result = study(
      fixedChain('twoDiscs', (document) => {
        document.tolerance = none
      }),
      64,
    )
    expect(result.yield).toBe(1)
    expect(result.tolerances).toEqual([])
    for (const name of buildFigureNames) {
      const { drawn, mean, low, high } = result.scatter[name]
      for (const value of [mean, low, high])
        expect(Math.abs(value - drawn)).toBeLessThanOrEqual(1e-9 * Math.abs(drawn))
    }
    expect(result.scatter.volts.drawn).toBeCloseTo(1, 12)
  })
  test('the same seed gives the same result, another another, near by', () => {
    const [a, again, other] = [study(disc, 64), study(disc, 64), study(disc, 64, 2)]
    expect(again).toEqual(a)
    expect(other.scatter.volts.low).not.toBe(a.scatter.volts.low)
    expect(Math.abs(other.scatter.volts.mean - a.scatter.volts.mean)).toBeLessThan(8e-3)
  })
  test('everything twice as exact never lowers the share that reaches the target, and narrows what scatters', () => {
    for (const name of ['drum', 'disc'] as const) {
      const chain = name === 'disc' ? disc : fixedChain(name)
      const whole = name === 'disc' ? discStudy : study(chain)
      expect(whole.yieldAllHalved).toBeGreaterThanOrEqual(whole.yield)
      const exact = fixedDocument(name)
      const { tolerance } = chain.machine.design
      exact.tolerance = Object.fromEntries(toleranceNames.map((one) => [one, (tolerance[one] as number) / 2]))
      const half = study(chainFrom(exact))
      // the very same builds, by two ways
      expect(half.yield).toBe(whole.yieldAllHalved)
      const width = ({ scatter }: BuildTolerance) => scatter.volts.high - scatter.volts.low
      expect(width(half) / width(whole)).toBeGreaterThan(0.45)
      expect(width(half) / width(whole)).toBeLessThan(0.55)
    }
  })
  test('a goal nobody can miss is reached by all, one that the drawing just meets by about half', () => {
    const chain = (target: object) =>
      fixedChain('disc', (document) => {
        document.tolerance = { target: { imbalance_percent: 50, power_percent: 50, ...target } }
      })
    const loose = study(chain({ volts_percent: 50, clearance_mm: 0 }))
    expect(loose.reached.volts).toBe(1)
    expect(loose.yield).toBe(loose.reached.clearance)
    const strict = study(chain({ volts_percent: 50, power_percent: 0.1 }))
    expect(strict.reached.power).toBeGreaterThan(0.3)
    expect(strict.reached.power).toBeLessThan(0.7)
  })
  test('a balance grade counts only where the document asks for one', () => {
    const base = discStudy
    const asked = study(
      fixedChain('disc', (document) => {
        Object.assign(document.shaft, { balanceGrade: 'G 16' })
      }),
    )
    expect(asked.reached.grade).toBe(base.reached.grade)
    expect(base.reached.grade).toBeLessThan(base.yield)
    expect(asked.yield).toBeLessThanOrEqual(base.reached.grade)
  })
  test('shares of each figure sum to one; distance of the winding moves a thin field most', () => {
    const { tolerances } = discStudy
    for (const figure of ['volts', 'useful', 'spread', 'clearance', 'grade'] as const) {
      const sum = tolerances.reduce((part, { shares }) => part + shares[figure], 0)
      expect(sum).toBeCloseTo(1, 9)
    }
    const most = tolerances.reduce((a, b) => (b.shares.volts > a.shares.volts ? b : a))
    expect(most.name).toBe('statorDistance_mm')
    expect(tolerances.find(({ name }) => name === 'rotorCentre_mm')!.shares.grade).toBeGreaterThan(0.5)
  })
  test('unlike branches and an uneven delta circulate; a star does not', () => {
    const delta = study(
      fixedChain('disc', (document) => {
        document.stator.connection = 'delta'
      }),
    )
    expect(delta.circulates).toBe(true)
    const { low, high, drawn } = delta.scatter.circulatingLoss
    expect(high).toBeGreaterThan(drawn)
    expect(high).toBeGreaterThan(low)
    expect(discStudy.scatter.circulatingCurrent.high).toBe(0)
    const parallel = study(
      fixedChain('disc', (document) => {
        document.stator.winding.parallelGroups = 2
      }),
    )
    expect(parallel.scatter.circulatingCurrent.drawn).toBeLessThan(1e-9)
    expect(parallel.scatter.circulatingCurrent.middle).toBeGreaterThan(1e-3)
  })
  test('the fraction done rises to the end', () => {
    const steps = buildTolerance(disc, { builds: 64 })
    let last = 0
    for (let step = steps.next(); step.done !== true; step = steps.next()) {
      expect(step.value).toBeGreaterThanOrEqual(last)
      expect(step.value).toBeLessThanOrEqual(1)
      last = step.value
    }
    expect(last).toBeGreaterThan(0.9)
  })
  test('a machine with defects, and one with an upright axis, can be built: all numbers finite, but for a current that never begins', () => {
    const faulty = fixedChain('disc', (document) => {
      document.defects = [
        { kind: 'flipped magnet', position: 2 },
        { kind: 'missing magnet', position: 5 },
        { kind: 'shorted turns', coil: 2, turns: 9 },
        { kind: 'unequal gap', difference_mm: 1 },
      ]
    })
    for (const chain of [faulty, chainFrom(exampleDocument('garden-vertical'))]) {
      const result = study(chain, 64)
      for (const figure of buildFigureNames)
        for (const value of Object.values(result.scatter[figure]))
          expect(Number.isFinite(value) || (figure === 'cutIn' && value === Number.POSITIVE_INFINITY)).toBe(
            true,
          )
      for (const { shares, yieldHalved } of result.tolerances)
        expect([...Object.values(shares), yieldHalved].every((one) => one >= 0 && one <= 1)).toBe(true)
    }
  })
  test('too few builds and no seed are refused', () => {
    expect(() => study(disc, 10)).toThrow('builds must be a whole number from 64')
    expect(() => study(disc, 64, 0.5)).toThrow('seed must be')
  })
})
