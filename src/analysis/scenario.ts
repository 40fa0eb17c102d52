/** The scenes that a machine is put through, from the first turn to a thrown magnet, and what must be fitted for each. */
import { batteryChemistries } from '../data/battery.ts'
import type { Machine } from '../machine/machine.ts'
import { refuse } from '../refusal/require.ts'
import { formatSi } from '../units/format.ts'
import { winterAllowance } from './concern/battery-frost.ts'
import { hasDisconnect } from './storm-bus.ts'
import type { StormCase, StormEvent } from './storm-case.ts'

/** storm: the wind that was asked for. rated: steady, where the machine does its work. */
export type ScenarioWind = 'rising' | 'rated' | 'operating gust' | 'extreme gust' | 'storm'

export interface Scenario {
  /** Short and stable: what a program may ask for. */
  readonly key: string
  readonly words: string
  readonly wind: ScenarioWind
  readonly event: StormEvent
  /** fastest: when the rotor, with all else the same, turns fastest; start: it was so before. */
  readonly when: 'rise' | 'fastest' | 'start'
  readonly limiterWorks: boolean
  readonly shortWorks: boolean
  readonly dumpWorks: boolean
  /** Somebody closes the shorting switch at the top of the gust. */
  readonly byHand: boolean
  /** In winter's air. */
  readonly cold: boolean
  /** Nothing is left of the load before the event. */
  readonly unloaded: boolean
  /** Why it cannot happen to this machine; undefined where it can. */
  readonly cannot: string | undefined
}

const whole = {
  wind: 'storm',
  event: 'nothing',
  when: 'rise',
  limiterWorks: true,
  shortWorks: true,
  dumpWorks: true,
  byHand: false,
  cold: false,
  unloaded: false,
  cannot: undefined,
} as const satisfies Partial<Scenario>

const one = (key: string, words: string, other: Partial<Scenario> = {}): Scenario => ({
  key,
  words,
  ...whole,
  ...other,
})

/** A winter night at the site [K]. */
export const winterAir = ({ site }: Pick<Machine, 'site'>): number => site.ambient - winterAllowance

/** Why a battery does not leave in the site's frost; undefined where it does. */
function frostless({ load, site }: Machine): string | undefined {
  if (load.kind !== 'battery') return 'there is no battery'
  if (!hasDisconnect({ load }))
    return `nothing in a ${load.chemistry} battery takes it off; a concern of its own tells what frost does to it`
  const least = batteryChemistries.find(({ name }) => name === load.chemistry)?.chargeLeast_degC ?? 0
  const below = load.disconnect?.below ?? least + 273.15
  const night = winterAir({ site })
  return night < below
    ? undefined
    : `winter nights of perhaps ${formatSi(night, 'degC', 2)} do not reach the ${formatSi(below, 'degC', 2)} below which it refuses charge`
}

const work = (): Scenario[] => [
  one('cut-in', 'a breeze comes up and starts it from rest', { wind: 'rising' }),
  one('rated', 'hours of steady work', { wind: 'rated' }),
  one('operating-gust', 'a gust upon that work, nothing fails', { wind: 'operating gust' }),
  one('extreme-gust', 'the rare gust up to the storm, nothing fails', { wind: 'extreme gust' }),
]

/** A magnet that leaves, and one that is not there. */
function magnets({ rotor }: Machine, and: string, loaded: boolean): Scenario[] {
  // magnets inside a ring are pressed into it
  const pressed =
    rotor.arrangement === 'drum' && rotor.windingSide === 'inside'
      ? 'the magnets sit inside a ring and are pressed into it'
      : undefined
  const off = { event: 'magnet off', when: 'fastest', cannot: pressed } as const
  return [
    one('magnet-off', 'a magnet leaves at the greatest speed', off),
    ...(loaded
      ? [one('lost-magnet', `${and}a magnet leaves at the greatest speed`, { ...off, unloaded: true })]
      : []),
    one('magnet-missing', 'a magnet has been missing from the start', { event: 'magnet off', when: 'start' }),
  ]
}

