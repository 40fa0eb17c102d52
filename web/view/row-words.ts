/** What the machine does in one wind, in words. */
import type { WindRow } from '../../src/index.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'

const into: Readonly<Record<Snapshot['loadKind'], string>> = {
  battery: 'into the battery',
  resistor: 'into the resistor',
  heater: 'into the heater',
  lamp: 'into the lamp',
  capacitor: 'drawn from the capacitor',
  open: 'used',
}

export const usefulName = ({ loadKind }: Snapshot): string => into[loadKind]

export const stateWords: Readonly<Record<WindRow['state'], string>> = {
  'at rest': 'at rest',
  turning: 'turning, no current',
  charging: 'charging',
  stalled: 'held back in stall',
  held: 'held by the limiter',
}

export const rpmText = (speed: number): string => formatSi(speed, 'rpm')
export const celsius = (temperature: number): string => formatNumber(Math.round(temperature - 273.15), 3)

const useWords = ({ loadKind }: Snapshot, row: WindRow): string => {
  const amps = formatSi(row.loadCurrent, 'A')
  const volts = formatSi(row.loadVoltage, 'V')
  if (loadKind === 'open') return `${volts} behind the bridge, nothing connected`
  return `${amps} at ${volts} ${into[loadKind]}`
}

export function rowSentence(snapshot: Snapshot, row: WindRow): string {
  switch (row.state) {
    case 'at rest':
      return 'The rotor stands still: this wind does not start it.'
    case 'turning':
      return `Turning at ${rpmText(row.speed)}, no current yet.`
    case 'charging':
      return `${rpmText(row.speed)}, ${useWords(snapshot, row)}.`
    case 'stalled':
      return `${rpmText(row.speed)}, ${useWords(snapshot, row)}. The generator holds the blades back in stall.`
    case 'held':
      return `${rpmText(row.speed)}, ${useWords(snapshot, row)}. The limiter (${snapshot.limiter}) holds it.`
  }
}
