/** Temperatures that the parts under load are judged at. */
import type { Chain } from '../compute.ts'
import { rowOfMost } from '../concern/extreme-row.ts'

export interface MechanicalHeat {
  /** Of the winding and what it is cast in, of the disc or drum that carries the magnets, of the bearings [K]. */
  readonly winding: number
  readonly rotor: number
  readonly bearings: number
  /** How they are known. */
  readonly how: string
}

/** The hottest copper of the power curve; what turns sits in the wind of its turning, at the air's temperature. */
export function mechanicalHeat({ machine, rows }: Pick<Chain, 'machine' | 'rows'>): MechanicalHeat {
  const { ambient } = machine.site
  const hottest = rowOfMost(rows, ({ copperTemperature }) => copperTemperature)
  return {
    winding: hottest?.copperTemperature ?? ambient,
    rotor: ambient,
    bearings: ambient,
    how: 'hottest copper of the power curve; the rotor at the temperature of the air',
  }
}
