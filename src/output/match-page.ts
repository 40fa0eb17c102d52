/** The match as a page of text, and as JSON in workshop units: points wind by wind, zones, target sheet, remedies. */
import type { GeneratorTarget } from '../analysis/generator-target.ts'
import type { MatchMap, MatchState, MatchWind } from '../analysis/match-map.ts'
import type { Remedy, RemedyReport } from '../analysis/match-remedies.ts'
import { pathKind } from '../analysis/path-kind.ts'
import { pathText } from '../analysis/remedy/change.ts'
import type { MatchFigures } from '../analysis/remedy/figures.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import {
  changesText,
  figureCells,
  idealSentence,
  remedyColumns,
  remedyNames,
  remedyNote,
  remedySentence,
  withoutTexts,
  worseParts,
} from './remedy-words.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })

export interface MatchPageParts {
  readonly name: string
  readonly map: MatchMap
  readonly target: GeneratorTarget | undefined
  readonly report: RemedyReport
}

const perRpm = (2 * Math.PI) / 60

/** Steepness of generator less that of blades [W per rpm]: above zero the speed holds itself. */
const holding = ({ bladeSlope, generatorSlope }: MatchState): number => (generatorSlope - bladeSlope) * perRpm

export const matchColumns = [
  'wind',
  'state',
  'rpm',
  'λ',
  'C_P',
  'shaft W',
  '°C',
  'dP blades',
  'dP gen.',
  'start ×',
  'other rpm',
] as const

/** What the columns say. */
export const matchNote =
  'Wind in m/s, rising. dP: watts per rpm by which blades and generator change there; the speed holds itself where the generator is the steeper. start ×: torque of the blades at rest over the friction that holds them. Other rpm: what else is in balance in that wind; (U) is not steady.'

const rpm = (speed: number): string => formatNumber((speed * 60) / (2 * Math.PI))

/** A wind's state on the rising path and what else is steady in it, cell by cell. */
export function matchCells(each: MatchWind): string[] {
  const state = each.states[each.rising]
  const others = each.states
    .filter((_, k) => k !== each.rising)
    .map(({ speed, stable }) => `${rpm(speed)}${stable ? '' : ' (U)'}`)
    .join(', ')
  const start = Number.isFinite(each.startingMargin) ? formatNumber(each.startingMargin, 2) : '∞'
  const first = [formatNumber(each.wind), pathKind(each, each.rising)]
  if (state === undefined) return [...first, '–', '–', '–', '–', '–', '–', '–', start, others]
  return [
    ...first,
    rpm(state.speed),
    formatNumber(state.tipSpeedRatio),
    formatNumber(state.powerCoefficient, 2),
    formatNumber(state.power),
    formatNumber(Math.round(state.copperTemperature - 273.15)),
    formatNumber(state.bladeSlope * perRpm, 2),
    formatNumber(state.generatorSlope * perRpm, 2),
    start,
    others,
  ]
}

/** Winds of a list as ranges: "4 … 7.5 m/s". */
function windRanges(winds: readonly number[], step: number): string {
  const ranges: [number, number][] = []
  for (const wind of winds) {
    const last = ranges[ranges.length - 1]
    if (last !== undefined && wind - last[1] < 1.5 * step) last[1] = wind
    else ranges.push([wind, wind])
  }
  return `${ranges.map(([low, high]) => (low === high ? formatNumber(low) : `${formatNumber(low)} … ${formatNumber(high)}`)).join(', ')} m/s`
}

/** The zones of the map, a sentence each. */
export function zoneSentences({ zones, winds, greatestWind, endedBy, battery }: MatchMap): string[] {
  const step = winds.length > 1 ? winds[1]!.wind - winds[0]!.wind : winds[0]!.wind
  const twofold = winds.filter(({ rising, falling }) => rising !== falling).map(({ wind }) => wind)
  return [
    Number.isFinite(zones.startWind)
      ? `At rest below ${formatSi(zones.startWind, 'm_per_s', 2)}: the blades’ torque does not overcome the friction.`
      : 'At rest in every wind: the blades have no torque to start with.',
    Number.isFinite(zones.cutInSpeed)
      ? `No current below ${formatSi(zones.cutInSpeed, 'rpm')}${Number.isFinite(zones.cutInWind) ? `, which a rising wind reaches at ${formatSi(zones.cutInWind, 'm_per_s', 2)}` : ', which no wind of the map reaches'}.`
      : 'No current at any speed.',
    zones.stalledWinds.length > 0
      ? `Stalled in ${windRanges(zones.stalledWinds, step)}: slower than the blades like, at under two thirds of their best power.`
      : 'Stalled in no wind.',
    ...(twofold.length > 0
      ? [
          `Two ways to run in ${windRanges(twofold, step)}: a rising wind and a falling one end at different speeds.`,
        ]
      : []),
    `Overspeed above ${formatSi(zones.overspeed, 'rpm')}: the fastest that ${formatSi(greatestWind, 'm_per_s', 2)} (${endedBy === 'limiter' ? 'where the limiter acts' : 'the storm; nothing limits it before'}) turns the loaded rotor; only a lost load or a failed limiter gets there.`,
    ...(battery === undefined
      ? []
      : [
          `The battery’s band, ${formatSi(battery.low.voltage, 'V')} empty to ${formatSi(battery.high.voltage, 'V')} at the end of charge, moves the generator’s curve between the ribbon’s edges.`,
        ]),
  ]
}

