/** Concern: the bearings wear out early, or a storm dents them. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { type BearingResult, bearingResult } from '../mechanics/bearing-result.ts'
import type { ChainView, ConcernRule } from './concern.ts'

/** Life that 90 of 100 bearings should reach [s]: ten years; common practice, no source. */
export const wantedLife = 10 * 365.25 * 86_400

/** C0/P0 wanted in a storm: 1.5 where shocks are possible, as sheets of bearings advise (from memory, not opened). */
export const wantedStaticSafety = 1.5

const fails = ({ life, staticSafety }: BearingResult): boolean =>
  life < wantedLife || staticSafety < wantedStaticSafety

const found = (chain: ChainView): BearingResult | undefined =>
  chain.machine.shaft.bearings === undefined ? undefined : bearingResult(chain)

export const bearingLifeRule: ConcernRule = {
  code: 'bearing-life',
  title: 'The bearings wear out early, or a storm dents them',
  basis: `Weight, unbalance and thrust on two bearings, wind by wind through the site’s year: rating life against ten years (common practice, no source); and static safety with the limiter stuck in the storm against ${wantedStaticSafety} (from memory, not opened). Asked where bearings are described. Water, dirt and current through a bearing end more of them than load does.`,
  measure: (chain) => {
    const result = found(chain)
    return result === undefined
      ? undefined
      : {
          name: 'life that 90 of 100 bearings reach',
          value: result.life,
          limit: wantedLife,
          unit: 'd',
          sound: 'above',
        }
  },
  answeredBy: 'The bearing’s sheet with its ratings, entered as shaft.bearings.',
  judge: (chain) => {
    const result = found(chain)
    if (result === undefined || !fails(result)) return undefined
    const { life, load, wind, staticSafety, staticLoad, rating, first } = result
    const short = life < wantedLife
    return {
      code: 'bearing-life',
      severity: 'warning',
      path: 'shaft.bearings',
      what: short
        ? `The ${first} bearing will not last ten years.`
        : 'A storm with the limiter stuck may dent the bearings.',
      why: 'A bearing’s life falls with the cube of its load; overhung blades lever on the front one, and dents made at rest are heard ever after.',
      figures: `Life ${formatNumber(life / (365.25 * 86_400), 2)} years, wanted 10; load at most ${formatSi(load, 'N')} in ${formatSi(wind, 'm_per_s')} on a rating of ${formatSi(rating.dynamic, 'N')}. In the storm ${formatSi(staticLoad, 'N')} on ${formatSi(rating.static, 'N')}: ${formatNumber(staticSafety, 2)} times, wanted ${wantedStaticSafety}; ${rating.known}.`,
      remedies: [
        'Take the next larger bearing, or enter the ratings of the one you have from its sheet.',
        'Bring the blades nearer to the front bearing, or set the bearings farther apart.',
        'Balance what turns, and keep water and current out of the bearings.',
      ],
    }
  },
}
