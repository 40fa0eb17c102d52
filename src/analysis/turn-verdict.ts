/** What open-circuit volts at a speed prove: a ceiling, what the load would get, where charging begins, what to read next. */
import type { Meter } from '../machine/meter.ts'
import { seriesRms } from '../numerics/fourier.ts'
import { displayBound, displayStep } from '../physics/electrics/meter-display.ts'
import type { ProbePoint } from './probe-point.ts'
import { probedResistance, probedSeries } from './probe-point.ts'
import { deliveredAt, type TurnSource } from './turn-source.ts'

export interface TurnVerdict {
  /** Σ E²/4R over the phases: what resistors equal to the winding would take, as much again heating the copper [W]. */
  readonly ceiling: number
  /** V²/4R between one pair of terminals, and that R [W], [Ω]. */
  readonly pairCeiling: number
  readonly pairResistance: number
  /** Into the design's own load at this speed [W], [A]. */
  readonly delivered: number
  readonly current: number
  /** Speed at which current begins [rad/s]; infinite where never. */
  readonly cutIn: number
  /** Speeds below which the meter is out of its band, and below which its last digits are over 3 % [rad/s]. */
  readonly bandSpeed: number
  readonly digitSpeed: number
  /** Resistor to try between the pair, and what it would take [Ω], [W], with the volts left [V]. */
  readonly testResistor: number
  readonly testPower: number
  readonly testVolts: number
}

/** Digits of a reading that is still worth writing down: common practice, no source. */
const worthyDigits = 0.03
/** Of the winding's own: volts stay readable and the copper cool. Common practice, no source. */
const testRatio = 3
/** A hand or a small drill turns against it [W]: common practice, no source. */
const mostTestPower = 20

/** Least volts whose last digits are no more than 3 % of them. */
function leastWorthyVolts({ alternating, counts }: Meter): number {
  const digitsOf = (value: number) => {
    const step = displayStep({ value, counts, finest: alternating.finest })
    return displayBound({ value, share: 0, digits: alternating.digits, step }) / value
  }
  const least = (alternating.digits * alternating.finest) / worthyDigits
  return digitsOf(least) <= worthyDigits * 1.000001 ? least : 10 * least
}

/** `probe`: the pair that is read; of the bridge's points the first pair behind it. */
export function turnVerdict(
  source: TurnSource,
  { speed, meter, probe }: { readonly speed: number; readonly meter: Meter; readonly probe: ProbePoint },
): TurnVerdict {
  const { phases, polePairs, cutIn } = source
  const pair: ProbePoint =
    probe.kind === 'bridge' || probe.kind === 'capacitor' ? { ...probe, kind: 'line' } : probe
  const perSpeed = seriesRms(probedSeries(source, pair))
  const R = probedResistance(source, pair)
  const volts = perSpeed * speed
  const { power, current } = deliveredAt(source, speed)
  const testResistor = Math.max(testRatio * R, volts ** 2 / mostTestPower)
  const testVolts = (volts * testResistor) / (testResistor + R)
  return {
    ceiling: phases.reduce(
      (sum, { emf, resistance }) => sum + (seriesRms(emf) * speed) ** 2 / (4 * resistance),
      0,
    ),
    pairCeiling: volts ** 2 / (4 * R),
    pairResistance: R,
    delivered: power,
    current,
    cutIn,
    bandSpeed: (2 * Math.PI * meter.lowest) / polePairs,
    digitSpeed: perSpeed > 0 ? leastWorthyVolts(meter) / perSpeed : Number.POSITIVE_INFINITY,
    testResistor,
    testPower: testVolts ** 2 / testResistor,
    testVolts,
  }
}
