/** Concern: eddy currents in thick strands brake the rotor all year. */
import { formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { moreStrands, stripOnEdge } from '../ladder/wire.ts'
import type { ChainView, ConcernRule } from './concern.ts'

/** Share of the shaft's energy lost in the strands from which it is told: common practice, no source. */
export const eddyLimit = 0.05

export const eddyShareTooHigh = (share: number): boolean => share > eddyLimit

const eddyShare = ({ shaft, parts }: ChainView['year']['ledger']): number =>
  shaft > 0 ? parts.eddy / shaft : 0

export const strandEddy: ConcernRule = {
  code: 'strand-eddy',
  title: 'Thick strands brake the rotor by eddy currents',
  basis:
    'Energy lost to eddy currents in the strands over the energy of the shaft, over the year; above 5 % (common practice, no source) a warning.',
  measure: ({ year }) => ({
    name: 'eddy loss in the strands over the shaft’s energy',
    value: eddyShare(year.ledger),
    limit: eddyLimit,
    unit: 'percent',
    sound: 'below',
  }),
  answeredBy:
    'Torque of the unloaded machine at two speeds, the winding open: its rise with speed is this loss.',
  judge: ({ year, machine, runaway, drag }) => {
    const { shaft, parts } = year.ledger
    const share = eddyShare(year.ledger)
    if (!eddyShareTooHigh(share)) return undefined
    const { diameter, strands, shape } = machine.stator.wire
    const wire =
      shape.kind === 'round'
        ? formatSi(diameter, 'mm')
        : `${formatSi(shape.width, 'mm')} × ${formatSi(shape.thickness, 'mm')}${shape.edgewise ? ' on edge' : ', flat'}`
    const squared = runaway.speed ** 2
    return {
      code: 'strand-eddy',
      severity: 'warning',
      path: 'stator.wire',
      what: 'Eddy currents inside the thick wire brake the rotor, with or without a load.',
      why: 'The moving field drives currents round inside each strand; for the same copper the loss grows with the square of the strand’s diameter and of the speed.',
      figures: `${formatSi(parts.eddy, 'kWh', 2)} of ${formatSi(shaft, 'kWh', 2)} a year at the shaft, ${formatSi(share, 'percent', 2)} (limit 5 %), in strands of ${wire}; at ${formatSi(runaway.speed, 'rpm')} runaway ${formatSi(drag.strands.total * squared, 'W', 2)}, of which ${formatSi(drag.strands.ends * squared, 'W', 2)} past the magnets’ ends.`,
      remedies: [
        ...(shape.kind === 'strip' && !shape.edgewise
          ? [
              triable(
                'Lay the strip on edge, its thin side to the magnets: the field then crosses the thin side.',
                stripOnEdge(machine.design),
              ),
            ]
          : []),
        triable(
          `Wind several thinner wires in hand: ${Math.max(4, 4 * strands)} of ${formatSi(diameter / 2, 'mm')} have the same copper${shape.kind === 'round' ? ' and a quarter of the loss' : ''}.`,
          moreStrands(machine.design),
        ),
        'Keep thick leads and metal screws out of the moving field.',
        'Fewer poles or a slower rotor lower the frequency.',
      ],
    }
  },
}
