/** What the cable carries and loses in the wind looked at, and over a year. */
import { shaftPower } from '../../src/analysis/watts.ts'
import type { WindRow } from '../../src/index.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { inMeasure, windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say, shown } from '../text/say.ts'
import { FigureList } from './figure-list.tsx'

/** Current of a line wire over that of a phase. */
const lineOverPhase = ({ connection, phases }: Snapshot): number =>
  connection === 'delta' && phases.length > 1 ? Math.sqrt(3) : 1

export function CableLoss({ result, row }: { readonly result: Snapshot; readonly row: WindRow }) {
  const plan = useSight('circuitPlan')
  if (plan === undefined) return null
  const { length, area, resistance, beforeBridge } = plan.cable
  const current = beforeBridge ? row.phaseCurrent * lineOverPhase(result) : row.dcCurrent
  const { ledger } = result.year
  const through = ledger.parts.cable + ledger.parts.useful
  const power = shaftPower(row.watts)
  return (
    <section class="card">
      <h3>{say`What the cable does at ${windSaid(row.wind)}`}</h3>
      <FigureList
        label={say`The cable`}
        figures={[
          {
            name: beforeBridge ? say`Each line wire carries` : say`Plus and minus carry`,
            value: shown(beforeBridge ? `${formatSi(current, 'A')} rms` : formatSi(current, 'A')),
            note: say`${formatNumber(current / (area * 1e6))} A for each mm² of copper`,
          },
          {
            name: say`Turned into heat`,
            value: shown(formatSi(row.watts.cable, 'W')),
            note:
              power > 0
                ? say`${formatNumber((100 * row.watts.cable) / power, 2)} % of what comes in at the shaft`
                : say`nothing comes in at the shaft`,
          },
          {
            name: say`One conductor`,
            value: shown(formatSi(resistance, 'mohm')),
            note: say`${inMeasure(length, 'm')} of ${formatSi(area, 'mm2')} copper at 20 °C; ${formatSi(resistance * current, 'V')} are lost along it now`,
          },
          {
            name: say`Of a year’s energy`,
            value: shown(formatSi(ledger.parts.cable, 'kWh')),
            note:
              through > 0
                ? say`stay in the cable, beside ${formatSi(ledger.parts.useful, 'kWh')} that are stored or used`
                : say`nothing arrives`,
          },
        ]}
      />
    </section>
  )
}
