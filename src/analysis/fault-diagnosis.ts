/** Which defect explains what a meter read: every case of a study, in every place, against plain numbers. */
import { formatNumber, formatSi } from '../units/format.ts'
import type { BenchReading } from './bench-reading.ts'
import type { FaultStudy } from './fault-study.ts'

/** Plain numbers from the bench, each only if it was read. */
export interface MeterReadings {
  /** Turned at this with nothing connected [rad/s]; left out where it was not told, so that volts count by their ratios. */
  readonly speed?: number
  /** Of the phases, of the terminals 1–2, 2–3, 3–1, and across the open corner, rms [V]. */
  readonly phases?: readonly number[]
  readonly lines?: readonly number[]
  readonly corner?: number
  /** Between the same terminals, at 20 °C [Ω]. */
  readonly resistances?: readonly number[]
  /** 1: the phases follow each other as they are counted; −1: the other way round. */
  readonly sequence?: 1 | -1
  /** Half-width at 90 % of a reading, as a share of it. */
  readonly spread?: number
}

export interface LikelyDefect {
  /** In words; "nothing wrong" for the sound machine. */
  readonly words: string
  /** Index into the study's cases; undefined for the sound machine. */
  readonly index: number | undefined
  /** Root mean square of the readings' distances, in spreads of the meter: about 1 where it explains them. */
  readonly distance: number
  /** Amount that fits best, over the amount of the study; 1 where a kind has none. */
  readonly amount: number
  /** The study's phase that stands where each phase read does, from 0. */
  readonly placing: readonly number[]
}

export interface Diagnosis {
  /** The best first. */
  readonly likely: readonly LikelyDefect[]
  /** What to read next to tell the best two apart; undefined where nothing would. */
  readonly next: string | undefined
}

/** Of a common meter and a hand that turns: common practice, no source. */
export const usualMeterSpread = 0.02
/** Volts and ohms below this share of a sound phase's say nothing. */
const floorShare = 0.01

/** Kinds whose amount a reading may tell; the study's own is one of many. */
const withAmount = new Set(['weak magnet', 'shifted magnet', 'shorted turns', 'open strand', 'unequal gap'])
const amounts = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8] as const

/** Square of a distance that no meter's spread explains away. */
const wrongOrder = 100

type Shown = Pick<BenchReading, 'phases' | 'lines' | 'corner' | 'terminalResistance' | 'sequence'>

/** Places of n phases: which of the study's stands where; first as they are. */
function placings(n: number): number[][] {
  if (n <= 1) return [[0]]
  return placings(n - 1).flatMap((list) =>
    Array.from({ length: n }, (_, k) => [...list.slice(0, n - 1 - k), n - 1, ...list.slice(n - 1 - k)]),
  )
}

/** Index of the reading between two of three terminals of a star. */
const between = (a: number, b: number): number => (a === (b + 1) % 3 ? b : a)

/** Numbers phase by phase, and terminal by terminal, with the phases in other places. */
function placed(
  { phases, lines, terminalResistance }: Shown,
  placing: readonly number[],
  star: boolean,
): Pick<Shown, 'phases' | 'lines' | 'terminalResistance'> {
  const pair = (k: number) =>
    star && placing.length === 3 ? between(placing[k]!, placing[(k + 1) % 3]!) : placing[k]!
  return {
    phases: placing.map((k) => phases[k]!),
    lines: lines.map((_, k) => lines[pair(k)]!),
    terminalResistance: terminalResistance.map((_, k) => terminalResistance[pair(k)]!),
  }
}

/** Between the sound machine and a case: `amount` 0 … 1 and beyond, each number on a straight line, none below zero. */
function inAmount(sound: Shown, shown: Shown, amount: number): Shown {
  const mix = (a: number, b: number) => Math.max(0, a + amount * (b - a))
  const each = (a: readonly number[], b: readonly number[]) => a.map((value, k) => mix(value, b[k]!))
  return {
    phases: each(sound.phases, shown.phases),
    lines: each(sound.lines, shown.lines),
    corner: mix(sound.corner, shown.corner),
    terminalResistance: each(sound.terminalResistance, shown.terminalResistance),
    sequence: shown.sequence,
  }
}

