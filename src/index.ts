/** The front door: every public name of the engine, listed by hand, in reading order. */

// the chain
export { type Chain, chainOf, computeDesign } from './analysis/compute.ts'
export { type Concern, type Severity, severities } from './analysis/concerns.ts'
export { type ContestRule, contestRules, contestRuleWords } from './analysis/contest-rule.ts'
export { type Defect, defectWords } from './analysis/defect-catalogue.ts'
export {
  type Contest,
  type ContestOptions,
  fairContest,
  scoreKinds,
  scoreNames,
} from './analysis/fair-contest.ts'
export {
  type Diagnosis,
  type LikelyDefect,
  likelyDefects,
  type MeterReadings,
} from './analysis/fault-diagnosis.ts'
export {
  type FaultCase,
  type FaultStudy,
  type FaultStudyOptions,
  faultStudy,
} from './analysis/fault-study.ts'
export { loadPoint } from './analysis/load-point.ts'
export type { WindRow, WindState } from './analysis/power-curve.ts'
export { type ResultSpread, type SpreadCause, type Spreads, spreadsOf } from './analysis/spread.ts'
export { finished, type Steps } from './analysis/step.ts'
export { voltageAlongWire } from './analysis/voltage-along-wire.ts'
export { shaftPower, type Watts, wattColumns } from './analysis/watts.ts'
export {
  type FactorCause,
  type FactorRow,
  factorCauses,
  type WindingFactors,
  windingFactors,
} from './analysis/winding-factors.ts'
export { wireAngleCurve } from './analysis/wire-angle.ts'
export { type WireChoice, type WireChoices, type WireOutcome, wireChoices } from './analysis/wire-choice.ts'
export {
  inPhasePerMetre,
  instantPerMetre,
  peakAngle,
  type VoltageAlongWire,
} from './analysis/wire-reading.ts'
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
