/** What a build shows and gives: volts, imbalance, hum, circulating watts, air, balance. */
import { type FourierSeries, seriesPeak, seriesRms, seriesScaled, seriesSum } from '../numerics/fourier.ts'
import { branchCirculation, deltaCirculation } from '../physics/winding/circulation.ts'
import { type BuildBalance, buildBalance } from './build-balance.ts'
import type { BuildBasis } from './build-basis.ts'
import type { BuildError } from './build-error.ts'
import { type BuildVoltage, buildAssembly } from './build-voltage.ts'
import type { VoltsAndOhms } from './build-watts.ts'
import type { Chain } from './compute.ts'
import { relativeSpread } from './concern/phase-imbalance.ts'
import { tellingWind } from './telling-wind.ts'

export interface BuildOutcome extends Omit<VoltsAndOhms, 'extraLoss'>, BuildBalance {
  /** Mean volts of the phases over the drawing's [1]. */
  readonly meanVolts: number
  /** Strongest phase less the weakest over their mean, and what of it the drawing does not have [1]. */
  readonly spread: number
  readonly imbalance: number
  /** Part of the volts of the worst phase that does not repeat from pole pair to pole pair: hum once a turn [1]. */
  readonly hum: number
  /** Current between unlike branches, or round a delta, at the telling speed: the largest, rms [A], and its watts. */
  readonly circulating: { readonly current: number; readonly loss: number }
  /** Highest volts over the speed that the bridge meets, which let the first current through [V·s/rad]. */
  readonly peak: () => number
}

/** Parallel branches that drive current through each other, or a closed delta. */
export const mayCirculate = ({ machine, layout }: Pick<Chain, 'machine' | 'layout'>): boolean =>
  layout.groups > 1 || (machine.stator.connection === 'delta' && layout.phaseCount === 3)

/** Volts of the orders that are none of the working one's. */
function humOf(emf: FourierSeries, polePairs: number): number {
  let [all, beside] = [0, 0]
  for (let h = 1; h < emf.cos.length; h++) {
    const square = emf.cos[h]! ** 2 + emf.sin[h]! ** 2
    all += square
    if (h % polePairs !== 0) beside += square
  }
  return all > 0 ? Math.sqrt(beside / all) : 0
}

/** Currents with nothing connected, copper cold, at the speed of the telling wind. */
function circulatingOf(chain: Chain, volts: BuildVoltage, resistance: readonly number[], speed: number) {
  const { layout, wound, machine } = chain
  let [current, loss] = [0, 0]
  const at = (emf: readonly FourierSeries[]) => emf.map((series) => seriesScaled(series, speed))
  if (layout.groups > 1)
    volts.branches.forEach((branches, phase) => {
      if (branches.length < 2) return
      const members = Array.from({ length: layout.groups }, (_, group) =>
        layout.coils.flatMap((coil, index) =>
          coil.phase === phase && coil.group === group ? [{ index, sense: coil.sense }] : [],
        ),
      ).filter((own) => own.length > 0)
      const round = branchCirculation({
        emf: at(branches.map(({ emf }) => emf)),
        resistance: branches.map((branch) => branch.resistance),
        inductance: members.map((a) =>
          members.map((b) =>
            a.reduce(
              (sum, i) =>
                sum +
                b.reduce((part, j) => part + i.sense * j.sense * wound.coilInductance[i.index]![j.index]!, 0),
              0,
            ),
          ),
        ),
        angularFrequency: speed,
      })
      current = Math.max(current, ...round.currentRms)
      loss += round.loss
    })
  if (machine.stator.connection === 'delta' && volts.emf.length === 3) {
    const round = deltaCirculation({
      emf: at(volts.emf),
      resistance,
      inductance: chain.voltage.inductance,
      angularFrequency: speed,
    })
    current = Math.max(current, ...round.currentRms)
    loss += round.loss
  }
  return { current, loss }
}

/** What rounding leaves of nothing is nothing. */
const told = (share: number): number => (share < 1e-9 ? 0 : share)

/** Between which points a bridge sees the volts: phase against phase in a star, else each phase. */
function linePeak({ stator }: Chain['machine'], { emf }: Pick<BuildVoltage, 'emf'>): number {
  const lines =
    stator.connection === 'star' && emf.length > 1
      ? emf.map((series, k) => seriesSum([series, seriesScaled(emf[(k + 1) % emf.length]!, -1)]))
      : emf
  return Math.max(...lines.map(seriesPeak))
}

/** Reads builds of a machine off, watts aside. */
export function buildReader(chain: Chain, basis: BuildBasis): (error: BuildError) => BuildOutcome {
  const { machine, voltage, wound } = chain
  const volts = buildAssembly(chain, basis)
  const balance = buildBalance(chain)
  const { speed } = tellingWind(chain).row
  const circulates = mayCirculate(chain) && speed > 0
  const drawnRms = voltage.phases.map(({ rms }) => rms)
  const drawnOhms = voltage.phases.map(({ resistance }) => resistance)
  const drawnSpread = told(relativeSpread(drawnRms))
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
  // of nothing nothing can be lost
  const ratio = (value: number, drawn: number) => (drawn > 0 ? value / drawn : 1)
  const read = (error: BuildError): BuildOutcome => {
    const built = volts(error)
    const rms = built.emf.map(seriesRms)
    const ohms = built.resistance.map((R, k) => R + wound.phaseLeadResistance[k]!)
    const circulating = circulates ? circulatingOf(chain, built, ohms, speed) : { current: 0, loss: 0 }
    const spread = told(relativeSpread(rms))
    return {
      volts: rms.map((one, k) => ratio(one, drawnRms[k]!)),
      ohms: ratio(mean(ohms), mean(drawnOhms)),
      meanVolts: ratio(mean(rms), mean(drawnRms)),
      spread,
      imbalance: Math.max(0, spread - drawnSpread),
      hum: Math.max(...built.emf.map((emf) => humOf(emf, machine.rotor.polePairs))),
      circulating,
      peak: () => linePeak(machine, built),
      ...balance(error),
    }
  }
  return read
}
