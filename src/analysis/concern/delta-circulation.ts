/** Concern: current runs round the closed delta without any load. */

import { seriesScaled } from '../../numerics/fourier.ts'
import { deltaCirculation } from '../../physics/winding/circulation.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { ownBridges, starForDelta } from '../ladder/connection.ts'
import { triable } from '../ladder/ladder.ts'
import { openCorner } from '../open-corner.ts'
import type { ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Open-corner volts over a phase's that a delta may have: common practice, no source. */
export const openCornerLimit = 0.05

export const cornerTooHigh = (openCorner: number): boolean => openCorner > openCornerLimit

export const deltaCirculationRule: ConcernRule = {
  code: 'delta-circulation',
  title: 'Current circulates in the closed delta',
  basis:
    'Volts across the open corner over those of a phase, as computed with all harmonics; above 5 % (common practice, no source) a warning. Any delta is a note, for its corner must be read before it is closed.',
  measure: ({ machine, voltage, layout }) =>
    machine.stator.connection === 'delta' && layout.phaseCount > 1
      ? {
          name: 'open corner over a phase',
          value: voltage.openCorner,
          limit: openCornerLimit,
          unit: 'percent',
          sound: 'below',
        }
      : undefined,
  answeredBy:
    'Alternating volts across the open corner and across each phase, all at one speed, the corner not yet closed.',
  judge: (chain) => {
    const { machine, voltage, layout } = chain
    if (machine.stator.connection !== 'delta' || layout.phaseCount < 2) return undefined
    const fastest = rowOfMost(chain.rows, ({ speed }) => speed)
    const high = cornerTooHigh(voltage.openCorner)
    const speed = fastest !== undefined && fastest.speed > 0 ? fastest.speed : chain.runaway.speed
    const { currentRms, loss } = deltaCirculation({
      emf: voltage.phases.map(({ emf }) => seriesScaled(emf, speed)),
      resistance: voltage.phases.map(({ resistance }) => resistance),
      inductance: voltage.inductance,
      angularFrequency: voltage.base * speed,
    })
    const corner = openCorner(voltage)
    const mean = voltage.phases.reduce((sum, { rms }) => sum + rms, 0) / voltage.phases.length
    return {
      code: 'delta-circulation',
      severity: high ? 'warning' : 'note',
      path: 'stator.connection',
      what: high
        ? 'Current runs round the closed delta even without a load: drag, hum and heat.'
        : 'The delta is even enough by computation; its real corner must be read before it is closed.',
      why: 'Third harmonics are in step in all three phases and add up round the loop; so does whatever makes the phases unlike in size or angle.',
      figures: `Open corner ${formatSi(voltage.openCorner, 'percent', 2)} of a phase (limit 5 %): ${formatSi(voltage.openCorner * mean * speed, 'V')} at ${formatSi(speed, 'rpm')}, which drive ${formatSi(currentRms[0] ?? 0, 'A')} round and burn ${formatSi(loss, 'W')}.${
        corner.orders.length === 0
          ? ''
          : ` By harmonic: ${corner.orders
              .slice(0, 4)
              .map(({ order, rms }) => `${formatNumber(order)}: ${formatSi(rms * speed, 'V', 2)}`)
              .join(', ')}.`
      }`,
      remedies: [
        ...(high
          ? [
              triable('Use star, with turns to suit.', starForDelta(machine.design)),
              triable('Or give every phase its own bridge.', ownBridges(machine.design)),
              'Make the phases alike: same distance to the magnets, same turns, offsets to a degree.',
            ]
          : []),
        'Leave one corner open, turn the shaft by hand and read it with a meter for alternating volts: near zero is right, about twice a phase means one is reversed.',
      ],
    }
  },
}
