/** The magnets of a pole as pictures show them. */
import type { RotorField } from './air-gap-field.ts'

type PoleMagnets = RotorField['poles'][number]['magnets']

/** Of components in one place the stronger is drawn. */
export const drawnMagnets = (magnets: PoleMagnets): PoleMagnets =>
  magnets.filter((one) =>
    magnets.every(
      (other) =>
        'outline' in other ||
        Math.abs(other.polarization) <= Math.abs(one.polarization) ||
        other.centre.some((x, axis) => x !== one.centre[axis]),
    ),
  )
