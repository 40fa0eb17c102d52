/** Concern: a claim calls itself more than its evidence bears. */
import { type EvidenceLevel, evidenceLevels } from '../../machine/evidence.ts'
import { formatSi } from '../../units/format.ts'
import { nominal, spreadOf } from '../../units/quantity.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { claimExceedsShaft, shaftPowerOf } from './energy-balance.ts'

type Claim = ChainView['machine']['design']['bench']['claims'][number]

/** Runs that make a bench measurement: common practice, no source. */
export const leastRuns = 3

/** The energy balance can be drawn, and closes. */
function balanceCloses({ speed_rpm, shaftTorque_Nm, power_W }: Claim): boolean {
  if (speed_rpm === undefined || shaftTorque_Nm === undefined) return false
  const shaftPower = shaftPowerOf({ torque: nominal(shaftTorque_Nm), rpm: nominal(speed_rpm) })
  const relative = shaftPower > 0 ? spreadOf(shaftTorque_Nm) / nominal(shaftTorque_Nm) : 0
  return !claimExceedsShaft({
    power: nominal(power_W),
    shaftPower,
    powerSpread: spreadOf(power_W),
    shaftSpread: relative * shaftPower,
  })
}

const rank = (level: EvidenceLevel): number => evidenceLevels.indexOf(level)

const loaded = ({ from }: Claim): boolean => from === 'volts and amps into a load'
const spread = ({ power_W }: Claim): boolean => spreadOf(power_W) > 0

/** What a claim still lacks for a level, in words that go on from "it lacks". */
export function lacking(claim: Claim, level: EvidenceLevel): string[] {
  const { evidence } = claim
  const needs: Readonly<Record<EvidenceLevel, readonly (readonly [boolean, string])[]>> = {
    idea: [],
    calculated: [
      [evidence?.calculation !== undefined, 'the version of the model and its input'],
      [spread(claim), 'a spread'],
    ],
    'bench-indicated': [
      [loaded(claim), 'volts and amps into a load'],
      [(evidence?.runs ?? 0) >= 1, 'a run'],
      [evidence?.instrument !== undefined, 'the name of the instrument'],
      [evidence?.rawFile !== undefined, 'the file of readings'],
    ],
    'bench-measured': [
      [loaded(claim), 'volts and amps into a load'],
      [(evidence?.runs ?? 0) >= leastRuns, `${leastRuns} runs`],
      [spread(claim), 'a spread'],
      [balanceCloses(claim), 'an energy balance that closes'],
      [evidence?.predicted === true, 'a kept-back reading that was predicted'],
    ],
    'field-measured': [
      [loaded(claim), 'volts and amps into a load'],
      [
        evidence?.field_h !== undefined && nominal(evidence.field_h) > 0,
        'averaged hours in bins of wind speed',
      ],
      [evidence?.exclusions === true, 'a list of what was left out'],
      [spread(claim), 'a spread'],
      [evidence?.stateLog === true, 'a log of states'],
    ],
    replicated: [
      [(evidence?.otherBuilders ?? 0) >= 1, 'another builder with the same sheet'],
      [evidence?.builderSpread === 'stated', 'the spread from builder to builder'],
    ],
  }
  return needs[level].flatMap(([there, words]) => (there ? [] : [words]))
}

/** The strongest level whose every need is met. */
export const earnedLevel = (claim: Claim): EvidenceLevel =>
  evidenceLevels.reduce<EvidenceLevel>(
    (best, level) => (lacking(claim, level).length === 0 ? level : best),
    'idea',
  )

export const claimEvidence: ConcernRule = {
  code: 'claim-evidence',
  title: 'A claim calls itself more than its evidence bears',
  basis: `The words a claim may use: idea; calculated (model, input, spread); bench-indicated (a run into a load, instrument, raw file); bench-measured (${leastRuns} runs, spread, an energy balance that closes, a predicted reading); field-measured (binned hours, exclusions, spread, log of states); replicated (another builder, spread between builders). Each level asks for its own list: common practice, no source. A word above the strongest level whose list is full is a warning, for the outdoor class from bench-measured on blocking, for others may build by it. Claims that name no level are not judged here.`,
  judge: (chain) => {
    const judged = chain.machine.design.bench.claims.flatMap((claim, k) => {
      if (claim.level === undefined) return []
      const earned = earnedLevel(claim)
      return rank(earned) < rank(claim.level)
        ? [{ k, claim, level: claim.level, earned, lacks: lacking(claim, claim.level) }]
        : []
    })
    const worst = judged.sort((a, b) => rank(b.level) - rank(a.level) || a.k - b.k)[0]
    if (worst === undefined) return undefined
    const { claim, level, earned, lacks, k } = worst
    const built = rank(level) >= rank('bench-measured')
    return {
      code: 'claim-evidence',
      severity: built ? severityFor(chain, ['outdoor']) : 'warning',
      path: `bench.claims[${k}].level`,
      what: `The claim of ${formatSi(nominal(claim.power_W), 'W')} calls itself ${level}; its evidence earns the word ${earned}.`,
      why: 'Others choose wire, battery and limiter by such a figure. The word tells them how far it may be off, and what would prove it wrong.',
      figures: `Level ${rank(level)} of ${evidenceLevels.length - 1} where ${rank(earned)} is earned: for ${level} it lacks ${lacks.join(', ')}.${judged.length > 1 ? ` ${judged.length - 1} more of ${chain.machine.design.bench.claims.length} claims say too much.` : ''}`,
      remedies: [
        `Write ${earned} until then.`,
        `Add ${lacks.slice(0, 3).join(', ')}, and enter it under the claim.`,
        'Tell the failures as well, and what reading would prove the claim wrong.',
      ],
    }
  },
  answeredBy: 'What the level asks for, entered as the claim’s evidence.',
}
