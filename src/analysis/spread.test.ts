/** Checks of the spread: laws of drawing on designs whose answer is known, and other routes to the same intervals. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../../test/example.ts'
import { chainOf, computeDesign } from './compute.ts'
import { guessesOf, supposedMachine } from './guess.ts'
import { sampleOf } from './sampled-chain.ts'
import { intervalEnds, spreadStudy, spreadStudyFrom, spreadsOf } from './spread.ts'
import { spreadOutputNames, spreadOutputs } from './spread-output.ts'
import { spreadPlan } from './spread-plan.ts'
import { plainOutputs, spreadSamples } from './spread-sample.ts'
import { finished } from './step.ts'

type Document = ReturnType<typeof exampleDocument>

/** No spread of the document's own, a polarisation without spread, a measured thermal resistance, powers in a table. */
function certain(document: Document): void {
  document.site.meanWind_m_per_s = 4.5
  document.shaft = { friction_mNm: 1 }
  document.rotor.magnet = {
    shape: 'block',
    length_mm: 20,
    width_mm: 10,
    thickness_mm: 5,
    polarization_T: 1.2,
  }
  document.stator.thermalResistance_K_per_W = 5
  document.blades = {
    kind: 'table',
    diameter_m: 0.36,
    points: [0, 0.2, 0.3, 0.2, 0].map((powerCoefficient, k) => ({
      tipSpeedRatio: 1.5 * k,
      powerCoefficient,
    })),
  }
}

const chainFor = (change: (document: Document) => void) => {
  const document = exampleDocument('class-room-fan')
  certain(document)
  change(document)
  return computeDesign(designOf(document))
}

const spreadsFor = (change: (document: Document) => void, samples = 64) =>
  finished(spreadsOf(chainFor(change), { samples }))

describe('law: spread of the results', () => {
  test('a design without guesses has none, and nothing is drawn', () => {
    const study = finished(spreadStudy(chainFor(() => {})))
    expect(study.drawn).toEqual([])
    for (const { spread, causes, low, high, value } of Object.values(study.results)) {
      expect(spread).toBe(0)
      expect(causes).toEqual([])
      expect([low, high]).toEqual([value, value])
    }
  })
  test('blades by their sections leave what they drag open, and the volts alone', () => {
    const results = spreadsFor((document) => {
      document.blades = exampleDocument('class-room-fan').blades
    })
    expect(results.runawaySpeed.causes[0]!.path).toBe('drag of the blade sections')
    expect(results.runawaySpeed.spread / results.runawaySpeed.value).toBeGreaterThan(0.02)
    expect(results.runawaySpeed.spread / results.runawaySpeed.value).toBeLessThan(0.4)
    expect(results.usefulPower.spread).toBeGreaterThan(0)
    expect(results.phaseVoltage.spread).toBe(0)
  })
  test('open-circuit volts follow the polarisation one to one, and the speed of the first current its inverse', () => {
    const { phaseVoltage, cutInSpeed } = spreadsFor((document) => {
      document.rotor.magnet.polarization_T = { value: 1.2, spread: 0.06, known: 'measured' }
      document.rotor.magnet.recoilPermeability = 1
      document.load = exampleDocument('hen-house-drum').load
    }, 256)
    // thirty-two states of the magnets: the ends are good to half a step between them
    expect(phaseVoltage.spread / phaseVoltage.value).toBeGreaterThan(0.046)
    expect(phaseVoltage.spread / phaseVoltage.value).toBeLessThan(0.054)
    expect(phaseVoltage.causes).toHaveLength(1)
    expect(phaseVoltage.causes[0]!.path).toBe('rotor.magnet.polarization_T')
    expect(phaseVoltage.causes[0]!.share).toBeGreaterThan(0.999)
    expect((phaseVoltage.high * cutInSpeed.low) / (phaseVoltage.value * cutInSpeed.value)).toBeCloseTo(1, 3)
    expect((phaseVoltage.low * cutInSpeed.high) / (phaseVoltage.value * cutInSpeed.value)).toBeCloseTo(1, 3)
  })
  test('shares and what is left for doings together make the whole', () => {
    const results = finished(spreadsOf(exampleChain('class-room-fan'), { samples: 256 }))
    for (const { causes, together, spread } of Object.values(results)) {
      if (spread === 0) continue
      const sum = causes.reduce((all, { share }) => all + share, together)
      expect(sum).toBeGreaterThan(0.95)
      expect(sum).toBeLessThan(1 + 1e-9)
    }
  })
  test('a start that some draws never see is told as such, with the interval of those that do', () => {
    const { cutInWind } = spreadsFor((document) => {
      document.blades = exampleDocument('class-room-fan').blades
      document.shaft = { friction_mNm: { value: 9, spread: 5 } }
    }, 128)
    expect(cutInWind.never).toBeGreaterThan(0.02)
    expect(cutInWind.never).toBeLessThan(0.98)
    expect(Number.isFinite(cutInWind.high)).toBe(true)
  })
  test('a measured heat run takes the guess out of the copper temperature', () => {
    const guessed = spreadsFor((document) => {
      delete document.stator.thermalResistance_K_per_W
    })
    expect(guessed.copperTemperature.spread).toBeGreaterThan(0)
    expect(guessed.copperTemperature.causes[0]!.path).toBe('estimated thermal resistance')
  })
})

