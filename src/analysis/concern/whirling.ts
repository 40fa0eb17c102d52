/** Concern: the shaft may whirl at a speed that the rotor can reach. */
import { whirlingMarginRange } from '../../physics/mechanics/whirling.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { shaftResult } from '../mechanics/shaft-result.ts'
import { turningCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

const critical = (chain: ChainView): number | undefined =>
  chain.machine.shaft.diameter === undefined || chain.machine.shaft.bearings === undefined
    ? undefined
    : shaftResult(chain)?.critical

export const whirling: ConcernRule = {
  code: 'whirling',
  title: 'The shaft may whirl below runaway',
  basis: `First critical speed of the shaft with blades and magnets on stiff bearings, no stiffening by turning counted on, against the speed at runaway: at most ${whirlingMarginRange[0]} of it (common practice, no source). Bearings and mast that give lower it. Asked where shaft and bearings are described. Blocks the outdoor class where the rotor works there, else a warning.`,
  measure: (chain) => {
    const speed = critical(chain)
    return speed === undefined
      ? undefined
      : {
          name: 'speed at runaway',
          value: chain.runaway.speed,
          limit: whirlingMarginRange[0] * speed,
          unit: 'rpm',
          sound: 'below',
        }
  },
  answeredBy: 'A run-up with a guard, watched for shaking: note the speed at which it is worst.',
  judge: (chain) => {
    const speed = critical(chain)
    if (speed === undefined || chain.runaway.speed <= whirlingMarginRange[0] * speed) return undefined
    const fastest = chain.rows.reduce((most, row) => Math.max(most, row.speed), 0)
    return {
      code: 'whirling',
      severity: fastest > whirlingMarginRange[0] * speed ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'shaft.diameter_mm',
      what: 'The rotor can reach a speed at which its shaft bows out and shakes.',
      why: 'At the critical speed the unbalance bows the shaft, and the bow adds to the unbalance: nothing but damping holds it.',
      figures: `First critical speed ${formatSi(speed, 'rpm')}, runaway ${formatSi(chain.runaway.speed, 'rpm')}: ${formatNumber(chain.runaway.speed / speed, 2)} of it, wanted ${whirlingMarginRange[0]} at most; in work up to ${formatSi(fastest, 'rpm')}.`,
      remedies: [
        'Take a thicker shaft, or shorten what overhangs.',
        'Set the bearings farther apart.',
        `Balance what turns as well as you can. ${turningCaution}`,
      ],
    }
  },
}
