/** Concern: the turns do not fit, the coils overlap, the reel runs out, or the wire carries too much. */

import { neighbourSizes } from '../../data/wire-gauge.ts'
import { resolveWire } from '../../machine/resolve-wire.ts'
import { greatestWire, handStripGrowth, handWoundFraction } from '../../physics/winding/fill.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { bundleTurns } from '../bundle-fit.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { fewerTurns, fewerTurnsOfSameWire } from '../ladder/turns.ts'
import { narrowerLegs, widerBundle } from '../ladder/winding.ts'
import { thickerWire, thinnerWire } from '../ladder/wire.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Steady current density that a hand-wound coil usually bears [A/m²]: common practice, no source. */
export const densityLimit = 6e6

export interface WireFit {
  readonly turns: number
  /** That a patient hand lays into the bundle, and the bound of perfect packing. */
  readonly handTurns: number
  readonly hexagonalTurns: number
  /** Between neighbouring coils, or the waves of two phases [m]; below zero they are in each other's way. */
  readonly room: number | undefined
  /** Wire lacking [m]. */
  readonly reelShort: number | undefined
  /** [A/m²] */
  readonly density: number
}

export type FitFault = 'cannot fit' | 'tight' | 'overlap' | 'reel too short' | 'dense current'

export function fitFaults({
  turns,
  handTurns,
  hexagonalTurns,
  room,
  reelShort,
  density,
}: WireFit): FitFault[] {
  return [
    ...(turns > hexagonalTurns ? (['cannot fit'] as const) : turns > handTurns ? (['tight'] as const) : []),
    ...(room !== undefined && room < -1e-9 ? (['overlap'] as const) : []),
    ...(reelShort !== undefined && reelShort > 0 ? (['reel too short'] as const) : []),
    ...(density > densityLimit ? (['dense current'] as const) : []),
  ]
}

const sentences: Readonly<Record<FitFault, string>> = {
  'cannot fit': 'More turns are asked for than can be laid into the bundle at all.',
  tight: 'More turns are asked for than a patient hand lays into the bundle.',
  overlap: 'Neighbouring coils or layers are in each other’s way.',
  'reel too short': 'The reel runs out before the winding is done.',
  'dense current': 'The wire carries more current for its section than is usual.',
}

/** Sizes that are looked through for one that fits. */
const mostSizes = 40

/** The next thinner size sold in which the turns fit by hand; undefined for strip, or where none is left. */
function nextThatFits({ machine, layout }: ChainView, turns: number): string | undefined {
  const { wire } = machine.design.stator
  if (wire.size === undefined) return undefined
  const own = typeof wire.size === 'string' ? wire.size : nominal(wire.size)
  const found = neighbourSizes(own, mostSizes).thinner.find(
    (size) => bundleTurns(resolveWire({ ...wire, size }), layout.shapes[0]!.bundle).hand >= turns,
  )
  return typeof found === 'number' ? `${found} mm` : found
}

function fitOf({ rows, wound, layout }: ChainView): WireFit {
  const most = rowOfMost(rows, ({ currentDensity }) => currentDensity)
  return {
    turns: layout.shapes.reduce((greatest, shape) => Math.max(greatest, shape.turns), 0),
    handTurns: wound.fit.handTurns,
    hexagonalTurns: wound.fit.hexagonalTurns,
    room: wound.fit.neighbourRoom,
    reelShort: wound.fit.reelShort,
    density: most?.currentDensity ?? 0,
  }
}

