/** The chain as a page of text: wind to battery with its watts, the table per wind, the concerns. */
import type { Chain } from '../analysis/compute.ts'
import { type Concern, isOpen, remedyWords } from '../analysis/concerns.ts'
import { noLoadRows, partsSpread } from '../analysis/no-load-torque.ts'
import { remanenceByVolts } from '../analysis/remanence-by-volts.ts'
import type { ResultSpread, Spreads } from '../analysis/spread.ts'
import { tellingWind } from '../analysis/telling-wind.ts'
import { shaftPower, wattColumns } from '../analysis/watts.ts'
import { windingFactors } from '../analysis/winding-factors.ts'
import type { Worth } from '../analysis/worth.ts'
import { sweptArea } from '../machine/swept-area.ts'
import { formatNumber, formatSi, formatSpread } from '../units/format.ts'
import { intervalText } from './interval-words.ts'
import { answerTexts, signOffText } from './sign-off.ts'
import { textTable, wrapped } from './text-table.ts'
import { yearPage } from './worth-page.ts'

export type Tone = 'plain' | 'title' | 'faint' | 'good' | 'warning' | 'blocking'

/** A line of the page and how loudly it speaks; the terminal decides about colour. */
export interface PageLine {
  readonly text: string
  readonly tone: Tone
}

const columns = 96

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })

const windOr = (wind: number): string => (Number.isFinite(wind) ? formatSi(wind, 'm_per_s', 2) : 'no wind')

const barWidth = 34

const percent = (share: number): string =>
  share > 0 && share < 0.001 ? '< 0.1 %' : `${(100 * share).toFixed(1)} %`

function wattLine(name: string, watts: number, whole: number): PageLine {
  const share = whole > 0 ? watts / whole : 0
  const bar = '█'.repeat(Math.round(share * barWidth))
  return plain(
    `  ${name.padEnd(24)}${formatSi(watts, 'W').padStart(10)}  ${percent(share).padStart(7)}  ${bar}`.trimEnd(),
  )
}

const lossNames = {
  friction: 'lost in bearings',
  eddy: 'lost in strand eddies',
  parts: 'lost in metal parts',
  winding: 'lost in the winding',
  cable: 'lost in the cable',
  diodes: 'lost in the bridge',
  converter: 'lost in the converter',
  battery: 'heat in the battery',
  useful: 'stored or used',
} as const

function chainLines(chain: Chain, spreads: Spreads | undefined): PageLine[] {
  const { row, wanted, kind } = tellingWind(chain)
  const shaft = shaftPower(row.watts)
  return [
    title(
      `Where the watts go at ${formatSi(row.wind, 'm_per_s', 2)} — ${row.state}, ${formatSi(row.speed, 'rpm')}, copper ${intervalText(row.copperTemperature, 'degC', spreads?.copperTemperature)}`,
    ),
    ...(kind === 'beyond the storm'
      ? [faint(`  the wanted ${formatSi(wanted!, 'm_per_s', 2)} lies beyond the storm and was not computed`)]
      : []),
    wattLine('in the wind', row.available, row.available),
    wattLine('taken by the blades', shaft, row.available),
    ...wattColumns
      .filter((column) => (column !== 'parts' && column !== 'converter') || row.watts[column] > 0)
      .map((column) => wattLine(lossNames[column], row.watts[column], row.available)),
    ...(spreads === undefined
      ? []
      : [faint(`  stored or used: ${intervalText(row.watts.useful, 'W', spreads.usefulPower)}`)]),
  ]
}

/** Says what coils in series really give, where they are not in step. */
function stepLines({ layout, voltage }: Chain): PageLine[] {
  return voltage.phases.flatMap(({ inStep }, phase) => {
    const inSeries = layout.coils.filter((coil) => coil.phase === phase).length / layout.groups
    if (inStep > 0.9995 || inSeries <= 1) return []
    return [
      plain(
        `  phase ${phase + 1}: ${formatNumber(inSeries)} coils in series give ${formatNumber(inSeries * inStep)} times one coil, not ${formatNumber(inSeries)}: they are not in step`,
      ),
    ]
  })
}

/** Which coils make a phase, those wound against the others with a minus: what to write on the stator. */
function coilLines({ layout, machine }: Chain): PageLine[] {
  if (machine.stator.winding.kind !== 'coils' || layout.coils.length < 2) return []
  return Array.from({ length: layout.phaseCount }, (_, phase) => {
    const own = layout.coils.filter((coil) => coil.phase === phase)
    const text = own.map(({ number, sense }) => (sense < 0 ? `−${number}` : String(number))).join(' ')
    return wrapped(`  coils of phase ${phase + 1}: ${text}`, columns, '    ').map(plain)
  }).flat()
}

