/** What is joined to what in a winding: the ends of the coils that meet in each joint, and the leads that leave. */
import type { WindingPlan } from '../../analysis/winding-plan.ts'
import { phaseLetter } from './phase-letter.ts'

export interface CoilEnd {
  /** Number of the coil, from 1. */
  readonly coil: number
  readonly end: 'start' | 'finish'
}

export interface CoilChain {
  readonly phase: number
  readonly group: number
  /** In the order of the current. */
  readonly coils: readonly { readonly number: number; readonly sense: 1 | -1 }[]
}

export interface WindingNet {
  readonly kind: 'link' | 'terminal' | 'star point' | 'corner'
  readonly ends: readonly CoilEnd[]
  /** From 0; undefined where phases meet. */
  readonly phase: number | undefined
  /** Name of the lead that leaves here. */
  readonly lead: string | undefined
}

/** Coils in series, branch by branch. */
export function coilChains({ coils, phaseCount }: Pick<WindingPlan, 'coils' | 'phaseCount'>): CoilChain[] {
  return Array.from({ length: phaseCount }, (_, phase) => {
    const own = coils.filter((coil) => coil.phase === phase)
    return [...new Set(own.map(({ group }) => group))].map((group) => ({
      phase,
      group,
      coils: own.filter((coil) => coil.group === group).map(({ number, sense }) => ({ number, sense })),
    }))
  }).flat()
}

type Ends = readonly CoilEnd[]

/** Where the current enters and leaves a coil of a chain. */
const entry = ({ number, sense }: CoilChain['coils'][number]): CoilEnd => ({
  coil: number,
  end: sense > 0 ? 'start' : 'finish',
})
const exit = ({ number, sense }: CoilChain['coils'][number]): CoilEnd => ({
  coil: number,
  end: sense > 0 ? 'finish' : 'start',
})

function terminals(
  connection: WindingPlan['connection'],
  begin: readonly Ends[],
  finish: readonly Ends[],
): WindingNet[] {
  const phases = begin.length
  const lead = (ends: Ends, phase: number, name: string): WindingNet => ({
    kind: 'terminal',
    ends,
    phase,
    lead: name,
  })
  if (connection === 'star' && phases > 1)
    return [
      ...begin.map((ends, phase) => lead(ends, phase, phaseLetter(phase))),
      { kind: 'star point', ends: finish.flat(), phase: undefined, lead: undefined },
    ]
  if (connection === 'delta' && phases > 1)
    return begin.map((ends, phase) => ({
      kind: 'corner',
      ends: [...finish[(phase + phases - 1) % phases]!, ...ends],
      phase: undefined,
      lead: String(phase + 1),
    }))
  return begin.flatMap((ends, phase) => [
    lead(ends, phase, `${phaseLetter(phase)}1`),
    lead(finish[phase]!, phase, `${phaseLetter(phase)}2`),
  ])
}

/** Every joint once: links within a branch first, then what joins branches, phases and leads. */
export function windingNets(plan: Pick<WindingPlan, 'coils' | 'phaseCount' | 'connection'>): WindingNet[] {
  const chains = coilChains(plan)
  const links = chains.flatMap(({ phase, coils }) =>
    coils.slice(1).map(
      (coil, k): WindingNet => ({
        kind: 'link',
        ends: [exit(coils[k]!), entry(coil)],
        phase,
        lead: undefined,
      }),
    ),
  )
  const ofPhase = (phase: number) => chains.filter((chain) => chain.phase === phase)
  const phases = Array.from({ length: plan.phaseCount }, (_, phase) => phase)
  const begin = phases.map((phase) => ofPhase(phase).map(({ coils }) => entry(coils[0]!)))
  const finish = phases.map((phase) => ofPhase(phase).map(({ coils }) => exit(coils.at(-1)!)))
  return [...links, ...terminals(plan.connection, begin, finish)]
}
