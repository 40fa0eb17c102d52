/** Tried remedies of concerns in words: what is changed, how far it gets, what it costs or brings elsewhere. */

import type { ConcernMeasure } from '../analysis/concern/concern.ts'
import type {
  ConcernShift,
  ConcernTrials,
  RemedyFigures,
  RemedyOutcome,
  Standing,
  TriedRemedy,
} from '../analysis/concern-remedies.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { changeText } from './remedy-words.ts'

/** Counts are told as such. */
const shown = (value: number, unit: string): string =>
  unit === '1' && Number.isInteger(value) ? String(value) : formatSi(value, unit)

/** `volts at runaway 61.0 V, at most 50.0 V`. */
export const measureText = ({ name, value, limit, unit, sound }: ConcernMeasure): string =>
  `${name} ${shown(value, unit)}, ${sound === 'below' ? 'at most' : 'at least'} ${shown(limit, unit)}`

const severityText = ({ severity }: Standing): string => severity ?? 'gone'

const outcomeNames: Readonly<Record<RemedyOutcome, string>> = {
  settles: 'settles it',
  softens: 'softens it',
  eases: 'eases it',
  'no help': 'no help',
  impossible: 'makes no machine',
}

export const outcomeText = ({ outcome, after }: TriedRemedy): string =>
  outcome === 'settles' && after?.severity !== undefined
    ? `settles it but for a ${after.severity}`
    : outcomeNames[outcome]

/** `blocking → warning; volts at runaway 61.0 V → 43.0 V (at most 50.0 V)`. */
export function standingText(before: Standing, after: Standing): string {
  const severity = `${severityText(before)} → ${severityText(after)}`
  const [from, to] = [before.measure, after.measure]
  if (from === undefined && to === undefined) return severity
  if (from === undefined || to === undefined)
    return `${severity}; ${from === undefined ? `now ${measureText(to!)}` : `before ${measureText(from)}`}`
  const moving = shown(from.limit, from.unit) !== shown(to.limit, to.unit)
  const side = to.sound === 'below' ? 'at most' : 'at least'
  // another fault of the same rule may be the gravest now, or none
  if (from.name !== to.name && after.severity === undefined) return `${severity}; before ${measureText(from)}`
  if (from.name !== to.name || from.unit !== to.unit)
    return `${severity}; ${measureText(from)} → ${measureText(to)}`
  return `${severity}; ${to.name} ${shown(from.value, from.unit)} → ${shown(to.value, to.unit)} (${side} ${
    moving ? `${shown(from.limit, from.unit)} → ` : ''
  }${shown(to.limit, to.unit)})`
}

export const remedyChangesText = ({ changes }: TriedRemedy): string => changes.map(changeText).join('; ')

/** Shares below which a figure counts as unchanged. */
const worthSaying = 0.005

interface FigureRow {
  readonly name: string
  readonly of: (figures: RemedyFigures) => number | undefined
  readonly show: (value: number) => string
}

const inUnit = (suffix: string) => (value: number) =>
  Number.isFinite(value) ? formatSi(value, suffix) : 'never'

const figureRows: readonly FigureRow[] = [
  { name: 'a year', of: ({ energy }) => energy, show: inUnit('kWh') },
  { name: 'useful in the wind that is told', of: ({ usefulPower }) => usefulPower, show: inUnit('W') },
  { name: 'starts in', of: ({ startWind }) => startWind, show: inUnit('m_per_s') },
  { name: 'current begins in', of: ({ cutInWind }) => cutInWind, show: inUnit('m_per_s') },
  { name: 'hottest copper', of: ({ hottestCopper }) => hottestCopper, show: inUnit('degC') },
  { name: 'runaway', of: ({ runawaySpeed }) => runawaySpeed, show: inUnit('rpm') },
  { name: 'behind the bridge at runaway', of: ({ runawayVolts }) => runawayVolts, show: inUnit('V') },
  { name: 'copper of winding and cable', of: ({ copperMass }) => copperMass, show: inUnit('kg') },
  {
    name: 'wire in your money',
    of: ({ price }) => price,
    show: (value) => formatNumber(value),
  },
]

const moved = (from: number, to: number): boolean =>
  from !== to && !(Math.abs(to - from) <= worthSaying * Math.max(Math.abs(from), Math.abs(to)))

/** Every figure that moves, before and after; what stays is left out. */
export function figureTexts(before: RemedyFigures, after: RemedyFigures): string[] {
  return figureRows.flatMap(({ name, of, show }) => {
    const [from, to] = [of(before), of(after)]
    return from === undefined || to === undefined || !moved(from, to)
      ? []
      : [`${name} ${show(from)} → ${show(to)}`]
  })
}

const shiftText = ({ code, before, after }: ConcernShift): string =>
  before === undefined ? `${code} (${after})` : after === undefined ? code : `${code} (${before} → ${after})`

/** What it brings and what it takes along, in sentences without a full stop. */
export function shiftTexts({ worse, better }: Pick<TriedRemedy, 'worse' | 'better'>): string[] {
  return [
    ...(worse.length > 0 ? [`brings ${worse.map(shiftText).join(', ')}`] : []),
    ...(better.length > 0 ? [`helps ${better.map(shiftText).join(', ')} too`] : []),
  ]
}

export function skippedText({ skipped }: TriedRemedy): string | undefined {
  const [first] = skipped
  if (first === undefined) return undefined
  return skipped.length === 1
    ? `One step makes no machine: ${first.changes.map(changeText).join('; ')}: ${first.reason}`
    : `${skipped.length} steps make no machine, the gentlest of them ${gentlest(skipped)}`
}

/** Searches run from the strongest down, so that the last one met of a run is the gentlest. */
function gentlest(skipped: TriedRemedy['skipped']): string {
  const last = skipped[skipped.length - 1]!
  return `${last.changes.map(changeText).join('; ')}: ${last.reason}`
}

const stop = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)

/** All that is said of one tried remedy, in sentences; the words come first. */
export function triedSentences(trials: ConcernTrials, tried: TriedRemedy, before: RemedyFigures): string[] {
  const skipped = skippedText(tried)
  if (tried.after === undefined || tried.figures === undefined)
    return [stop(skipped ?? 'No step of it makes a machine')]
  const moving = [...figureTexts(before, tried.figures), ...shiftTexts(tried)]
  const elsewhere = moving.length > 0 ? moving.join('; ') : 'nothing else moves'
  return [
    stop(remedyChangesText(tried)),
    stop(`${standingText(trials.before, tried.after)}`),
    // what does not help need not be paid for
    ...(tried.outcome === 'no help' ? [] : [stop(elsewhere.charAt(0).toUpperCase() + elsewhere.slice(1))]),
    ...(skipped === undefined ? [] : [stop(skipped)]),
  ]
}

export const triedNote =
  'Each remedy is tried alone by the whole chain, the gentlest step that gets as far as the best one tried. A limiter, fuse or switch entered here is only as good as the one that is built: try it in light wind first, and leave what local codes ask of licensed people to them.'