const volts = (perSpeed: number): string => `${formatNumber(perSpeed * perRpm)} V/rpm`

/** The target sheet for the generator, name and value. */
export function targetRows(target: GeneratorTarget): (readonly [string, string])[] {
  const { voltage, resistance, torque, heat } = target
  return [
    [
      'for',
      `${formatSi(target.wantedPower, 'W')} into the load in ${formatSi(target.wind, 'm_per_s', 2)}${target.stated ? '' : ' (three quarters of the blades’ best; the design names no watts)'}`,
    ],
    [
      'working speed',
      `${formatSi(target.workingSpeed, 'rpm')} with ${formatSi(target.workingPower, 'W')} at the shaft, where blades and winding together give most`,
    ],
    ['blades’ best there', `${formatSi(target.bestPower, 'W')} at ${formatSi(target.bestSpeed, 'rpm')}`],
    ['direct current', `${formatSi(target.current, 'A')} at ${formatSi(target.loadVoltage, 'V')}`],
    [
      'volts per rpm, peak between lines',
      voltage.wanted === undefined
        ? `${volts(voltage.present)} at hand; no turns in this window work at just that speed, or the load does not let it be told`
        : `${volts(voltage.wanted)} wanted, ${volts(voltage.present)} at hand; ${voltage.beginsInWind === undefined ? 'current would never begin' : `current would begin in ${formatSi(voltage.beginsInWind, 'm_per_s', 2)}`}`,
    ],
    [
      'resistance, winding and cable',
      `${resistance.ceiling > 0 ? `at most ${formatSi(resistance.ceiling, 'ohm')}` : 'none is small enough: these blades do not bring those watts'}${resistance.present === undefined ? '' : `; ${formatSi(resistance.present, 'ohm')} at hand, hot`}, as the direct current meets it`,
    ],
    [
      'torque',
      `${formatSi(torque.working, 'Nm')} at the working speed; up to ${formatSi(torque.greatest, 'Nm')} must be held in the map’s last wind`,
    ],
    [
      'torque at rest',
      `${formatSi(torque.atRest, 'mNm')} from the blades in the mean wind, against ${formatSi(torque.startingFriction, 'mNm')} of friction: what cogs must stay below the difference`,
    ],
    [
      'heat',
      `${formatSi(heat.power, 'W')} in the copper in ${formatSi(heat.wind, 'm_per_s', 2)}: ${formatSi(heat.temperature, 'degC')} of ${formatSi(heat.limit, 'degC')}; copper to air at most ${formatSi(heat.ceiling, 'K_per_W')}, ${formatSi(heat.present, 'K_per_W')} at hand`,
    ],
  ]
}

function remedyLines(report: RemedyReport): PageLine[] {
  const { before, remedies } = report
  const rows = [
    ['now', ...figureCells(before, 0)],
    ...remedies.map(({ after, burnt }, k) => [String(k + 1), ...figureCells(after, burnt)]),
  ]
  const table = textTable(
    ['', ...remedyColumns].map((head, k) => ({
      head,
      align: k === 0 ? ('left' as const) : ('right' as const),
    })),
    rows,
  )
  return [
    title('Remedies, each alone'),
    ...(remedies.length === 0 ? [plain('  None of those tried helps.')] : []),
    ...remedies.flatMap((remedy, k) => {
      const worse = worseParts(report, remedy)
      return [
        ...wrapped(`  ${k + 1}  ${remedyNames[remedy.kind]}: ${changesText(remedy)}`, columns, '     '),
        ...wrapped(`     ${remedySentence(report, remedy)}`, columns, '     '),
        ...(worse.length > 0 ? wrapped(`     price: ${worse.join('; ')}`, columns, '     ') : []),
      ].map(plain)
    }),
    ...withoutTexts(report).flatMap((text) => wrapped(`  –  ${text}`, columns, '     ').map(faint)),
    plain(''),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    plain(''),
    ...wrapped(`  ${idealSentence(report)}`, columns, '  ').map(plain),
    ...wrapped(`  ${remedyNote}`, columns, '  ').map(faint),
  ]
}

