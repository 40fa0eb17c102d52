/** Laws that must hold of whole machines whatever their numbers: monotony, symmetry, scaling, on random designs. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rotorField } from '../src/analysis/air-gap-field.ts'
import { type Chain, computeDesign } from '../src/analysis/compute.ts'
import { conductorLayout } from '../src/analysis/conductor-layout.ts'
import { openCircuitVoltage } from '../src/analysis/open-circuit-voltage.ts'
import { woundMachine } from '../src/analysis/winding.ts'
import { resolveDesign } from '../src/machine/resolve.ts'
import { harmonicAmplitude } from '../src/numerics/fourier.ts'
import { designOf } from './example.ts'
import { type FixedName, fixedDocument } from './fixed-document.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will
type Change = (document: any) => void

/** A guard against hanging, many times what is needed, so that a busy machine does not fail it. */
const guard = { timeout: 240_000 }
const runs = { numRuns: 8 }

function changed(name: FixedName, ...changes: readonly Change[]) {
  const document = fixedDocument(name)
  for (const change of changes) change(document)
  return designOf(document)
}

/** Field, wire and volts alone: most of these laws need no more. */
function wound(name: FixedName, ...changes: readonly Change[]) {
  const machine = resolveDesign(changed(name, ...changes))
  const field = rotorField(machine, machine.site.ambient)
  const layout = conductorLayout(machine)
  const wire = woundMachine(machine, layout)
  const voltage = openCircuitVoltage(machine, field, layout, wire)
  return { machine, field, layout, wire, voltage, rms: voltage.phases.map(({ rms }) => rms) }
}

const chain = (name: FixedName, ...changes: readonly Change[]): Chain =>
  computeDesign(changed(name, ...changes))

const names: readonly FixedName[] = ['drum', 'twoDiscs', 'disc']
const anyName = fc.constantFrom(...names)
const factor = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true })

const expectAlike = (a: readonly number[], b: readonly number[], within: number) => {
  expect(a).toHaveLength(b.length)
  a.forEach((value, k) => {
    expect(Math.abs(value - b[k]!)).toBeLessThanOrEqual(within * Math.max(Math.abs(value), Math.abs(b[k]!)))
  })
}

/** Within a share of the largest of all: watts that are next to nothing have no digits of their own. */
const expectNear = (a: readonly number[], b: readonly number[], within: number) => {
  const most = b.reduce((high, value) => Math.max(high, Math.abs(value)), 0)
  a.forEach((value, k) => {
    expect(Math.abs(value - b[k]!)).toBeLessThanOrEqual(within * most)
  })
}

const wattsOf = ({ rows }: Chain): number[] =>
  rows.flatMap(({ watts, speed }) => [...Object.values(watts), speed])

/** Sets the distance of the winding, or of every phase of a serpentine, farther by so much [mm]. */
const fartherBy =
  (by: number): Change =>
  (d) => {
    const { winding } = d.stator
    for (const each of winding.phases ?? [winding]) each.distance_mm += by
  }

describe('law: gap and magnets', () => {
  test('a winding farther from its magnets never collects more', guard, () => {
    // what alternates round the rotor dies away with distance; between two discs it has its least in the middle
    fc.assert(
      fc.property(fc.constantFrom<FixedName>('drum', 'disc'), factor(0.1, 6), (name, by) => {
        const [near, far] = [wound(name).rms, wound(name, fartherBy(by)).rms]
        far.forEach((rms, k) => {
          expect(rms).toBeLessThan(near[k]!)
        })
      }),
      runs,
    )
  })
  test('discs farther apart, the winding midway, never make more field', guard, () => {
    fc.assert(
      fc.property(factor(0.1, 12), (by) => {
        const apart: Change = (d) => {
          d.rotor.faceDistance_mm += by
          d.stator.winding.distance_mm += by / 2
        }
        expect(wound('twoDiscs', apart).rms[0]!).toBeLessThan(wound('twoDiscs').rms[0]!)
      }),
      runs,
    )
  })
  test('more remanence never lowers the volts', guard, () => {
    fc.assert(
      fc.property(anyName, factor(0.3, 1.3), factor(1.001, 1.15), (name, remanence, more) => {
        const magnets =
          (polarization_T: number): Change =>
          (d) => {
            delete d.rotor.magnet.grade
            d.rotor.magnet.polarization_T = polarization_T
          }
        const [weak, strong] = [
          wound(name, magnets(remanence)).rms,
          wound(name, magnets(remanence * more)).rms,
        ]
        strong.forEach((rms, k) => {
          expect(rms).toBeGreaterThan(weak[k]!)
          // in proportion, less what steel takes when it saturates; its curve is steeper a little above zero
          expect(rms).toBeLessThanOrEqual(weak[k]! * more * (1 + 1e-3))
        })
      }),
      runs,
    )
  })
})

