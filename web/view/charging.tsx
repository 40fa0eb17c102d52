/** Whether power reaches the store, from what wind on, and how much of the year that is. */
import type { WindRow } from '../../src/index.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { spreads } from '../store/design.ts'
import { windSaid } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { dominantGuess } from './guess-words.ts'

/** As the engine counts them. */
const yearHours = 8760

const beginSentence: Readonly<Record<Snapshot['loadKind'], (wind: string, speed: string) => string>> = {
  battery: (wind, speed) => say`It charges the battery from a wind of ${wind} on, at ${speed}.`,
  resistor: (wind, speed) => say`It heats the resistor from a wind of ${wind} on, at ${speed}.`,
  heater: (wind, speed) => say`It heats the heater from a wind of ${wind} on, at ${speed}.`,
  lamp: (wind, speed) => say`It feeds the lamp from a wind of ${wind} on, at ${speed}.`,
  capacitor: (wind, speed) => say`It charges the capacitor from a wind of ${wind} on, at ${speed}.`,
  open: () => say`Nothing is connected: no power is used, in any wind.`,
}

/** Hours of a year in the rows of the table in which current flows. */
export const chargingHours = ({ rows, hours }: Snapshot): number =>
  rows.reduce((sum, row, k) => sum + (row.dcCurrent > 0 ? (hours[k] ?? 0) : 0), 0)

function nowSentence({ loadKind }: Snapshot, row: WindRow): string {
  const wind = windSaid(row.wind)
  if (loadKind === 'open' || !(row.loadCurrent > 0)) return say`At ${wind} nothing arrives.`
  return say`At ${wind} ${formatSi(row.watts.useful, 'W')} arrive, ${formatSi(row.loadCurrent, 'A')} at ${formatSi(row.loadVoltage, 'V')}.`
}

export function Charging({ result, row }: { readonly result: Snapshot; readonly row: WindRow }) {
  const { cutInWind, cutInSpeed, loadKind } = result
  const found = spreads.value
  const never = loadKind !== 'open' && !Number.isFinite(cutInWind)
  const hours = chargingHours(result)
  return (
    <section class="card charging">
      <p class="answer-line">
        {never
          ? say`In no wind of the table does current reach the store.`
          : beginSentence[loadKind](
              told(intervalText(cutInWind, 'm_per_s', found?.cutInWind)),
              told(intervalText(cutInSpeed, 'rpm', found?.cutInSpeed)),
            )}
      </p>
      <p>
        {never || loadKind === 'open'
          ? ''
          : say`In so much wind and more it stands for about ${formatNumber(hours, 2)} h of a year, ${formatNumber((100 * hours) / yearHours, 2)} % of it.`}{' '}
        {nowSentence(result, row)}
      </p>
      {never || loadKind === 'open' ? null : <p class="note">{dominantGuess(found?.cutInWind)}</p>}
    </section>
  )
}
