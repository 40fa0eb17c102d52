/** A contest in words and tables: what was held equal, every figure, watts by wind, and who is ahead of whom. */
import { contestRuleWords } from '../analysis/contest-rule.ts'
import type { Contest, Contestant, Part, ScoreName } from '../analysis/fair-contest.ts'
import { comparedTemperature } from '../analysis/winding-figure.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { letterOf, scoreWords, verdictOf } from './contest-verdict.ts'

export interface ContestReport {
  /** The rule and the amount, in a sentence. */
  readonly rule: string
  /** A, B, C … */
  readonly letters: readonly string[]
  readonly names: readonly string[]
  /** What was changed in each design, in a sentence. */
  readonly changes: readonly string[]
  readonly conditions: readonly string[]
  readonly figures: readonly {
    readonly name: string
    readonly unit: string
    readonly values: readonly string[]
  }[]
  /** Watts into the load by wind, contestant by contestant. */
  readonly winds: readonly { readonly wind: number; readonly watts: readonly number[] }[]
  readonly verdict: readonly string[]
}

const partWords: Readonly<Record<Part, string>> = {
  site: 'site',
  blades: 'blades',
  protection: 'protection',
  shaft: 'bearings',
  rotor: 'magnets and rotor',
  cable: 'cable',
  bridge: 'bridge',
  load: 'load',
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

function amountText({ resource, point }: Contest): string {
  if (resource === undefined) return ''
  const { rule, amount } = resource
  if (rule === 'equal-copper-mass') return `${formatSi(amount, 'g')} of copper each`
  if (rule === 'equal-winding-volume') return `${formatNumber(amount * 1e6)} cm³ of winding each`
  if (rule === 'equal-cost') return `wire for ${formatNumber(amount)} in your money each`
  return `${formatSi(amount, 'W')} in the copper of each at ${formatSi(point.torque, 'Nm')}`
}

function ruleSentence(contest: Contest): string {
  const words = contestRuleWords[contest.rule]
  return contest.resource === undefined
    ? 'The designs as they are: no resource is held equal, so more copper or room may be all that wins.'
    : `Under ${words}: ${amountText(contest)}.`
}

function changeSentence({ fitted, chain }: Contestant): string {
  const { widthRatio, turns, wire } = fitted
  const rewound = turns.from !== turns.to
  if (widthRatio === 1 && !rewound) return 'as it stands'
  const { winding } = chain.machine.stator
  const width = winding.kind === 'serpentine' ? winding.bundleWidth : winding.legWidth
  const what = winding.kind === 'serpentine' ? 'bundle' : 'legs'
  return [
    `${what} ${formatSi(width, 'mm')} wide in place of ${formatSi(width / widthRatio, 'mm')}, as deep and as near as before`,
    ...(rewound
      ? [`${turns.to} turns in place of ${turns.from}, so that current begins at about the first one’s speed`]
      : []),
    `wire ${formatSi(wire.to, 'mm')} in place of ${formatSi(wire.from, 'mm')}${wire.sold === undefined ? '' : ` (nearest sold ${formatSi(wire.sold, 'mm', 2)})`}`,
  ].join('; ')
}

function conditionsOf(contest: Contest): string[] {
  const { alike, unlike, point, shared, own, contestants } = contest
  const words = (parts: readonly Part[]) => listed(parts.map((part) => partWords[part]))
  return [
    ...(alike.length > 0 ? [`Alike in all: ${words(alike)}.`] : []),
    ...(unlike.length > 0
      ? [`Not alike: ${words(unlike)}. What differs there is part of every difference below.`]
      : []),
    `Counted at ${formatSi(point.speed, 'rpm')} of the shaft, ${formatSi(point.torque, 'Nm')} turned into electricity, ${formatSi(point.copperWatts, 'W')} in the copper, a wind of ${formatSi(point.wind, 'm_per_s', 2)}; k_m with the copper at ${formatSi(comparedTemperature, 'degC', 2)}.`,
    ...(shared.length > 0 ? [`Moves all together, and so hardly tells them apart: ${listed(shared)}.`] : []),
    ...(own.length > 0 ? [`Moves each alone: ${listed(own)}.`] : []),
    ...concernLines(contestants),
  ]
}

/** Concerns that some raise and others do not. */
function concernLines(contestants: readonly Contestant[]): string[] {
  const codes = contestants.map(({ chain }) => new Set(chain.concerns.map(({ code }) => code)))
  const every = [...new Set(codes.flatMap((set) => [...set]))].filter(
    (code) => !codes.every((set) => set.has(code)),
  )
  return every.map((code) => {
    const raised = codes.flatMap((set, k) => (set.has(code) ? [letterOf(k)] : []))
    return `Concern ${code}: only ${listed(raised)}.`
  })
}

const perRpm = (voltsPerRadian: number): number => (voltsPerRadian * 2 * Math.PI) / 60
const percent = (share: number): string => formatNumber(100 * share)

interface Row {
  readonly name: string
  readonly unit: string
  readonly of: (contestant: Contestant) => string
}

const score = (name: ScoreName): Row => {
  const { figure, unit, factor } = scoreWords[name]
  return {
    name: figure,
    unit,
    of: ({ scores }) => (Number.isFinite(scores[name]) ? formatNumber(scores[name] * factor) : 'never'),
  }
}

const rows: readonly Row[] = [
  score('copperMass'),
  { name: 'room of the winding', unit: 'cm³', of: ({ figure }) => formatNumber(figure.volume * 1e6) },
  {
    name: 'price of the wire',
    unit: '',
    of: ({ figure }) => (figure.price === undefined ? '—' : formatNumber(figure.price)),
  },
  { name: 'turns', unit: '', of: ({ fitted }) => String(fitted.turns.to) },
  { name: 'bare wire', unit: 'mm', of: ({ fitted }) => formatNumber(fitted.wire.to * 1000) },
  {
    name: 'K_t, torque per line ampere',
    unit: 'N·m/A',
    of: ({ figure }) => formatNumber(figure.torqueConstant),
  },
  { name: 'R that goes with it', unit: 'Ω', of: ({ figure }) => formatNumber(figure.resistance) },
  score('motorConstant'),
  score('perMass'),
  score('perVolume'),
  {
    name: 'line volts rms',
    unit: 'mV/rpm',
    of: ({ figure }) => formatNumber(1000 * perRpm(figure.lineVolts.rms)),
  },
  {
    name: 'their fundamental',
    unit: 'mV/rpm',
    of: ({ figure }) => formatNumber(1000 * perRpm(figure.lineVolts.fundamental)),
  },
  { name: 'harmonics in a phase', unit: '%', of: ({ figure }) => percent(figure.phaseVolts.harmonicShare) },
  { name: 'harmonics in the lines', unit: '%', of: ({ figure }) => percent(figure.lineVolts.harmonicShare) },
  { name: 'wire beyond the magnets', unit: '%', of: ({ figure }) => percent(figure.endTurnShare) },
  score('copperLoss'),
  score('drag'),
  score('temperatureRise'),
  score('usefulPower'),
  score('cutInWind'),
  score('energy'),
]

/** Winds that every contestant was computed at, to the calmest storm. */
function windsOf(contestants: readonly Contestant[]): ContestReport['winds'] {
  const [first, ...rest] = contestants
  return first!.chain.rows.flatMap(({ wind, watts }) => {
    const others = rest.map(({ chain }) => chain.rows.find((row) => Math.abs(row.wind - wind) < 1e-9))
    return others.every((row) => row !== undefined)
      ? [{ wind, watts: [watts.useful, ...others.map((row) => row.watts.useful)] }]
      : []
  })
}

export function contestReport(contest: Contest): ContestReport {
  const { contestants } = contest
  return {
    rule: ruleSentence(contest),
    letters: contestants.map((_, k) => letterOf(k)),
    names: contestants.map(({ name }) => name),
    changes: contestants.map(changeSentence),
    conditions: conditionsOf(contest),
    figures: rows.map(({ name, unit, of }) => ({ name, unit, values: contestants.map(of) })),
    winds: windsOf(contestants),
    verdict: verdictOf(contest),
  }
}