describe('law: turns and wire', () => {
  test('turns times the speed at which current begins is one number in a star', guard, () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 300 }), fc.integer({ min: 1, max: 200 }), (turns, more) => {
        const cutIn = (N: number) =>
          chain('disc', (d) => {
            d.stator.winding.turns = N
            d.load = { kind: 'battery', chemistry: 'lead-acid', voltage_V: 6.3, resistance_mohm: 50 }
          }).generator.cutIn
        expect(cutIn(turns + more) / cutIn(turns)).toBeCloseTo(turns / (turns + more), 6)
      }),
      { numRuns: 4 },
    )
  })
  test('thicker wire in the same coil is never hotter at the same amps', guard, () => {
    // its resistance falls with its section, and the way of the heat out of the coil is no worse
    fc.assert(
      fc.property(
        fc.constantFrom<FixedName>('disc', 'drum'),
        factor(0.2, 0.6),
        factor(1.05, 1.8),
        (name, size, more) => {
          const rise = (bare: number) => {
            const { voltage, cooling } = chain(name, (d) => {
              d.stator.wire = { ...d.stator.wire, size: Number(bare.toFixed(4)) }
            })
            return (
              voltage.phases.reduce((sum, { resistance }) => sum + resistance, 0) * cooling.resistance(30)
            )
          }
          expect(rise(size * more)).toBeLessThan(rise(size))
        },
      ),
      { numRuns: 4 },
    )
  })
  test('star over delta: lines √3 times in volts, a third of the phase’s ohms', guard, () => {
    fc.assert(
      fc.property(fc.constantFrom<FixedName>('twoDiscs', 'disc'), factor(0, 4), (name, by) => {
        const joined = (connection: string) =>
          wound(name, (d) => {
            d.stator.connection = connection
            if (name === 'disc') fartherBy(by)(d)
          })
        const [star, delta] = [joined('star'), joined('delta')]
        const { order } = star.voltage
        star.voltage.lines.forEach(({ emf }, k) => {
          // balanced phases drive nothing round the delta at the working order
          const ratio = harmonicAmplitude(emf, order) / harmonicAmplitude(delta.voltage.lines[k]!.emf, order)
          expect(ratio).toBeCloseTo(Math.sqrt(3), 6)
        })
      }),
      { numRuns: 6 },
    )
  })
  test('a longer cable never gives more at the same speed of the shaft', guard, () => {
    // at the same wind it may: what lowers the current may take the blades out of stall
    fc.assert(
      fc.property(fc.constantFrom<FixedName>('disc', 'drum'), factor(1.2, 20), (name, longer) => {
        const lengthened: Change = (d) => {
          d.cable.length_m *= longer
        }
        const [short, long] = [chain(name), chain(name, lengthened)]
        for (const share of [1.2, 2, 4]) {
          const speed = share * (Number.isFinite(short.generator.cutIn) ? short.generator.cutIn : 10)
          const [before, after] = [short, long].map(({ generator }) => generator.at(speed, 300).watts)
          // the tables of the two are read between their own nodes
          expect(after!.useful).toBeLessThanOrEqual(before!.useful * (1 + 2e-3))
        }
      }),
      { numRuns: 4 },
    )
  })
})

describe('law: what turns and what blows', () => {
  test('more inertia changes no steady state', guard, () => {
    fc.assert(
      fc.property(fc.constantFrom<FixedName>('disc', 'drum'), factor(0.001, 50), (name, inertia_kg_m2) => {
        const heavy = chain(name, (d) => {
          d.shaft.inertia_kg_m2 = inertia_kg_m2
        })
        expect(wattsOf(heavy)).toEqual(wattsOf(chain(name)))
      }),
      { numRuns: 3 },
    )
  })
  test('the power on offer goes with the density of the air', guard, () => {
    fc.assert(
      fc.property(factor(0.6, 1.5), factor(1, 20), (density, wind) => {
        const { blades } = chain('disc', (d) => {
          d.site.airDensity_kg_per_m3 = density
        })
        expect(blades.available(wind)).toBeCloseTo(0.5 * density * Math.PI * 0.18 ** 2 * wind ** 3, 9)
      }),
      { numRuns: 4 },
    )
  })
})

/** Every length of rotor and stator, wire and leads times k. */
const scaledBy =
  (k: number): Change =>
  (d) => {
    const walk = (at: Record<string, unknown>) => {
      for (const [key, value] of Object.entries(at)) {
        if (typeof value === 'number' && /_(?:mm|m)$/.test(key)) at[key] = value * k
        else if (typeof value === 'object' && value !== null) walk(value as Record<string, unknown>)
      }
    }
    const size = bareDiameter_mm(d) * k
    d.stator.leadLength_m ??= 0.3
    walk(d.rotor)
    walk(d.stator)
    d.stator.wire.size = size
    d.stator.jointResistance_mohm = (d.stator.jointResistance_mohm ?? 0) / k
  }

const bareDiameter_mm = (document: unknown) =>
  1000 * resolveDesign(designOf(structuredClone(document))).stator.wire.diameter

