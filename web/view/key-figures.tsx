/** The figures a builder asks for first. */
import type { ComponentChildren } from 'preact'
import type { ResultSpread, Spreads, WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { words } from '../station/label.ts'
import { celsius } from './row-words.ts'

const perRpm = (volts: number) => (volts * 2 * Math.PI) / 60

interface Figure {
  readonly name: string
  readonly value: ComponentChildren
  readonly note?: string
}

/** The guess that bears most of a spread, in the words of the document. */
function dominantGuess(spread: ResultSpread | undefined): string {
  const cause = spread?.causes[0]
  return cause === undefined
    ? ''
    : `; the spread is ${Math.round(100 * cause.share)} % from ${words(cause.path.split('.').at(-1) ?? '').toLowerCase()}`
}

function figuresOf(snapshot: Snapshot, row: WindRow, spreads: Spreads | undefined): Figure[] {
  const { phases, connection, runaway, year, cutInWind, cutInSpeed, startWind } = snapshot
  const phase = phases[0]!
  const finite = (value: number, text: string) => (Number.isFinite(value) ? text : 'never')
  const lines = connection === 'star' && phases.length > 1 ? 'between lines' : 'across a phase'
  return [
    {
      name: 'A year brings',
      value: intervalText(year.energy, 'kWh', spreads?.energy),
      note: `${formatNumber(year.meanPower)} W on average, mean wind ${formatNumber(year.meanWind)} m/s at the hub${dominantGuess(spreads?.energy)}`,
    },
    {
      name: 'Charging begins',
      value: intervalText(cutInWind, 'm_per_s', spreads?.cutInWind),
      note: `${intervalText(cutInSpeed, 'rpm', spreads?.cutInSpeed)}; turns from ${finite(startWind, `${formatNumber(startWind)} m/s`)}`,
    },
    {
      name: 'Volts per 100 rpm',
      value: `${formatNumber(100 * perRpm(snapshot.lineRms))} V`,
      note: `${formatNumber(perRpm(snapshot.lineRms), 3)} V per rpm rms ${lines}, peak ${formatNumber(100 * perRpm(snapshot.linePeak))} V per 100 rpm`,
    },
    {
      name: 'Resistance of a phase',
      value: formatSi(phase.resistance, 'ohm'),
      note: `at 20 °C; inductance ${formatSi(phase.inductance, 'mH')}`,
    },
    {
      name: 'Copper at this wind',
      value: row.overheated ? 'burns' : `${celsius(row.copperTemperature)} °C`,
      note: row.overheated
        ? 'no steady temperature below 350 °C'
        : `${formatSi(row.phaseCurrent, 'A')} rms in a phase`,
    },
    {
      name: 'Copper to buy',
      value: formatSi(snapshot.copperMass, 'kg'),
      note: `${formatSi(snapshot.wireLength, 'm')} of wire${snapshot.wirePrice === undefined ? '' : `, price ${formatNumber(snapshot.wirePrice)}`}; fill ${formatNumber(100 * snapshot.fit.copperFill)} %`,
    },
    {
      name: 'Magnets',
      value: formatSi(snapshot.magnetMass, 'kg'),
      note: `${snapshot.solid.magnets.length} blocks of ${formatSi(runaway.magnetMass, 'g')}`,
    },
    {
      name: `Load lost at ${shortNumber(runaway.wind)} m/s`,
      value: intervalText(runaway.speed, 'rpm', spreads?.runawaySpeed),
      note: `${formatSi(runaway.directVoltage, 'V')} direct, ${formatSi(runaway.lineVoltage, 'V')} rms; each magnet pulls ${formatSi(runaway.magnetForce, 'N')}`,
    },
  ]
}

export function KeyFigures({
  snapshot,
  row,
  spreads,
}: {
  readonly snapshot: Snapshot
  readonly row: WindRow
  readonly spreads: Spreads | undefined
}) {
  return (
    <section class="figures" aria-label="Key figures">
      <dl>
        {figuresOf(snapshot, row, spreads).map(({ name, value, note }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <b>{value}</b>
              {note === undefined ? null : <small>{note}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
