/** The front door: every public name of the engine, listed by hand, in reading order. */

// the chain
export { type Chain, chainOf, computeDesign } from './analysis/compute.ts'
export { type Concern, type Severity, severities } from './analysis/concerns.ts'
// a contest of designs
export { type ContestRule, contestRules, contestRuleWords } from './analysis/equal-resource.ts'
export {
  type Contest,
  type ContestOptions,
  fairContest,
  scoreKinds,
  scoreNames,
} from './analysis/fair-contest.ts'
export { loadPoint } from './analysis/load-point.ts'
export type { WindRow, WindState } from './analysis/power-curve.ts'
export { type ResultSpread, type SpreadCause, type Spreads, spreadsOf } from './analysis/spread.ts'
export { finished, type Steps } from './analysis/step.ts'
export { shaftPower, type Watts, wattColumns } from './analysis/watts.ts'
// a design document
export { type Design, designJsonSchema } from './machine/design.ts'
export { designFields, designForm, type FieldDescription, type FormField } from './machine/design-fields.ts'
export { type Fault, faultText } from './machine/fault.ts'
export type { Machine } from './machine/machine.ts'
export { designVersion, migrated } from './machine/migration.ts'
export { type Parsed, parseDesign, parseDesignText } from './machine/parse.ts'
export { resolveDesign } from './machine/resolve.ts'
// refusals
export { type RefusalCode, refusalCodes } from './refusal/code.ts'
export { Refusal } from './refusal/require.ts'
// numbers with units
export { formatNumber, formatSi, formatSpread } from './units/format.ts'
export { knownOf, nominal, type Quantity, spreadOf } from './units/quantity.ts'
