/** Words of the wind, the blades and the magnets, two sentences each. */
import { say } from '../text/say.ts'
import type { TermEntry } from './term-entry.ts'

export const moverWord = {
  'cut-in': {
    room: 'wind',
    name: () => say`cut-in wind`,
    says: () =>
      say`The least wind in which current begins to flow into the store. Below it the rotor may turn, yet its volts do not open the bridge.`,
    clause: 'IEC 61400-2:2013, 3.9',
  },
  'mean-wind': {
    room: 'wind',
    name: () => say`mean wind`,
    says: () =>
      say`The average of the wind speed over a year, calms counted as zero. Because power grows with the cube of the wind, it says little without the spread of the winds around it.`,
    clause: 'IEC 61400-2:2013, 3.2',
  },
  'hub-height': {
    room: 'wind',
    name: () => say`hub height`,
    says: () =>
      say`Height of the middle of the rotor above the ground. Higher up the wind is stronger and steadier, and trees and houses matter less.`,
  },
  shear: {
    room: 'wind',
    name: () => say`wind shear`,
    says: () =>
      say`How much faster the wind blows higher up. The shear exponent tells it in one number, about 0.14 over open fields and more over hedges and houses.`,
  },
  weibull: {
    room: 'wind',
    name: () => say`Weibull distribution`,
    says: () =>
      say`A curve that tells how often each wind blows, by a scale and a shape. Shape 2 suits many places; a larger one means steadier winds.`,
  },
  turbulence: {
    room: 'wind',
    name: () => say`turbulence`,
    says: () =>
      say`How unsteady the wind is within ten minutes, as a share of its mean. It tires blades and tail, and makes every reading of power scatter.`,
  },
  'power-curve': {
    room: 'whole',
    name: () => say`power curve`,
    says: () =>
      say`The useful watts in each steady wind. Together with the hours of each wind it gives the energy of a year.`,
  },
  'kilowatt-hour': {
    room: 'whole',
    name: () => say`kilowatt-hour`,
    says: () => say`Energy of one thousand watts for one hour. A lamp of 10 W burns a hundred hours on one.`,
  },
  'tip-speed-ratio': {
    room: 'blades',
    name: () => say`tip-speed ratio`,
    says: () =>
      say`Speed of the blade tips over the speed of the wind. Each shape of blade has one at which it takes most power.`,
  },
  'power-coefficient': {
    room: 'blades',
    name: () => say`power coefficient`,
    says: () =>
      say`The share of the wind’s power through the swept circle that the rotor takes. It cannot pass 0.593; small home-made blades reach 0.25 to 0.4.`,
  },
  'swept-area': {
    room: 'blades',
    name: () => say`swept area`,
    says: () =>
      say`The area that the blades sweep: the circle of the tips, or height times diameter of an upright rotor. Twice the diameter sweeps four times the area.`,
  },
  chord: {
    room: 'blades',
    name: () => say`chord`,
    says: () =>
      say`Width of the blade from its leading edge to its trailing edge, at one place along it. It is usually widest near the hub.`,
  },
  twist: {
    room: 'blades',
    name: () => say`twist`,
    says: () =>
      say`The angle between the chord and the plane of rotation, which shrinks from root to tip. It keeps the air on the blade at a good angle all along it.`,
  },
  'angle-of-attack': {
    room: 'blades',
    name: () => say`angle of attack`,
    says: () =>
      say`The angle at which the air meets the chord of the blade. A few degrees give good lift; too many make the flow come loose.`,
  },
  'lift-and-drag': {
    room: 'blades',
    name: () => say`lift and drag`,
    says: () =>
      say`Lift is the force of the air square to its flow, drag the force along it. A good section gives fifty times as much lift as drag or more.`,
  },
  stall: {
    room: 'blades',
    name: () => say`stall`,
    says: () =>
      say`The flow comes loose from the blade because the air meets it too steeply. The rotor loses much of its power, which happens when the generator brakes it too hard.`,
  },
  'reynolds-number': {
    room: 'blades',
    name: () => say`Reynolds number`,
    says: () =>
      say`Speed times chord over the stickiness of the air. Small blades have a low one and drag more for the same lift.`,
  },
  'starting-torque': {
    room: 'blades',
    name: () => say`starting torque`,
    says: () =>
      say`The torque that the blades give while they stand still. It has to overcome friction and cogging before anything turns.`,
  },
  'horizontal-axis': {
    room: 'blades',
    name: () => say`rotor with a lying axis`,
    says: () =>
      say`A rotor whose shaft lies along the wind. It has to be turned into the wind, mostly by a tail.`,
    clause: 'IEC 60050-415:1999, 415-01-04',
  },
  'vertical-axis': {
    room: 'blades',
    name: () => say`upright rotor`,
    says: () =>
      say`A rotor whose shaft stands upright. It takes the wind from every side, and mostly needs more blade area for the same power.`,
    clause: 'IEC 60050-415:1999, 415-01-05',
  },
  furling: {
    room: 'blades',
    name: () => say`furling`,
    says: () =>
      say`The rotor swings out of the wind by itself when the wind gets strong. A hinged tail and a rotor set beside the yaw axis do it without electricity.`,
  },
  runaway: {
    room: 'storm',
    name: () => say`runaway`,
    says: () =>
      say`The rotor spins without a load, as fast as the wind will drive it. Volts, pull on the magnets and noise are then far above those of normal running.`,
  },
  torque: {
    room: 'shaft',
    name: () => say`torque`,
    says: () =>
      say`Turning force: a force times the arm at which it acts, in newton metres. Torque times speed is power.`,
  },
  friction: {
    room: 'shaft',
    name: () => say`friction`,
    says: () =>
      say`Torque that bearings and seals take while the shaft turns. At rest it is often larger than in motion.`,
  },
  cogging: {
    room: 'shaft',
    name: () => say`cogging`,
    says: () =>
      say`Torque with which magnets hold on to iron near the winding as they pass it. A winding without iron has none.`,
  },
  'centrifugal-force': {
    room: 'shaft',
    name: () => say`centrifugal force`,
    says: () =>
      say`The pull outward on everything that is carried round. It grows with the square of the speed, so twice as fast pulls four times as hard.`,
  },
  remanence: {
    room: 'magnets',
    name: () => say`remanent flux density`,
    says: () =>
      say`Flux density that the material of a magnet keeps with nothing acting against it, in tesla. It is written Br and belongs to the material, not to the reading at the face.`,
  },
  coercivity: {
    room: 'magnets',
    name: () => say`coercivity`,
    says: () =>
      say`How strong an opposing field a magnet withstands before it loses strength for good. It shrinks as the magnet warms.`,
  },
  'magnet-grade': {
    room: 'magnets',
    name: () => say`magnet grade`,
    says: () =>
      say`A name such as N42 that tells strength and, by letters behind it, the heat the magnet bears. The number is the greatest energy product in old units.`,
  },
  polarization: {
    room: 'magnets',
    name: () => say`magnetic polarization`,
    says: () =>
      say`How strongly the inside of a magnet is aligned, in tesla. The page computes every field from it.`,
  },
  'pole-pair': {
    room: 'magnets',
    name: () => say`pole pair`,
    says: () =>
      say`A north and a south pole beside each other on the rotor. With p pairs the volts go through p periods in one turn.`,
  },
  'air-gap': {
    room: 'magnets',
    name: () => say`air gap`,
    says: () =>
      say`The free way from the face of a magnet to what faces it. Every millimetre costs volts, and too few millimetres let parts touch.`,
  },
  'back-iron': {
    room: 'magnets',
    name: () => say`back iron`,
    says: () =>
      say`Steel behind the magnets that leads their flux from pole to pole. Too thin, it saturates and the field in the gap drops.`,
  },
} as const satisfies Readonly<Record<string, TermEntry>>
