/** The textbook's winding factor beside the one found by integration, harmonic by harmonic, and what tells them apart. */
import type { Machine } from '../machine/machine.ts'
import { harmonicAmplitude } from '../numerics/fourier.ts'
import { pitchFactor, skewFactor, spreadFactor } from '../physics/winding/winding-factor.ts'
import { levelAbove } from './air-gap-field.ts'
import type { Chain } from './compute.ts'
import { type Coil, coilFormOf, conductorLayout } from './conductor-layout.ts'
import { rotorLinkage } from './flux-linkage.ts'
import {
  delayed,
  idealRun,
  legsVoltage,
  levelField,
  type Phasor,
  phasor,
  plus,
  type Seen,
  size,
  toldHarmonics,
  zero,
} from './leg-voltage.ts'

/** What can set the integrated factor apart from pitch times distribution. */
export const factorCauses = ['spread', 'skew', 'legs', 'ends', 'depth'] as const
export type FactorCause = (typeof factorCauses)[number]

export interface FactorRow {
  /** n */
  readonly harmonic: number
  /** Textbook factors, each 0…1; their product. */
  readonly pitch: number
  readonly distribution: number
  readonly spread: number
  readonly skew: number
  readonly textbook: number
  /**
   * EMF of the phase over that of as many turns of ideal full-pitch filaments: two straight runs one pole pitch apart,
   * as long as the magnets, on the level of the coil's own legs, in the same field, without ends. Undefined where the
   * field has next to nothing of this harmonic.
   */
  readonly integrated: number | undefined
}

export interface WindingFactors {
  readonly rows: readonly FactorRow[]
  /** Integrated over pitch × distribution at the fundamental, by cause: factors that multiply up to it. */
  readonly shares: Readonly<Record<FactorCause, number>>
  /** The cause that changes most; undefined where none changes by half a per cent, or nothing is left to compare. */
  readonly dominant: FactorCause | undefined
  readonly sentence: string
}

/** Ideal harmonics below this share of the fundamental are noise of the field's own. */
const leastHarmonic = 2e-3
/** A cause that changes less than this is none. */
const leastChange = 5e-3

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x)

/** What the textbook knows of a winding: electrical angles of span, leg and slant, and the levels of its legs. */
function textbookAngles(machine: Machine) {
  const { winding } = machine.stator
  const { polePairs: p, pitchRadius, arrangement } = machine.rotor
  if (winding.kind === 'serpentine') {
    const radius = arrangement === 'drum' ? levelAbove(machine, winding.phases[0]!.distance) : pitchRadius
    return { span: Math.PI, leg: (p * winding.bundleWidth) / radius, slant: p * winding.slant, rise: 0 }
  }
  const { legSpan, legAngle, rise } = coilFormOf(machine, winding)
  return { span: p * legSpan, leg: p * legAngle, slant: 0, rise: rise.legs }
}

const factor = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : Math.abs(value))

const causeText: Readonly<Record<FactorCause, readonly [less: string, more: string]>> = {
  spread: [
    'the width of its legs: the turns lie spread under the pole and do not peak together',
    'the width of its legs, which brings turns nearer to full pitch',
  ],
  skew: [
    'the slant of its runs, which lie under the pole at one end and leave it at the other',
    'the slant of its runs',
  ],
  legs: [
    'the legs themselves: under the magnets they are shorter than these, bend, or do not keep their pitch from end to end',
    'the legs themselves: under the magnets they span nearer to a pole than their mean width tells',
  ],
  ends: [
    'what lies beyond the ends of the magnets: in the fringe of their field crowns or coil ends take volts away',
    'what lies beyond the ends of the magnets: in the fringe of their field legs, crowns or coil ends add volts',
  ],
  depth: [
    'the depth of the bundle, whose outer layers lie in a weaker field',
    'the depth of the bundle: what its near side gains in the field is more than its far side loses',
  ],
}

const percent = (ratio: number): string => `${Math.abs(100 * (ratio - 1)).toFixed(1)} %`

function sentenceOf(shares: WindingFactors['shares'], dominant: FactorCause | undefined): string {
  if (dominant === undefined)
    return 'The integrated factor is that of the textbook, pitch times distribution.'
  const whole = factorCauses.reduce((product, cause) => product * shares[cause], 1)
  const share = shares[dominant]
  const verdict =
    Math.abs(whole - 1) < leastChange
      ? 'The integrated factor is that of pitch times distribution only because causes cancel'
      : `The integrated factor is ${percent(whole)} ${whole < 1 ? 'below' : 'above'} pitch times distribution`
  return `${verdict}; what changes it most, by ${percent(share)} ${share < 1 ? 'down' : 'up'}, is ${causeText[dominant][share < 1 ? 0 : 1]}.`
}

