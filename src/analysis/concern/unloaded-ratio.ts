/** Concern: the tip-speed ratio of a rotor that turns freely is used as that of one at work. */
import { formatNumber, formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

/** Tip-speed ratio of free running over that of the most power: common practice, no source. */
export const freeOverBest: readonly [number, number] = [1.5, 2]

/** A table whose most power lies this near its free-running end was hardly read under load: common practice, no source. */
export const nearestToFree = 0.8

/** Blades of small rotors are rarely shaped for more than this tip-speed ratio: common practice, no source. */
export const usualGreatest = 9

/** Tip-speed ratios at work that free running at `free` stands for, from low to high. */
export const loadedRatios = (free: number): readonly [number, number] => [
  free / freeOverBest[1],
  free / freeOverBest[0],
]

type Fault = 'read turning freely' | 'most power at the free end' | 'very fast'

const texts: Readonly<Record<Fault, string>> = {
  'read turning freely': 'The blades are shaped for a tip-speed ratio that was read on a rotor without load.',
  'most power at the free end': 'The table has its most power close to where the rotor runs freely.',
  'very fast': 'The blades are shaped for so high a tip-speed ratio that it looks like that of free running.',
}

export const unloadedRatio: ConcernRule = {
  code: 'unloaded-ratio',
  title: 'The tip-speed ratio of free running is used as that of work',
  basis:
    'Free running is some 1.5 to 2 times as fast as the most power. Blades shaped for a ratio that was read turning freely: a warning. A table whose most power lies above 0.8 of the ratio at which it runs freely: a warning. Blades shaped for more than 9, only chosen: a note. All common practice, no source.',
  judge: ({ machine, rotor }) => {
    const { blades } = machine.design
    const ratio =
      blades.kind === 'optimum' && machine.blades.kind === 'optimum'
        ? machine.blades.tipSpeedRatio
        : undefined
    const from = blades.kind === 'optimum' ? blades.ratioFrom : undefined
    const { best, runaway } = rotor
    const fault: Fault | undefined =
      from === 'read turning freely'
        ? 'read turning freely'
        : blades.kind === 'table' && best.power > 0 && best.tipSpeedRatio > nearestToFree * runaway
          ? 'most power at the free end'
          : from === 'chosen' && ratio !== undefined && ratio > usualGreatest
            ? 'very fast'
            : undefined
    if (fault === undefined) return undefined
    const free = ratio ?? runaway
    const [low, high] = loadedRatios(free)
    const wind = 4
    const turns = (λ: number) => formatSi((λ * wind) / machine.blades.radius, 'rpm')
    return {
      code: 'unloaded-ratio',
      severity: fault === 'very fast' ? 'note' : 'warning',
      path: ratio === undefined ? 'blades.points' : 'blades.tipSpeedRatio',
      what: texts[fault],
      why: 'Without load a rotor speeds up until its blades hardly pull any more; there it gives no power at all. A generator laid out for that speed meets blades that turn much slower under load, and cuts in too late.',
      figures: `${
        ratio === undefined
          ? `Most power at ${formatNumber(best.tipSpeedRatio)}, free running at ${formatNumber(runaway)}: ${formatNumber(best.tipSpeedRatio / runaway, 2)} of it, usually 0.5 to 0.67`
          : `Shaped for ${formatNumber(ratio)}; if that is free running, work is at ${formatNumber(low, 2)} to ${formatNumber(high, 2)}`
      }. In ${wind} m/s that is ${turns(ratio ?? best.tipSpeedRatio)} or ${turns(low)} to ${turns(high)}.`,
      remedies: [
        ...(ratio === undefined
          ? ['Read speed, volts and amps at the same moment into a load, at several loads in one wind.']
          : [
              {
                words: `Shape the blades for about ${formatNumber(high, 2)} instead.`,
                ladder: [1.5, 1.75, 2].map((share) => [
                  {
                    path: ['blades', 'tipSpeedRatio'],
                    from: blades.kind === 'optimum' ? blades.tipSpeedRatio : ratio,
                    to: Number((free / share).toFixed(1)),
                  },
                  { path: ['blades', 'ratioFrom'], from, to: 'chosen' },
                ]),
              },
            ]),
        'Brake the rotor with a known load until it gives the most watts in a steady wind, and take the speed there.',
        'Until then do not fix turns or gap by that speed.',
      ],
    }
  },
  measure: ({ machine, rotor }) => {
    if (machine.blades.kind === 'table')
      return {
        name: 'ratio of most power over that of free running',
        value: rotor.best.tipSpeedRatio / rotor.runaway,
        limit: nearestToFree,
        unit: '1',
        sound: 'below',
      }
    const { blades } = machine.design
    if (
      machine.blades.kind !== 'optimum' ||
      blades.kind !== 'optimum' ||
      blades.ratioFrom === 'read under load'
    )
      return undefined
    const { tipSpeedRatio } = machine.blades
    return {
      name: 'tip-speed ratio that the blades are shaped for',
      value: tipSpeedRatio,
      limit: blades.ratioFrom === 'chosen' ? usualGreatest : loadedRatios(tipSpeedRatio)[1],
      unit: '1',
      sound: 'below',
    }
  },
  answeredBy: 'Wind, speed, volts and amps of this rotor read at once, under several loads.',
}
