/** Concern: the shaft or its key is stressed beyond what steel bears for good, or beyond it in a sudden short. */
import { formatSi } from '../../units/format.ts'
import { type ShaftResult, shaftResult } from '../mechanics/shaft-result.ts'
import { towerCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

const found = (chain: ChainView): ShaftResult | undefined =>
  chain.machine.shaft.diameter === undefined || chain.machine.shaft.bearings === undefined
    ? undefined
    : shaftResult(chain)

interface Stressed {
  readonly name: string
  readonly value: number
  readonly limit: number
}

/** The stress that uses most of what it may. */
function hardest({ shear, shearLimit, extreme, worst, extremeLimit, key }: ShaftResult): Stressed {
  const all: Stressed[] = [
    { name: 'shear in work', value: shear, limit: shearLimit },
    { name: `greatest stress at once, ${worst}`, value: extreme, limit: extremeLimit },
    ...(key === undefined
      ? []
      : [{ name: 'pressure on the key in a sudden short', value: key.pressure, limit: key.limit }]),
  ]
  return all.reduce((most, one) => (one.value / one.limit > most.value / most.limit ? one : most))
}

export const shaftStrength: ConcernRule = {
  code: 'shaft-strength',
  title: 'The shaft or its key is too thin',
  basis:
    'Bending by weight, unbalance and yawing with the torque of the work against 56 MPa of shear, 42 MPa with a keyway (khurmi2005, section 14.9, from memory, not opened); and, with the storm’s push, yawing at the fastest work or a sudden short at runaway, twice the greatest steady one, against the yield of plain steel over three, the factor of the simplified loads (iec61400-2, from memory, not opened); the key’s flanks against half of that yield. Asked where shaft and bearings are described. Blocks the outdoor class.',
  measure: (chain) => {
    const result = found(chain)
    return result === undefined ? undefined : { ...hardest(result), unit: 'MPa', sound: 'below' }
  },
  answeredBy: 'A calculation of the shaft by somebody who signs for it, with the steel’s own sheet.',
  judge: (chain) => {
    const result = found(chain)
    if (result === undefined) return undefined
    const { name, value, limit } = hardest(result)
    if (value <= limit) return undefined
    return {
      code: 'shaft-strength',
      severity: severityFor(chain, ['outdoor']),
      path: 'shaft.diameter_mm',
      what: 'The shaft or its key is stressed beyond what it may bear.',
      why: 'A shaft that turns bends back and forth with every turn, so a stress far below the yield cracks it in the end; a sudden short and a fast yaw come on top.',
      figures: `${name}: ${formatSi(value, 'MPa')}, may be ${formatSi(limit, 'MPa')}; torque ${formatSi(result.torque, 'Nm')} in work and ${formatSi(result.shortTorque, 'Nm')} in a short, bending ${formatSi(result.moment, 'Nm')} in work and ${formatSi(result.extremeMoment, 'Nm')} at the worst.`,
      remedies: [
        'Take a thicker shaft: the stress falls with the cube of the diameter.',
        'Bring the blades nearer to the front bearing.',
        'Use a longer key, or a clamped taper in its place.',
        `Have the shaft checked by a competent engineer before it carries blades. ${towerCaution}`,
      ],
    }
  },
}
