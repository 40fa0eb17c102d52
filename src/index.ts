/** The front door: every public name of the engine, listed by hand, in reading order. */

// the chain
export {
  type BladeDesign,
  type BladeDesignOptions,
  type BladeLimits,
  type BladeVariant,
  bladeDesign,
} from './analysis/blade-design.ts'
export { type BladeFigure, bladeFigure } from './analysis/blade-figure.ts'
export {
  type BuildFigures,
  type BuildGoal,
  type BuildTolerance,
  type BuildToleranceOptions,
  buildTolerance,
  type FigureScatter,
  fewestBuilds,
  mostBuilds,
  type ToleranceEffect,
} from './analysis/build-tolerance.ts'
export { type CircuitPlan, circuitPlan } from './analysis/circuit-plan.ts'
export { type CoilPhasors, coilPhasors } from './analysis/coil-phasor.ts'
export { type Chain, chainOf, computeDesign } from './analysis/compute.ts'
export {
  type ConcernRemedyOptions,
  type ConcernRemedyReport,
  type ConcernShift,
  type ConcernTrials,
  concernRemedies,
  type RemedyFigures,
  type RemedyOutcome,
  remedyOutcomes,
  type SkippedStep,
  type Standing,
  type TriedRemedy,
} from './analysis/concern-remedies.ts'
export {
  type Concern,
  type ConcernAnswer,
  type ConcernMeasure,
  type ConcernRemedy,
  concernCodes,
  isOpen,
  remedyWords,
  type Severity,
  severities,
  type TriableRemedy,
} from './analysis/concerns.ts'
export { type ContestRule, contestRules, contestRuleWords } from './analysis/contest-rule.ts'
export { type Defect, defectWords } from './analysis/defect-catalogue.ts'
export {
  type ConcernDifference,
  concernDifferences,
  documentDifferences,
  type FigureDifference,
  figureDifferences,
} from './analysis/design-difference.ts'
export { type DesignFigures, designFigures, type FigureName, figureNames } from './analysis/design-figure.ts'
export { type EnergyByWind, energyByWind } from './analysis/energy-by-wind.ts'
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
export { type GapMap, gapMap, gapMapCells } from './analysis/gap-map.ts'
export { type GeneratorTarget, generatorTarget } from './analysis/generator-target.ts'
export { type HeatCase, type HeatStudy, type HeatStudyOptions, heatStudy } from './analysis/heat-study.ts'
export { compareVolts, type VoltsComparison } from './analysis/kind-of-volts.ts'
export { loadPoint } from './analysis/load-point.ts'
export { type LoadedReading, loadedReading } from './analysis/loaded-reading.ts'
export { type MachineFace, machineFace } from './analysis/machine-face.ts'
export type { MachineHeat, PartTemperatures } from './analysis/machine-heat.ts'
export { type MachineSection, machineSection } from './analysis/machine-section.ts'
export { type MatchMap, type MatchState, type MatchWind, matchMap } from './analysis/match-map.ts'
export { matchRemedies, type Remedy, type RemedyReport } from './analysis/match-remedies.ts'
export type { NextMeasurement } from './analysis/measure-next.ts'
export { type MechanicsStudy, mechanicsStudy } from './analysis/mechanics/mechanics-study.ts'
export { type MeterFlag, type MeterReading, meterReading, probedWave } from './analysis/meter-reading.ts'
export { type OhmReading, ohmReadings } from './analysis/ohm-reading.ts'
export {
  type DifferenceSpread,
  type DifferenceVerdict,
  type PairedSpread,
  pairedSpread,
} from './analysis/paired-spread.ts'
export type { WindRow, WindState } from './analysis/power-curve.ts'
export { type ProbePoint, probePoints } from './analysis/probe-point.ts'
export { type Change, withChanges } from './analysis/remedy/change.ts'
export { type ScenarioStudy, type ScenarioStudyOptions, scenarioStudy } from './analysis/scenario-study.ts'
export {
  type ResultSpread,
  type SpreadCause,
  type SpreadCurve,
  type SpreadStudy,
  type Spreads,
  spreadStudy,
  spreadStudyFrom,
  spreadsOf,
} from './analysis/spread.ts'
export { type SpreadOutput, spreadOutputNames } from './analysis/spread-output.ts'
export { type SpreadOptions, type SpreadPlan, spreadPlan } from './analysis/spread-plan.ts'
export { drawWidth, spreadSamples } from './analysis/spread-sample.ts'
export { finished, type Steps } from './analysis/step.ts'
export { type StormWindKind, stormWindKinds } from './analysis/storm-wind.ts'
export {
  type TemperatureByWind,
  type TemperatureLimit,
  type TemperatureLine,
  temperatureByWind,
  temperatureLimits,
} from './analysis/temperature-by-wind.ts'
export { type TurnSource, turnSource } from './analysis/turn-source.ts'
export { type TurnVerdict, turnVerdict } from './analysis/turn-verdict.ts'
export { voltageAlongWire } from './analysis/voltage-along-wire.ts'
export { type VoltageHarmonics, voltageHarmonics } from './analysis/voltage-harmonics.ts'
export { type WarmUp, warmUp } from './analysis/warm-up.ts'
export { shaftPower, type Watts, wattColumns } from './analysis/watts.ts'
export {
  type FactorCause,
  type FactorRow,
  factorCauses,
  type WindingFactors,
  windingFactors,
} from './analysis/winding-factors.ts'
export { type WindingPlan, windingPlan } from './analysis/winding-plan.ts'
export { wireAngleCurve } from './analysis/wire-angle.ts'
export { type WireChoice, type WireChoices, type WireOutcome, wireChoices } from './analysis/wire-choice.ts'
export {
  inPhasePerMetre,
  instantPerMetre,
  peakAngle,
  type VoltageAlongWire,
} from './analysis/wire-reading.ts'
export { type NeedCover, type Worth, type WorthStep, worthOf } from './analysis/worth.ts'
export { monthNames } from './analysis/worth-verdict.ts'
export { energyInWinds, type Year } from './analysis/year.ts'
// a design document
export { type Design, designJsonSchema } from './machine/design.ts'
export { designFields, designForm, type FieldDescription, type FormField } from './machine/design-fields.ts'
export { type Fault, faultText } from './machine/fault.ts'
export type { Machine } from './machine/machine.ts'
export { type Meter, meterNames, meterOf, meterOfClass } from './machine/meter.ts'
export { designVersion, migrated } from './machine/migration.ts'
export { type Parsed, parseDesign, parseDesignText } from './machine/parse.ts'
export {
  type PolarText,
  type PolarTextFault,
  type PolarTextNote,
  parsePolarText,
} from './machine/polar-text.ts'
export { resolveDesign } from './machine/resolve.ts'
export { type ParsedStock, parseStock, type Stock } from './machine/stock.ts'
// measured wind
export { type SpeedUnit, speedUnits } from './measurement/column-role.ts'
export { type ImportReport, refusalKinds, type WindQuestion } from './measurement/import-report.ts'
export { measuredSite } from './measurement/measured-site.ts'
export { importWind, type WindImport, type WindImportOptions } from './measurement/wind-import.ts'
export type { WindSeries } from './measurement/wind-series.ts'
export { type WindStatistics, windStatistics } from './measurement/wind-statistics.ts'
// refusals
export { type RefusalCode, refusalCodes } from './refusal/code.ts'
export { Refusal } from './refusal/require.ts'
// numbers with units
export { type FirstMachine, type FirstMachines, firstMachines } from './search/first-machine.ts'
export { formatNumber, formatSi, formatSpread } from './units/format.ts'
export { knownOf, nominal, type Quantity, spreadOf } from './units/quantity.ts'
