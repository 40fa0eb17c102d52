/** A contest as JSON in workshop units, for other programs. */
import { type Contest, type Contestant, scoreKinds, scoreNames } from '../analysis/fair-contest.ts'
import { fromSi, unit } from '../units/unit.ts'
import { contestReport } from './contest-report.ts'
import { letterOf, scoreWords } from './contest-verdict.ts'

/** Version of this form; it rises when a field goes or changes its meaning. */
export const contestVersion = 1

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)
const perRpm = (voltsPerRadian: number): number => (voltsPerRadian * 2 * Math.PI) / 60

function contestantResult({ name, fitted, figure, chain, amount }: Contestant, index: number): Json {
  const { turns, wire, widthRatio, design } = fitted
  return {
    letter: letterOf(index),
    name,
    resource: amount ?? null,
    widthRatio,
    turnsBefore: turns.from,
    turns: turns.to,
    wire_mm: fromSi(wire.to, unit('mm')),
    wireSold_mm: wire.sold === undefined ? null : fromSi(wire.sold, unit('mm')),
    copperMass_g: fromSi(figure.copperMass, unit('g')),
    windingVolume_cm3: figure.volume * 1e6,
    price: figure.price ?? null,
    torqueConstant_Nm_per_A: figure.torqueConstant,
    lineResistance_ohm: figure.resistance,
    endTurnShare: figure.endTurnShare,
    lineVolts_V_per_rpm_rms: perRpm(figure.lineVolts.rms),
    lineFundamental_V_per_rpm_rms: perRpm(figure.lineVolts.fundamental),
    phaseHarmonicShare: figure.phaseVolts.harmonicShare,
    lineHarmonicShare: figure.lineVolts.harmonicShare,
    winds: chain.rows.map(({ wind, watts }) => ({ wind_m_per_s: wind, useful_W: watts.useful })),
    concerns: chain.concerns.map(({ code, severity }) => ({ code, severity })),
    // the whole document, so that the design as it competed can be computed by itself
    design: JSON.parse(JSON.stringify(design)) as Json,
  }
}

export function contestResult(contest: Contest): Readonly<Record<string, Json>> {
  const { rule, resource, point, contestants, pairs, alike, unlike, shared, own } = contest
  const { verdict, conditions } = contestReport(contest)
  return {
    gustloomContest: contestVersion,
    rule,
    // kg, m³, W or money
    amount: resource?.amount ?? null,
    commonPoint: {
      speed_rpm: fromSi(point.speed, unit('rpm')),
      torque_Nm: point.torque,
      copper_W: point.copperWatts,
      wind_m_per_s: point.wind,
    },
    verdict,
    conditions,
    contestants: contestants.map(contestantResult),
    scores: Object.fromEntries(
      scoreNames.map((name) => [
        name,
        {
          unit: scoreWords[name].unit,
          better: scoreKinds[name].better,
          values: contestants.map(({ scores }) => finite(scores[name] * scoreWords[name].factor)),
          pairs: contestants.flatMap((_, a) =>
            contestants.slice(a + 1).map((__, k): Json => {
              const b = a + 1 + k
              const pair = pairs[name][a]![b]
              return {
                first: letterOf(a),
                second: letterOf(b),
                ratio: pair?.ratio ?? null,
                spread: pair?.spread ?? null,
                told: pair?.told ?? null,
                cause: pair?.cause ?? null,
              }
            }),
          ),
        },
      ]),
    ),
    alike,
    unlike,
    sharedGuesses: shared,
    ownGuesses: own,
  }
}
