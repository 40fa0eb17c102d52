/** What the machine does in one wind, in words. */
import type { WindRow } from '../../src/index.ts'
import { formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'

const into: Readonly<Record<Snapshot['loadKind'], string>> = {
  battery: 'into the battery',
  resistor: 'into the resistor',
  heater: 'into the heater',
  lamp: 'into the lamp',
  capacitor: 'drawn from the capacitor',
  open: 'used',
}

/** For a picture, which is told as a whole. */
export const usefulName = ({ loadKind }: Snapshot): string => into[loadKind]

export const rpmText = (speed: number): string => formatSi(speed, 'rpm')

const useWords = ({ loadKind }: Snapshot, row: WindRow): string => {
  const amps = formatSi(row.loadCurrent, 'A')
  const volts = formatSi(row.loadVoltage, 'V')
  switch (loadKind) {
    case 'open':
      return say`${volts} behind the bridge, nothing connected`
    case 'battery':
      return say`${amps} at ${volts} into the battery`
    case 'resistor':
      return say`${amps} at ${volts} into the resistor`
    case 'heater':
      return say`${amps} at ${volts} into the heater`
    case 'lamp':
      return say`${amps} at ${volts} into the lamp`
    case 'capacitor':
      return say`${amps} at ${volts} drawn from the capacitor`
  }
}

export function rowSentence(snapshot: Snapshot, row: WindRow): string {
  switch (row.state) {
    case 'at rest':
      return say`The rotor stands still: this wind does not start it.`
    case 'turning':
      return say`Turning at ${rpmText(row.speed)}, no current yet.`
    case 'charging':
      return say`${rpmText(row.speed)}, ${useWords(snapshot, row)}.`
    case 'stalled':
      return say`${rpmText(row.speed)}, ${useWords(snapshot, row)}. The generator holds the blades back in stall.`
    case 'held':
      return say`${rpmText(row.speed)}, ${useWords(snapshot, row)}. The limiter (${told(snapshot.limiter)}) holds it.`
  }
}
