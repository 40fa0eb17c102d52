/** What a storm came to, as plain data and words that page, terminal and other programs share. */
import type { BrakeEnd, BrakeStudy } from '../analysis/brake-wind.ts'
import { electricCaution, towerCaution, turningCaution } from '../analysis/concern/caution.ts'
import type { FailureRow, FailureTable } from '../analysis/failure-table.ts'
import type { StormStudy } from '../analysis/storm-study.ts'
import type { StormTrace } from '../analysis/storm-trace.ts'
import { formatNumber, formatSi, formatSpread } from '../units/format.ts'

export interface StormReportRow {
  readonly key: string
  readonly words: string
  readonly outcome: FailureRow['outcome']
  readonly severity: FailureRow['severity']
  /** Under `stormColumns`. */
  readonly cells: readonly string[]
  /** One sentence each: what limits it, what is near or passed, what switched. */
  readonly sentences: readonly string[]
  readonly trace: StormTrace
}

export interface StormReport {
  readonly name: string
  /** What blew, in one sentence. */
  readonly windWords: string
  /** Seconds of the traces. */
  readonly duration: number
  /** The gravest first. */
  readonly verdict: readonly string[]
  readonly rows: readonly StormReportRow[]
  /** Sentence and rows under `brakeColumns`; undefined where no winding brakes. */
  readonly brake: { readonly sentence: string; readonly rows: readonly (readonly string[])[] } | undefined
  /** What was assumed, and what is left out. */
  readonly notes: readonly string[]
  readonly cautions: readonly string[]
}

export const stormColumns = [
  'outcome',
  'most rpm',
  'direct V',
  'line V',
  'pull N',
  'tip m/s',
  'copper °C',
  'too hot after s',
  'limited by',
] as const

export const brakeColumns = [
  'wind m/s',
  'working: from rpm',
  'to rpm',
  'no load: from rpm',
  'to rpm then',
  'parked: to rpm',
  'copper °C',
] as const

const bare = (text: string): string => text.replace(/\s*(rpm|°C|m\/s|N|V|A)$/, '').trimEnd()
const number = (value: number, unit: string): string => bare(formatSi(value, unit, 3))
/** Hotter than this the winding has burnt and the number says no more [K]. */
const burnt = 873.15
const copper = (kelvin: number): string => (kelvin >= burnt ? 'above 600' : number(kelvin, 'degC'))

function cellsOf({ storm, magnetForce, tipSpeed, outcome, limitedBy }: FailureRow): string[] {
  const { most, hotAt } = storm
  return [
    outcome,
    number(most.speed, 'rpm'),
    number(most.directVoltage, 'V'),
    number(most.lineVoltage, 'V'),
    number(magnetForce, 'N'),
    number(tipSpeed, 'm_per_s'),
    copper(most.copperTemperature),
    hotAt === undefined ? '–' : hotAt === 0 ? 'at once' : formatNumber(hotAt, 2),
    limitedBy,
  ]
}

const limitWords = { kept: 'clear of', near: 'near', passed: 'past' } as const

