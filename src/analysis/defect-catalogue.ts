/** One defect of every kind that a design can have, in sensible amounts, and each of them in words. */
import { magnetGrades } from '../data/magnet-grade.ts'
import { tiltRoom_mm } from '../machine/defect-consistency.ts'
import type { Design } from '../machine/design.ts'
import { formatNumber } from '../units/format.ts'
import { nominal } from '../units/quantity.ts'

export type Defect = Design['defects'][number]

/** Polarisation of a weak magnet over a sound one's, as after a hot soldering iron: common practice, no source. */
const weakStrength = 0.8
/** A shifted magnet, in pole pitches. */
const shiftShare = 0.1
/** Turns shorted in a coil, as a share of them. */
const shortedShare = 0.05

/** A grade of the other family: what lies in the same drawer. */
function otherGrade({ rotor: { magnet } }: Design): (typeof magnetGrades)[number]['name'] {
  const family = magnetGrades.find(({ name }) => name === magnet.grade)?.family
  return family === 'ferrite' ? 'N42' : 'Y30'
}

/** The kinds that fit the design, one of each; without those of its own document. */
export function usualDefects(design: Design): Defect[] {
  const { rotor, stator } = design
  const { winding, wire } = stator
  const phases = winding.kind === 'coils' ? winding.phaseCount : winding.phases.length
  const perPhase = winding.kind === 'coils' ? Math.floor(winding.coilCount / phases) : winding.layers
  const coilTurns =
    winding.kind === 'coils' ? winding.turns : Math.max(1, Math.floor(winding.turns / winding.layers))
  const pitch_mm = (2 * Math.PI * nominal(rotor.pitchRadius_mm)) / rotor.poleCount
  const room_mm = Math.floor(10 * tiltRoom_mm(design)) / 10
  return [
    { kind: 'flipped magnet', position: 1 },
    { kind: 'weak magnet', position: 1, strength: weakStrength },
    { kind: 'missing magnet', position: 1 },
    { kind: 'shifted magnet', position: 1, shift_mm: Math.round(10 * shiftShare * pitch_mm) / 10 },
    { kind: 'other grade', position: 1, grade: otherGrade(design) },
    ...(perPhase > 1 ? [{ kind: 'reversed coil', coil: 1 } as const] : []),
    ...(phases > 1 ? [{ kind: 'reversed phase', phase: 2 } as const] : []),
    ...(phases === 3 ? [{ kind: 'swapped phases', phase: 1, other: 2 } as const] : []),
    { kind: 'shorted turns', coil: 1, turns: Math.max(1, Math.round(shortedShare * coilTurns)) },
    ...(wire.strands > 1 ? [{ kind: 'open strand', phase: 1, strands: 1 } as const] : []),
    { kind: 'open diode', line: 1, side: 'positive' },
    { kind: 'shorted diode', line: 1, side: 'positive' },
    { kind: 'open line', line: 1 },
    ...(room_mm > 0
      ? [{ kind: 'unequal gap', difference_mm: Math.min(2, room_mm), at_deg: 0 } as const]
      : []),
  ]
}

const place = (defect: { readonly position: number; readonly disc?: number | undefined }): string =>
  `magnet ${defect.position}${defect.disc === undefined ? '' : ` of disc ${defect.disc}`}`

const times = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

const diodePlace = ({ line, side, end }: Extract<Defect, { side: string }>): string =>
  `${side} diode of ${end === undefined ? `line ${line}` : `the ${end} of phase ${line}`}`

/**
 * How to find a defect that turning by hand does not show. A sound silicon diode shows 0.4 … 0.9 V one way and nothing
 * the other, a shorted one next to nothing both ways, an open one nothing both ways: rectifier-test-guide.
 */
export function defectTest({ kind }: Defect): string | undefined {
  if (kind === 'open line')
    return 'With the rotor still, take the wires off the bridge and measure ohms between their far ends: the broken one reaches none of the others.'
  if (kind !== 'open diode' && kind !== 'shorted diode') return undefined
  const seen = kind === 'open diode' ? 'nothing either way' : 'next to 0 V both ways'
  return `Take the bridge off the machine and off the battery, and set a multimeter to its diode range: across a sound silicon diode it shows 0.4 … 0.9 V one way and nothing the other way (a Schottky diode less), across this one ${seen}.`
}

/** A defect as one would say it, without a full stop. */
export function defectWords(defect: Defect): string {
  switch (defect.kind) {
    case 'flipped magnet':
      return `${place(defect)} the wrong way round`
    case 'weak magnet':
      return `${place(defect)} with ${formatNumber(100 * nominal(defect.strength), 2)} % of its strength`
    case 'missing magnet':
      return `${place(defect)} missing`
    case 'shifted magnet':
      return `${place(defect)} ${formatNumber(Math.abs(nominal(defect.shift_mm)))} mm beside its place`
    case 'other grade':
      return `${place(defect)} of grade ${defect.grade}`
    case 'reversed coil':
      return `coil ${defect.coil} the wrong way round`
    case 'reversed phase':
      return `phase ${defect.phase} the wrong way round`
    case 'swapped phases':
      return `phases ${defect.phase} and ${defect.other} in each other’s place`
    case 'shorted turns':
      return `${times(defect.turns, 'turn')} of coil ${defect.coil} shorted`
    case 'open strand':
      return `${times(defect.strands, 'strand')} of phase ${defect.phase} broken`
    case 'open diode':
      return `the ${diodePlace(defect)} open`
    case 'shorted diode':
      return `the ${diodePlace(defect)} shorted`
    case 'open line':
      return `line ${defect.line} broken between machine and bridge`
    case 'unequal gap':
      return `the gap ${formatNumber(nominal(defect.difference_mm))} mm wider on one side than on the other`
  }
}
