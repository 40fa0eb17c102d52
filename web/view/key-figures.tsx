/** The figures a builder asks for first. */
import type { ResultSpread, Spreads, WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { scaledSpread } from '../../src/output/spread-result.ts'
import { formatNumber } from '../../src/units/format.ts'
import { fromSi } from '../../src/units/unit.ts'
import { Figure } from '../hint/figure.tsx'
import type { FigureKey } from '../hint/figure-method.ts'
import { Term } from '../hint/term.tsx'
import type { TermKey } from '../hint/term-key.ts'
import type { Snapshot } from '../snapshot.ts'
import { words } from '../station/label.ts'
import { inMeasure, intervalInMeasure, unitSaid } from '../store/measure.ts'
import { say, shown } from '../text/say.ts'

const hundredRpm = (100 * 2 * Math.PI) / 60

interface KeyFigure {
  readonly of: FigureKey
  readonly name: string
  /** The name is a word of the trade that says what it means. */
  readonly term?: TermKey
  readonly value: string
  readonly note: string
}

/** The guess that bears most of a spread, in the words of the document. */
function dominantGuess(spread: ResultSpread | undefined): string {
  const cause = spread?.causes[0]
  return cause === undefined
    ? ''
    : say`The spread is ${Math.round(100 * cause.share)} % from “${words(cause.path.split('.').at(-1) ?? '')}”.`
}

function windFigures(
  { year, ...snapshot }: Snapshot,
  row: WindRow,
  spreads: Spreads | undefined,
): KeyFigure[] {
  const meanPower = inMeasure(year.meanPower, 'W')
  const meanWind = inMeasure(year.meanWind, 'm_per_s')
  return [
    {
      of: 'energy',
      name: say`A year brings`,
      value: intervalInMeasure(year.energy, 'kWh', spreads?.energy),
      note: [
        say`${meanPower} on average, mean wind ${meanWind} at the hub.`,
        dominantGuess(spreads?.energy),
      ].join(' '),
    },
    {
      of: 'cutInWind',
      name: say`Charging begins`,
      value: intervalInMeasure(snapshot.cutInWind, 'm_per_s', spreads?.cutInWind),
      note: say`at a speed of ${intervalInMeasure(snapshot.cutInSpeed, 'rpm', spreads?.cutInSpeed)}`,
    },
    {
      of: 'startWind',
      name: say`The rotor starts`,
      value: intervalInMeasure(snapshot.startWind, 'm_per_s', spreads?.startWind),
      note: say`from rest, against the friction of bearings and seals`,
    },
    {
      of: 'tipSpeedRatio',
      name: say`Tip-speed ratio`,
      term: 'tip-speed-ratio',
      value: shown(formatNumber(row.tipSpeedRatio)),
      note: say`at this wind; the blades take ${formatNumber(100 * row.powerCoefficient)} % of its power`,
    },
  ]
}

function windingFigures(snapshot: Snapshot, row: WindRow, spreads: Spreads | undefined): KeyFigure[] {
  const { phases, connection, lineRms, linePeak } = snapshot
  const phase = phases[0]!
  const perTurn = inMeasure(lineRms * (hundredRpm / 100), 'V')
  const peak = inMeasure(linePeak * hundredRpm, 'V')
  const wire = inMeasure(snapshot.wireLength, 'm')
  const fill = formatNumber(100 * snapshot.fit.copperFill)
  // lines and phases are off by the same share
  const volts = spreads && scaledSpread(spreads.phaseVoltage, (lineRms / phase.rms) * hundredRpm)
  return [
    {
      of: 'emf',
      name: say`Volts per 100 rpm`,
      value: intervalInMeasure(lineRms * hundredRpm, 'V', volts),
      note:
        connection === 'star' && phases.length > 1
          ? say`${perTurn} per rpm rms between lines, peak ${peak} per 100 rpm`
          : say`${perTurn} per rpm rms across a phase, peak ${peak} per 100 rpm`,
    },
    {
      of: 'resistance',
      name: say`Resistance of a phase`,
      value: inMeasure(phase.resistance, 'ohm'),
      note: say`at ${inMeasure(293.15, 'degC', 2)}, leads and joints with it`,
    },
    {
      of: 'inductance',
      name: say`Inductance of a phase`,
      value: inMeasure(phase.inductance, 'mH'),
      note: say`of its own turns, without what other phases couple in`,
    },
    {
      of: 'copperTemperature',
      name: say`Copper at this wind`,
      value: row.overheated ? say`burns` : copperText(row),
      note: row.overheated
        ? say`no steady temperature below ${inMeasure(623.15, 'degC')}`
        : say`${inMeasure(row.phaseCurrent, 'A')} rms in a phase`,
    },
    {
      of: 'copperMass',
      name: say`Copper to buy`,
      value: inMeasure(snapshot.copperMass, 'kg'),
      note:
        snapshot.wirePrice === undefined
          ? say`${wire} of wire; fill ${fill} %`
          : say`${wire} of wire, price ${formatNumber(snapshot.wirePrice)}; fill ${fill} %`,
    },
  ]
}

/** Whole degrees: a tenth would promise what no estimate of cooling keeps. */
function copperText({ copperTemperature }: WindRow): string {
  const said = unitSaid('degC')
  return shown(`${shortNumber(Math.round(fromSi(copperTemperature, said)))}${said.symbol}`)
}

function stormText(wind: number): string {
  const said = unitSaid('m_per_s')
  return shown(`${shortNumber(fromSi(wind, said))}${said.symbol}`)
}

function stormFigures(snapshot: Snapshot, spreads: Spreads | undefined): KeyFigure[] {
  const { runaway } = snapshot
  return [
    {
      of: 'magnetMass',
      name: say`Magnets`,
      value: inMeasure(snapshot.magnetMass, 'kg'),
      note: say`${snapshot.solid.magnets.length} pieces of ${inMeasure(runaway.magnetMass, 'g')}`,
    },
    {
      of: 'runawaySpeed',
      name: say`Load lost at ${stormText(runaway.wind)}`,
      value: intervalInMeasure(runaway.speed, 'rpm', spreads?.runawaySpeed),
      note: say`each magnet then pulls outward with ${intervalInMeasure(runaway.magnetForce, 'N', spreads?.magnetForce)}`,
    },
    {
      of: 'runawayVoltage',
      name: say`Volts with the load lost`,
      value: intervalInMeasure(runaway.directVoltage, 'V', spreads?.runawayVoltage),
      note: say`direct; ${inMeasure(runaway.lineVoltage, 'V')} rms between the leads`,
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
  const figures = [
    ...windFigures(snapshot, row, spreads),
    ...windingFigures(snapshot, row, spreads),
    ...stormFigures(snapshot, spreads),
  ]
  return (
    <section class="figures" aria-label={say`Key figures`}>
      <dl>
        {figures.map(({ of, name, term, value, note }) => (
          <div key={of}>
            <dt>{term === undefined ? name : <Term of={term}>{name}</Term>}</dt>
            <dd>
              <b>
                <Figure of={of} name={name}>
                  {value}
                </Figure>
              </b>
              <small>{note}</small>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
