/** Concern: remanence, surface field and gap field are mixed up, or the sensor was at its end. */

import type { Magnet } from '../../machine/machine.ts'
import { blockFluxDensity } from '../../physics/magnetics/block-magnet.ts'
import { cuboidDemagnetizingFactor } from '../../physics/magnetics/demagnetizing-factor.ts'
import { formatNumber, formatSi, formatSpread } from '../../units/format.ts'
import { knownOf, nominal, spreadOf } from '../../units/quantity.ts'
import type { Concern, ConcernRule } from './concern.ts'

/** Share by which reading and magnet may disagree: common practice, no source. */
export const readingTolerance = 0.15

/** Share of its range above which a sensor's reading is not trusted: common practice, no source. */
export const sensorShare = 0.95

/** No common magnet material has a remanence between these [T]: common practice, no source. */
export const remanenceGap: readonly [number, number] = [0.5, 1]

export interface LooseBlock {
  readonly length: number
  readonly width: number
  readonly thickness: number
  /** Remanence [T] and relative recoil permeability. */
  readonly remanence: number
  readonly recoilPermeability: number
}

/** Flux density on the axis of one loose block, `distance` from its face [T]. */
export function looseBlockFluxDensity(block: LooseBlock, distance: number): number {
  const { length, width, thickness, remanence, recoilPermeability } = block
  const size = [length, width, thickness] as const
  // its own field lowers the polarization: J = Br/(1 + (μrec − 1) N)
  const N = cuboidDemagnetizingFactor([thickness, length, width])
  const polarization = remanence / (1 + (recoilPermeability - 1) * N)
  const magnet = {
    centre: [0, 0, 0] as const,
    frame: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const,
    size,
    polarization,
  }
  return blockFluxDensity([magnet], Float64Array.of(0, 0, thickness / 2 + Math.max(distance, 1e-6)))[2]!
}

export type FieldFault =
  | 'sensor at its end'
  | 'reading taken for remanence'
  | 'reading disagrees'
  | 'no such remanence'

export function fieldFault(numbers: {
  readonly remanence: number
  readonly spread: number
  readonly graded: boolean
  readonly measured: boolean
  readonly reading?: number
  readonly range?: number
  readonly expected?: number
}): FieldFault | undefined {
  const { remanence, spread, graded, measured, reading, range, expected } = numbers
  if (reading !== undefined && expected !== undefined && expected > 0) {
    if (range !== undefined && reading >= sensorShare * range) return 'sensor at its end'
    const off = Math.abs(reading / expected - 1)
    if (!graded && Math.abs(reading / remanence - 1) <= 0.1 && off > readingTolerance)
      return 'reading taken for remanence'
    if (off > readingTolerance + spread / remanence) return 'reading disagrees'
  }
  if (!graded && !measured && remanence > remanenceGap[0] && remanence < remanenceGap[1])
    return 'no such remanence'
  return undefined
}

const texts: Readonly<Record<FieldFault, string>> = {
  'sensor at its end':
    'The sensor was near the end of its range: the true field may be far higher than it showed.',
  'reading taken for remanence': 'A field read near the magnet’s face stands where its remanence belongs.',
  'reading disagrees': 'The reading does not fit the magnet that the document describes.',
  'no such remanence':
    'No common magnet material has such a remanence: it looks like a field read at the surface.',
}

/** Readings that the fit left out, or that do not agree with the rest. */
function readingTrouble({
  measured,
  remanence,
  remanenceSpread,
  labelRemanence,
}: Magnet): Concern | undefined {
  if (measured === undefined) return undefined
  const odd = measured.readings.filter(({ disagrees }) => disagrees)
  const { rejected } = measured
  const labelIsOdd = measured.prior?.disagrees === true
  if (odd.length === 0 && rejected.length === 0 && !labelIsOdd) return undefined
  const which = (list: readonly { readonly index: number }[]) =>
    list.map(({ index }) => `reading ${index + 1}`).join(', ')
  return {
    code: 'field-number',
    severity: 'warning',
    path: 'rotor.magnet.readings',
    what: `${[
      rejected.length > 0 ? `Left out: ${which(rejected)}.` : '',
      odd.length > 0 ? `At odds with the rest: ${which(odd)}.` : '',
      labelIsOdd ? 'The readings do not fit the grade that the label names.' : '',
    ]
      .filter((text) => text !== '')
      .join(' ')}`,
    why: 'A sensor at the end of its range, a distance misread by a millimetre or steel near the magnet all show a number that is not the magnet’s. What disagrees by more than three standard deviations has no say where enough else tells.',
    figures:
      `${[...rejected.map(({ index, reason }) => `Reading ${index + 1}: ${reason}`), ...odd.map(({ index, residual }) => `Reading ${index + 1} is off by ${formatNumber(residual, 2)} standard deviations.`)].join(' ')} Computed with ${formatSpread(remanence, remanenceSpread, 'T')}; the label says ${formatSi(labelRemanence, 'T')}.`.trim(),
    remedies: [
      'Repeat the reading in question on a wooden table, farther from the face, with a spacer of known thickness.',
      'Read a second magnet of the same batch.',
    ],
  }
}