function sentencesOf({ storm, limits, limitedBy }: FailureRow): string[] {
  const told = limits.filter(({ state }) => state !== 'kept')
  return [
    ...storm.happened.map(({ time, words }) => `After ${formatNumber(time, 2)} s ${words}.`),
    `At the end the rotor turns at ${formatSi(storm.last.speed, 'rpm', 3)}, limited by ${limitedBy}.`,
    ...told.map(({ name, value, limit, unit, state }) => {
      const reached = unit === 'degC' && value >= burnt ? 'above 600 °C' : formatSi(value, unit, 3)
      return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${reached}, ${limitWords[state]} the limit of ${formatSi(limit, unit, 3)}.`
    }),
  ]
}

const list = (rows: readonly FailureRow[]): string => rows.map(({ failure }) => failure.words).join('; ')

function verdictOf({ rows, wind }: FailureTable, brake: BrakeStudy | undefined): string[] {
  const of = (outcome: FailureRow['outcome']) => rows.filter((row) => row.outcome === outcome)
  const sound = rows.find(({ failure }) => failure.key === 'nothing')
  const passed = sound?.limits.filter(({ state }) => state === 'passed') ?? []
  const away = of('runs away')
  const fastest = away.reduce((most, { storm }) => Math.max(most, storm.most.speed), 0)
  const thrown = rows.filter(({ limits }) =>
    limits.some(({ unit, state }) => unit === 'N' && state === 'passed'),
  )
  return [
    ...(away.length > 0
      ? [
          `It runs away, up to ${formatSi(fastest, 'rpm', 3)}, when: ${list(away)}. Nothing but the blades’ own drag limits it then.`,
        ]
      : []),
    ...(thrown.length > 0 ? [`A magnet may be thrown out when: ${list(thrown)}.`] : []),
    ...(passed.length > 0
      ? [
          `Even with nothing failing, a wind of ${formatSi(wind.top, 'm_per_s', 3)} is too much for: ${passed.map(({ name }) => name).join('; ')}.`,
        ]
      : []),
    ...(of('damaged').length > 0 ? [`Something is damaged when: ${list(of('damaged'))}.`] : []),
    ...(of('survived').length > 0
      ? [`It survives with less margin than it should keep when: ${list(of('survived'))}.`]
      : []),
    ...(of('held').length > 0 ? [`It is held, with every margin kept, when: ${list(of('held'))}.`] : []),
    ...(brake === undefined ? [] : [brakeSentence(brake)]),
  ]
}

const brakeSentence = ({ rows, stops, stopsUnloaded, parks }: BrakeStudy): string => {
  const top = rows.at(-1)?.wind ?? 0
  const upTo = (wind: number): string =>
    wind >= top
      ? 'in every wind up to the storm'
      : wind > 0
        ? `up to ${formatSi(wind, 'm_per_s', 2)}`
        : 'in no wind'
  const least = Math.min(stops, stopsUnloaded)
  return `Shorted by itself, without the mechanical limiter, the winding stops the working rotor ${upTo(stops)}, one that has lost its load ${upTo(stopsUnloaded)}, and keeps a parked one ${upTo(parks)}.${
    least >= top
      ? ''
      : ` Above that the rotor turns on and the copper takes the heat: ${
          least > 0
            ? `never rely on the short above ${formatSi(least, 'm_per_s', 2)}`
            : 'never rely on the short'
        }.`
  }`
}

const endOf = ({ speed, holds }: BrakeEnd): string => `${number(speed, 'rpm')}${holds ? '' : ' lets go'}`

/** Every second row keeps the table short; the first and the last stay. */
const brakeRows = ({ rows }: BrakeStudy): string[][] =>
  rows
    .filter((_, k) => rows.length <= 15 || k % 2 === (rows.length - 1) % 2)
    .map(({ wind, working, unloaded, parked }) => [
      number(wind, 'm_per_s'),
      number(working.from, 'rpm'),
      endOf(working),
      number(unloaded.from, 'rpm'),
      endOf(unloaded),
      endOf(parked),
      copper(Math.max(working.copperTemperature, unloaded.copperTemperature)),
    ])

export function stormReport({ table, brake }: StormStudy): StormReport {
  const { wind, inertia, dump, dumpGuessed, copperLimit } = table
  const mass = inertia.parts.map(({ name, inertia: J }) => `${name} ${formatSi(J, 'kg_m2', 2)}`).join(', ')
  return {
    name: table.name,
    windWords: `From ${formatSi(wind.at(0), 'm_per_s', 3)}, ${wind.words}: up to ${formatSi(wind.top, 'm_per_s', 3)}. What fails, fails after ${formatNumber(wind.rise, 2)} s; the copper is followed for ten minutes.`,
    duration: wind.duration,
    verdict: verdictOf(table, brake),
    rows: table.rows.map((row) => ({
      key: row.failure.key,
      words: row.failure.words,
      outcome: row.outcome,
      severity: row.severity,
      cells: cellsOf(row),
      sentences: sentencesOf(row),
      trace: row.storm.trace,
    })),
    brake: brake === undefined ? undefined : { sentence: brakeSentence(brake), rows: brakeRows(brake) },
    notes: [
      inertia.parts.length === 0
        ? `Moment of inertia ${formatSi(inertia.inertia, 'kg_m2', 3)}, from the document.`
        : `Moment of inertia ${formatSpread(inertia.inertia, inertia.spread * inertia.inertia, 'kg_m2')}, estimated (${mass}); weigh a blade and swing it to know better.`,
      ...(dump !== undefined && dumpGuessed
        ? [
            `The dump load is guessed: ${formatSi(dump.resistance, 'ohm', 2)}, on at ${formatSi(dump.on, 'V', 3)}; enter its own figures.`,
          ]
        : []),
      `Weakest beside the copper: ${copperLimit.name}, ${formatSi(copperLimit.temperature, 'degC', 3)}.`,
      'Lags of limiters and switches are guesses: a tail 1.5 s, pitching blades 0.5 s, a dump’s switch 0.1 s. The wake’s own delay and the tower’s sway are left out. An open winding is taken as open in every phase; a dead converter as drawing nothing.',
    ],
    cautions: [
      turningCaution,
      'Never stand in the plane of the rotor while it turns.',
      towerCaution,
      electricCaution,
    ],
  }
}
