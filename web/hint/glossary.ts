/** Words of the trade as the page uses them, two sentences each; where a standard defines the term, its clause. */
import type { RoomKey } from '../store/room.ts'
import { say } from '../text/say.ts'
import type { TermKey } from './term-key.ts'

export interface TermEntry {
  /** Where the word is met most. */
  readonly room: RoomKey
  readonly name: () => string
  readonly says: () => string
  /** Of the standard that defines the term; without one it is common practice, no source. */
  readonly clause?: string
}

export const glossary: Readonly<Record<TermKey, TermEntry>> = {
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
  'flux-density': {
    room: 'magnets',
    name: () => say`flux density`,
    says: () =>
      say`Strength of a magnetic field at a point, in tesla. In the gap of such machines it is mostly between 0.2 and 0.8 T.`,
  },
  demagnetization: {
    room: 'magnets',
    name: () => say`demagnetization`,
    says: () =>
      say`A magnet loses strength for good, by heat, by an opposing field or by both. Grades with more coercivity bear more of it.`,
  },
  'flux-linkage': {
    room: 'winding',
    name: () => say`flux linkage`,
    says: () =>
      say`Magnetic flux through a winding, counted once for every turn that it passes. Its change in time is the induced voltage.`,
  },
  'induced-voltage': {
    room: 'winding',
    name: () => say`induced voltage`,
    says: () =>
      say`The volts that moving magnets cause in a wire, with or without current. They grow in proportion to the speed.`,
  },
  'voltage-constant': {
    room: 'winding',
    name: () => say`voltage constant`,
    says: () =>
      say`Volts for each unit of speed, written k. It is the number to measure first on the bench, because everything electrical follows from it.`,
  },
  'motor-constant': {
    room: 'winding',
    name: () => say`motor constant k_m`,
    says: () =>
      say`Torque over the square root of the watts burnt in the copper. It tells how good a generator is whatever wire fills it, as more turns raise volts and ohms together.`,
  },
  phase: {
    room: 'winding',
    name: () => say`phase`,
    says: () =>
      say`One of the windings whose volts follow each other in time. Three of them, a third of a period apart, give smooth power.`,
  },
  star: {
    room: 'winding',
    name: () => say`star connection`,
    says: () =>
      say`One end of each phase is joined at a common point, the other goes out. Lines then show 1.73 times the volts of a phase, and the current of a line is that of its phase.`,
  },
  delta: {
    room: 'winding',
    name: () => say`delta connection`,
    says: () =>
      say`The phases are joined end to start in a ring. Lines show the volts of one phase and carry 1.73 times its current; unequal phases drive current round the ring.`,
  },
  serpentine: {
    room: 'winding',
    name: () => say`serpentine winding`,
    says: () =>
      say`A wire that runs to and fro past the poles all the way round, instead of closed coils. It needs no coil joints and lies flat.`,
  },
  'winding-factor': {
    room: 'winding',
    name: () => say`winding factor`,
    says: () =>
      say`What is left of the volts of all turns when they do not rise and fall together. 1 means that all are in step.`,
  },
  harmonics: {
    room: 'winding',
    name: () => say`harmonics`,
    says: () =>
      say`Parts of a wave that swing a whole number of times within its period. The fundamental does most of the work; the third cannot leave a star.`,
  },
  rms: {
    room: 'winding',
    name: () => say`rms`,
    says: () =>
      say`Root mean square: the steady value that would heat a resistor as much. Of a sine it is the peak divided by 1.41.`,
  },
  'phase-resistance': {
    room: 'winding',
    name: () => say`resistance of a phase`,
    says: () =>
      say`Ohms of one phase from end to end, here at 20 °C. Copper gains about 4 % of its ohms for every 10 °C.`,
  },
  inductance: {
    room: 'winding',
    name: () => say`inductance`,
    says: () =>
      say`How much flux a current links with its own winding, in henry. It holds back a current that changes, and more so the faster the machine turns.`,
  },
  'mutual-inductance': {
    room: 'winding',
    name: () => say`mutual inductance`,
    says: () =>
      say`How much flux a current in one winding links with another. Neighbouring phases disturb each other through it.`,
  },
  'copper-loss': {
    room: 'winding',
    name: () => say`copper loss`,
    says: () =>
      say`Watts that the current burns in the ohms of the wire. It grows with the square of the current and warms the winding.`,
  },
  'copper-fill': {
    room: 'winding',
    name: () => say`copper fill`,
    says: () =>
      say`Share of the room for the winding that is copper. Enamel, gaps between round wires and resin take the rest.`,
  },
  strand: {
    room: 'winding',
    name: () => say`strand`,
    says: () =>
      say`One of several wires wound side by side as if they were one. Thin strands bend more easily and lose less to eddy currents.`,
  },
  awg: {
    room: 'winding',
    name: () => say`AWG`,
    says: () =>
      say`A gauge of wire in which a larger number means a thinner wire. Three numbers down is about twice the section.`,
  },
  'insulation-class': {
    room: 'winding',
    name: () => say`insulation class`,
    says: () =>
      say`A letter for the heat that enamel and resin bear for many years: B 130 °C, F 155 °C, H 180 °C. Above it the insulation ages fast.`,
  },
  'eddy-current': {
    room: 'winding',
    name: () => say`eddy current`,
    says: () =>
      say`Current in little rings inside metal that a changing field passes. It warms the metal and brakes the rotor.`,
  },
  bridge: {
    room: 'bridge',
    name: () => say`bridge rectifier`,
    says: () =>
      say`Diodes that turn alternating current into direct current. The current always passes two of them in a row.`,
  },
  threshold: {
    room: 'bridge',
    name: () => say`diode drop`,
    says: () =>
      say`Volts that a diode keeps for itself while it conducts, about 0.4 to 1 V. At low volts this is a large share of the power.`,
  },
  'direct-current': {
    room: 'bridge',
    name: () => say`direct current`,
    says: () =>
      say`Current that always flows the same way, as a battery gives it. Its arcs do not go out by themselves, so switch and fuse must be made for it.`,
  },
  converter: {
    room: 'bridge',
    name: () => say`converter`,
    says: () =>
      say`Electronics that change direct volts, so that machine and store each have those that suit them. It lets the rotor turn at a good tip-speed ratio in every wind.`,
  },
  'voltage-drop': {
    room: 'cable',
    name: () => say`voltage drop`,
    says: () =>
      say`Volts lost along the cable, there and back. Twice the section or half the length halves it.`,
  },
  fuse: {
    room: 'cable',
    name: () => say`fuse`,
    says: () =>
      say`The weakest part on purpose, which opens when the current is too high. It belongs close to the battery, because the battery is what feeds a short.`,
  },
  'extra-low-voltage': {
    room: 'cable',
    name: () => say`extra-low voltage`,
    says: () =>
      say`Volts so low that touching them is rarely dangerous when everything is dry. A machine that runs away can leave that range, so work on it is for people licensed to do it.`,
  },
  'dump-load': {
    room: 'store',
    name: () => say`dump load`,
    says: () =>
      say`A resistor that takes the watts that the full battery must not get. It keeps the rotor loaded, and it gets hot.`,
  },
  'braking-short': {
    room: 'storm',
    name: () => say`braking by a short`,
    says: () =>
      say`The leads are joined so that the machine brakes itself by its own current. It holds only as long as winding and leads are whole, and the winding gets warm.`,
  },
  'state-of-charge': {
    room: 'store',
    name: () => say`state of charge`,
    says: () =>
      say`How full a battery is, as a share of what it holds. Its volts at rest tell it roughly; lead-acid batteries last longest when they are kept full.`,
  },
  spread: {
    room: 'sure',
    name: () => say`spread`,
    says: () =>
      say`How far a number may be off: nine of ten outcomes lie within it. It comes from all guesses of the design, drawn at once.`,
  },
}
