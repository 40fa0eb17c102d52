/** The ledger's columns: where every watt from the shaft goes, in the order in which it flows. */

/** Losses and use of power, all in watts and none negative in a machine that generates. */
export interface Watts {
  /** Bearings and seals. */
  readonly friction: number
  /** Eddy currents in the strands. */
  readonly eddy: number
  /** Eddy currents in metal that stands near the magnets. */
  readonly parts: number
  /** Copper of the winding. */
  readonly winding: number
  /** Cable, in whichever place it lies. */
  readonly cable: number
  readonly diodes: number
  /** In the electronics between bridge and battery. */
  readonly converter: number
  /** Inside the battery, where it becomes heat. */
  readonly battery: number
  /** Stored, or given to the resistor. */
  readonly useful: number
}

export const wattColumns = [
  'friction',
  'eddy',
  'parts',
  'winding',
  'cable',
  'diodes',
  'converter',
  'battery',
  'useful',
] as const satisfies readonly (keyof Watts)[]

export const noWatts: Watts = {
  friction: 0,
  eddy: 0,
  parts: 0,
  winding: 0,
  cable: 0,
  diodes: 0,
  converter: 0,
  battery: 0,
  useful: 0,
}

/** What the shaft delivers: the sum of all that is lost and used. */
export const shaftPower = (watts: Watts): number =>
  wattColumns.reduce((sum, column) => sum + watts[column], 0)
