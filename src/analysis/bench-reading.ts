/** What a bench would read of a machine: turned by hand with open terminals, and charging in one wind. */
import {
  type FourierSeries,
  fourierSeries,
  harmonicAmplitude,
  seriesRms,
  seriesSamples,
  seriesScaled,
  seriesSum,
} from '../numerics/fourier.ts'
import type { DiodeDuty, RectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import { shortedDiodeLoss } from './circulation.ts'
import type { Chain } from './compute.ts'
import { copperRatio, loadPoint } from './load-point.ts'
import { loopLosses } from './turn-loop.ts'

export interface BenchReading {
  /** Turned at this [rad/s] with nothing connected, rms [V]. */
  readonly handSpeed: number
  readonly phases: readonly number[]
  readonly lines: readonly number[]
  /** Of all phases in series: across the open corner of a delta. */
  readonly corner: number
  readonly coils: readonly number[]
  /** Amplitude of the working order [V]. */
  readonly phaseFundamentals: readonly number[]
  /** Lag of each phase behind the first [rad]. */
  readonly lags: readonly number[]
  /** 1: the phases follow each other as they are counted, −1: the other way round, 0: neither. */
  readonly sequence: 1 | 0 | -1
  /** Greatest less least of the coils, over their mean. */
  readonly coilSpread: number
  /** Of orders that do not repeat with every pole pair, over the working order: in the worst coil, in the worst phase. */
  readonly coilNotch: number
  readonly phaseNotch: number
  /** Volts of the phases over a whole turn [V]. */
  readonly waveform: readonly Float64Array[]
  /** Torque that currents inside the winding, and through a shorted diode, hold against the hand [N·m]. */
  readonly dragTorque: number
  /** Of it by turns closed on themselves, and by a shorted diode with the bridge left on the machine [N·m]. */
  readonly loopTorque: number
  readonly bridgeTorque: number
  /** Of each phase at 20 °C, and between the terminals as they come out [Ω]. */
  readonly phaseResistance: readonly number[]
  readonly terminalResistance: readonly number[]
  /** Charging in `wind` [m/s]: mean current [A], rms of its ripple over the mean, copper loss by phase [W]. */
  readonly wind: number
  readonly speed: number
  readonly dcCurrent: number
  readonly ripple: number
  /** Amplitude of the direct current's pulse once per electrical period, over the mean. */
  readonly pulse: number
  /** Mean of each line's current, of each phase's where each has its own bridge [A]: zero with a sound bridge. */
  readonly lineDirect: readonly number[]
  readonly diodes: readonly DiodeDuty[]
  readonly phaseLoss: readonly number[]
  /** In turns closed on themselves [W], part of their phase's loss. */
  readonly loopLoss: number
  /** [K], each coil with its share of the surface and no heat given to its neighbours: an upper bound. */
  readonly hottestCoil: { readonly number: number; readonly temperature: number }
}

/** Shares that are nothing but rounding. */
const withoutDust = (share: number): number => (share < 1e-9 ? 0 : share)

/** Samples of each working period in the waveform over a turn. */
const samplesPerPeriod = 40

/** Orders between the harmonics of the working one. */
function notch(series: FourierSeries, order: number): number {
  const working = harmonicAmplitude(series, order)
  if (order === 1 || !(working > 0)) return 0
  let sum = 0
  for (let h = 1; h < series.cos.length; h++)
    if (h % order !== 0) sum += series.cos[h]! ** 2 + series.sin[h]! ** 2
  return Math.sqrt(sum) / working
}

/** Lags of 120° and 240°, or the other way round, within a twelfth of a turn. */
function sequenceOf(lags: readonly number[]): 1 | 0 | -1 {
  if (lags.length !== 3) return 0
  const near = (lag: number, thirds: number) =>
    Math.cos(lag - (thirds * 2 * Math.PI) / 3) > Math.cos(Math.PI / 6)
  if (near(lags[1]!, 1) && near(lags[2]!, 2)) return 1
  return near(lags[1]!, 2) && near(lags[2]!, 1) ? -1 : 0
}

/** What a meter finds between the terminals: pairs of a star or delta, each phase where both its ends come out. */
export function terminalResistances(connection: string, phases: readonly number[]): number[] {
  const next = (k: number) => phases[(k + 1) % phases.length]!
  if (connection === 'star' && phases.length > 1) return phases.map((R, k) => R + next(k))
  const whole = phases.reduce((sum, R) => sum + R, 0)
  return connection === 'delta' && phases.length > 1
    ? phases.map((R) => (R * (whole - R)) / whole)
    : [...phases]
}

/** Mean currents of the lines: what leaves by the upper diodes less what comes back by the lower ones. */
const directIn = ({ diodes }: Pick<RectifierPoint, 'diodes'>, lines: number): number[] =>
  Array.from({ length: lines }, (_, k) =>
    diodes
      .filter(({ line, end = 'start' }) => line === k && end === 'start')
      .reduce((sum, { side, current }) => sum + (side === 'positive' ? current : -current), 0),
  )

/** Samples of each working period that tell the direct current's pulse. */
const pulseSamples = 96

function chargingOf(chain: Chain, wind: number) {
  const { machine, voltage, layout, wound, cooling } = chain
  const row = chain.rowAt(wind)
  const { speed, copperTemperature } = row
  const state = { speed, copperRatio: copperRatio(machine, copperTemperature) }
  const flows = speed > 0 && row.dcCurrent > 0
  // a closed delta, or shorted turns, carry current with nothing connected too
  const point =
    speed > 0
      ? loadPoint(machine, voltage, {
          speed,
          copperTemperature,
          samples: pulseSamples * voltage.order,
          ...(flows ? {} : { load: { kind: 'open' } as const }),
        })
      : undefined
  // the loops' heat with load is what the ledger's copper has beyond the phases' own
  const own = voltage.phases.map(
    ({ resistance }, k) => (point?.phaseCurrentRms[k] ?? 0) ** 2 * resistance * state.copperRatio,
  )
  const idle = speed > 0 ? loopLosses(voltage, state) : voltage.loops.map(() => 0)
  const inLoops =
    point && voltage.loops.length > 0
      ? Math.max(0, point.power.winding - own.reduce((sum, loss) => sum + loss, 0))
      : 0
  const idleSum = idle.reduce((sum, loss) => sum + loss, 0)
  const loop = (k: number) => (idleSum > 0 ? (inLoops * idle[k]!) / idleSum : 0)
  const phaseLoss = own.map((loss, k) =>
    voltage.loops.reduce((sum, { phase }, j) => (phase === k ? sum + loop(j) : sum), loss),
  )
  const heat = layout.coils.map(({ phase, number }, k) => {
    const share = wound.coilResistance[k]! / phaseCopper(chain, phase)
    const extra = voltage.loops.reduce((sum, { coil }, j) => (coil === number ? sum + loop(j) : sum), 0)
    return own[phase]! * share + extra + row.watts.eddy / layout.coils.length
  })
  const hottest = heat.indexOf(Math.max(...heat))
  return {
    speed,
    dcCurrent: row.dcCurrent,
    ripple:
      point && flows && point.dcCurrent > 0
        ? Math.sqrt(Math.max(0, point.dcCurrentRms ** 2 - point.dcCurrent ** 2)) / point.dcCurrent
        : 0,
    pulse:
      point && flows && point.dcCurrent > 0
        ? withoutDust(
            harmonicAmplitude(fourierSeries(point.waveforms!.dcCurrent, voltage.order), voltage.order) /
              point.dcCurrent,
          )
        : 0,
    lineDirect: point ? directIn(point, voltage.phases.length).map((A) => (Math.abs(A) < 1e-6 ? 0 : A)) : [],
    diodes: point?.diodes ?? [],
    phaseLoss,
    loopLoss: inLoops,
    hottestCoil: {
      number: layout.coils[hottest]!.number,
      temperature: machine.site.ambient + cooling.resistance(speed) * layout.coils.length * heat[hottest]!,
    },
  }
}

/** Resistance that the coils of a phase would have in series, groups and all [Ω]: what shares its loss out. */
const phaseCopper = ({ layout, wound }: Chain, phase: number): number =>
  layout.coils.reduce((sum, coil, k) => (coil.phase === phase ? sum + wound.coilResistance[k]! : sum), 0)

export function benchReading(chain: Chain, handSpeed: number, wind: number): BenchReading {
  const { machine, voltage, circulating } = chain
  const { order, phases, lines, coils } = voltage
  const lags = phases.map(({ lag }) => lag)
  const inTheCoils = coils.map(({ emf }) => seriesRms(emf) * handSpeed)
  const mean = inTheCoils.reduce((sum, volts) => sum + volts, 0) / inTheCoils.length
  const periods = machine.rotor.polePairs
  // the chain's own table is coarse about the threshold that a hand may just reach
  const bridge = shortedDiodeLoss(machine, voltage)(handSpeed)
  const inside =
    circulating.branches(handSpeed) + circulating.delta(handSpeed) + circulating.loops(handSpeed) + bridge
  const turn = (series: FourierSeries): Float64Array => {
    const samples = seriesSamples(
      seriesScaled(series, handSpeed),
      (samplesPerPeriod * periods) / voltage.base,
    )
    const whole = new Float64Array(samplesPerPeriod * periods)
    for (let k = 0; k < voltage.base; k++) whole.set(samples, k * samples.length)
    return whole
  }
  const resistance = phases.map((phase) => phase.resistance)
  return {
    handSpeed,
    phases: phases.map(({ rms }) => rms * handSpeed),
    lines: lines.map(({ rms }) => rms * handSpeed),
    corner: seriesRms(seriesSum(phases.map(({ emf }) => emf))) * handSpeed,
    coils: inTheCoils,
    phaseFundamentals: phases.map(({ fundamental }) => fundamental * handSpeed),
    lags,
    sequence: sequenceOf(lags),
    coilSpread: withoutDust(mean > 0 ? (Math.max(...inTheCoils) - Math.min(...inTheCoils)) / mean : 0),
    coilNotch: withoutDust(Math.max(...coils.map(({ emf }) => notch(emf, order)))),
    phaseNotch: withoutDust(Math.max(...phases.map(({ emf }) => notch(emf, order)))),
    waveform: phases.map(({ emf }) => turn(emf)),
    dragTorque: inside / handSpeed,
    loopTorque: circulating.loops(handSpeed) / handSpeed,
    bridgeTorque: bridge / handSpeed,
    phaseResistance: resistance,
    terminalResistance: terminalResistances(machine.stator.connection, resistance),
    wind,
    ...chargingOf(chain, wind),
  }
}
