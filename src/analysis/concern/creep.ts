/** Concern: a printed disc gives way for years under the magnets' steady pull. */
import { plasticMargin, plastics } from '../../data/plastic.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { thickerCarrier } from '../ladder/carrier.ts'
import { triable } from '../ladder/ladder.ts'
import { discBending } from '../mechanics/disc-bending.ts'
import { mechanicalHeat } from '../mechanics/mechanical-heat.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { sunAllowance } from './plastic-softening.ts'

/** Share of its short-term strength that a print may carry for years: common practice, no source. */
export const longTermShare = 0.2

interface Creeping {
  readonly stress: number
  readonly limit: number
  readonly temperature: number
  readonly softening: number
}

function creeping(chain: ChainView): Creeping | undefined {
  const { machine, field } = chain
  const { carrier } = machine.rotor
  if (carrier === undefined) return undefined
  const bending = discBending(machine, field)
  if (bending === undefined || !bending.plastic) return undefined
  const row = plastics.find(({ name }) => name === carrier.material)!
  return {
    // discs that snap are judged by their bending
    stress: bending.disc.stress ?? Number.MAX_VALUE,
    limit: row.tensileStrength_MPa * 1e6 * longTermShare,
    temperature: mechanicalHeat(chain).rotor + (machine.safetyClass === 'outdoor' ? sunAllowance : 0),
    softening: carrier.softening,
  }
}

const creeps = ({ stress, limit, temperature, softening }: Creeping): boolean =>
  stress > limit || temperature > softening - plasticMargin.margin_K

export const creep: ConcernRule = {
  code: 'creep',
  title: 'A printed disc creeps under the magnets’ pull',
  basis: `Greatest bending stress of a printed disc under the steady pull between the faces against ${longTermShare} of its strength along the layers, and its temperature in summer sun against its softening point less ${plasticMargin.margin_K} K (all common practice, no source). Asked where rotor.carrier is described. Blocks the outdoor class.`,
  measure: (chain) => {
    const found = creeping(chain)
    return found === undefined
      ? undefined
      : {
          name: 'steady stress of the printed disc',
          value: found.stress,
          limit: found.limit,
          unit: 'MPa',
          sound: 'below',
        }
  },
  answeredBy: 'Gap at the rim measured when new and again after weeks of standing warm.',
  judge: (chain) => {
    const found = creeping(chain)
    if (found === undefined || !creeps(found)) return undefined
    const { stress, limit, temperature, softening } = found
    const { carrier } = chain.machine.rotor
    return {
      code: 'creep',
      severity: severityFor(chain, ['outdoor']),
      path: 'rotor.carrier',
      what: 'The printed disc will go on giving way under the magnets’ pull until the gap is gone.',
      why: 'Plastics creep under a steady load, the faster the warmer they are, and what has crept does not come back.',
      figures: `${carrier!.material}: ${stress < 1e12 ? formatSi(stress, 'MPa') : 'no rest at all'} for years, may be ${formatSi(limit, 'MPa')} (${formatNumber(longTermShare)} of its strength); up to ${formatSi(temperature, 'degC', 3)} in the sun, softens at ${formatSi(softening, 'degC', 3)}.`,
      remedies: [
        'Carry the magnets on a steel disc: it closes their flux as well.',
        triable('Make the printed disc thicker.', thickerCarrier(chain.machine.design)),
        'Print it of something that softens later, and keep it out of the sun.',
      ],
    }
  },
}