/** A shorting switch closed by a hand, alone and with what may go wrong before. */
function shorts({ protection }: Machine, and: string, lost: StormEvent): Scenario[] {
  if (protection.electrical !== 'shorting switch')
    return [
      one('brake-short', 'the winding is shorted at work', {
        byHand: true,
        cannot: 'no shorting switch is fitted; the study of the brake tells what one would do',
      }),
    ]
  const hand = { byHand: true } as const
  return [
    one('brake-short', 'the winding is shorted by hand at work, at the top of the gust', hand),
    one('short-by-hand', `${and}the switch closed by hand at the top of the gust`, { ...hand, event: lost }),
    ...(protection.mechanical === 'none'
      ? []
      : [
          one('short-alone', `${and}the limiter stuck, the switch closed by hand`, {
            ...hand,
            event: lost,
            limiterWorks: false,
          }),
        ]),
    one('short-phase-open', 'one phase opens, then the switch is closed by hand', {
      ...hand,
      event: 'phase open',
    }),
    one('short-open', 'every phase opens, then the switch is closed by hand', {
      ...hand,
      event: 'winding open',
    }),
  ]
}

/** What the supply side can do to a machine. */
function supply(machine: Machine, dump: boolean): Scenario[] {
  const { load, converter, wiring } = machine
  const battery = load.kind === 'battery'
  return [
    one('load-lost', 'the load is lost', {
      event: 'load lost',
      cannot: load.kind === 'open' ? 'nothing is connected that could be lost' : undefined,
    }),
    ...(battery && wiring.fusePlace !== 'none'
      ? [one('fuse-blown', 'the battery’s fuse blows', { event: 'fuse blown' })]
      : []),
    ...(hasDisconnect({ load })
      ? [
          one('battery-disconnects', 'the battery’s own electronics take it off', {
            event: 'battery disconnects',
          }),
        ]
      : []),
    one('frost', 'the battery refuses charge on a winter night', {
      event: 'frost',
      cold: true,
      cannot: frostless(machine),
    }),
    ...(battery ? [one('battery-full', 'the battery is full', { event: 'battery full' })] : []),
    ...(converter !== undefined
      ? [one('converter-dead', 'the converter dies', { event: 'converter dead' })]
      : []),
    ...(dump ? [one('dump-dead', 'the dump load’s controller dies', { event: 'dump dead' })] : []),
  ]
}

/**
 * Work, each single failure, then the loss of the load together with each protection that fails: the load itself is
 * never counted as one. What the machine does not have cannot fail: it is left out, or its row says why.
 */
export function scenarios(machine: Machine): readonly Scenario[] {
  const { load, protection } = machine
  const loaded = load.kind !== 'open'
  const mechanical = protection.mechanical !== 'none'
  const dump = protection.electrical === 'dump load' || protection.dump !== undefined
  const closesItself = protection.electrical === 'shorting switch' && protection.short.actsAt !== undefined
  const event: StormEvent = loaded ? 'load lost' : 'nothing'
  const and = loaded ? 'load lost, ' : ''
  return [
    ...work(),
    one('nothing', 'nothing fails'),
    ...supply(machine, dump),
    ...(mechanical && loaded ? [one('limiter-stuck', 'the limiter is stuck', { limiterWorks: false })] : []),
    one('phase-open', 'one phase or its joint opens', { event: 'phase open' }),
    one('winding-open', 'every phase opens', { event: 'winding open' }),
    one('diode-open', 'one diode opens', { event: 'diode open' }),
    one('diode-shorted', 'one diode becomes a short', { event: 'diode shorted' }),
    ...magnets(machine, and, loaded),
    ...(mechanical ? [one('lost-limiter', `${and}the limiter stuck`, { event, limiterWorks: false })] : []),
    ...(dump ? [one('lost-dump', `${and}the dump load dead`, { event, dumpWorks: false })] : []),
    ...(closesItself
      ? [one('lost-short', `${and}the shorting switch does not close`, { event, shortWorks: false })]
      : []),
    ...shorts(machine, and, event),
  ]
}

/** All of them, or the one of a key. */
export function askedScenarios(machine: Machine, only: string | undefined): readonly Scenario[] {
  const all = scenarios(machine)
  if (only === undefined) return all
  const asked = all.filter(({ key }) => key === only)
  if (asked.length === 0)
    refuse({
      name: 'scenario',
      condition: `one of ${all.map(({ key }) => key).join(', ')}`,
      value: only,
      code: 'not-a-choice',
    })
  return asked
}

/** The case as a storm takes it: at a moment, with the dump that is fitted. */
export const stormCase = (
  { event, limiterWorks, shortWorks, dumpWorks, byHand, unloaded }: Scenario,
  {
    at,
    rise,
    top,
    dump,
  }: {
    readonly at: number
    readonly rise: number
    readonly top: number
    readonly dump: StormCase['dump']
  },
): StormCase => ({
  event,
  at,
  limiterWorks,
  shortWorks,
  dumpWorks,
  shortAt: byHand ? top : undefined,
  lostAt: unloaded ? rise : undefined,
  dump,
})
