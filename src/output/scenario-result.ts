/** Scenarios for other programs, in workshop units; traces left out. */
import type { Unbalanced } from '../analysis/scenario-run.ts'
import type { ScenarioStudy } from '../analysis/scenario-study.ts'
import type { ScenarioRow } from '../analysis/scenario-table.ts'
import type { Verdict } from '../analysis/scenario-verdict.ts'
import type { Beginning } from '../analysis/storm.ts'
import { safetyClasses } from '../machine/safety-class.ts'
import { fromSi, unit } from '../units/unit.ts'

const beginningResult = (beginning: Beginning | undefined) =>
  beginning === undefined
    ? null
    : {
        after_s: beginning.time,
        wind_m_per_s: beginning.wind,
        speed_rpm: fromSi(beginning.speed, unit('rpm')),
      }

const unbalancedResult = (unbalanced: Unbalanced | undefined) =>
  unbalanced === undefined
    ? null
    : {
        force_N: unbalanced.force,
        at_rpm: fromSi(unbalanced.speed, unit('rpm')),
        lineVoltsShare: unbalanced.volts,
        subharmonicShare: unbalanced.subharmonic,
        thrown:
          unbalanced.flight === undefined
            ? null
            : {
                mass_g: fromSi(unbalanced.flight.mass, unit('g')),
                speed_m_per_s: unbalanced.flight.speed,
                energy_J: unbalanced.flight.energy,
                farthestWithoutAir_m: unbalanced.flight.distance,
              },
      }

const verdictResult = (verdict: Verdict) =>
  Object.fromEntries(safetyClasses.map((name) => [name, verdict[name] ?? null]))

function runResult({ run, magnetForce, magnetHold, tipSpeed }: ScenarioRow) {
  if (run === undefined) return null
  const { storm } = run
  return {
    wind: { kind: storm.wind.kind, before_m_per_s: storm.wind.at(0), top_m_per_s: storm.wind.top },
    most: {
      speed_rpm: fromSi(storm.most.speed, unit('rpm')),
      at_s: storm.most.speedAt,
      direct_V: storm.most.directVoltage,
      line_V_rms: storm.most.lineVoltage,
      direct_A: storm.most.directCurrent,
      phase_A_rms: storm.most.phaseCurrent,
      dump_W: storm.most.dumpPower,
      copper_degC: fromSi(storm.most.copperTemperature, unit('degC')),
      magnets_degC: fromSi(storm.most.magnetTemperature, unit('degC')),
      magnetPull_N: magnetForce,
      tip_m_per_s: tipSpeed,
    },
    magnetHold_N: magnetHold,
    tooHotAfter_s: storm.hotAt ?? null,
    begins: { turning: beginningResult(storm.turns), current: beginningResult(storm.charges) },
    unbalance: unbalancedResult(run.unbalanced),
    happened: storm.happened.map(({ time, words }) => ({ after_s: time, words })),
  }
}

export const scenarioResult = ({ table, brake }: ScenarioStudy) => ({
  name: table.name,
  class: table.safetyClass,
  wind: {
    kind: table.wind.kind,
    before_m_per_s: table.wind.at(0),
    top_m_per_s: table.wind.top,
    duration_s: table.wind.duration,
  },
  inertia_kg_m2: table.inertia.inertia,
  inertiaSpread: table.inertia.spread,
  verdict: verdictResult(table.verdict),
  limiters:
    table.limiters?.alone.map(({ name, outcome, holds }) => ({ name, outcome: outcome ?? null, holds })) ??
    null,
  scenarios: table.rows.map((row) => ({
    key: row.scenario.key,
    words: row.scenario.words,
    outcome: row.outcome,
    verdict: verdictResult(row.verdict),
    cannot: row.scenario.cannot ?? null,
    limitedBy: row.limitedBy,
    run: runResult(row),
    limits: row.limits.map(({ name, value, limit, unit: suffix, state }) => ({
      name,
      value: fromSi(value, unit(suffix)),
      limit: fromSi(limit, unit(suffix)),
      unit: unit(suffix).ucum,
      state,
    })),
    otherwise: row.ends.map(({ words, outcome }) => ({ with: words, outcome })),
  })),
  brake:
    brake === undefined
      ? null
      : {
          stopsWorkingUpTo_m_per_s: brake.stops,
          stopsWithoutLoadUpTo_m_per_s: brake.stopsUnloaded,
          keepsParkedUpTo_m_per_s: brake.parks,
        },
})