interface Pair {
  readonly read: number
  readonly expected: number
  readonly floor: number
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length

function squares(pairs: readonly Pair[], scale: number, spread: number): number {
  return pairs.reduce((sum, { read, expected, floor }) => {
    const σ = Math.hypot(spread * Math.max(Math.abs(read), scale * Math.abs(expected)), floor)
    return sum + ((read - scale * expected) / σ) ** 2
  }, 0)
}

/** Sum of squares in spreads, and how many numbers it is over. */
function misfit(readings: MeterReadings, shown: Shown, study: FaultStudy): { sum: number; count: number } {
  const spread = readings.spread ?? usualMeterSpread
  const { sound } = study
  const scale = readings.speed === undefined ? undefined : readings.speed / study.handSpeed
  const list = (read: readonly number[] | undefined, expected: readonly number[], floor: number): Pair[] =>
    (read ?? []).slice(0, expected.length).map((value, k) => ({ read: value, expected: expected[k]!, floor }))
  const voltFloor = floorShare * meanOf(sound.phases) * (scale ?? 1)
  const volts = [
    ...list(readings.phases, shown.phases, voltFloor),
    ...list(readings.lines, shown.lines, voltFloor),
    ...list(readings.corner === undefined ? [] : [readings.corner], [shown.corner], voltFloor),
  ]
  const ohms = list(
    readings.resistances,
    shown.terminalResistance,
    floorShare * meanOf(sound.terminalResistance),
  )
  // the speed that was not told is the one that fits best
  const weights = volts.map(
    ({ expected, read }) => 1 / Math.max(spread * Math.abs(read), spread * expected, 1e-12) ** 2,
  )
  const fitted =
    volts.reduce((sum, { read, expected }, k) => sum + weights[k]! * read * expected, 0) /
    volts.reduce((sum, { expected }, k) => sum + weights[k]! * expected * expected, 0)
  const order = readings.sequence === undefined ? 0 : readings.sequence === shown.sequence ? 0 : wrongOrder
  const used = scale ?? (Number.isFinite(fitted) ? fitted : 1)
  return {
    sum: squares(volts, used, spread) + squares(ohms, 1, spread) + order,
    count: volts.length + ohms.length + (readings.sequence === undefined ? 0 : 1),
  }
}

/** The changes of a case, number over number, carried to other phases of the machine as it is. */
function relocated(sound: Shown, shown: Shown, placing: readonly number[], star: boolean): Shown {
  const there = placed(shown, placing, star)
  const from = placed(sound, placing, star)
  const carry = (own: readonly number[], after: readonly number[], before: readonly number[]) =>
    own.map((value, k) => (before[k]! > 0 ? (value * after[k]!) / before[k]! : after[k]!))
  return {
    phases: carry(sound.phases, there.phases, from.phases),
    lines: carry(sound.lines, there.lines, from.lines),
    corner: shown.corner,
    terminalResistance: carry(sound.terminalResistance, there.terminalResistance, from.terminalResistance),
    sequence: shown.sequence,
  }
}

interface Candidate {
  readonly words: string
  readonly index: number | undefined
  readonly shown: Shown
  readonly amounts: readonly number[]
}

/** What may be read next, and how to say it. */
function nextReading(study: FaultStudy, a: Fitted, b: Fitted, readings: MeterReadings): string | undefined {
  const spread = readings.spread ?? usualMeterSpread
  const { sound } = study
  const volts = (value: number) => formatSi(value, 'V')
  const ohms = (value: number) => formatSi(value, 'ohm')
  const speed = formatSi(study.handSpeed, 'rpm')
  const offers = [
    ['the volts of every phase', readings.phases, a.shown.phases, b.shown.phases, sound.phases, volts],
    ['the volts between the terminals', readings.lines, a.shown.lines, b.shown.lines, sound.phases, volts],
    [
      'the volts across the open corner, all phases in series',
      readings.corner,
      [a.shown.corner],
      [b.shown.corner],
      sound.phases,
      volts,
    ],
    [
      'the resistance between the terminals',
      readings.resistances,
      a.shown.terminalResistance,
      b.shown.terminalResistance,
      sound.terminalResistance,
      ohms,
    ],
  ] as const
  const told = offers
    .filter(([, already]) => already === undefined)
    .map(([name, , one, other, size, say]) => {
      const floor = floorShare * meanOf(size)
      const apart = Math.max(
        ...one.map((x, k) => Math.abs(x - other[k]!) / Math.hypot(spread * Math.max(x, other[k]!), floor)),
      )
      return { name, apart, text: `${one.map(say).join(', ')} or ${other.map(say).join(', ')}` }
    })
    .sort((x, y) => y.apart - x.apart)[0]
  if (told && told.apart > 2)
    return `Read ${told.name}: ${told.text}${told.name.startsWith('the volts') ? ` at ${speed}` : ''}.`
  if (readings.sequence === undefined && a.shown.sequence !== b.shown.sequence)
    return 'Find the order of the phases: one of the two turns it round.'
  // a bridge is not met with nothing connected: no reading of the machine alone tells
  const test = [a, b]
    .map(({ index }) => (index === undefined ? undefined : study.cases[index]!.test))
    .find(Boolean)
  if (test !== undefined) return `Test the bridge: ${test.charAt(0).toLowerCase()}${test.slice(1)}`
  const [one, other] = [a, b].map(({ index }) => (index === undefined ? sound : study.cases[index]!.reading))
  if (Math.abs(one!.dragTorque - other!.dragTorque) > 0.002)
    return `Turn it by hand with nothing connected at ${speed}: the currents inside hold back ${formatSi(one!.dragTorque, 'mNm')} or ${formatSi(other!.dragTorque, 'mNm')}.`
  if (Math.abs(one!.coilNotch - other!.coilNotch) > 0.05)
    return `Look at one coil on a scope over a whole turn: the part that does not repeat from pole to pole is ${formatNumber(100 * one!.coilNotch, 2)} % or ${formatNumber(100 * other!.coilNotch, 2)} % of it.`
  if (Math.abs(one!.coilSpread - other!.coilSpread) > 2 * spread)
    return `Read every coil by itself: the strongest and the weakest are ${formatNumber(100 * one!.coilSpread, 2)} % or ${formatNumber(100 * other!.coilSpread, 2)} % apart.`
  return undefined
}

interface Fitted extends LikelyDefect {
  readonly shown: Shown
}

/**
 * Ranks the sound machine and the cases of a study by how well they explain the readings. A case may sit in any phase,
 * and, where its kind has an amount, be larger or smaller; an amount that was fitted counts as one reading more to
 * explain.
 */
export function likelyDefects(readings: MeterReadings, study: FaultStudy): Diagnosis {
  const star = study.connection === 'star'
  const candidates: Candidate[] = [
    { words: 'nothing wrong', index: undefined, shown: study.sound, amounts: [1] },
    ...study.cases.map(({ words, reading, defect }, index) => ({
      words,
      index,
      shown: reading,
      amounts: withAmount.has(defect.kind) ? amounts : [1],
    })),
  ]
  const places = placings(study.sound.phases.length)
  const likely = candidates
    .map(({ words, index, shown, amounts: tried }): Fitted => {
      let best: Fitted | undefined
      for (const amount of tried)
        for (const placing of places) {
          // only what the defect changes moves to another phase: the sound machine's own differences stay
          const moved = relocated(study.sound, inAmount(study.sound, shown, amount), placing, star)
          const { sum, count } = misfit(readings, moved, study)
          const distance = Math.sqrt((sum + (tried.length > 1 ? 1 : 0)) / Math.max(1, count))
          if (best === undefined || distance < best.distance - 1e-12)
            best = { words, index, distance, amount, placing, shown: moved }
        }
      return best!
    })
    // alike within rounding, the sound machine comes first
    .sort((a, b) => Math.round(1e6 * (a.distance - b.distance)))
  const [first, second] = likely
  return {
    likely: likely.map(({ shown: _, ...rest }) => rest),
    next: first && second ? nextReading(study, first, second, readings) : undefined,
  }
}
