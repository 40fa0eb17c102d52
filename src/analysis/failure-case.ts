/** The failures that a machine can meet in a storm, one after another, and what must have been fitted for each. */
import type { Machine } from '../machine/machine.ts'
import { refuse } from '../refusal/require.ts'
import { hasDisconnect } from './storm-bus.ts'
import type { StormCase, StormEvent } from './storm-case.ts'

export interface FailureCase {
  /** Short and stable: what a program may ask for. */
  readonly key: string
  readonly words: string
  readonly event: StormEvent
  readonly limiterWorks: boolean
  readonly shortWorks: boolean
  readonly dumpWorks: boolean
  /** Somebody closes the shorting switch at the top of the gust. */
  readonly byHand: boolean
}

const whole = { limiterWorks: true, shortWorks: true, dumpWorks: true, byHand: false } as const

/**
 * Each single failure, then the loss of the load together with each protection that fails: the load itself is never
 * counted as one. What the machine does not have cannot fail and is left out.
 */
function failureCases({ load, converter, protection, wiring }: Machine): readonly FailureCase[] {
  const battery = load.kind === 'battery'
  const loaded = load.kind !== 'open'
  const mechanical = protection.mechanical !== 'none'
  const dump = protection.electrical === 'dump load' || protection.dump !== undefined
  const short = protection.electrical === 'shorting switch'
  const closesItself = short && protection.short.actsAt !== undefined
  const one = (
    key: string,
    words: string,
    event: StormEvent,
    other: Partial<FailureCase> = {},
  ): FailureCase => ({
    key,
    words,
    event,
    ...whole,
    ...other,
  })
  const lost: StormEvent = loaded ? 'load lost' : 'nothing'
  const and = loaded ? 'load lost, ' : ''
  return [
    one('nothing', 'nothing fails', 'nothing'),
    ...(loaded ? [one('load-lost', 'the load is lost', 'load lost')] : []),
    ...(battery ? [one('fuse-blown', 'the battery’s fuse blows', 'fuse blown')] : []),
    ...(hasDisconnect({ load })
      ? [
          one('battery-disconnects', 'the battery’s own electronics take it off', 'battery disconnects'),
          one('frost', 'the battery refuses charge in the frost', 'frost'),
        ]
      : []),
    ...(battery ? [one('battery-full', 'the battery is full', 'battery full')] : []),
    ...(converter !== undefined ? [one('converter-dead', 'the converter dies', 'converter dead')] : []),
    ...(dump ? [one('dump-dead', 'the dump load’s controller dies', 'dump dead')] : []),
    ...(mechanical && loaded
      ? [one('limiter-stuck', 'the limiter is stuck', 'nothing', { limiterWorks: false })]
      : []),
    one('winding-open', 'the winding or a joint opens', 'winding open'),
    one('diode-open', 'one diode opens', 'diode open'),
    one('diode-shorted', 'one diode becomes a short', 'diode shorted'),
    ...(mechanical ? [one('lost-limiter', `${and}the limiter stuck`, lost, { limiterWorks: false })] : []),
    ...(dump ? [one('lost-dump', `${and}the dump load dead`, lost, { dumpWorks: false })] : []),
    ...(closesItself
      ? [one('lost-short', `${and}the shorting switch does not close`, lost, { shortWorks: false })]
      : []),
    ...(short
      ? [
          one('short-by-hand', `${and}the switch closed by hand at the top of the gust`, lost, {
            byHand: true,
          }),
          ...(mechanical
            ? [
                one('short-alone', `${and}the limiter stuck, the switch closed by hand`, lost, {
                  byHand: true,
                  limiterWorks: false,
                }),
              ]
            : []),
          one('short-open', 'the winding opens, then the switch is closed by hand', 'winding open', {
            byHand: true,
          }),
        ]
      : []),
  ].filter(({ event }) => event !== 'fuse blown' || wiring.fusePlace !== 'none')
}

/** All of them, or the one of a key. */
export function askedCases(machine: Machine, only: string | undefined): readonly FailureCase[] {
  const cases = failureCases(machine)
  if (only === undefined) return cases
  const asked = cases.filter(({ key }) => key === only)
  if (asked.length === 0)
    refuse({
      name: 'event',
      condition: `one of ${cases.map(({ key }) => key).join(', ')}`,
      value: only,
      code: 'not-a-choice',
    })
  return asked
}

/** The case as a storm takes it: at a moment, with the dump that is fitted. */
export const stormCase = (
  { event, limiterWorks, shortWorks, dumpWorks, byHand }: FailureCase,
  { at, top, dump }: { readonly at: number; readonly top: number; readonly dump: StormCase['dump'] },
): StormCase => ({
  event,
  at,
  limiterWorks,
  shortWorks,
  dumpWorks,
  shortAt: byHand ? top : undefined,
  dump,
})
