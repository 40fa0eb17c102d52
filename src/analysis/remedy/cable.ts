/** Remedy: a thicker cable on the same route. */
import { cableSizes } from '../../data/cable.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

/** Sizes above the one at hand that are tried. */
const sizesTried = 4

function attempts({ cable }: Design): Attempt[] {
  const area = nominal(cable.area_mm2)
  return cableSizes
    .filter(({ crossSection_mm2 }) => crossSection_mm2 > area * 1.001)
    .slice(0, sizesTried)
    .map(({ crossSection_mm2 }) => ({
      changes: [valueChange(['cable', 'area_mm2'], cable.area_mm2, crossSection_mm2)],
    }))
}

export const cableRemedy: RemedyRule = {
  kind: 'cable',
  unfit: ({ design }) =>
    !(nominal(design.cable.length_m) > 0)
      ? 'there is no cable'
      : attempts(design).length === 0
        ? 'no thicker cable is in the table of sizes'
        : undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