export function matchPage({ name, map, target, report }: MatchPageParts): PageLine[] {
  const table = textTable(
    matchColumns.map((head, k) => ({ head, align: k === 1 || k === 10 ? 'left' : 'right' })),
    map.winds.map(matchCells),
  )
  return [
    title(`${name} — blades and generator`),
    plain(''),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...wrapped(`  ${matchNote}`, columns, '  ').map(faint),
    plain(''),
    title('Zones'),
    ...zoneSentences(map).flatMap((text) => wrapped(`  ${text}`, columns, '  ').map(plain)),
    ...(target === undefined
      ? []
      : [
          plain(''),
          title('What blades and load ask of the generator'),
          ...targetRows(target).flatMap(([head, text]) =>
            wrapped(`  ${head}: ${text}`, columns, '    ').map(plain),
          ),
        ]),
    plain(''),
    ...remedyLines(report),
  ]
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

const stateResult = (state: MatchState) => ({
  speed_rpm: fromSi(state.speed, unit('rpm')),
  shaft_W: state.power,
  stable: state.stable,
  kind: state.kind,
  tipSpeedRatio: state.tipSpeedRatio,
  powerCoefficient: state.powerCoefficient,
  copper_degC: fromSi(state.copperTemperature, unit('degC')),
  bladeSlope_W_per_rpm: state.bladeSlope * perRpm,
  generatorSlope_W_per_rpm: state.generatorSlope * perRpm,
  holding_W_per_rpm: holding(state),
})

const figuresResult = (figures: MatchFigures) => ({
  energy_kWh: fromSi(figures.energy, unit('kWh')),
  useful_W: figures.usefulPower,
  stalledWinds: figures.stalledWinds,
  start_m_per_s: finite(figures.startWind),
  cutIn_m_per_s: finite(figures.cutInWind),
  hottestCopper_degC: fromSi(figures.hottestCopper, unit('degC')),
  runaway_rpm: fromSi(figures.runawaySpeed, unit('rpm')),
  runaway_V: figures.runawayVolts,
  copper_g: fromSi(figures.copperMass, unit('g')),
  blocking: figures.blocking,
  warnings: figures.warnings,
})

const remedyResult = (report: RemedyReport, remedy: Remedy) => ({
  kind: remedy.kind,
  changes: remedy.changes.map(({ path, from, to }) => ({ path: pathText(path), from: from ?? null, to })),
  turnover_m_per_s: remedy.turnoverWind ?? null,
  after: figuresResult(remedy.after),
  burnt_W: remedy.burnt,
  greatestBurnt_W: remedy.greatestBurnt,
  price: worseParts(report, remedy),
})

export function matchResult({ name, map, target, report }: MatchPageParts) {
  return {
    name,
    winds: map.winds.map((each) => ({
      wind_m_per_s: each.wind,
      rising: pathKind(each, each.rising),
      falling: pathKind(each, each.falling),
      risingState: each.rising < 0 ? null : each.rising,
      fallingState: each.falling < 0 ? null : each.falling,
      startingMargin: finite(each.startingMargin),
      states: each.states.map(stateResult),
    })),
    zones: {
      start_m_per_s: finite(map.zones.startWind),
      cutIn_rpm: Number.isFinite(map.zones.cutInSpeed) ? fromSi(map.zones.cutInSpeed, unit('rpm')) : null,
      cutIn_m_per_s: finite(map.zones.cutInWind),
      stalled_m_per_s: map.zones.stalledWinds,
      overspeed_rpm: fromSi(map.zones.overspeed, unit('rpm')),
      lastWind_m_per_s: map.greatestWind,
      lastWind: map.endedBy,
    },
    target:
      target === undefined
        ? null
        : {
            wind_m_per_s: target.wind,
            wanted_W: target.wantedPower,
            stated: target.stated,
            best_rpm: fromSi(target.bestSpeed, unit('rpm')),
            best_W: target.bestPower,
            working_rpm: fromSi(target.workingSpeed, unit('rpm')),
            working_W: target.workingPower,
            direct_A: target.current,
            load_V: target.loadVoltage,
            wanted_V_per_rpm: target.voltage.wanted === undefined ? null : target.voltage.wanted * perRpm,
            present_V_per_rpm: target.voltage.present * perRpm,
            begins_m_per_s: target.voltage.beginsInWind ?? null,
            resistanceCeiling_ohm: target.resistance.ceiling,
            resistance_ohm: target.resistance.present ?? null,
            working_Nm: target.torque.working,
            atRest_Nm: target.torque.atRest,
            startingFriction_Nm: target.torque.startingFriction,
            greatest_Nm: target.torque.greatest,
            copper_W: target.heat.power,
            thermalCeiling_K_per_W: finite(target.heat.ceiling),
            thermal_K_per_W: target.heat.present,
          },
    before: figuresResult(report.before),
    remedies: report.remedies.map((remedy) => remedyResult(report, remedy)),
    without: report.without,
    ideal: { energy_kWh: fromSi(report.ideal.energy, unit('kWh')), power_W: report.ideal.power },
  }
}
