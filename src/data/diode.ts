/** Forward drop of rectifier diodes as a threshold with a slope behind it. */

export interface DiodeClass {
  readonly name: string
  readonly kind: 'silicon' | 'Schottky' | 'synchronous'
  /** Average current that the class is sold for: a bridge's output, or one diode's. */
  readonly rated_A: number
  readonly threshold_V: number
  readonly slope_ohm: number
  /** Half-width of the drop at rated current between makers and with temperature. */
  readonly dropSpread_V: number
  /** Reverse volts usually sold. */
  readonly reverse_V: number
  /** Drawn all the time by what switches it. */
  readonly drive_W: number
  readonly source: string
  readonly where: string
}

/*
 * Silicon: the sheets print 1.1 V at half the bridge's current as the greatest drop of one element at 25 °C.
 * With 0.7 V of threshold (common practice; two elements make the usual 1.4 V) the slope follows: 0.4 V over that current.
 */
const bridge = (rated_A: number, testCurrent_A: number): DiodeClass => ({
  name: `bridge ${rated_A} A`,
  kind: 'silicon',
  rated_A,
  threshold_V: 0.7,
  slope_ohm: 0.4 / testCurrent_A,
  dropSpread_V: 0.15,
  reverse_V: 600,
  drive_W: 0,
  source: 'bridge-datasheet-class',
  where: `greatest drop 1.1 V at ${testCurrent_A} A per element; threshold 0.7 V and spread common practice, no source`,
})

export const diodeClasses: readonly DiodeClass[] = [
  {
    name: 'diode 3 A',
    kind: 'silicon',
    rated_A: 3,
    threshold_V: 0.7,
    slope_ohm: 0.1,
    dropSpread_V: 0.15,
    reverse_V: 600,
    drive_W: 0,
    source: 'common-practice',
    where: 'common practice, no source: 1.0 V at 3 A',
  },
  bridge(15, 7.5),
  bridge(25, 12.5),
  bridge(35, 17.5),
  {
    name: 'Schottky 10 A 45 V',
    kind: 'Schottky',
    rated_A: 10,
    threshold_V: 0.28,
    slope_ohm: 0.022,
    dropSpread_V: 0.08,
    reverse_V: 45,
    drive_W: 0,
    source: 'an3303',
    where: 'equation 7: P = 0.28 Iavg + 0.022 Irms² per diode, greatest values hot; spread common practice',
  },
  {
    name: 'Schottky 10 A 100 V',
    kind: 'Schottky',
    rated_A: 10,
    threshold_V: 0.5,
    slope_ohm: 0.015,
    dropSpread_V: 0.1,
    reverse_V: 100,
    drive_W: 0,
    source: 'common-practice',
    where: 'common practice, no source: 0.65 V at 10 A hot',
  },
  {
    name: 'synchronous 30 A 60 V',
    kind: 'synchronous',
    rated_A: 30,
    threshold_V: 0,
    slope_ohm: 0.006,
    dropSpread_V: 0.1,
    reverse_V: 60,
    drive_W: 0.2,
    source: 'common-practice',
    where:
      'common practice, no source: transistors of 4 mΩ at 25 °C, half as much again when hot; their drive 0.2 W',
  },
]