const threeDigits = (value: number | undefined): string => (value === undefined ? '–' : value.toFixed(3))

/** The textbook's factors beside the integrated one. */
function factorLines(chain: Chain): PageLine[] {
  const { rows, sentence } = windingFactors(chain)
  const head = ['harmonic', 'pitch', 'distribution', 'spread', 'skew', 'textbook', 'integrated']
  const table = textTable(
    head.map((text) => ({ head: text, align: 'right' })),
    rows.map(({ harmonic, pitch, distribution, spread, skew, textbook, integrated }) => [
      String(harmonic),
      ...[pitch, distribution, spread, skew, textbook, integrated].map(threeDigits),
    ]),
  )
  return [
    title('Winding factors of phase 1'),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...wrapped(`  ${sentence}`, columns, '  ').map(plain),
  ]
}

/** What the readings on loose magnets have made of their label. */
function measuredLines({ machine: { rotor } }: Chain): PageLine[] {
  const { measured, labelRemanence } = rotor.magnet
  if (measured === undefined) return []
  const count = measured.readings.length
  return [
    plain(
      `  remanence by ${count} reading${count === 1 ? '' : 's'} and label ${formatSpread(measured.polarization, measured.spread, 'T')} (label ${formatSi(labelRemanence, 'T')}${measured.rejected.length > 0 ? `, ${measured.rejected.length} left out` : ''})`,
    ),
  ]
}

/** What volts read on the bench make of the magnets. */
function voltsLines(chain: Chain): PageLine[] {
  const found = remanenceByVolts(chain)
  if (found === undefined) return []
  const { measured, used } = found
  const odd = measured.readings.filter(({ disagrees }) => disagrees).length
  return [
    plain(
      `  remanence by the bench’s volts (${used.length} reading${used.length === 1 ? '' : 's'}) ${formatSpread(measured.polarization, measured.spread, 'T')}, computed with ${formatSi(chain.machine.rotor.magnet.remanence, 'T')}${odd > 0 ? `; ${odd} at odds with the rest` : ''}`,
    ),
  ]
}

/** What the reels have left, or lack. */
function reelText({ reelRest }: Chain['wound']): string {
  if (reelRest === undefined) return ''
  const { length, mass, share } = reelRest
  return length < 0
    ? `; the reels lack ${formatSi(-length, 'm')}`
    : `; ${formatSi(length, 'm')} (${formatSi(mass, 'g')}, ${percent(share)}) stay on the reels`
}

/** Which way the axis stands, the area swept, and how evenly an upright rotor pulls. */
function axisLines({ machine: { blades }, rotor, blades: map }: Chain): PageLine[] {
  const area = formatSi(sweptArea(blades), 'm2')
  if (!('height' in blades))
    return [
      plain(
        `  ${blades.kind === 'table' ? 'blades known by their power' : 'axis along the wind'}, ${area} swept`,
      ),
    ]
  const wind = 5
  const torque = (share: number) => formatSi(map.torque(wind, 0) * share, 'mNm')
  const turn = rotor.turn
  return [
    plain(`  upright axis, ${area} swept: height times diameter`),
    ...(turn === undefined || !(turn.restMean > 0)
      ? []
      : wrapped(
          `  at rest in ${formatSi(wind, 'm_per_s')} the blades give ${torque(1)} on the mean of the turn, ${torque(turn.restLeast / turn.restMean)} where they give least${turn.ripple === undefined ? '' : `; at their best speed the torque swings by ${Math.round(100 * turn.ripple)} % of its mean round the turn`}`,
          columns,
          '    ',
        ).map(plain)),
  ]
}

