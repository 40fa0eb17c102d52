/** Concern: the poles do not alternate round the rotor. */

import { triable } from '../ladder/ladder.ts'
import { magnetsTurned } from '../ladder/magnet.ts'
import { type ConcernRule, severityFor } from './concern.ts'

export interface PoleMap {
  readonly north: number
  readonly south: number
  /** Neighbours with like poles, as positions from 1. */
  readonly like: readonly (readonly [number, number])[]
}

/** Poles counted, and every pair of like neighbours; +1 is north. */
export function poleMap(sequence: readonly (1 | -1)[]): PoleMap {
  const n = sequence.length
  const like: [number, number][] = []
  for (let k = 0; k < n; k++)
    if (n > 1 && sequence[k] === sequence[(k + 1) % n]) like.push([k + 1, ((k + 1) % n) + 1])
  const north = sequence.filter((sign) => sign === 1).length
  return { north, south: n - north, like }
}

/** The one magnet whose turning over makes all alternate, from 1; undefined where it takes more. */
export function flippedMagnet(sequence: readonly (1 | -1)[]): number | undefined {
  if (poleMap(sequence).like.length === 0) return undefined
  const wrong = sequence.flatMap((sign, k) => (sign === (k % 2 === 0 ? 1 : -1) ? [] : [k + 1]))
  if (wrong.length === 1) return wrong[0]
  if (wrong.length !== sequence.length - 1) return undefined
  const right = new Set(wrong)
  return sequence.findIndex((_, k) => !right.has(k + 1)) + 1
}

const positions = (like: PoleMap['like']): string => {
  const shown = like.slice(0, 6).map(([a, b]) => `${a}–${b}`)
  return shown.join(', ') + (like.length > 6 ? ` and ${like.length - 6} more` : '')
}

export const poleMapRule: ConcernRule = {
  code: 'pole-map',
  title: 'The magnets do not alternate N S N S round the rotor',
  basis:
    'The poles as walked round with a compass, or as glued by the document; alternating poles are what the winding is laid out for. Blocks the outdoor class, a warning in the others.',
  measure: ({ machine: { rotor } }) => ({
    name: 'like neighbours round the rotor',
    value: poleMap(rotor.sequence).like.length,
    limit: 0,
    unit: '1',
    sound: 'below',
  }),
  judge: (chain) => {
    const { rotor } = chain.machine
    if (rotor.alternating) return undefined
    const map = poleMap(rotor.sequence)
    const flipped = flippedMagnet(rotor.sequence)
    const weakest = chain.voltage.phases.reduce((least, { rms }) => Math.min(least, rms), Number.MAX_VALUE)
    const strongest = chain.voltage.phases.reduce((most, { rms }) => Math.max(most, rms), 0)
    return {
      code: 'pole-map',
      severity: severityFor(chain, ['outdoor']),
      path: 'rotor.poleSequence',
      what:
        flipped === undefined
          ? 'The poles do not alternate round the rotor.'
          : `Magnet ${flipped} sits with the wrong pole up.`,
      why: 'Two like poles side by side push their flux aside instead of through the winding, and the volts change sign out of turn: they sag, hum once per turn and shake the rotor.',
      figures: `${map.north} north and ${map.south} south of ${rotor.poleCount}; like neighbours at ${positions(map.like)}. Phase volts ${
        strongest > 0
          ? `between ${Math.round((100 * weakest) / strongest)} % and 100 % of the strongest phase`
          : 'none'
      }, as computed with this order.`,
      remedies: [
        triable(
          flipped === undefined
            ? 'Walk round with a compass, number the magnets, and turn those that break the order N S N S.'
            : `Turn magnet ${flipped} over, then walk round with a compass once more.`,
          magnetsTurned(chain.machine.design),
        ),
        'If it was a slip of the pen, correct the sequence in the document.',
        'Work with slides and gloves: strong magnets jump and crush fingers. Keep them from pacemakers.',
      ],
    }
  },
}
