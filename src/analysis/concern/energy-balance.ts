/** Concern: more power is claimed than the shaft, or the wind, can give. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal, spreadOf } from '../../units/quantity.ts'
import { largerRotor } from '../ladder/blade.ts'
import { claimWithdrawn, lowerGoal } from '../ladder/goal.ts'
import { both, triable } from '../ladder/ladder.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** Allowed over the shaft's power where no spreads are stated, as a share: common practice, no source. */
export const claimTolerance = 0.05

/** Shaft power [W]: P = T ω, ω = 2π n/60. */
export const shaftPowerOf = (at: { readonly torque: number; readonly rpm: number }): number =>
  (at.torque * 2 * Math.PI * at.rpm) / 60

export interface Claim {
  readonly power: number
  readonly shaftPower: number
  /** Half-widths at 90 % of both, 0 where not said [W]. */
  readonly powerSpread: number
  readonly shaftSpread: number
}

export const claimExceedsShaft = ({ power, shaftPower, powerSpread, shaftSpread }: Claim): boolean => {
  const allowance = Math.max(Math.hypot(powerSpread, shaftSpread), claimTolerance * shaftPower)
  return power > shaftPower + allowance
}

/** Greatest share of the wind's power that a rotor can take (Betz). */
export const betzLimit = 16 / 27

interface Excess {
  readonly path: string
  readonly measure: { readonly name: string; readonly value: number; readonly limit: number }
  readonly figures: string
}

/** Claims above the shaft's power, and a goal above the wind's. */
function excessesOf(chain: ChainView): Excess[] {
  const { design } = chain.machine
  const found: Excess[] = design.bench.claims.flatMap((claim, k) => {
    if (claim.speed_rpm === undefined || claim.shaftTorque_Nm === undefined) return []
    const rpm = nominal(claim.speed_rpm)
    const torque = nominal(claim.shaftTorque_Nm)
    const power = nominal(claim.power_W)
    const shaftPower = shaftPowerOf({ torque, rpm })
    const relative =
      torque > 0 ? Math.hypot(spreadOf(claim.shaftTorque_Nm) / torque, spreadOf(claim.speed_rpm) / rpm) : 0
    const exceeds = claimExceedsShaft({
      power,
      shaftPower,
      powerSpread: spreadOf(claim.power_W),
      shaftSpread: relative * shaftPower,
    })
    return exceeds
      ? [
          {
            path: `bench.claims[${k}]`,
            measure: { name: 'power claimed', value: power, limit: shaftPower },
            figures: `${formatSi(power, 'W')} claimed from ${formatSi(torque, 'Nm')} at ${formatNumber(rpm)} rpm, which is ${formatSi(shaftPower, 'W')} at the shaft${shaftPower > 0 ? `: ${formatSi(power / shaftPower, 'percent')}` : ''}.`,
          },
        ]
      : []
  })
  design.bench.claims.forEach(({ power_W, efficiency_percent }, k) => {
    const efficiency = efficiency_percent === undefined ? 0 : nominal(efficiency_percent) / 100
    if (!(efficiency > 1)) return
    const power = nominal(power_W)
    found.push({
      path: `bench.claims[${k}]`,
      measure: { name: 'power claimed', value: power, limit: power / efficiency },
      figures: `${formatSi(power, 'W')} claimed at an efficiency of ${formatSi(efficiency, 'percent')}: more comes out than goes in.`,
    })
  })
  const { power_W, atWind_m_per_s } = design.purpose
  if (power_W !== undefined && atWind_m_per_s !== undefined) {
    const most = betzLimit * chain.blades.available(nominal(atWind_m_per_s))
    if (nominal(power_W) > most)
      found.push({
        path: 'purpose.power_W',
        measure: { name: 'power wanted', value: nominal(power_W), limit: most },
        figures: `${formatSi(nominal(power_W), 'W')} wanted in ${formatSi(nominal(atWind_m_per_s), 'm_per_s')}, where no rotor of this size can take more than ${formatSi(most, 'W')}.`,
      })
  }
  return found
}

export const energyBalance: ConcernRule = {
  code: 'energy-balance',
  title: 'More power is claimed than goes in',
  basis:
    'Claimed power against torque times speed, with the stated spreads or 5 % (common practice, no source); claimed efficiency against one; and the goal against 16/27 of the wind’s power through the swept area (Betz). Blocks the outdoor class, a warning in the others: figures that cannot be must not be published.',
  measure: (chain) => {
    const first = excessesOf(chain)[0]
    return first && { ...first.measure, unit: 'W', sound: 'below' }
  },
  judge: (chain) => {
    const { design } = chain.machine
    const found = excessesOf(chain)
    const first = found[0]
    if (first === undefined) return undefined
    const claim = /^bench\.claims\[(\d+)\]$/.exec(first.path)
    return {
      code: 'energy-balance',
      severity: severityFor(chain, ['outdoor']),
      path: first.path,
      what:
        claim !== null
          ? 'More power is claimed at the terminals than the shaft delivered.'
          : 'More power is wanted than the wind holds for a rotor of this size.',
      why: 'No machine gives more than it takes; an excess is an error of measurement or of units.',
      figures: found.map(({ figures }) => figures).join(' '),
      remedies:
        claim !== null
          ? [
              'Check the lever arm, its zero with the rotor at rest, and the speed by a second method.',
              'Check the kind of volts: peak, rms and mean differ by up to 57 %, line and phase by 73 %.',
              'Measure volts and amps at once, into a load whose heat you can feel.',
              found.length > 1 && found.at(-1)!.path.startsWith('purpose')
                ? triable(
                    'Withdraw the claim until then, and ask for less, or for more wind.',
                    both(lowerGoal(design), claimWithdrawn(design, Number(claim[1]))),
                  )
                : triable('Withdraw the claim until then.', claimWithdrawn(design, Number(claim[1]))),
            ]
          : [
              triable(
                'Build a larger rotor: the power goes with the square of its diameter.',
                largerRotor(design),
              ),
              triable('Or ask for less, or for more wind.', lowerGoal(design)),
            ],
    }
  },
}