export const fieldNumber: ConcernRule = {
  code: 'field-number',
  title: 'Three different numbers of a magnet are mixed up',
  basis:
    'One loose block’s field at the reading’s distance, in closed form, against the reading (± 15 % and the stated spread); readings within 5 % of the sensor’s end; all readings on loose blocks and discs together by weighted least squares with the grade’s own range, where those that are more than three standard deviations off are named; a bare remanence between 0.5 and 1 T, where neither ferrite nor neodymium lies. Tolerances common practice, no source. A warning.',
  answeredBy:
    'The field of a second magnet of the batch at two or three distances, on a wooden table, or the volts of a test coil.',
  judge: ({ machine }) => {
    const magnet = { ...machine.rotor.magnet, remanence: machine.rotor.magnet.labelRemanence }
    const typed = machine.design.rotor.magnet
    const reading = typed.shape === 'block' ? typed.readings.find((one) => one.kind === 'hall') : undefined
    const distance = reading === undefined ? undefined : nominal(reading.distance_mm) / 1000
    const expected = distance === undefined ? undefined : looseBlockFluxDensity(magnet, distance)
    const fault = fieldFault({
      remanence: magnet.remanence,
      spread: magnet.remanenceSpread,
      graded: typed.grade !== undefined,
      measured: typed.polarization_T !== undefined && knownOf(typed.polarization_T) === 'measured',
      ...(reading === undefined ? {} : { reading: nominal(reading.fluxDensity_mT) / 1000 }),
      ...(reading?.sensorRange_mT === undefined ? {} : { range: nominal(reading.sensorRange_mT) / 1000 }),
      ...(expected === undefined ? {} : { expected }),
    })
    if (fault === undefined) return readingTrouble(machine.rotor.magnet)
    const face = looseBlockFluxDensity(magnet, 0)
    const spread = reading === undefined ? 0 : spreadOf(reading.fluxDensity_mT)
    const implied =
      reading !== undefined && expected !== undefined && expected > 0
        ? (magnet.remanence * nominal(reading.fluxDensity_mT)) / 1000 / expected
        : undefined
    return {
      code: 'field-number',
      severity: 'warning',
      path: fault === 'no such remanence' ? 'rotor.magnet.polarization_T' : 'rotor.magnet.readings',
      what: texts[fault],
      why: 'Remanence belongs to the material, the surface field to the block’s shape, the gap field to the whole machine; the first is usually two to five times the second. All volts follow from the first.',
      figures: `Remanence given ${formatSi(magnet.remanence, 'T')}; a loose block of it has ${formatSi(face, 'T')} on its face${
        reading === undefined || expected === undefined
          ? ''
          : ` and ${formatSi(expected, 'mT')} at ${formatSi(distance ?? 0, 'mm')}, where ${formatNumber(nominal(reading.fluxDensity_mT))}${spread > 0 ? ` ± ${formatNumber(spread, 2)}` : ''} mT was read`
      }.`,
      remedies: [
        ...(fault === 'sensor at its end'
          ? ['Read again farther away, where the sensor shows less than half of its range.']
          : implied !== undefined && fault === 'reading disagrees' && implied > 0.1 && implied < 1.6
            ? [
                `If distance and reading are right, the remanence is about ${formatSi(implied, 'T')}: enter that as measured; else take the reading anew, away from steel.`,
              ]
            : ['Enter the grade, or the remanence of the material from the shop’s sheet.']),
        'Read at two or three distances from the face, on the axis, on a wooden table, and enter the farthest.',
        'Or wind one test coil and let its volts decide.',
      ],
    }
  },
}