/** Factors of one phase, from 0; phases of one winding differ only where their levels do. */
export function windingFactors(
  { machine, field, layout, voltage }: Pick<Chain, 'machine' | 'field' | 'layout' | 'voltage'>,
  phase = 0,
): WindingFactors {
  const { base, order } = voltage
  const seen: Seen = { machine, field, base, order }
  const coils = layout.coils.filter((coil) => coil.phase === phase)
  const { span, leg, slant, rise } = textbookAngles(machine)
  const shapesUsed = [...new Set(coils.map(({ shape }) => shape))]
  // the same paths in the middle of the bundle's depth alone
  const thin = conductorLayout(machine, [3, 1])
  const parts = new Map(
    shapesUsed.map((k) => {
      const shape = layout.shapes[k]!
      const fields = [...new Set([0, rise])].map((step) => levelField(seen, shape.distance + step))
      const wave = shape.repeats > 1
      const legs = legsVoltage(seen, thin.shapes[k]!, fields)
      const middle = rotorLinkage(machine, field, thin.shapes[k]!, 7).flux
      return [
        k,
        {
          // a wave has a run for every pole and closes with itself: half as many ideal turns as runs
          ideal: (n: number) =>
            (2 *
              shape.turns *
              (wave ? shape.repeats : 1) *
              fields.reduce((sum, at) => sum + idealRun(at, n * order), 0)) /
            fields.length,
          legs: (n: number) => {
            const turned = sinc((n * order * base * shape.spreadAngle) / 2)
            return plus(zero, legs(n * order), shape.turns * shape.repeats * turned)
          },
          // e = −dψ/dt: the size alone counts
          whole: (n: number) => {
            const h = n * order
            return plus(zero, phasor(middle, h), h * base * shape.turns)
          },
        },
      ] as const
    }),
  )
  const sum = (of: (coil: Coil) => Phasor, n: number): number =>
    size(
      coils.reduce(
        (total, coil) => plus(total, delayed(of(coil), n * order * base * coil.angle), coil.sense),
        zero,
      ),
    ) / layout.groups
  const ideal = (n: number) =>
    coils.reduce((total, { shape }) => total + parts.get(shape)!.ideal(n), 0) / layout.groups
  const first = ideal(1)
  const turns = coils.reduce((total, { shape }) => total + layout.shapes[shape]!.turns, 0)
  const rows = toldHarmonics.map((n): FactorRow => {
    const distribution =
      (sum(({ shape }) => ({ re: layout.shapes[shape]!.turns, im: 0 }), n) * layout.groups) / turns
    const pitch = factor(pitchFactor({ span, harmonic: n }))
    const spread = factor(spreadFactor({ width: leg, harmonic: n }))
    const skew = factor(skewFactor({ skew: slant, harmonic: n }))
    const whole = ideal(n)
    return {
      harmonic: n,
      pitch,
      distribution: factor(distribution),
      spread,
      skew,
      textbook: pitch * factor(distribution) * spread * skew,
      integrated:
        whole > leastHarmonic * first
          ? harmonicAmplitude(voltage.phases[phase]!.emf, n * order) / whole
          : undefined,
    }
  })
  const [fundamental] = rows as [FactorRow]
  const legs = sum(({ shape }) => parts.get(shape)!.legs(1), 1)
  const whole = sum(({ shape }) => parts.get(shape)!.whole(1), 1)
  const total = harmonicAmplitude(voltage.phases[phase]!.emf, order)
  const ratio = (a: number, b: number) => (a > 0 && b > 0 ? a / b : 1)
  const shares = {
    spread: fundamental.spread,
    skew: fundamental.skew,
    legs: ratio(legs, fundamental.textbook * first),
    ends: ratio(whole, legs),
    depth: ratio(total, whole),
  }
  const change = (cause: FactorCause) => Math.abs(Math.log(Math.max(shares[cause], 1e-12)))
  const greatest = factorCauses.reduce((a, b) => (change(b) > change(a) ? b : a))
  const dominant =
    total > 0 && first > 0 && fundamental.textbook > 1e-6 && change(greatest) >= leastChange
      ? greatest
      : undefined
  return { rows, shares, dominant, sentence: sentenceOf(shares, dominant) }
}
