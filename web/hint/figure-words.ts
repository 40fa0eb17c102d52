/** What each figure of the page is called in its hint, how it comes about, and the words of the trade it leans on. */
import { say } from '../text/say.ts'
import type { FigureKey } from './figure-method.ts'
import type { TermKey } from './term-key.ts'

export interface FigureWords {
  readonly title: () => string
  /** The way from the design to the number, in a sentence or two. */
  readonly how: () => string
  readonly terms: readonly TermKey[]
}

export const figureWords: Readonly<Record<FigureKey, FigureWords>> = {
  energy: {
    title: () => say`Energy of a year`,
    how: () =>
      say`The power in every wind is weighed by the hours that this wind blows, and summed over a year. Rising and falling winds count half each.`,
    terms: ['power-curve', 'mean-wind', 'weibull', 'kilowatt-hour'],
  },
  wind: {
    title: () => say`The wind you stand in`,
    how: () =>
      say`You choose it on the strip. It is the steady wind at the height of the hub; its hours follow from the site’s mean wind.`,
    terms: ['mean-wind', 'hub-height', 'shear', 'weibull'],
  },
  speed: {
    title: () => say`Speed of the rotor`,
    how: () =>
      say`The speed at which the blades give as much torque as the generator, its losses and the bearings take, copper as warm as it gets there.`,
    terms: ['tip-speed-ratio', 'torque', 'power-coefficient', 'stall'],
  },
  tipSpeedRatio: {
    title: () => say`Tip-speed ratio`,
    how: () =>
      say`Speed of the blade tips over the wind in which you stand. A generator that brakes hard pulls it below what the blades like best.`,
    terms: ['tip-speed-ratio', 'power-coefficient', 'stall'],
  },
  loadVoltage: {
    title: () => say`Volts at the load`,
    how: () =>
      say`Mean volts behind bridge and cable, from currents that are followed through a whole period in time.`,
    terms: ['bridge', 'threshold', 'direct-current'],
  },
  loadCurrent: {
    title: () => say`Current into the load`,
    how: () =>
      say`Mean amps behind the bridge: what the volts of the winding drive through its own ohms and inductance against the volts of the load.`,
    terms: ['bridge', 'phase-resistance', 'inductance', 'direct-current'],
  },
  copperTemperature: {
    title: () => say`Copper at this wind`,
    how: () =>
      say`Warm copper has more ohms, which make more heat. The two are followed together until they rest, through winding, support, air and surfaces.`,
    terms: ['copper-loss', 'insulation-class', 'rms'],
  },
  cutInWind: {
    title: () => say`Wind in which charging begins`,
    how: () =>
      say`The bridge opens at the speed where the highest volts between two lines reach those of the store and its two diodes. This is the least wind in which the blades reach that speed.`,
    terms: ['cut-in', 'threshold', 'flux-linkage', 'induced-voltage'],
  },
  startWind: {
    title: () => say`Wind that starts the rotor`,
    how: () =>
      say`The least wind in which the blades, standing still, give more torque than the friction at rest takes.`,
    terms: ['starting-torque', 'cogging', 'friction'],
  },
  emf: {
    title: () => say`Volts per speed`,
    how: () =>
      say`The field of every magnet is followed along the real path of the wire while the rotor turns. How fast the linked flux changes is the voltage, in proportion to the speed.`,
    terms: ['induced-voltage', 'flux-linkage', 'rms', 'star', 'delta', 'voltage-constant'],
  },
  resistance: {
    title: () => say`Resistance of a phase`,
    how: () =>
      say`Length of the wire in one phase with its leads, over the section of its copper, at 20 °C; joints are added.`,
    terms: ['phase', 'phase-resistance', 'strand'],
  },
  inductance: {
    title: () => say`Inductance of a phase`,
    how: () =>
      say`Flux that one ampere in a phase sends through its own turns, from the path of every bundle and its section.`,
    terms: ['inductance', 'mutual-inductance', 'phase'],
  },
  copperMass: {
    title: () => say`Copper to buy`,
    how: () =>
      say`Length of all wire with its leads, times the section of the copper, times its density. Nothing is added for waste.`,
    terms: ['copper-fill', 'strand', 'awg'],
  },
  magnetMass: {
    title: () => say`Mass of the magnets`,
    how: () =>
      say`Volume of one magnet from its edges, times the density of its material, times their number.`,
    terms: ['magnet-grade', 'pole-pair', 'remanence'],
  },
  runawaySpeed: {
    title: () => say`Speed with the load lost`,
    how: () =>
      say`In the storm of the site, with nothing connected, the rotor gains speed until the blades give no more than bearings and eddy currents take.`,
    terms: ['runaway', 'tip-speed-ratio', 'furling', 'centrifugal-force'],
  },
  runawayVoltage: {
    title: () => say`Volts with the load lost`,
    how: () =>
      say`Volts per speed times the speed with the load lost. These are the volts that diodes, switch, cable and people must be safe from.`,
    terms: ['runaway', 'induced-voltage', 'extra-low-voltage'],
  },
}
