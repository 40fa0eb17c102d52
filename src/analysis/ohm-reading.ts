/** What an ohmmeter shows between the terminals, by two wires and by four, and by volts over a known current. */
import { half90 } from '../machine/magnet-reading.ts'
import type { Meter } from '../machine/meter.ts'
import { displayBound, displayStep } from '../physics/electrics/meter-display.ts'
import { resistanceUncertainty, twoWireResistance } from '../physics/electrics/resistance-reading.ts'
import { terminalResistances } from './bench-reading.ts'
import type { TurnSource } from './turn-source.ts'

export interface OhmReading {
  readonly words: string
  /** By computation at 20 °C, and as four wires would show it [Ω]. */
  readonly resistance: number
  /** What two wires show, leads and last digit included; undefined where the meter has no ohms [Ω]. */
  readonly twoWire: number | undefined
  /** Of it the leads, as a share of the winding's own. */
  readonly leadShare: number
  /** Volts that `current` raises, and half-width at 90 % of the resistance found from both [V], [Ω]. */
  readonly volts: number
  readonly spread: number
}

/** A current that a bench supply or a lamp in series gives, and that warms no winding in a minute [A]: common practice, no source. */
export const testCurrent = 1

export function ohmReadings(source: TurnSource, meter: Meter): OhmReading[] {
  const { joined, phases, connection } = source
  const n = phases.length
  const uncertainty = (value: number, sheet: Meter['direct']) => {
    const step = displayStep({ value, counts: meter.counts, finest: sheet.finest })
    return displayBound({ value, share: sheet.share, digits: sheet.digits, step }) / Math.sqrt(3)
  }
  return terminalResistances(
    connection,
    phases.map(({ resistance }) => resistance),
  ).map((resistance, k) => {
    const volts = resistance * testCurrent
    const read = twoWireResistance({ resistance, leads: meter.leads })
    return {
      words:
        joined === 'none'
          ? n > 1
            ? `phase ${k + 1}`
            : 'the winding'
          : `terminals ${k + 1} and ${((k + 1) % n) + 1}`,
      resistance,
      twoWire:
        meter.ohmsStep > 0
          ? Math.round(read / displayStep({ value: read, counts: meter.counts, finest: meter.ohmsStep })) *
            displayStep({ value: read, counts: meter.counts, finest: meter.ohmsStep })
          : undefined,
      leadShare: meter.leads / resistance,
      volts,
      spread:
        half90 *
        resistanceUncertainty({
          voltage: volts,
          current: testCurrent,
          voltageUncertainty: uncertainty(volts, meter.direct),
          currentUncertainty: uncertainty(testCurrent, meter.amps),
        }),
    }
  })
}