describe('law: scaling', () => {
  test('all lengths times k: same field, EMF k², ohms 1/k, henries k', guard, () => {
    fc.assert(
      fc.property(fc.constantFrom<FixedName>('twoDiscs', 'disc'), factor(0.6, 1.7), (name, k) => {
        const explicit: Change = (d) => {
          d.rotor.cover_mm ??= 0
          d.rotor.backIron.thickness_mm ??= d.rotor.backIron.kind === 'none' ? undefined : 6
          if (d.rotor.backIron.kind === 'none') delete d.rotor.backIron.thickness_mm
        }
        const [one, other] = [wound(name, explicit), wound(name, explicit, scaledBy(k))]
        const point = ({ field }: typeof one) => field.workingPoint.polarization
        expect(point(other)).toBeCloseTo(point(one), 6)
        expectAlike(
          other.rms,
          one.rms.map((rms) => rms * k ** 2),
          1e-5,
        )
        expectAlike(
          other.voltage.phases.map(({ resistance }) => resistance),
          one.voltage.phases.map(({ resistance }) => resistance / k),
          1e-6,
        )
        expectAlike(
          other.voltage.phases.map(({ inductance }) => inductance),
          one.voltage.phases.map(({ inductance }) => inductance * k),
          1e-5,
        )
      }),
      { numRuns: 6 },
    )
  })
})

describe('law: symmetry', () => {
  const turned =
    (by_deg: number): Change =>
    (d) => {
      const { winding } = d.stator
      if (winding.phases === undefined) winding.offset_deg = (winding.offset_deg ?? 0) + by_deg
      else for (const phase of winding.phases) phase.offset_deg += by_deg
    }
  const figures = ({ voltage }: ReturnType<typeof wound>) => [
    ...voltage.phases.flatMap(({ rms, peak, resistance, inductance }) => [rms, peak, resistance, inductance]),
    ...voltage.lines.flatMap(({ rms, peak }) => [rms, peak]),
  ]
  test('the whole winding turned, by a pole or by any angle', guard, () => {
    fc.assert(
      fc.property(anyName, factor(-170, 170), (name, angle) => {
        const pole = 360 / fixedDocument(name).rotor.poleCount
        const one = figures(wound(name))
        expectAlike(figures(wound(name, turned(pole))), one, 1e-6)
        // peaks are searched on samples that stand elsewhere then
        expectAlike(figures(wound(name, turned(angle))), one, 2e-4)
      }),
      { numRuns: 4 },
    )
  })
  test('the mirrored machine gives the same watts', guard, () => {
    fc.assert(
      fc.property(factor(-3, 3), (by_deg) => {
        const misplaced: Change = (d) => {
          d.stator.winding.phases[2].offset_deg += by_deg
        }
        const mirrored: Change = (d) => {
          for (const phase of d.stator.winding.phases) phase.offset_deg = -phase.offset_deg
        }
        const [one, other] = [chain('drum', misplaced), chain('drum', misplaced, mirrored)]
        // lags are turned round; what the tables read from them ends at their own digits
        expectNear(wattsOf(other), wattsOf(one), 5e-4)
      }),
      { numRuns: 3 },
    )
  })
  test('one magnet flipped is all one, whichever it is', guard, () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 }), (k) => {
        const at = (position: number) =>
          wound('disc', (d) => {
            d.rotor.poleSequence = Array.from({ length: 8 }, (_, p) =>
              (p % 2 === 0) !== (p === position) ? 'N' : 'S',
            ).join('')
          })
            .rms.slice()
            .sort((a, b) => a - b)
        expectAlike(at(k), at(0), 1e-5)
      }),
      { numRuns: 4 },
    )
  })
})

describe('law: how a number is written changes nothing', () => {
  test('bare, or with its spread and how it is known', guard, () => {
    const bare = chain('disc')
    fc.assert(
      fc.property(factor(0, 0.3), fc.constantFrom('measured', 'label', 'guessed'), (spread, known) => {
        const written = (at: Record<string, unknown>) => {
          for (const [key, value] of Object.entries(at)) {
            if (typeof value === 'number' && /_(?:mm|ohm|mNm|V|mohm)$/.test(key))
              at[key] = { value, spread: spread * value, known }
            else if (typeof value === 'object' && value !== null && !('value' in value))
              written(value as Record<string, unknown>)
          }
        }
        const other = chain('disc', (d) => written(d))
        expect(wattsOf(other)).toEqual(wattsOf(bare))
        expect(other.year.energy).toBe(bare.year.energy)
      }),
      { numRuns: 3 },
    )
  })
  test('a gauge number, or its millimetres', guard, () => {
    const metric = bareDiameter_mm(fixedDocument('disc'))
    const other = wound('disc', (d) => {
      d.stator.wire.size = metric
    })
    expectAlike(
      other.voltage.phases.map(({ resistance }) => resistance),
      wound('disc').voltage.phases.map(({ resistance }) => resistance),
      1e-12,
    )
  })
})