describe('law: the draws', () => {
  const chain = exampleChain('class-room-fan')
  const plan = spreadPlan(chain, { samples: 64, seed: 3 })
  const whole = finished(spreadSamples(chain, plan, [0, 64]))
  test('the same seed gives the same digits, another seed others', () => {
    expect(finished(spreadSamples(chain, spreadPlan(chain, { samples: 64, seed: 3 }), [0, 64]))).toEqual(
      whole,
    )
    expect(finished(spreadSamples(chain, spreadPlan(chain, { samples: 64, seed: 4 }), [0, 64]))).not.toEqual(
      whole,
    )
  })
  test('parts computed apart and set side by side are the whole, wherever they are cut', () => {
    const parts = [
      [0, 7],
      [7, 40],
      [40, 64],
    ] as const
    const joined = parts.flatMap((part) => [...finished(spreadSamples(chain, plan, part))])
    expect(joined).toEqual([...whole])
  })
})

describe('law: the band of the power curve', () => {
  const chain = exampleChain('class-room-fan')
  const options = { samples: 64, seed: 3 } as const
  const bare = finished(spreadStudy(chain, options))
  const told = finished(spreadStudy(chain, { ...options, curve: true }))
  const { wind, low, median, high } = told.curve!
  test('asking for it moves no other figure', () => {
    expect(bare.curve).toBeUndefined()
    expect(told.results).toEqual(bare.results)
  })
  test('it stands at every wind of the table, its ends in their order', () => {
    expect([...wind]).toEqual(chain.rows.map((row) => row.wind))
    for (let k = 0; k < wind.length; k++) {
      expect(low[k]).toBeLessThanOrEqual(median[k]!)
      expect(median[k]).toBeLessThanOrEqual(high[k]!)
    }
  })
  test('where a result asks for the same wind, the ends are the result’s own', () => {
    for (const [output, at] of [
      ['meanWindPower', told.asked.mean],
      ['strongWindPower', told.asked.strong],
    ] as const) {
      const k = wind.indexOf(at)
      expect(k).toBeGreaterThanOrEqual(0)
      const { low: from, median: middle, high: to } = told.results[output]
      if (told.results[output].spread > 0) expect([low[k], median[k], high[k]]).toEqual([from, middle, to])
    }
  })
})

describe('agrees: a draw by the lean chain is the whole chain of the machine that it supposes', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const dear = chain.voltage.order !== 1
      const plan = spreadPlan(chain, { samples: dear ? 16 : 64 })
      const d = plan.drawn.length
      const guesses = plan.drawn.flatMap(({ guess }) => (guess === undefined ? [] : [guess]))
      for (const n of dear ? [5] : [5, 37]) {
        const values = finished(spreadSamples(chain, plan, [n, n + 1]))
        const shifts = plan.drawn.map(({ shift }, k) => shift(plan.points[n * d + k]!))
        const { machine, assumptions } = supposedMachine(chain.machine, guesses, shifts)
        const full = sampleOf(finished(chainOf(machine, { assumptions })))
        const way = guesses.length < d ? shifts[d - 1]! : 0
        spreadOutputNames.forEach((output, k) => {
          const expected = spreadOutputs[output]({ chain: full, asked: plan.asked, way })
          if (!Number.isFinite(expected)) expect(values[k]).toBe(expected)
          // the magnets' share of the copper's warmth is stepped: some draws fall on the next step
          else expect(Math.abs(values[k]! - expected)).toBeLessThanOrEqual(1e-3 * Math.abs(expected) + 1e-12)
        })
      }
    }, 300_000)
})

