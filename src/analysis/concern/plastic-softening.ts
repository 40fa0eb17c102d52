/** Concern: a plastic or resin under load gets near the temperature at which it softens. */
import { plasticMargin } from '../../data/plastic.ts'
import { formatSi } from '../../units/format.ts'
import { type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Summer and sun on a dark part over the mean air of the site [K]: common practice, no source. */
export const sunAllowance = 30

export interface WarmPart {
  /** Where the part softens [K]. */
  readonly softening: number
  /** As warm as it gets standing in the sun [K]. */
  readonly standing: number
  /** Copper beside it [K]; below it counts only where the part touches the copper. */
  readonly copper: number
}

export type SofteningVerdict = 'sound' | 'beside hot copper' | 'soft in the sun'

export function softeningVerdict({ softening, standing, copper }: WarmPart): SofteningVerdict {
  if (standing > softening - plasticMargin.margin_K) return 'soft in the sun'
  return copper > softening ? 'beside hot copper' : 'sound'
}

export const plasticSoftening: ConcernRule = {
  code: 'plastic-softening',
  title: 'A plastic or resin under load may soften',
  basis: `Softening point less ${plasticMargin.margin_K} K against the site’s air plus ${sunAllowance} K for summer and sun (both common practice, no source), for the wall that holds the magnets and for what holds the winding; and the wall’s softening point against the hottest copper, which faces it across the gap. A wall that may soften in the sun blocks the outdoor class; else a warning. How warm the gap’s air makes the wall is not computed.`,
  judge: (chain) => {
    const { machine } = chain
    const { retention } = machine.rotor
    const { support } = machine.stator
    const standing = machine.site.ambient + (machine.safetyClass === 'outdoor' ? sunAllowance : 0)
    const hottest = rowOfMost(chain.rows, ({ copperTemperature }) => copperTemperature)
    const copper = hottest?.copperTemperature ?? machine.site.ambient
    const walled = retention.kind !== 'glue' && retention.hold === undefined
    const wall = walled
      ? softeningVerdict({ softening: retention.softening, standing, copper })
      : ('sound' as const)
    // the support against the copper itself is judged with the winding's heat
    const held = softeningVerdict({ softening: support.softening, standing, copper: standing })
    if (wall === 'sound' && held === 'sound') return undefined
    const ofWall = wall !== 'sound'
    const name = ofWall ? retention.material : support.name
    const softening = ofWall ? retention.softening : support.softening
    const sun = ofWall ? wall === 'soft in the sun' : true
    const part = ofWall ? 'wall that holds the magnets' : 'body that holds the winding'
    return {
      code: 'plastic-softening',
      severity: ofWall && sun ? severityFor(chain, ['outdoor']) : 'warning',
      path: ofWall ? 'rotor.retention.material' : 'stator.support',
      what: sun
        ? `The ${part} may soften when the machine merely stands in the sun.`
        : `The ${part} faces copper that is hotter than its own softening point.`,
      why: 'Plastics creep under steady load well below the point at which they go soft, and what has crept does not come back when it cools.',
      figures: `${name} softens at about ${formatSi(softening, 'degC', 3)}; in summer sun it may reach ${formatSi(standing, 'degC', 3)}, and the copper ${formatSi(copper, 'degC', 3)}${hottest === undefined ? '' : ` in ${formatSi(hottest.wind, 'm_per_s')}`}; wanted ${plasticMargin.margin_K} K in hand.`,
      remedies: [
        ofWall
          ? 'Wind a band of glass fibre round the magnets, or make the wall of something that softens later.'
          : 'Choose a support that softens later, or cure the resin warm as its maker says.',
        'Print light-coloured parts and shade them; leave openings that the wind blows through.',
        ...(sun ? [] : ['Lower the copper’s temperature: thicker wire, earlier limiter.']),
        'Put a thermometer into a dark printed part on a hot day and see.',
      ],
    }
  },
}
