/** Faults on purpose as a page of text, and as JSON in workshop units. */
import type { BenchReading } from '../analysis/bench-reading.ts'
import type { FaultCase, FaultStudy } from '../analysis/fault-study.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

const percent = (ratio: number): string => `${formatNumber(100 * ratio, 3)} %`

/** Least and greatest of a list, once where they are alike. */
function range(values: readonly number[], say: (value: number) => string): string {
  const [low, high] = [say(Math.min(...values)), say(Math.max(...values))]
  return low === high ? low : `${low} … ${high}`
}

const degrees = (kelvin: number): string => formatSi(kelvin, 'degC', 2).replace(' °C', '')

/** One machine's figures as they stand in a row of a table, head by head. */
export const faultColumns = [
  'phases V',
  'lines V',
  'corner V',
  'ohms Ω',
  'coils apart %',
  'notch %',
  'drag mN·m',
  'amps A',
  'ripple %',
  'copper W',
  'hottest °C',
] as const

export function faultCells(reading: BenchReading): string[] {
  const bare = (value: number) => formatNumber(value, 3)
  return [
    range(reading.phases, bare),
    range(reading.lines, bare),
    bare(reading.corner),
    range(reading.terminalResistance, bare),
    formatNumber(100 * reading.coilSpread, 2),
    formatNumber(100 * Math.max(reading.coilNotch, reading.phaseNotch), 2),
    bare(1000 * reading.dragTorque),
    bare(reading.dcCurrent),
    formatNumber(100 * reading.ripple, 2),
    range(reading.phaseLoss, bare),
    degrees(reading.hottestCoil.temperature),
  ]
}

const isMagnet = ({ defect }: FaultCase): boolean => 'position' in defect

/** Where the list is largest, and what it is there. */
const strongest = (values: readonly number[]): readonly [number, number] => {
  let at = 0
  for (let k = 1; k < values.length; k++) if (Math.abs(values[k]!) > Math.abs(values[at]!)) at = k
  return [at, values[at] ?? 0]
}

const diodeName = ({ line, end, side }: BenchReading['diodes'][number]): string =>
  `the ${side} diode of ${end === undefined ? `line ${line + 1}` : `the ${end} of phase ${line + 1}`}`

/** What of a case strikes first, in one sentence. */
export function faultSentence(study: FaultStudy, one: FaultCase): string {
  const { sound } = study
  const { reading, ratios } = one
  const parts: string[] = []
  const changed = (values: readonly number[]) => values.some((value) => Math.abs(value - 1) > 0.003)
  if (changed(ratios.phases)) parts.push(`phases at ${range(ratios.phases, percent)} of their volts`)
  if (changed(ratios.lines)) parts.push(`${range(ratios.lines, percent)} between the terminals`)
  const open = Math.abs(reading.corner - sound.corner)
  if (sound.phases.length === 3 && open > 0.05 * sound.phases[0]!)
    parts.push(
      `${formatNumber(reading.corner, 3)} V across the open corner instead of ${formatNumber(sound.corner, 3)} V`,
    )
  if (reading.coilNotch > 0.01)
    parts.push(`one coil’s wave differs from pole to pole by ${percent(reading.coilNotch)}`)
  else if (isMagnet(one)) parts.push('every coil meets all magnets at once, so that no notch shows')
  if (reading.coilSpread - sound.coilSpread > 0.005) parts.push(`coils ${percent(reading.coilSpread)} apart`)
  if (reading.sequence !== sound.sequence) parts.push('the order of the phases is another')
  if (reading.dragTorque - sound.dragTorque > 1e-3)
    parts.push(`${formatSi(reading.dragTorque - sound.dragTorque, 'mNm')} more against the hand`)
  const ohms = reading.terminalResistance.map((R, k) => R / sound.terminalResistance[k]!)
  if (changed(ohms)) parts.push(`ohms between terminals ${range(ohms, percent)} of sound ones`)
  if (reading.pulse > 0.02 + sound.pulse)
    parts.push(`the direct current pulses once per electrical period by ${percent(reading.pulse)}`)
  const [line, direct] = strongest(reading.lineDirect)
  if (Math.abs(direct) > 0.02 * reading.dcCurrent && Math.abs(direct) > 0.01)
    parts.push(`${formatSi(Math.abs(direct), 'A')} of direct current in line ${line + 1}`)
  if (Math.abs(ratios.dcCurrent - 1) > 0.005) parts.push(`charging current ${percent(ratios.dcCurrent)}`)
  const [hot, loss] = strongest(reading.diodes.map((one) => one.loss))
  const [, usual] = strongest(sound.diodes.map((one) => one.loss))
  if (loss > 1.3 * usual && loss - usual > 0.1)
    parts.push(
      `${diodeName(reading.diodes[hot]!)} at ${formatSi(loss, 'W')}, none of a sound bridge above ${formatSi(usual, 'W')}`,
    )
  const warmer = reading.hottestCoil.temperature - sound.hottestCoil.temperature
  if (warmer > 2) parts.push(`coil ${reading.hottestCoil.number} up to ${formatNumber(warmer, 2)} K warmer`)
  return parts.length === 0 ? 'Hardly anything shows.' : `${parts.join('; ')}.`
}

