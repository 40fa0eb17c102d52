/** The rules that are asked of every chain, in one list, and what they have to say, the gravest first. */

import { anemometerPlace } from './concern/anemometer-place.ts'
import { answered, idleAnswerRule } from './concern/answer.ts'
import { assemblyPull } from './concern/assembly-pull.ts'
import { batteryDisconnect } from './concern/battery-disconnect.ts'
import { batteryFrost } from './concern/battery-frost.ts'
import { batteryFuse } from './concern/battery-fuse.ts'
import { batteryGas } from './concern/battery-gas.ts'
import { batteryOvercharge } from './concern/battery-overcharge.ts'
import { bearingLifeRule } from './concern/bearing-life.ts'
import { bladeReynoldsRule } from './concern/blade-reynolds.ts'
import { brakeOrder } from './concern/brake-order.ts'
import { brakePlace } from './concern/brake-place.ts'
import { brakeTorque } from './concern/brake-torque.ts'
import { cableDrop } from './concern/cable-drop.ts'
import { capacitorVoltage } from './concern/capacitor-voltage.ts'
import { claimEvidence } from './concern/claim-evidence.ts'
import { clockDrift } from './concern/clock-drift.ts'
import { coilPoleBalanceRule } from './concern/coil-pole-balance.ts'
import { type ChainView, type Concern, type ConcernRule, severities } from './concern/concern.ts'
import { converterInput } from './concern/converter-input.ts'
import { converterStandby } from './concern/converter-standby.ts'
import { creep } from './concern/creep.ts'
import { deltaCirculationRule } from './concern/delta-circulation.ts'
import { diodeRating } from './concern/diode-rating.ts'
import { discBendingRule } from './concern/disc-bending.ts'
import { dumpPath } from './concern/dump-path.ts'
import { dumpPower } from './concern/dump-power.ts'
import { dumpVoltage } from './concern/dump-voltage.ts'
import { earthing } from './concern/earthing.ts'
import { energyBalance } from './concern/energy-balance.ts'
import { fieldNumber } from './concern/field-number.ts'
import { gapStack } from './concern/gap-stack.ts'
import { goalWind } from './concern/goal-wind.ts'
import { holdOut } from './concern/hold-out.ts'
import { hotResistance } from './concern/hot-resistance.ts'
import { labelVoltage } from './concern/label-voltage.ts'
import { lateCutIn } from './concern/late-cut-in.ts'
import { loadLoss } from './concern/load-loss.ts'
import { magnetDemagnetizationRule } from './concern/magnet-demagnetization.ts'
import { magnetHeat } from './concern/magnet-heat.ts'
import { magnetRetention } from './concern/magnet-retention.ts'
import { metalPartEddy } from './concern/metal-part-eddy.ts'
import { meterLimit } from './concern/meter-limit.ts'
import { phaseImbalance } from './concern/phase-imbalance.ts'
import { phaseOffsetRule } from './concern/phase-offset.ts'
import { placeData } from './concern/place-data.ts'
import { plasticSoftening } from './concern/plastic-softening.ts'
import { poleMapRule } from './concern/pole-map.ts'
import { powerCoefficient } from './concern/power-coefficient.ts'
import { reversedElement } from './concern/reversed-element.ts'
import { shaftStrength } from './concern/shaft-strength.ts'
import { shockBandRule } from './concern/shock-band.ts'
import { smallMagnet } from './concern/small-magnet.ts'
import { stallMatch } from './concern/stall-match.ts'
import { statorHeat } from './concern/stator-heat.ts'
import { strandCirculationRule } from './concern/strand-circulation.ts'
import { strandEddy } from './concern/strand-eddy.ts'
import { switchRating } from './concern/switch-rating.ts'
import { templateScale } from './concern/template-scale.ts'
import { threadLocking } from './concern/thread-locking.ts'
import { unloadedRatio } from './concern/unloaded-ratio.ts'
import { uprightLimiter } from './concern/upright-limiter.ts'
import { uprightStartRule } from './concern/upright-start.ts'
import { voltsKind } from './concern/volts-kind.ts'
import { voltsNotPower } from './concern/volts-not-power.ts'
import { whirling } from './concern/whirling.ts'
import { windGuess } from './concern/wind-guess.ts'
import { wireFit } from './concern/wire-fit.ts'
import { yokeSaturation } from './concern/yoke-saturation.ts'

export {
  type ChainView,
  type Concern,
  type ConcernAnswer,
  type ConcernMeasure,
  type ConcernRemedy,
  type ConcernRule,
  isOpen,
  remedyWords,
  type Severity,
  severities,
  severityFor,
  type TriableRemedy,
} from './concern/concern.ts'

/** What hurts people first, then what breaks the machine, then what disappoints, then what is good to know. */
const machineRules: readonly ConcernRule[] = [
  loadLoss,
  magnetRetention,
  threadLocking,
  shaftStrength,
  whirling,
  statorHeat,
  shockBandRule,
  brakeTorque,
  brakeOrder,
  brakePlace,
  dumpPower,
  dumpVoltage,
  dumpPath,
  batteryDisconnect,
  batteryFuse,
  switchRating,
  capacitorVoltage,
  converterInput,
  earthing,
  poleMapRule,
  phaseOffsetRule,
  coilPoleBalanceRule,
  reversedElement,
  gapStack,
  discBendingRule,
  creep,
  bearingLifeRule,
  assemblyPull,
  templateScale,
  diodeRating,
  smallMagnet,
  batteryFrost,
  batteryOvercharge,
  labelVoltage,
  energyBalance,
  voltsNotPower,
  voltsKind,
  claimEvidence,
  stallMatch,
  lateCutIn,
  unloadedRatio,
  deltaCirculationRule,
  plasticSoftening,
  magnetHeat,
  magnetDemagnetizationRule,
  cableDrop,
  wireFit,
  strandEddy,
  metalPartEddy,
  strandCirculationRule,
  yokeSaturation,
  converterStandby,
  batteryGas,
  fieldNumber,
  meterLimit,
  hotResistance,
  holdOut,
  windGuess,
  anemometerPlace,
  clockDrift,
  goalWind,
  powerCoefficient,
  phaseImbalance,
  bladeReynoldsRule,
  uprightStartRule,
  uprightLimiter,
  placeData,
]

export const concernRules: readonly ConcernRule[] = [...machineRules, idleAnswerRule(machineRules)]

/** Everything that the rules have to say of a chain, the gravest first, with the answers that the document holds. */
export function concernsOf(chain: ChainView): Concern[] {
  const found = concernRules.flatMap((rule) => {
    const concern = rule.judge(chain)
    return concern === undefined ? [] : [answered(chain, rule, concern)]
  })
  return found.sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity))
}

export const concernCodes: readonly string[] = concernRules.map(({ code }) => code)

/** Code, title and basis of every rule, in the order of the list: what the page of concerns is made of. */
export const concernReference = (): readonly Pick<ConcernRule, 'code' | 'title' | 'basis'>[] =>
  concernRules.map(({ code, title, basis }) => ({ code, title, basis }))
