/** What the diodes of the bridge carry, lose and bear in one wind, beside what their labels say. */
import { diodeClasses } from '../data/diode.ts'
import { spreadOf } from '../units/quantity.ts'
import type { Chain } from './compute.ts'
import { reverseFactor } from './concern/diode-rating.ts'
import type { LoadPoint } from './load-balance.ts'
import { loadPoint } from './load-point.ts'
import { warmVoltage } from './magnet-strength.ts'

export interface BridgeDuty {
  /** [m/s], [rad/s] */
  readonly wind: number
  readonly speed: number
  readonly kind: string
  /** Loose diodes, whose label speaks of one; else a block, whose label speaks of its output. */
  readonly single: boolean
  readonly diodes: number
  /** Of the diode that carries most: mean, rms and peak [A], its loss [W]. */
  readonly mean: number
  readonly rms: number
  readonly peak: number
  readonly loss: number
  /** Behind the bridge, mean [A]. */
  readonly output: number
  /** Of all diodes, and how far the drop of their kind lets it be off, at 90 % [W]. */
  readonly wholeLoss: number
  readonly lossSpread: number
  /** Drawn all the time by what switches transistors in place of diodes; in no ledger [W]. */
  readonly drive: number
  /** In work; with the load lost in the storm [V]. */
  readonly reverse: number
  readonly reverseLost: number
  /** That the label should say, for the spikes on top [V]. */
  readonly reverseWanted: number
  /** On the label: of the output or of one diode [A]; of one diode [V]. */
  readonly ratedCurrent: number | undefined
  readonly ratedReverse: number | undefined
}

/** Points of a period among which the peak is looked for. */
const samples = 360

const greatest = (values: Iterable<number>): number => {
  let most = 0
  for (const value of values) most = Math.max(most, Math.abs(value))
  return most
}

/** Between two phases of a delta a line leaves; of a star, and of phases alone, a line is a phase. */
function linePeak(connection: string, { waveforms }: LoadPoint): number {
  const currents = waveforms?.phaseCurrent ?? []
  if (connection !== 'delta' || currents.length < 2) return Math.max(0, ...currents.map(greatest))
  return Math.max(
    ...currents.map((one, k) => {
      const next = currents[(k + 1) % currents.length]!
      return greatest(one.map((amps, q) => amps - next[q]!))
    }),
  )
}

/** Of one diode's drop at 90 % [V]: that of the threshold where the document states it, else what its kind scatters. */
function dropSpread({ design }: Chain['machine']): number {
  const { threshold_V, diode } = design.bridge
  if (threshold_V !== undefined) return spreadOf(threshold_V)
  return diodeClasses.find(({ name }) => name === diode)?.dropSpread_V ?? 0
}

/** At a row of the table of winds; undefined where no current flows in it. */
export function bridgeDuty(
  chain: Pick<Chain, 'machine' | 'voltage' | 'heat' | 'rows' | 'runaway'>,
  row: number,
): BridgeDuty | undefined {
  const { machine, rows, runaway } = chain
  const { wind, speed, copperTemperature } = rows[row]!
  if (!(speed > 0)) return undefined
  const voltage = warmVoltage(chain, copperTemperature)
  const point = loadPoint(machine, voltage, { speed, copperTemperature, samples })
  const { diodes } = point
  if (!(point.dcCurrent > 0) || diodes.length === 0) return undefined
  const kind = diodeClasses.find(({ name }) => name === machine.design.bridge.diode)
  const most = diodes.reduce((best, each) => (each.loss > best.loss ? each : best))
  const carried = diodes.reduce((sum, { current }) => sum + Math.max(0, current), 0)
  return {
    wind,
    speed,
    kind: machine.diode.kind,
    single: kind?.name.startsWith('diode') === true || kind?.kind === 'Schottky',
    diodes: diodes.length,
    mean: most.current,
    rms: most.currentRms,
    peak: linePeak(machine.stator.connection, point),
    loss: most.loss,
    output: point.dcCurrent,
    wholeLoss: diodes.reduce((sum, { loss }) => sum + loss, 0),
    lossSpread: carried * dropSpread(machine),
    drive: machine.diode.drive,
    reverse: point.diodeReverseVoltagePeak!,
    reverseLost: runaway.directVoltage,
    reverseWanted: reverseFactor * runaway.directVoltage,
    ratedCurrent: kind?.rated_A,
    ratedReverse: machine.diode.reverseVoltage,
  }
}
