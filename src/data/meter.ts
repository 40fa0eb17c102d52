/** Meters that makers have, by kind: how they respond, and how well. */

/** Volts (or amps, for a clamp) of one function of a meter: a share of the reading and digits of the last place. */
export interface MeterAccuracy {
  readonly share: number
  readonly digits: number
  /** Step of the finest range. */
  readonly finest: number
}

export interface MeterClass {
  readonly name: string
  /** How its alternating volts are found. */
  readonly response: 'true rms' | 'rectified mean'
  /** Alternating volts reach it through a capacitor. */
  readonly coupled: boolean
  /** Greatest figure of a range. */
  readonly counts: number
  readonly alternating_V: MeterAccuracy
  readonly direct_V: MeterAccuracy
  readonly amps_A: MeterAccuracy
  /** Down to which alternating readings hold their accuracy, and up to which; 0: from direct on. */
  readonly lowest_Hz: number
  readonly highest_Hz: number
  readonly input_ohm: number
  /** Both leads with their contacts, and what an ammeter puts in the way (0: nothing). */
  readonly leads_mohm: number
  readonly shunt_mohm: number
  /** Step of its resistance range; 0 where it has none. */
  readonly ohmsStep_ohm: number
  /** Each figure averages over this. */
  readonly window_s: number
  readonly source: string
  readonly where: string
}

const practice = 'common-practice'

export const meterClasses: readonly MeterClass[] = [
  {
    name: 'averaging hand meter',
    response: 'rectified mean',
    coupled: true,
    counts: 1999,
    alternating_V: { share: 0.012, digits: 10, finest: 0.1 },
    direct_V: { share: 0.008, digits: 2, finest: 1e-4 },
    amps_A: { share: 0.02, digits: 5, finest: 0.01 },
    lowest_Hz: 45,
    highest_Hz: 400,
    input_ohm: 1e6,
    leads_mohm: 300,
    shunt_mohm: 30,
    ohmsStep_ohm: 0.1,
    window_s: 0.4,
    source: practice,
    where:
      'common practice, no source: a cheap meter of 2000 counts with 200 V and 600 V for alternating volts',
  },
  {
    name: 'true-rms hand meter',
    response: 'true rms',
    coupled: true,
    counts: 6000,
    alternating_V: { share: 0.01, digits: 3, finest: 1e-3 },
    direct_V: { share: 0.005, digits: 2, finest: 1e-4 },
    amps_A: { share: 0.015, digits: 3, finest: 0.001 },
    lowest_Hz: 45,
    highest_Hz: 1000,
    input_ohm: 1e7,
    leads_mohm: 200,
    shunt_mohm: 20,
    ohmsStep_ohm: 0.1,
    window_s: 0.35,
    source: practice,
    where: 'common practice, no source: a hand meter of 6000 counts, about three readings a second',
  },
  {
    name: 'oscilloscope, probe ×10',
    response: 'true rms',
    coupled: false,
    counts: 250,
    alternating_V: { share: 0.03, digits: 2, finest: 1e-3 },
    direct_V: { share: 0.03, digits: 2, finest: 1e-3 },
    amps_A: { share: 0.03, digits: 2, finest: 0.1 },
    lowest_Hz: 0,
    highest_Hz: 20_000_000,
    input_ohm: 1e7,
    leads_mohm: 0,
    shunt_mohm: 0,
    ohmsStep_ohm: 0,
    window_s: 0,
    source: practice,
    where: 'common practice, no source: eight bits over the screen, direct coupling, rms over whole periods',
  },
  {
    name: 'clamp meter',
    response: 'true rms',
    coupled: true,
    counts: 4000,
    alternating_V: { share: 0.012, digits: 5, finest: 1e-3 },
    direct_V: { share: 0.008, digits: 3, finest: 1e-3 },
    amps_A: { share: 0.025, digits: 10, finest: 0.01 },
    lowest_Hz: 45,
    highest_Hz: 400,
    input_ohm: 1e7,
    leads_mohm: 200,
    shunt_mohm: 0,
    ohmsStep_ohm: 0.1,
    window_s: 0.35,
    source: practice,
    where:
      'common practice, no source: a Hall clamp of 40 A with a volts range; nothing is put into the circuit',
  },
]

/** How rectifier diodes leave their threshold at the microamps that a meter draws. */
export const idleDiodes = [
  {
    kind: 'silicon',
    knownCurrent_A: 0.02,
    ideality: 1.8,
    source: practice,
    where: 'common practice, no source: ideality of a 1 A rectifier model; 0.7 V is its drop at about 20 mA',
  },
  {
    kind: 'Schottky',
    knownCurrent_A: 0.1,
    ideality: 1.05,
    source: practice,
    where: 'common practice, no source: near-ideal junction; threshold at about a tenth of an ampere',
  },
] as const