function machineLines(chain: Chain, spreads: Spreads | undefined): PageLine[] {
  const { voltage, generator, field, gap, wound, runaway, machine } = chain
  const rpm = (2 * Math.PI) / 60
  const phase = voltage.phases
    .map(
      (p) =>
        `${formatNumber(p.rms * rpm * 1000)} mV/rpm rms at ${formatNumber((p.lag * 180) / Math.PI, 3)}°, ${formatSi(p.resistance, 'ohm')}, ${formatSi(p.inductance, 'mH')}`,
    )
    .map((text, k) => plain(`  phase ${k + 1}: ${text}`))
  const held = runaway.magnetHold
  const { stator, rotor } = machine
  return [
    title('The machine'),
    plain(
      `  field through the winding ${formatSi(gap.fundamental, 'T')} peak; magnets work at ${formatSi(field.workingPoint.fluxDensity, 'T')} of ${formatSi(field.remanence, 'T')}`,
    ),
    ...measuredLines(chain),
    ...voltsLines(chain),
    ...phase,
    ...coilLines(chain),
    ...stepLines(chain),
    plain(
      `  ${formatSi(wound.wireLength, 'm')} of wire, ${formatSi(wound.copperMass, 'g')} of copper${wound.price === undefined ? '' : `, ${formatNumber(wound.price)} in your money`}${reelText(wound)}`,
    ),
    ...axisLines(chain),
    plain(
      `  the rotor starts in ${windOr(chain.startWind)}; current begins in ${intervalText(chain.cutInWind, 'm_per_s', spreads?.cutInWind)}, at ${intervalText(generator.cutIn, 'rpm', spreads?.cutInSpeed)}`,
    ),
    plain(
      `  load lost in ${formatSi(runaway.wind, 'm_per_s', 2)}: ${intervalText(runaway.speed, 'rpm', spreads?.runawaySpeed)}, tips at ${formatSi(runaway.tipSpeed, 'm_per_s')}, ${formatSi(runaway.lineVoltage, 'V')} rms between lines,`,
    ),
    plain(
      `    ${formatSi(runaway.magnetForce, 'N')} outward on each magnet${held > 0 ? `, held to ${formatSi(held, 'N')} without glue` : ', held by glue alone'}`,
    ),
    plain(
      `  heat: enamel class ${stator.wire.insulationClass} to ${formatSi(stator.wire.highestTemperature, 'degC')}, ${stator.support.name} softens at ${formatSi(stator.support.softening, 'degC')}${rotor.magnet.highestTemperature === undefined ? '' : `, magnets to ${formatSi(rotor.magnet.highestTemperature, 'degC')}`}`,
    ),
    ...(machine.load.kind === 'open' ? [plain('  nothing is connected')] : []),
  ]
}

const causeText = ({ causes }: ResultSpread): string =>
  causes
    .slice(0, 2)
    .map(({ path, share }) => `${path} (${Math.round(100 * share)} % of it)`)
    .join(', then ')

/** The measurement that brings most for its effort. */
const measureText = ({ next: [first] }: ResultSpread): string =>
  first === undefined ? '' : `: measure ${first.path} next (${first.instrument})`

function yearLines({ year }: Chain, spreads: Spreads | undefined): PageLine[] {
  const energy = spreads?.energy
  return [
    title(
      `A year at ${formatSi(year.meanWind, 'm_per_s', 2)} mean wind at the hub: ${intervalText(year.energy, 'kWh', energy)}`,
    ),
    plain(
      `  mean ${formatSi(year.meanPower, 'W')}; the wind carries ${formatNumber(year.patternFactor)} times what its mean speed says`,
    ),
    ...(year.hysteresis > 0.02 * year.energy
      ? wrapped(
          `  in some winds it has two states and keeps the one it is in: the year lies ${formatSi(year.hysteresis, 'kWh')} to either side`,
          columns,
          '    ',
        ).map(plain)
      : []),
    ...(energy !== undefined && energy.causes.length > 0
      ? wrapped(
          `  the spread comes mostly from ${causeText(energy)}${measureText(energy)}`,
          columns,
          '    ',
        ).map(plain)
      : []),
  ]
}

function windLines({ rows }: Chain): PageLine[] {
  const whole = rows.filter(({ wind }) => Number.isInteger(wind))
  // while the limiter holds, every row says the same: the first and the last will do
  const shown = whole.filter(
    ({ state }, k) => !(state === 'held' && whole[k - 1]?.state === 'held' && whole[k + 1]?.state === 'held'),
  )
  const table = textTable(
    [
      { head: 'wind m/s', align: 'right' },
      { head: 'state', align: 'left' },
      { head: 'rpm', align: 'right' },
      { head: 'λ', align: 'right' },
      { head: 'C_P', align: 'right' },
      { head: 'shaft W', align: 'right' },
      { head: 'useful W', align: 'right' },
      { head: 'amps A', align: 'right' },
      { head: 'volts V', align: 'right' },
      { head: 'A/mm²', align: 'right' },
      { head: 'copper °C', align: 'right' },
    ],
    shown.map((row) => [
      formatNumber(row.wind, 2),
      row.state,
      row.speed > 0 ? formatSi(row.speed, 'rpm').replace(' rpm', '') : '0',
      formatNumber(row.tipSpeedRatio, 2),
      formatNumber(row.powerCoefficient, 2),
      formatNumber(shaftPower(row.watts)),
      formatNumber(row.watts.useful),
      formatNumber(row.loadCurrent),
      formatNumber(row.loadVoltage),
      formatSi(row.currentDensity, 'A_per_mm2', 2).replace(' A/mm²', ''),
      `${formatSi(row.copperTemperature, 'degC', 2).replace(' °C', '')}${row.overheated ? '!' : ''}`,
    ]),
  )
  return [
    title('Wind by wind'),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
  ]
}

