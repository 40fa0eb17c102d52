/** Concern: the shorted winding is too weak a brake for the wind in which it is needed. */
import { formatSi } from '../../units/format.ts'
import { limiterWind } from '../power-curve.ts'
import { brakedState, shortCircuit } from '../short-circuit.ts'
import { towerCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** The copper is taken warm, as after a windy hour [K]. */
const copperTemperature = 333.15

/** Speeds of the table of braking torques. */
const tableSteps = 24

export const brakeTorque: ConcernRule = {
  code: 'brake-torque',
  title: 'Shorting the winding does not stop the rotor in the wind where it must',
  basis:
    'Torque of the shorted winding (fundamental, its inductance, copper at 60 °C) against the blades’ torque from the working speed down, in every wind up to the mechanical limiter’s, or up to the storm where there is none. Blocks the outdoor class where shorting is the only limiter; otherwise a warning.',
  judge: (chain) => {
    const { machine, blades } = chain
    if (machine.protection.electrical !== 'shorting switch') return undefined
    const alone = machine.protection.mechanical === 'none'
    const wanted = alone ? machine.site.stormWind : Math.min(limiterWind(machine), machine.site.stormWind)
    const rows = chain.rows.filter(({ wind, speed }) => wind <= wanted + 1e-9 && speed > 0)
    const fastest = rows.reduce((most, { speed }) => Math.max(most, speed), 0)
    if (!(fastest > 0)) return undefined
    const short = shortCircuit(machine, chain.voltage)
    const table = Float64Array.from(
      { length: tableSteps + 1 },
      (_, k) => short((fastest * k) / tableSteps, copperTemperature).torque,
    )
    const braking = (speed: number) => {
      const at = Math.min((speed / fastest) * tableSteps, tableSteps - 1e-9)
      const k = Math.floor(at)
      return table[k]! + (at - k) * (table[k + 1]! - table[k]!)
    }
    const failing = rows.find(
      ({ wind, speed }) => !brakedState((at) => blades.torque(wind, at), braking, speed).holds,
    )
    if (failing === undefined) return undefined
    const { speed: settled } = brakedState((at) => blades.torque(failing.wind, at), braking, failing.speed)
    const strongest = table.reduce((most, torque) => Math.max(most, torque), 0)
    return {
      code: 'brake-torque',
      severity: alone ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'protection.electrical',
      what: `From about ${formatSi(failing.wind, 'm_per_s')} on the shorted winding slows the rotor too little: it does not come down to half its speed.`,
      why: 'The torque of a short has a top: above some speed the winding’s own reactance holds the current, and its resistance does so from the start, while the blades’ torque grows with the square of the wind.',
      figures: `In ${formatSi(failing.wind, 'm_per_s')} at ${formatSi(failing.speed, 'rpm')} the blades give ${formatSi(blades.torque(failing.wind, failing.speed), 'Nm')} and the short takes ${formatSi(braking(failing.speed), 'Nm')}, at its strongest ${formatSi(strongest, 'Nm')}; ${settled < failing.speed ? `it goes on turning at ${formatSi(settled, 'rpm')}` : 'it cannot even slow the rotor'}; wanted up to ${formatSi(wanted, 'm_per_s')}.`,
      remedies: [
        alone
          ? 'Add a mechanical limiter and use the short for parking only.'
          : `Let the mechanical limiter act below ${formatSi(failing.wind, 'm_per_s')}, and short the winding below that wind only.`,
        'Put the shorting switch at the machine’s own leads, before any long cable.',
        'Lower the winding’s resistance or raise its volts per turn of the shaft: thicker copper, a smaller gap, stronger magnets.',
        `Write the greatest wind for the brake beside the switch. ${towerCaution}`,
      ],
    }
  },
}
