/** Concern: a coil or a phase works against the others. */

import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { triable } from '../ladder/ladder.ts'
import { coilsTurned, phaseTurned } from '../ladder/winding.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** Volts left of n coils in series when one of them is the wrong way round: (n − 2)/n. */
export const reversedCoilShare = (n: number): number => Math.abs(n - 2) / n

/** How far three readings may be off the pattern, as a share: common practice, no source. */
export const patternTolerance = 0.08

/** Three line voltages of a star with one phase reversed: two alike, the third √3 of them. */
export function reversedPhasePattern(lines: readonly number[]): boolean {
  if (lines.length !== 3) return false
  const [a, b, c] = [...lines].sort((x, y) => x - y) as [number, number, number]
  if (!(a > 0)) return false
  return (
    Math.abs(b / a - 1) <= patternTolerance &&
    Math.abs(c / ((a + b) / 2) / Math.sqrt(3) - 1) <= patternTolerance
  )
}

/** Coils (numbers from 1) whose volts point away from the sum of their phase. */
export function opposingCoils(voltage: ChainView['voltage'], declared: readonly number[] = []): number[] {
  const phases = new Map<number, ChainView['voltage']['coils'][number][]>()
  for (const coil of voltage.coils)
    phases.set(coil.coil.phase, [...(phases.get(coil.coil.phase) ?? []), coil])
  return [...phases.values()].flatMap((coils) => {
    if (coils.length < 2) return []
    let re = 0
    let im = 0
    let all = 0
    for (const { fundamental, phaseAngle } of coils) {
      re += fundamental * Math.cos(phaseAngle)
      im += fundamental * Math.sin(phaseAngle)
      all += fundamental
    }
    // of two that cancel neither is right: the one that the document calls reversed is named, else the second
    const right = coils.find(({ coil }) => !declared.includes(coil.number)) ?? coils[0]!
    const direction = Math.hypot(re, im) > 1e-6 * all ? Math.atan2(im, re) : right.phaseAngle
    return coils
      .filter(({ phaseAngle, fundamental }) => fundamental > 0 && Math.cos(phaseAngle - direction) < -1e-6)
      .map(({ coil }) => coil.number)
  })
}

/** The phase (from 1) whose reversal puts three phases a third of a turn apart, where they are not yet. */
export function reversedPhase(lags: readonly number[]): number | undefined {
  if (lags.length !== 3) return undefined
  const apart = (a: number, b: number) => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)))
  const thirds = (angles: readonly number[]) =>
    [0, 1, 2].every(
      (k) => Math.abs(apart(angles[k]!, angles[(k + 1) % 3]!) - (2 * Math.PI) / 3) < Math.PI / 12,
    )
  if (thirds(lags)) return undefined
  const found = [1, 0, 2].find((k) => thirds(lags.map((lag, j) => (j === k ? lag + Math.PI : lag))))
  return found === undefined ? undefined : found + 1
}

/** Three readings between lines at one speed, if the bench holds just such a set. */
function lineReadings({ machine }: ChainView): number[] {
  const lines = machine.design.bench.readings.filter(({ place }) => place === 'line to line')
  const speeds = new Set(lines.map(({ speed_rpm }) => Math.round(nominal(speed_rpm))))
  return lines.length === 3 && speeds.size === 1 ? lines.map(({ voltage_V }) => nominal(voltage_V)) : []
}

export const reversedElement: ConcernRule = {
  code: 'reversed-element',
  title: 'A coil or a phase is the wrong way round',
  basis:
    'Phasors of the coils against the sum of their phase, phases against thirds of a turn, and three line readings against the pattern E, E, √3 E of a star with a reversed phase (± 8 %, common practice). Phases of a serpentine are judged by their offsets instead. Blocks the outdoor class, a warning in the others.',
  judge: (chain) => {
    const { voltage, machine } = chain
    const { winding } = machine.stator
    const coils = opposingCoils(voltage, [
      ...(winding.kind === 'coils' ? winding.reversedCoils : []),
      ...machine.defects.reversedCoils,
    ])
    const phase = winding.kind === 'coils' ? reversedPhase(voltage.phases.map(({ lag }) => lag)) : undefined
    const readings = lineReadings(chain)
    const measured = reversedPhasePattern(readings)
    if (coils.length === 0 && phase === undefined && !measured) return undefined
    const inStep = voltage.phases.reduce((least, each) => Math.min(least, each.inStep), 1)
    const delta = machine.stator.connection === 'delta'
    return {
      code: 'reversed-element',
      severity: severityFor(chain, ['outdoor']),
      path: measured && coils.length === 0 && phase === undefined ? 'bench.readings' : 'stator.winding',
      what:
        coils.length > 0
          ? `Coil ${coils.join(', ')} works against the others of its phase.`
          : phase !== undefined
            ? `Phase ${phase} is the wrong way round.`
            : 'The readings between the lines look like a star with one phase the wrong way round.',
      why: 'Start and finish swapped turn a coil’s volts by half a turn: they are taken off instead of added.',
      figures: [
        ...(coils.length > 0
          ? [`Of the coils’ volts ${formatNumber(Math.round(100 * inStep))} % are left in the weakest phase.`]
          : []),
        ...(phase !== undefined
          ? [
              `Phases lag by ${voltage.phases.map(({ lag }) => `${formatNumber((lag * 180) / Math.PI)}°`).join(', ')}; open corner of a delta ${formatNumber(voltage.openCorner, 2)} times a phase.`,
            ]
          : []),
        ...(measured
          ? [
              `Read: ${readings.map((reading) => formatSi(reading, 'V')).join(', ')}; the largest is √3 of the others.`,
            ]
          : []),
      ].join(' '),
      remedies: [
        coils.length > 0
          ? triable(`Swap the two ends of coil ${coils.join(', ')}.`, coilsTurned(machine.design, coils))
          : phase !== undefined
            ? triable(`Swap the two ends of phase ${phase}.`, phaseTurned(machine.design, phase))
            : 'Swap the two ends of the phase that is common to the two smaller readings.',
        'Join the coils of a phase two at a time: in step gives twice the volts, against each other about none.',
        delta
          ? 'Leave one corner of the delta open and read it before closing: near zero is right, about twice a phase is not.'
          : 'Read all three lines again at one speed: they must be alike.',
      ],
    }
  },
}
