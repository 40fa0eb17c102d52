/** Concern: magnets that a child can swallow in a machine for showing round. */
import { formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { pockets } from '../ladder/magnet.ts'
import type { ConcernRule } from './concern.ts'

/** Diameter of the small-parts cylinder [m]: EN 71-1, from memory, not opened; verify the edition in force. */
export const smallPartsDiameter = 31.7e-3

/** Whether a block passes through the opening: its two smaller edges lie within the circle. */
export function swallowable(edges: readonly [number, number, number]): boolean {
  const [a, b] = [...edges].sort((x, y) => x - y) as [number, number, number]
  return Math.hypot(a, b) < smallPartsDiameter
}

export const smallMagnet: ConcernRule = {
  code: 'small-magnet',
  title: 'Loose small magnets where children are',
  basis:
    'A block whose two smaller edges pass the 31.7 mm opening of the small-parts cylinder (EN 71-1, from memory, verify the edition in force) and that only glue holds. Blocks the demonstration class; not asked in the others.',
  judge: ({ machine }) => {
    if (machine.safetyClass !== 'demonstration' || machine.rotor.retention.kind !== 'glue') return undefined
    const { length, width, thickness } = machine.rotor.magnet
    if (!swallowable([length, width, thickness])) return undefined
    return {
      code: 'small-magnet',
      severity: 'blocking',
      path: 'rotor.retention',
      what: 'The magnets are small enough to be swallowed and only glue keeps them on the rotor.',
      why: 'Two strong magnets, swallowed apart, find each other through the gut and pierce it: an emergency.',
      figures: `Blocks of ${formatSi(length, 'mm')} × ${formatSi(width, 'mm')} × ${formatSi(thickness, 'mm')}; the opening is ${formatSi(smallPartsDiameter, 'mm')} wide.`,
      remedies: [
        triable(
          'Enclose the magnets in printed pockets with a closed outer wall, so that none can come off.',
          pockets(machine.design),
        ),
        'Count the magnets before and after every lesson, and keep spares locked away.',
        'If one may have been swallowed, go to a hospital at once. School safety rules come before this list.',
      ],
    }
  },
}
