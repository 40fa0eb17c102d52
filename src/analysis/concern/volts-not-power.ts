/** Concern: power is claimed where none was delivered. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { idleClaimsWithdrawn } from '../ladder/goal.ts'
import { triable } from '../ladder/ladder.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** Most that a source of E behind R can deliver, into a load equal to its resistance [W]: P = E²/(4R). */
export const matchedPower = (source: { readonly emfRms: number; readonly resistance: number }): number =>
  source.emfRms ** 2 / (4 * source.resistance)

export const voltsNotPower: ConcernRule = {
  code: 'volts-not-power',
  title: 'Power is claimed from volts without a load',
  basis:
    'A claim must rest on volts and amps at once into a named load, at a named speed; open-circuit volts, alone or times short-circuit amps, are no power. The ceiling is E²/(4R) of each phase. Blocks the outdoor class, a warning in the others.',
  judge: (chain) => {
    const { claims } = chain.machine.design.bench
    const k = claims.findIndex(({ from }) => from !== 'volts and amps into a load')
    const claim = claims[k]
    if (claim === undefined) return undefined
    const speed = claim.speed_rpm === undefined ? undefined : (2 * Math.PI * nominal(claim.speed_rpm)) / 60
    const ceiling =
      speed === undefined
        ? undefined
        : chain.voltage.phases.reduce(
            (sum, { rms, resistance }) => sum + matchedPower({ emfRms: rms * speed, resistance }),
            0,
          )
    const product = claim.from === 'open-circuit volts times short-circuit amps'
    return {
      code: 'volts-not-power',
      severity: severityFor(chain, ['outdoor']),
      path: `bench.claims[${k}].from`,
      what: `The ${formatSi(nominal(claim.power_W), 'W')} claimed were not delivered to anything.`,
      why: product
        ? 'Without a load no current flows, in a short there are no volts: the two never occur together, and their product is at least four times what a load could get.'
        : 'Nothing flows in an open circuit: its volts say how fast the magnets pass, not what the machine gives.',
      figures:
        ceiling === undefined || claim.speed_rpm === undefined
          ? `${formatSi(nominal(claim.power_W), 'W')} from ${claim.from}, no speed said.`
          : `${formatSi(nominal(claim.power_W), 'W')} from ${claim.from} at ${formatNumber(nominal(claim.speed_rpm))} rpm; by computation a perfectly matched load could draw at most ${formatSi(ceiling, 'W')} there.`,
      remedies: [
        'Connect a resistor of known value, and read volts across it and amps through it at the same time, at a speed that you write down.',
        'Give the numbers as they were read: volts, amps, speed, what the load was.',
        triable('Withdraw the claim until then.', idleClaimsWithdrawn(chain.machine.design)),
      ],
    }
  },
}