export const wireFit: ConcernRule = {
  code: 'wire-fit',
  title: 'The wire does not fit, does not reach, or carries too much',
  basis: `Turns against what enamelled wire fills of the bundle at ${formatNumber(handWoundFraction.greatest)} of its area (round, by hand; strip with ${formatNumber(100 * (handStripGrowth.least - 1))} % to spare each way) and at perfect packing; room between coils or layers; wire with 5 % to spare against the reel; greatest phase current over copper against 6 A/mm². Fractions and limit common practice, no source. A warning in every class.`,
  measure: (chain) => {
    const fit = fitOf(chain)
    switch (fitFaults(fit)[0]) {
      case 'overlap':
        return { name: 'room between neighbours', value: fit.room!, limit: 0, unit: 'mm', sound: 'above' }
      case 'reel too short':
        return { name: 'wire lacking', value: fit.reelShort!, limit: 0, unit: 'm', sound: 'below' }
      case 'dense current':
        return {
          name: 'current density',
          value: fit.density,
          limit: densityLimit,
          unit: 'A_per_mm2',
          sound: 'below',
        }
      default:
        return {
          name: 'turns against those laid by hand',
          value: fit.turns,
          limit: fit.handTurns,
          unit: '1',
          sound: 'below',
        }
    }
  },
  answeredBy:
    'One coil wound with this wire: its turns, its outer sizes and its weight; for the current, a heat run.',
  judge: (chain) => {
    const { machine, wound, layout } = chain
    const { design } = machine
    const { wire } = machine.stator
    const fit = fitOf(chain)
    const faults = fitFaults(fit)
    if (faults.length === 0) return undefined
    const crowded = faults.includes('cannot fit') || faults.includes('tight')
    const bundle = layout.shapes[0]!.bundle
    const thickest =
      crowded && wire.shape.kind === 'round'
        ? greatestWire({
            width: bundle.width,
            thickness: bundle.thickness,
            turns: fit.turns,
            strands: wire.strands,
            packing: 'hand-wound',
            fraction: handWoundFraction.greatest,
          })
        : undefined
    const sold = crowded ? nextThatFits(chain, fit.turns) : undefined
    const first = faults[0]!
    return {
      code: 'wire-fit',
      severity: 'warning',
      path:
        first === 'reel too short'
          ? machine.design.stator.wire.reelMass_g === undefined
            ? 'stator.wire.reelLength_m'
            : 'stator.wire.reelMass_g'
          : first === 'dense current'
            ? wire.shape.kind === 'round'
              ? 'stator.wire.size'
              : 'stator.wire.strip'
            : 'stator.winding',
      what: faults.map((fault) => sentences[fault]).join(' '),
      why:
        faults.length === 1 && first === 'dense current'
          ? 'Copper loss per volume goes with the square of the current density, and the heat has the same way out.'
          : 'Enamel, the air between round wires and the springiness of copper take more room than the bare metal; what does not fit is found out on the last coil.',
      figures: `${fit.turns} turns asked for; ${fit.handTurns} by hand, ${fit.hexagonalTurns} at best in ${formatSi(bundle.width, 'mm')} × ${formatSi(bundle.thickness, 'mm')}${
        fit.room === undefined ? '' : `; room between neighbours ${formatSi(fit.room, 'mm')}`
      }; wire ${formatSi(wound.wireLength, 'm')}${
        fit.reelShort === undefined
          ? ''
          : fit.reelShort > 0
            ? `, ${formatSi(fit.reelShort, 'm')} short with 5 % to spare`
            : ''
      }; up to ${formatSi(fit.density, 'A_per_mm2', 2)} (limit 6 A/mm²).`,
      remedies: [
        ...(crowded && wire.shape.kind === 'strip'
          ? [triable('Take thinner or narrower strip, or fewer turns.', fewerTurnsOfSameWire(design))]
          : []),
        ...(thickest !== undefined
          ? [
              triable(
                `Take wire of at most ${formatSi(thickest, 'mm')} over its enamel${wire.strands > 1 ? ` with ${wire.strands} in hand` : ''}, or fewer turns${sold === undefined ? '' : `; the next size sold that fits is ${sold}`}.`,
                thinnerWire(design),
              ),
              triable('Or fewer turns of the same wire.', fewerTurnsOfSameWire(design)),
              triable(
                'Make the bundle wider or deeper, as far as the clearance allows.',
                widerBundle(design),
              ),
            ]
          : []),
        ...(faults.includes('overlap')
          ? [
              triable(
                'Make the legs narrower or the layers thinner, or move them apart until they clear each other.',
                narrowerLegs(design),
              ),
            ]
          : []),
        ...(faults.includes('reel too short')
          ? ['Buy the wire from one batch before winding: a joint inside a coil is where it fails.']
          : []),
        ...(faults.includes('dense current')
          ? [
              triable(
                'Use thicker wire or more strands with fewer turns, or parallel groups, and look at the heat.',
                fewerTurns(design),
              ),
              ...whereTriable('Let the mechanical limiter act earlier.', limiter(design)),
              ...(crowded ? [] : [...whereTriable('Thicker wire where it has room.', thickerWire(design))]),
            ]
          : []),
        'Wind one test coil first and weigh it.',
      ],
    }
  },
}
