/** Concern: the discs bend into their own gap under the magnets' pull, or snap together. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { thickerCarrier } from '../ladder/carrier.ts'
import { widerGap } from '../ladder/gap.ts'
import { triable } from '../ladder/ladder.ts'
import { thickerSteel } from '../ladder/steel.ts'
import { type DiscBending, discBending } from '../mechanics/disc-bending.ts'
import { drawnGap } from '../mechanics/drawn-gap.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** Share of the air by the drawing that the bending of one disc may take: common practice, no source. */
export const bendingShare = 0.15

interface Judged {
  readonly bending: DiscBending
  /** Air by the drawing on the tighter side [m]. */
  readonly air: number
}

function judged({ machine, field }: ChainView): Judged | undefined {
  const { inner, outer } = drawnGap(machine)
  const air = Math.min(inner, outer ?? inner)
  if (!(air > 0)) return undefined
  const bending = discBending(machine, field)
  return bending === undefined ? undefined : { bending, air }
}

export const discBendingRule: ConcernRule = {
  code: 'disc-bending',
  title: 'The discs bend into their gap under the magnets’ pull',
  basis: `Rim of the disc behind the magnets as a plate clamped at its hub (radius ${formatNumber(0.35)} of the pitch radius where none is said), under the pull of the field between the faces, which grows as the gap closes; magnets stiffen nothing; printed discs with the stiffness that years leave. More than ${100 * bendingShare} % of the air by the drawing (common practice, no source) is a warning; discs that would snap together block the outdoor class.`,
  measure: (chain) => {
    const found = judged(chain)
    return found === undefined
      ? undefined
      : {
          name: 'bending of one disc at its rim',
          // discs that snap are as bent as the air lets them
          value: found.bending.disc.rim ?? found.air,
          limit: bendingShare * found.air,
          unit: 'mm',
          sound: 'below',
        }
  },
  answeredBy: 'Dial gauge on the rim of a disc while the other is jacked away and let back.',
  judge: (chain) => {
    const found = judged(chain)
    if (found === undefined) return undefined
    const { bending, air } = found
    const { disc, pull } = bending
    if (disc.rim !== undefined && disc.rim <= bendingShare * air) return undefined
    const { design } = chain.machine
    const snaps = disc.rim === undefined
    return {
      code: 'disc-bending',
      severity: snaps ? severityFor(chain, ['outdoor']) : 'warning',
      path: bending.plastic ? 'rotor.carrier.thickness_mm' : 'rotor.backIron.thickness_mm',
      what: snaps
        ? 'The discs are too weak to stand apart: they bend until they snap together.'
        : 'The discs bend noticeably into the air between them and the winding.',
      why: 'The pull between the faces bends the discs, and as the gap closes the pull grows: the field works like a spring of negative stiffness.',
      figures: `${formatSi(pull.pull, 'N')} of pull, growing by ${formatSi(pull.stiffness, 'N_per_mm')}, on ${formatSi(bending.thickness, 'mm')} of ${bending.material}${
        bending.hubKnown ? '' : `, hub guessed at ${formatSi(disc.hubRadius, 'mm', 2)} radius`
      }: ${
        snaps
          ? `${formatNumber(disc.closeness, 2)} times what makes them snap.`
          : `the rim moves ${formatSi(disc.rim!, 'mm')}, ${formatNumber((100 * disc.rim!) / air, 2)} % of the ${formatSi(air, 'mm')} of air; wanted ${100 * bendingShare} % at most.`
      }`,
      remedies: [
        bending.plastic
          ? triable('Make the printed disc thicker, or put steel behind it.', thickerCarrier(design))
          : triable('Make the steel discs thicker.', thickerSteel(design, 'behind')),
        'Clamp the discs on a larger hub or flange, and enter its radius.',
        triable('Set the faces farther apart: the pull falls quickly.', widerGap(design)),
      ],
    }
  },
}
