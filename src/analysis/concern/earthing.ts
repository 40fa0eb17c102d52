/** Concern: protective earthing and lightning protection are not yet in the hands of somebody licensed. */
import { formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'
import { shockLimits } from './shock-band.ts'

export const earthing: ConcernRule = {
  code: 'earthing',
  title: 'Protective earthing and lightning protection are not yet planned by a licensed person',
  basis:
    'Asked of every machine that stands outdoors, and of any whose volts at runaway pass 25 V AC or 60 V DC. Nothing is computed: IEC 60364, IEC 62305, IEC 61400-24 and the national code decide, and a licensed electrician and a lightning protection specialist apply them. Not yet: a warning outdoors, a note else.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const outdoor = machine.safetyClass === 'outdoor'
    const high =
      runaway.lineVoltage > shockLimits.dryTouch.alternating ||
      runaway.directVoltage > shockLimits.dryTouch.direct
    if (machine.wiring.earthing !== 'not yet' || (!outdoor && !high)) return undefined
    return {
      code: 'earthing',
      severity: outdoor ? 'warning' : 'note',
      path: 'wiring.earthing',
      what: outdoor
        ? 'Nobody licensed has yet planned the protective earthing and the lightning protection.'
        : 'Nobody licensed has yet judged whether these volts need protective earthing.',
      why: outdoor
        ? 'A mast is the tallest thing around and its wires lead into a room. Both protections belong to every machine outdoors, and what a handbook or a neighbour says of them does not replace the code.'
        : 'Which parts must be joined to earth depends on the room and on what else is connected; the code tells.',
      figures: `Hub ${formatSi(machine.site.hubHeight, 'm')} above ground; at runaway ${formatSi(runaway.lineVoltage, 'V')} rms and ${formatSi(runaway.directVoltage, 'V')} direct.`,
      remedies: [
        'Ask a licensed electrician for the earthing of mast, machine and battery, before the mast goes up.',
        ...(outdoor
          ? [
              'Ask a lightning protection specialist for the mast, the cable’s way into the house and its surge protection.',
            ]
          : []),
        'Write down who planned and checked it, and when.',
      ],
    }
  },
}
