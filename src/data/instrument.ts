/** What a builder can measure a guess with: the instrument, what is done, the hours, how far it then may still be off. */

export interface Instrument {
  /** Ending of the guess's path in the document, or its plain name; a suffix of unit such as `_mm` stands for all of them. */
  readonly of: string
  readonly instrument: string
  /** What is done, as an order to the builder. */
  readonly doing: string
  /** Work, waiting aside [h]. */
  readonly hours: number
  /** Waiting while an instrument runs by itself [d]. */
  readonly days: number
  /**
   * Half-width at 90 % that it leaves: a share of the value, an amount in the document's unit, or a part of the guess's
   * own half-width.
   */
  readonly leaves: { readonly as: 'share' | 'amount' | 'part'; readonly size: number }
  readonly source: string
  readonly where: string
}

const habit = { source: 'common-practice', where: 'common practice, no source' }

/** The first whose ending fits counts: named places before units. */
export const instruments: readonly Instrument[] = [
  {
    of: 'site.meanWind_m_per_s',
    instrument: 'logging anemometer',
    doing:
      'log the wind at the hub’s height for a month, and set the month against the long record of a weather station nearby',
    hours: 8,
    days: 30,
    leaves: { as: 'share', size: 0.1 },
    ...habit,
  },
  {
    of: 'site.shearExponent',
    instrument: 'two logging anemometers',
    doing: 'log the wind at two heights of the mast for a month',
    hours: 10,
    days: 30,
    leaves: { as: 'amount', size: 0.03 },
    ...habit,
  },
  {
    of: 'site.weibullShape',
    instrument: 'logging anemometer',
    doing: 'log the wind in windy and calm months, and read the shape off the record',
    hours: 8,
    days: 90,
    leaves: { as: 'amount', size: 0.1 },
    ...habit,
  },
  {
    of: 'shaft.friction_mNm',
    instrument: 'kitchen scale and a lever',
    doing:
      'unload the generator, turn it slowly by a lever on the scale, and read the force at a measured arm',
    hours: 0.5,
    days: 0,
    leaves: { as: 'share', size: 0.15 },
    ...habit,
  },
  {
    of: 'shaft.startingFriction_mNm',
    instrument: 'luggage scale and a lever',
    doing: 'pull at a measured arm until the shaft breaks loose; take the mean of ten pulls round the turn',
    hours: 0.5,
    days: 0,
    leaves: { as: 'share', size: 0.15 },
    ...habit,
  },
  {
    of: 'rotor.magnet.grade',
    instrument: 'test coil, multimeter, drill and phone tachometer',
    doing: 'turn the rotor past a coil of counted turns at a known speed and read the volts without load',
    hours: 1.5,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: 'rotor.magnet.readings',
    instrument: 'test coil, multimeter, drill and phone tachometer',
    doing: 'turn the rotor past a coil of counted turns at a known speed and read the volts without load',
    hours: 1.5,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: 'estimated thermal resistance',
    instrument: 'multimeter and a bench supply',
    doing:
      'heat the winding with a steady current and read its own resistance before and at the end: 0.39 % of it is one kelvin',
    hours: 3,
    days: 0,
    leaves: { as: 'share', size: 0.1 },
    ...habit,
  },
  {
    of: 'drag of the blade sections',
    instrument: 'anemometer and phone tachometer',
    doing:
      'in a wind under 5 m/s, with nothing connected, bare ends covered, the brake at hand and people well away, read wind and speed together and compare with the computed run without load',
    hours: 6,
    days: 0,
    leaves: { as: 'part', size: 0.4 },
    ...habit,
  },
  {
    of: 'cable.length_m',
    instrument: 'tape measure',
    doing: 'pace the way with a tape, ends and mast included',
    hours: 0.3,
    days: 0,
    leaves: { as: 'share', size: 0.01 },
    ...habit,
  },
  {
    of: '_mm',
    instrument: 'caliper',
    doing: 'measure it at four places round the part',
    hours: 0.2,
    days: 0,
    leaves: { as: 'amount', size: 0.1 },
    ...habit,
  },
  {
    of: '_m',
    instrument: 'tape measure',
    doing: 'measure it with a tape',
    hours: 0.2,
    days: 0,
    leaves: { as: 'share', size: 0.005 },
    ...habit,
  },
  {
    of: '_ohm',
    instrument: 'multimeter and a known current',
    doing: 'send one ampere through it and read the volts at its ends: four wires leave the leads out',
    hours: 0.5,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: '_K_per_W',
    instrument: 'multimeter and a bench supply',
    doing: 'repeat the heat run until two agree',
    hours: 3,
    days: 0,
    leaves: { as: 'share', size: 0.1 },
    ...habit,
  },
  {
    of: '_mNm',
    instrument: 'kitchen scale and a lever',
    doing: 'read the force at a measured arm',
    hours: 0.5,
    days: 0,
    leaves: { as: 'share', size: 0.1 },
    ...habit,
  },
  {
    of: '_T',
    instrument: 'test coil, multimeter, drill and phone tachometer',
    doing: 'turn the rotor past a coil of counted turns at a known speed and read the volts without load',
    hours: 1.5,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: '_V',
    instrument: 'multimeter',
    doing: 'read it while it works',
    hours: 0.2,
    days: 0,
    leaves: { as: 'share', size: 0.01 },
    ...habit,
  },
  {
    of: '_A',
    instrument: 'multimeter or clamp',
    doing: 'read it while it works',
    hours: 0.3,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: '_kg',
    instrument: 'luggage scale',
    doing: 'weigh it',
    hours: 0.1,
    days: 0,
    leaves: { as: 'share', size: 0.02 },
    ...habit,
  },
  {
    of: '_g',
    instrument: 'kitchen scale',
    doing: 'weigh it',
    hours: 0.1,
    days: 0,
    leaves: { as: 'share', size: 0.01 },
    ...habit,
  },
  {
    of: '_degC',
    instrument: 'thermometer',
    doing: 'read it where it matters, at the hour that matters',
    hours: 0.2,
    days: 0,
    leaves: { as: 'amount', size: 1 },
    ...habit,
  },
]