/** What turning costs with nothing connected; causes that cost nothing have no column. */
function noLoadLines(chain: Chain): PageLine[] {
  const rows = noLoadRows(chain, 4)
  const last = rows[rows.length - 1]
  if (last === undefined) return []
  const causes = [
    { head: 'bearings W', of: ({ watts }: (typeof rows)[number]) => watts.friction },
    { head: 'strand eddies W', of: ({ watts }: (typeof rows)[number]) => watts.strands },
    { head: 'metal parts W', of: ({ watts }: (typeof rows)[number]) => watts.parts },
    {
      head: 'circulating W',
      of: ({ watts }: (typeof rows)[number]) => watts.branches + watts.delta + watts.loops + watts.bridge,
    },
  ].filter(({ of }) => of(last) > 0)
  const table = textTable(
    [
      { head: 'rpm', align: 'right' },
      { head: 'torque mN·m', align: 'right' },
      ...causes.map(({ head }) => ({ head, align: 'right' as const })),
    ],
    rows.map((row) => [
      formatSi(row.speed, 'rpm').replace(' rpm', ''),
      formatSi(row.torque, 'mNm').replace(' mN·m', ''),
      ...causes.map(({ of }) => formatNumber(of(row))),
    ]),
  )
  const parts = chain.drag.parts.map(({ name }) => name).join(', ')
  return [
    title('Turned with nothing connected'),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...(chain.drag.parts.length > 0
      ? [
          faint(
            `  metal parts: ${parts}; an estimate, ± ${Math.round(100 * partsSpread(chain.drag.parts, last.speed))} %`,
          ),
        ]
      : []),
    plain(''),
  ]
}

export const severityWord = { blocking: 'BLOCKING', warning: 'warning', note: 'note' } as const

export function concernLines(concerns: readonly Concern[]): PageLine[] {
  if (concerns.length === 0) return [{ text: 'No concerns.', tone: 'good' }]
  const indent = '      '
  return [
    title(`Concerns (${concerns.length})`),
    ...wrapped(`  ${signOffText(concerns)}`, columns, '  ').map(faint),
    ...concerns.flatMap((concern): PageLine[] => {
      const { severity, code, what, why, figures, remedies } = concern
      const open = isOpen(concern)
      const tone: Tone = severity === 'note' || !open ? 'plain' : severity
      const block = (text: string) => wrapped(indent + text, columns, indent).map(plain)
      return [
        ...wrapped(
          `  ${severityWord[severity]}${open ? '' : ', answered'} ${code}: ${what}`,
          columns,
          indent,
        ).map((text) => ({
          text,
          tone,
        })),
        ...answerTexts(concern).flatMap(block),
        ...block(`${figures} ${why}`),
        ...remedies.flatMap((remedy) => block(`→ ${remedyWords(remedy)}`)),
      ]
    }),
  ]
}

/** The whole page; spreads where they have been computed. */
export function chainPage(chain: Chain, spreads?: Spreads, worth?: Worth): PageLine[] {
  const { machine } = chain
  const gap = plain('')
  return [
    title(`${machine.name} — ${machine.safetyClass}`),
    ...(machine.design.note === undefined ? [] : wrapped(machine.design.note, columns).map(faint)),
    gap,
    ...chainLines(chain, spreads),
    gap,
    ...machineLines(chain, spreads),
    gap,
    ...factorLines(chain),
    gap,
    ...yearLines(chain, spreads),
    gap,
    ...yearPage(chain.year, worth),
    gap,
    ...windLines(chain),
    gap,
    ...noLoadLines(chain),
    ...concernLines(chain.concerns),
  ]
}
