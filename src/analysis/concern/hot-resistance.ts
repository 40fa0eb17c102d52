/** Concern: a resistance without its temperature, or an efficiency reckoned with cold copper. */
import { resistanceRatio } from '../../physics/electrics/resistance.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { terminalResistances } from '../bench-reading.ts'
import { shaftPower } from '../watts.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Share by which a reading carried to 20 °C may miss the computed resistance: common practice, no source. */
export const resistanceTolerance = 0.1

type Reading = ChainView['machine']['design']['bench']['resistances'][number]

/** A reading carried to 20 °C [Ω]. */
export const coldResistance = (reading: {
  readonly resistance: number
  /** [K] */
  readonly temperature: number
  /** α [1/K] */
  readonly coefficient: number
}): number => reading.resistance / resistanceRatio(reading)

/** Efficiency with hot copper where it was reckoned with cold: the copper's share of the losses grows by `ratio`. */
export function hotEfficiency({
  efficiency,
  copperShare,
  ratio,
}: {
  readonly efficiency: number
  /** Of the shaft's power, with cold copper. */
  readonly copperShare: number
  readonly ratio: number
}): number {
  return efficiency - copperShare * (ratio - 1)
}

function computedAt(chain: ChainView, place: Reading['place']): number {
  const phases = chain.voltage.phases.map(({ resistance }) => resistance)
  const { connection } = chain.machine.stator
  const read = place === 'phase' ? phases : terminalResistances(connection, phases)
  return read.reduce((sum, R) => sum + R, 0) / read.length
}

/** The hottest working copper, and what it does to resistance. */
function hottestCopper(chain: ChainView) {
  const { machine } = chain
  const row = rowOfMost(chain.rows, ({ copperTemperature }) => copperTemperature)
  const temperature = row?.copperTemperature ?? machine.site.ambient
  return {
    row,
    temperature,
    ratio: resistanceRatio({ coefficient: machine.stator.wire.temperatureCoefficient, temperature }),
  }
}

function efficiencyFigures(chain: ChainView, efficiency: number): string {
  const { row, temperature, ratio } = hottestCopper(chain)
  if (row === undefined) return `${formatSi(efficiency, 'percent')} claimed with cold copper.`
  const { watts } = row
  const shaft = shaftPower(watts)
  const copperShare = shaft > 0 ? watts.winding / ratio / shaft : 0
  return `${formatSi(efficiency, 'percent')} claimed; in ${formatSi(row.wind, 'm_per_s')} the copper is ${formatSi(temperature, 'degC', 3)} warm and has ${formatNumber(ratio)} times the resistance of 20 °C, which leaves ${formatSi(hotEfficiency({ efficiency, copperShare, ratio }), 'percent')} at the same amps.`
}

export const hotResistance: ConcernRule = {
  code: 'hot-resistance',
  title: 'Resistance is taken cold, or at a temperature nobody noted',
  basis:
    'An efficiency claimed from the resistance when cold, or from a resistance while it is not said how warm: a warning, with the efficiency that the hot copper leaves. A resistance read without its temperature: a note. One read with its temperature that, carried to 20 °C, misses the computed one by more than 10 % (common practice, no source): a warning, for a joint, a short circuit between turns, or a miscount.',
  judge: (chain) => {
    const { machine } = chain
    const { resistances, claims } = machine.design.bench
    const coefficient = machine.stator.wire.temperatureCoefficient
    const claimAt = claims.findIndex(
      ({ efficiency_percent, efficiencyFrom }) =>
        efficiency_percent !== undefined &&
        (efficiencyFrom === 'resistance when cold' || efficiencyFrom === undefined),
    )
    const claimed = claims[claimAt]?.efficiency_percent
    const judged = resistances.map((reading, k) => {
      const warm = reading.winding_degC
      const computed = computedAt(chain, reading.place)
      const read = nominal(reading.resistance_ohm)
      const cold =
        warm === undefined
          ? undefined
          : coldResistance({ resistance: read, temperature: nominal(warm) + 273.15, coefficient })
      return { k, read, computed, cold, place: reading.place }
    })
    const off = judged.find(
      ({ cold, computed }) => cold !== undefined && Math.abs(cold / computed - 1) > resistanceTolerance,
    )
    const unknown = judged.find(({ cold }) => cold === undefined)
    if (claimed === undefined && off === undefined && unknown === undefined) return undefined
    const percent = (from: number, to: number) => `${formatNumber(100 * (to / from - 1), 2)} %`
    const { temperature, ratio } = hottestCopper(chain)
    return {
      code: 'hot-resistance',
      severity: claimed !== undefined || off !== undefined ? 'warning' : 'note',
      path:
        claimed !== undefined
          ? `bench.claims[${claimAt}].efficiencyFrom`
          : `bench.resistances[${(off ?? unknown)!.k}]`,
      what:
        claimed !== undefined
          ? 'An efficiency is claimed without the heat of the winding.'
          : off !== undefined
            ? 'A resistance, carried to 20 °C, is not that of the winding as drawn.'
            : 'A resistance was read, and nobody noted how warm the copper was.',
      why: 'Copper gains 0.39 % of its resistance with every degree: a winding at 80 °C has a quarter more than on the bench in the morning, and burns a quarter more at the same amps.',
      figures: [
        ...(claimed === undefined ? [] : [efficiencyFigures(chain, nominal(claimed) / 100)]),
        ...(off?.cold === undefined
          ? []
          : [
              `Reading ${off.k + 1}, ${off.place}: ${formatSi(off.read, 'ohm')}, at 20 °C ${formatSi(off.cold, 'ohm')}; computed ${formatSi(off.computed, 'ohm')}, ${percent(off.computed, off.cold)} beside it (limit 10 %).`,
            ]),
        ...(unknown === undefined
          ? []
          : [
              `Reading ${unknown.k + 1}, ${unknown.place}: ${formatSi(unknown.read, 'ohm')} at an unknown temperature; computed ${formatSi(unknown.computed, 'ohm')} at 20 °C and ${formatSi(unknown.computed * ratio, 'ohm')} at ${formatSi(temperature, 'degC', 3)}, the hottest of its work.`,
            ]),
      ].join(' '),
      remedies: [
        ...(claimed !== undefined
          ? ['Measure watts in by torque and speed and watts out by volts and amps, warm, and claim that.']
          : []),
        ...(off !== undefined
          ? ['Read all phases by four wires: one that differs has the bad joint or the shorted turn.']
          : []),
        'Note the temperature of the copper beside every resistance; on a machine that has stood overnight it is that of the room.',
        'Read the resistance within seconds of stopping: it is the best thermometer of the winding.',
      ],
    }
  },
  measure: (chain) => {
    const coefficient = chain.machine.stator.wire.temperatureCoefficient
    const errors = chain.machine.design.bench.resistances.flatMap(
      ({ winding_degC, resistance_ohm, place }) => {
        if (winding_degC === undefined) return []
        const temperature = nominal(winding_degC) + 273.15
        const cold = coldResistance({ resistance: nominal(resistance_ohm), temperature, coefficient })
        return [Math.abs(cold / computedAt(chain, place) - 1)]
      },
    )
    if (errors.length === 0) return undefined
    return {
      name: 'resistance at 20 °C beside the computed one',
      value: Math.max(...errors),
      limit: resistanceTolerance,
      unit: 'percent',
      sound: 'below',
    }
  },
  answeredBy: 'Resistance of each phase by four wires, with the temperature of the copper.',
}
