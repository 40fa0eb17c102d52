/** Remedies for a poor match, each tried on the whole chain, ranked by the energy of a year. */
import type { Design } from '../machine/design.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type Chain, chainOf } from './compute.ts'
import { bladeShapeRemedy } from './remedy/blade-shape.ts'
import { bladeSizeRemedy } from './remedy/blade-size.ts'
import { cableRemedy } from './remedy/cable.ts'
import type { Change } from './remedy/change.ts'
import { connectionRemedy } from './remedy/connection.ts'
import { converterRemedy } from './remedy/converter.ts'
import { type MatchFigures, matchFigures } from './remedy/figures.ts'
import { gapRemedy } from './remedy/gap.ts'
import { type IdealFigures, idealElectronics } from './remedy/ideal-electronics.ts'
import { magnetRemedy } from './remedy/magnets.ts'
import { seriesRemedy } from './remedy/series-resistance.ts'
import { switchedFigures } from './remedy/star-delta-switch.ts'
import type { RemedyContext, RemedyKind, RemedyRule, Trial } from './remedy/trial.ts'
import { turnsRemedy } from './remedy/turns.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'

/** In the order in which they are looked at; the resistor stands last whatever it brings. */
const rules: readonly RemedyRule[] = [
  gapRemedy,
  turnsRemedy,
  connectionRemedy,
  cableRemedy,
  converterRemedy,
  magnetRemedy,
  bladeSizeRemedy,
  bladeShapeRemedy,
  seriesRemedy,
]

export interface Remedy {
  readonly kind: RemedyKind
  /** Place by place; empty for the switch, which no document can hold. */
  readonly changes: readonly Change[]
  /** The changed document; undefined for the switch. */
  readonly design: Design | undefined
  readonly after: MatchFigures
  /** Burnt in the remedy itself in the wind that is told, and at the most in any wind [W]. */
  readonly burnt: number
  readonly greatestBurnt: number
  /** Wind at which a star-delta switch turns over [m/s]. */
  readonly turnoverWind: number | undefined
}

export interface RemedyReport {
  readonly name: string
  /** In which watts are compared [m/s]. */
  readonly wind: number
  readonly before: MatchFigures
  /** The best of each kind that helps, the best first; series resistance last. */
  readonly remedies: readonly Remedy[]
  /** Kinds that were looked at and do not help, and why. */
  readonly without: readonly { readonly kind: RemedyKind; readonly reason: string }[]
  /** What no electronics pass on this winding with these blades. */
  readonly ideal: IdealFigures
}

/** A remedy must bring this share of the year's energy, or take winds out of stall without costing as much. */
const leastGain = 0.005

const helps = (before: MatchFigures, after: MatchFigures): boolean =>
  after.energy > before.energy * (1 + leastGain) ||
  (after.stalledWinds < before.stalledWinds && after.energy >= before.energy * (1 - leastGain)) ||
  (before.energy === 0 && after.energy > 0)

const gainText = 'the best step gains less than half a per cent of the energy of a year'

/** Share of the cable's and resistor's watts that the resistor burns. */
function seriesShare({ chain }: RemedyContext, { design }: Trial): number {
  const { cable } = resolveDesign(design)
  const after = cable.place === 'after bridge' ? 2 * cable.conductorResistance : 0
  if (cable.place === 'after bridge') return cable.seriesResistance / (cable.seriesResistance + after)
  // before the bridge the line's share is known from the machine without resistor: rms amps follow direct ones
  const row = chain.rows.find(({ dcCurrent }) => dcCurrent > 0)
  if (row === undefined) return 1
  const line = row.watts.cable / row.dcCurrent ** 2
  return cable.seriesResistance / (cable.seriesResistance + line)
}

function remedyOf(context: RemedyContext, kind: RemedyKind, trial: Trial): Remedy {
  const { figures: after } = trial
  const electronic = kind === 'converter'
  const share = kind === 'series resistance' ? seriesShare(context, trial) : 0
  return {
    kind,
    changes: trial.changes,
    design: trial.design,
    after,
    burnt: electronic ? after.converterPower : share * after.cablePower,
    greatestBurnt: electronic ? after.greatestConverterPower : share * after.greatestCablePower,
    turnoverWind: undefined,
  }
}

const ranked = (remedies: readonly Remedy[]): Remedy[] => {
  const last = ({ kind }: Remedy) => (kind === 'series resistance' ? 1 : 0)
  return [...remedies].sort((a, b) => last(a) - last(b) || b.after.energy - a.after.energy)
}

export interface RemedyOptions {
  /** The chain of the design, where it is known. */
  readonly chain?: Chain
  /** Those looked at; all without. */
  readonly kinds?: readonly RemedyKind[]
}

function* bestOfRule(context: RemedyContext, { kind, unfit, search }: RemedyRule): Steps<Remedy | string> {
  const found = unfit(context) ?? (yield* search(context))
  if (typeof found === 'string') return found
  return helps(context.figures, found.figures) ? remedyOf(context, kind, found) : gainText
}

function* bestSwitch(context: RemedyContext): Steps<Remedy | string> {
  const found = yield* switchedFigures(context)
  if (typeof found === 'string') return found
  const { figures: after, turnoverWind } = found
  if (!helps(context.figures, after)) return gainText
  const kind = 'star-delta switch'
  return { kind, changes: [], design: undefined, after, burnt: 0, greatestBurnt: 0, turnoverWind }
}

/** Every kind of remedy, its step searched on the real chain. Yields the fraction done. */
export function* matchRemedies(design: Design, options: RemedyOptions = {}): Steps<RemedyReport> {
  const searches: { kind: RemedyKind; run: (context: RemedyContext) => Steps<Remedy | string> }[] = [
    ...rules.map((rule) => ({ kind: rule.kind, run: (context: RemedyContext) => bestOfRule(context, rule) })),
    { kind: 'star-delta switch' as const, run: bestSwitch },
  ].filter(({ kind }) => options.kinds === undefined || options.kinds.includes(kind))
  const share = 1 / (searches.length + 1)
  const chain = options.chain ?? (yield* within(chainOf(resolveDesign(design)), 0, share))
  const { wind } = tellingWind(chain).row
  const before = matchFigures(chain, wind)
  const context: RemedyContext = { design, chain, wind, figures: before }
  const remedies: Remedy[] = []
  const without: { kind: RemedyKind; reason: string }[] = []
  for (const [k, { kind, run }] of searches.entries()) {
    const found =
      chain.machine.load.kind === 'open'
        ? 'nothing is connected'
        : yield* within(run(context), (k + 1) * share, share)
    if (typeof found === 'string') without.push({ kind, reason: found })
    else remedies.push(found)
  }
  return {
    name: design.name,
    wind,
    before,
    remedies: ranked(remedies),
    without,
    ideal: idealElectronics(chain, wind),
  }
}