describe('agrees: other routes to the interval', () => {
  test('guess by guess at the ends, squares added, where the chain is nearly straight', () => {
    const chain = exampleChain('class-room-fan')
    const plan = spreadPlan(chain, { samples: 256 })
    const results = spreadStudyFrom(chain, plan, finished(spreadSamples(chain, plan, [0, 256]))).results
    const plain = plainOutputs(chain, plan)
    const squares = plain.map(() => 0)
    for (const { at } of guessesOf(chain.machine)) {
      const ends = ([1, -1] as const).map((side) => {
        const { machine, assumptions } = at(side)
        return plainOutputs(finished(chainOf(machine, { assumptions, previous: chain })), plan)
      })
      plain.forEach((_, k) => {
        squares[k]! += ((ends[0]![k]! - ends[1]![k]!) / 2) ** 2
      })
    }
    for (const name of [
      'energy',
      'usefulPower',
      'phaseVoltage',
      'copperTemperature',
      'runawaySpeed',
    ] as const) {
      const one = Math.sqrt(squares[spreadOutputNames.indexOf(name)]!)
      expect(results[name].spread / one).toBeGreaterThan(0.88)
      expect(results[name].spread / one).toBeLessThan(1.12)
    }
  })
  test('a guess measured: its effect taken out of the draws, or the whole drawn anew with the smaller spread', () => {
    const told = finished(spreadsOf(exampleChain('class-room-fan'), { samples: 256 })).energy
    const measured = told.next.find(({ path }) => path === 'site.meanWind_m_per_s')!
    const document = exampleDocument('class-room-fan')
    document.site.meanWind_m_per_s = {
      value: document.site.meanWind_m_per_s.value,
      spread: measured.after,
      known: 'measured',
    }
    const anew = finished(spreadsOf(computeDesign(designOf(document)), { samples: 256 })).energy
    expect((measured.high - measured.low) / (anew.high - anew.low)).toBeGreaterThan(0.9)
    expect((measured.high - measured.low) / (anew.high - anew.low)).toBeLessThan(1.1)
  })
  test('whole chains at pseudo-random draws, the hen-house drum: ends within their own scatter', () => {
    const chain = exampleChain('hen-house-drum')
    const plan = spreadPlan(chain, { samples: 256 })
    const { results } = spreadStudyFrom(chain, plan, finished(spreadSamples(chain, plan, [0, 256])))
    const guesses = plan.drawn.flatMap(({ guess }) => (guess === undefined ? [] : [guess]))
    // Park & Miller's minimal standard generator, seed 12345
    let state = 12345
    const random = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    const count = 200
    const rows = Array.from({ length: count }, () => {
      const shifts = plan.drawn.map(({ shift }) => shift(random()))
      const { machine, assumptions } = supposedMachine(chain.machine, guesses, shifts)
      return plainOutputs(finished(chainOf(machine, { assumptions, previous: chain })), plan)
    })
    spreadOutputNames.forEach((name, k) => {
      const [low, middle, high] = intervalEnds(rows.map((row) => row[k]!))
      const { spread } = results[name]
      // standard error of the 5 % quantile of 200 normal draws is 0.15 deviations, 0.09 half-widths; three of them
      expect(Math.abs(results[name].low - low)).toBeLessThan(0.3 * spread)
      expect(Math.abs(results[name].high - high)).toBeLessThan(0.3 * spread)
      expect(Math.abs(results[name].median - middle)).toBeLessThan(0.2 * spread)
    })
  }, 600_000)
})
