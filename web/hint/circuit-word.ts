/** Words of the winding, the circuit and the bench, two sentences each. */
import { say } from '../text/say.ts'
import type { TermEntry } from './term-entry.ts'

export const circuitWord = {
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
} as const satisfies Readonly<Record<string, TermEntry>>
