/** Concern: the discs pull at each other harder than hands hold: they go together by jacking screws only. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { discPull } from '../mechanics/disc-pull.ts'
import type { ConcernRule } from './concern.ts'

/** Force that two hands hold steadily [N]: common practice, no source. */
export const handForce = 100

export const crushCaution =
  'Fingers between the faces are crushed before you can pull them back. Two people, no fingers between the discs, wedges in the gap at every step, eye shields; keep pacemakers, cards and loose steel away. Ask someone who has done it.'

export const assemblyPull: ConcernRule = {
  code: 'assembly-pull',
  title: 'The discs pull together harder than hands hold',
  basis: `Pull between the faces at the gap by the drawing, from the field, against what two hands hold steadily, ${handForce} N (common practice, no source). A note: it is no fault of the design, but it must not meet the maker unprepared.`,
  measure: ({ machine, field }) => {
    const pull = discPull(machine, field)
    return pull === undefined
      ? undefined
      : { name: 'pull at the drawn gap', value: pull.pull, limit: handForce, unit: 'N', sound: 'below' }
  },
  judge: ({ machine, field }) => {
    const pull = discPull(machine, field)
    if (pull === undefined || pull.pull <= handForce) return undefined
    return {
      code: 'assembly-pull',
      severity: 'note',
      path: 'rotor.faceDistance_mm',
      what: 'Assembling the rotor by hand would crush fingers: use jacking screws.',
      why: 'The pull grows the faster the nearer the faces come; what is light at a hand’s breadth cannot be held at the width of a finger.',
      figures: `${formatSi(pull.pull, 'N')} at ${formatSi(pull.distance, 'mm')} between the faces, the weight of about ${formatNumber(pull.pull / 9.80665, 2)} kg, and ${formatSi(pull.stiffness, 'N_per_mm')} more for each millimetre nearer; hands hold ${formatSi(handForce, 'N')}.`,
      remedies: [
        'Lower the second disc on three jacking screws, each turned a little in turn, and keep a wedge in the gap.',
        'Print the table of force against distance before you begin.',
        crushCaution,
      ],
    }
  },
}
