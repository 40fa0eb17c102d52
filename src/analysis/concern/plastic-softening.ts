/** Concern: a plastic or resin under load gets near the temperature at which it softens. */
import { plasticMargin } from '../../data/plastic.ts'
import { formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { hardierSupport, hardierWall } from '../ladder/material.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Summer and sun on a dark part over the mean air of the site [K]: common practice, no source. */
export const sunAllowance = 30

export interface WarmPart {
  /** Where the part softens [K]. */
  readonly softening: number
  /** As warm as it gets standing in the sun [K]. */
  readonly standing: number
  /** As warm as work makes it [K]. */
  readonly working: number
}

export type SofteningVerdict = 'sound' | 'soft in work' | 'soft in the sun'

export function softeningVerdict({ softening, standing, working }: WarmPart): SofteningVerdict {
  if (standing > softening - plasticMargin.margin_K) return 'soft in the sun'
  return working > softening - plasticMargin.margin_K ? 'soft in work' : 'sound'
}

/** The wall that holds the magnets, warm as they are, and the body of the winding, judged in the sun only. */
function softCase({ machine, rows }: ChainView) {
  const { retention } = machine.rotor
  const { support } = machine.stator
  const standing = machine.site.ambient + (machine.safetyClass === 'outdoor' ? sunAllowance : 0)
  const hottest = rowOfMost(rows, ({ temperatures }) => temperatures.magnets)
  const magnets = hottest?.temperatures.magnets ?? machine.site.ambient
  const walled = retention.kind !== 'glue' && retention.hold === undefined
  const wall = { softening: retention.softening, standing, working: magnets }
  // what the copper itself touches is judged with the winding's heat
  const held = { softening: support.softening, standing, working: standing }
  return { wall: walled ? wall : undefined, held, hottest }
}

export const plasticSoftening: ConcernRule = {
  code: 'plastic-softening',
  title: 'A plastic or resin under load may soften',
  basis: `Softening point less ${plasticMargin.margin_K} K against the site’s air plus ${sunAllowance} K for summer and sun (both common practice, no source), for the wall that holds the magnets and for what holds the winding; and the wall against the magnets in the hottest steady wind, as warm as the net of heat makes them. Sun and work are not added. A wall that may soften in the sun blocks the outdoor class; else a warning. What touches the copper is judged in stator-heat.`,
  measure: (chain) => {
    const { wall, held } = softCase(chain)
    const parts = [held, ...(wall === undefined ? [] : [wall])].map(({ softening, standing, working }) => ({
      value: Math.max(standing, working),
      limit: softening - plasticMargin.margin_K,
    }))
    const worst = parts.reduce((most, each) =>
      each.value - each.limit > most.value - most.limit ? each : most,
    )
    return { name: 'plastic under load, in the sun or in work', ...worst, unit: 'degC', sound: 'below' }
  },
  answeredBy:
    'A thermometer in a dark printed part on a hot day, and on the wall after an hour of full work.',
  judge: (chain) => {
    const { machine } = chain
    const { retention } = machine.rotor
    const { support } = machine.stator
    const { wall, held, hottest } = softCase(chain)
    const ofTheWall = wall === undefined ? ('sound' as const) : softeningVerdict(wall)
    const ofTheBody = softeningVerdict(held)
    if (ofTheWall === 'sound' && ofTheBody === 'sound') return undefined
    const ofWall = ofTheWall !== 'sound'
    const name = ofWall ? retention.material : support.name
    const { softening, standing, working } = ofWall ? wall! : held
    const sun = ofWall ? ofTheWall === 'soft in the sun' : true
    const part = ofWall ? 'wall that holds the magnets' : 'body that holds the winding'
    const { design } = machine
    return {
      code: 'plastic-softening',
      severity: ofWall && sun ? severityFor(chain, ['outdoor']) : 'warning',
      path: ofWall ? 'rotor.retention.material' : 'stator.support',
      what: sun
        ? `The ${part} may soften when the machine merely stands in the sun.`
        : `The ${part} gets as warm in work as it softens.`,
      why: 'Plastics creep under steady load well below the point at which they go soft, and what has crept does not come back when it cools.',
      figures: `${name} softens at about ${formatSi(softening, 'degC', 3)}; in summer sun it may reach ${formatSi(standing, 'degC', 3)}${ofWall ? `, in work ${formatSi(working, 'degC', 3)}` : ''}${ofWall && hottest !== undefined ? ` in ${formatSi(hottest.wind, 'm_per_s')}` : ''}; wanted ${plasticMargin.margin_K} K in hand.`,
      remedies: [
        ofWall
          ? triable(
              'Wind a band of glass fibre round the magnets, or make the wall of something that softens later.',
              hardierWall(design),
            )
          : triable(
              'Choose a support that softens later, or cure the resin warm as its maker says.',
              hardierSupport(design),
            ),
        'Print light-coloured parts and shade them; leave openings that the wind blows through.',
        ...(sun
          ? []
          : [triable('Lower the copper’s temperature: a limiter that acts earlier.', limiter(design))]),
        'Put a thermometer into a dark printed part on a hot day and see.',
      ],
    }
  },
}
