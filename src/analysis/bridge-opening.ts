/** The speed at which a bridge lets current through, by the ways that its diodes leave open. */
import type { Machine } from '../machine/machine.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

/** Ideal diodes into a resistor conduct from rest on; their table begins at this [V]. */
const leastBarrier = 1e-3

type Bridged = Pick<Machine, 'diode' | 'defects' | 'stator'>
type Lines = Pick<OpenCircuitVoltage, 'lines' | 'greatestLinePeak' | 'phases'>

/** Thresholds that current meets on its way out of one leg and back by another; undefined where no diode lets it. */
function thresholds({ diode, defects }: Bridged, out: Leg, back: Leg): number | undefined {
  const drop = (leg: Leg, side: 'positive' | 'negative') => {
    const kind = defects.diodeFaults.find(
      ({ line, end = 'start', side: own }) => line === leg.line && end === leg.end && own === side,
    )?.kind
    return kind === 'open' ? Number.POSITIVE_INFINITY : kind === 'shorted' ? 0 : diode.threshold
  }
  const sum = drop(out, 'positive') + drop(back, 'negative')
  return Number.isFinite(sum) ? sum : undefined
}

interface Leg {
  readonly line: number
  readonly end: 'start' | 'finish'
}

/** The two legs between which each of the machine's line voltages stands. */
function legsOf({ stator }: Bridged, { lines, phases }: Lines): (readonly [Leg, Leg])[] {
  const joined = phases.length > 1 && (stator.connection === 'star' || stator.connection === 'delta')
  const start = (line: number): Leg => ({ line, end: 'start' })
  return lines.map((_, k) =>
    joined ? [start(k), start((k + 1) % lines.length)] : [start(k), { line: k, end: 'finish' }],
  )
}

/**
 * Speed at which direct current first flows against `volts`: where the peak of a line reaches them and the thresholds
 * of its diodes [rad/s]. Current that a shorted diode drives among the phases is not direct current and may begin
 * earlier.
 */
export function openingSpeed(machine: Bridged, voltage: Lines, volts: number): number {
  const { greatestLinePeak, lines } = voltage
  const at = (barrier: number, peak: number) =>
    peak > 0 ? Math.max(barrier, leastBarrier) / peak : Number.POSITIVE_INFINITY
  if (machine.defects.diodeFaults.length === 0)
    return at(2 * machine.diode.threshold + volts, greatestLinePeak)
  return Math.min(
    ...legsOf(machine, voltage).flatMap(([a, b], k) =>
      [thresholds(machine, a, b), thresholds(machine, b, a)].map((drop) =>
        drop === undefined ? Number.POSITIVE_INFINITY : at(drop + volts, lines[k]!.peak),
      ),
    ),
  )
}