/** Where the numbers are taken. */
export const faultNote = (study: FaultStudy): string =>
  `Turned by hand at ${formatSi(study.handSpeed, 'rpm')} with nothing connected: volts rms of the phases, between the terminals, and of all phases in series (the open corner of a delta); ohms between the terminals at 20 °C; coils apart: strongest less weakest over their mean; notch: the part of a coil’s or phase’s wave that does not repeat from pole to pole; drag: what currents inside the winding, or through a shorted diode of a bridge left on, hold against the hand. Charging in ${formatSi(study.wind, 'm_per_s', 2)}: direct amps, their ripple, copper loss by phase, and the hottest coil if it gives its neighbours no heat.`

export function faultPage(study: FaultStudy): PageLine[] {
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const blank = plain('')
  const rows = [
    ['', 'sound', ...faultCells(study.sound)],
    ...study.cases.map(({ reading }, k) => [String(k + 1), '', ...faultCells(reading)]),
  ].map(([number, word, ...cells]) => [number || word || '', ...cells])
  // a table of eleven figures is wider than a page: bench first, wind second
  const split = 7
  const tableOf = (from: number, to: number) =>
    textTable(
      [
        { head: '', align: 'left' },
        ...faultColumns.slice(from, to).map((head) => ({ head, align: 'right' as const })),
      ],
      rows.map((cells) => [cells[0]!, ...cells.slice(1 + from, 1 + to)]),
    ).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  return [
    title(`${study.name} — with one defect at a time`),
    ...wrapped(
      study.own
        ? '  The defects are those of the document, each by itself.'
        : '  The document names no defects; these are one of each kind that fits.',
      columns,
      '  ',
    ).map(faint),
    blank,
    ...study.cases.flatMap((one, k) => {
      const { test } = one
      const text = `  ${k + 1}  ${one.words}: ${faultSentence(study, one)}${test === undefined ? '' : ` ${test}`}`
      return wrapped(text, columns, '     ').map(plain)
    }),
    ...study.refused.flatMap(({ words, reason }) =>
      wrapped(`  –  ${words}: not computed, ${reason}`, columns, '     ').map(
        (text): PageLine => ({ text, tone: 'warning' }),
      ),
    ),
    blank,
    title('On the bench'),
    ...tableOf(0, split),
    blank,
    title('In the wind'),
    ...tableOf(split, faultColumns.length),
    ...wrapped(`  ${faultNote(study)}`, columns, '  ').map(faint),
    blank,
    title('What plain arithmetic expects'),
    ...study.cases.flatMap((one, k) =>
      one.signature.flatMap(({ what, expected, computed, basis }) =>
        wrapped(
          `  ${k + 1}  ${what}: ${formatNumber(expected, 4)} expected, ${formatNumber(computed, 4)} computed (${basis})`,
          columns,
          '     ',
        ).map(plain),
      ),
    ),
  ]
}

const readingResult = (reading: BenchReading) => ({
  handSpeed_rpm: fromSi(reading.handSpeed, unit('rpm')),
  phases_V_rms: reading.phases,
  lines_V_rms: reading.lines,
  openCorner_V_rms: reading.corner,
  coils_V_rms: reading.coils,
  coilSpread: reading.coilSpread,
  coilNotch: reading.coilNotch,
  phaseNotch: reading.phaseNotch,
  phaseSequence: reading.sequence,
  drag_mNm: fromSi(reading.dragTorque, unit('mNm')),
  phaseResistance20_ohm: reading.phaseResistance,
  terminalResistance20_ohm: reading.terminalResistance,
  wind_m_per_s: reading.wind,
  speed_rpm: fromSi(reading.speed, unit('rpm')),
  direct_A: reading.dcCurrent,
  ripple: reading.ripple,
  pulseOncePerPeriod: reading.pulse,
  lineDirect_A: reading.lineDirect,
  diodes: reading.diodes.map(({ line, end, side, state, current, loss }) => ({
    line: line + 1,
    ...(end === undefined ? {} : { end }),
    side,
    state,
    mean_A: current,
    loss_W: loss,
  })),
  phaseLoss_W: reading.phaseLoss,
  shortedTurnsLoss_W: reading.loopLoss,
  hottestCoil: reading.hottestCoil.number,
  hottestCoil_degC: fromSi(reading.hottestCoil.temperature, unit('degC')),
})

/** The same for other programs; waveforms left out. */
export const faultResult = (study: FaultStudy) => ({
  name: study.name,
  fromDocument: study.own,
  sound: readingResult(study.sound),
  cases: study.cases.map(({ defect, words, reading, ratios, signature }) => ({
    defect,
    words,
    ...readingResult(reading),
    overSound: {
      phases: ratios.phases,
      lines: ratios.lines,
      direct: ratios.dcCurrent,
      phaseLoss: ratios.phaseLoss,
    },
    signature,
  })),
  refused: study.refused,
})
