/** Defects put in on purpose: what a builder may have done wrong, to see what the volts would look like. */
import { z } from 'zod'
import { magnetGrades } from '../data/magnet-grade.ts'
import { choice, count, namesOf, quantity } from './field.ts'

const position = count({ min: 1, max: 120, help: 'Which magnet, counted from 1 round the ring' })
const disc = count({
  min: 1,
  max: 2,
  help: 'Which of two discs; left out, the same place on both',
}).optional()
const coil = count({
  min: 1,
  max: 180,
  help: 'Which coil, counted from 1; of a serpentine the phase and layer as listed',
})
const phase = count({ min: 1, max: 3, help: 'Which phase, counted from 1' })

const line = count({
  min: 1,
  max: 3,
  help: 'Which line, counted from 1; where each phase has its own bridge, which phase',
})
const diode = {
  line,
  side: choice(['positive', 'negative'], { help: 'The rail of the direct current that the diode leads to' }),
  end: choice(['start', 'finish'], {
    help: 'Where each phase has its own bridge: at which end of the phase; left out, the start',
  }).optional(),
}

const kind = <const Word extends string>(word: Word, description: string) =>
  ({ kind: z.literal(word).meta({ description }) }) as const

const defect = z.discriminatedUnion('kind', [
  z.strictObject({ ...kind('flipped magnet', 'A magnet glued in the wrong way round'), position, disc }),
  z.strictObject({
    ...kind('weak magnet', 'A magnet weaker or stronger than the rest'),
    position,
    disc,
    strength: quantity('1', { min: 0, max: 1.5, help: 'Its polarisation over that of the others' }),
  }),
  z.strictObject({ ...kind('missing magnet', 'A place left empty'), position, disc }),
  z.strictObject({
    ...kind('shifted magnet', 'A magnet beside its place'),
    position,
    disc,
    shift_mm: quantity('mm', { min: -50, max: 50, help: 'Along the circumference, in the sense of turning' }),
  }),
  z.strictObject({
    ...kind('other grade', 'A magnet of another grade, such as ferrite among neodymium'),
    position,
    disc,
    grade: choice(namesOf(magnetGrades), { help: 'Grade of that magnet' }),
  }),
  z.strictObject({ ...kind('reversed coil', 'Start and finish of a coil swapped'), coil }),
  z.strictObject({ ...kind('reversed phase', 'Start and finish of a phase swapped'), phase }),
  z.strictObject({
    ...kind('swapped phases', 'Two phases joined in each other’s place: the order of the phases turns round'),
    phase,
    other: count({ min: 1, max: 3, help: 'The phase it has changed places with' }),
  }),
  z.strictObject({
    ...kind('shorted turns', 'Turns of a coil that touch where the enamel is gone'),
    coil,
    turns: count({ min: 1, max: 20_000, help: 'How many turns the short closes on themselves' }),
  }),
  z.strictObject({
    ...kind('open strand', 'Strands in hand that do not reach their joint'),
    phase,
    strands: count({ min: 1, max: 200, help: 'How many strands are broken' }),
  }),
  z.strictObject({ ...kind('open diode', 'A diode of the bridge that never conducts'), ...diode }),
  z.strictObject({ ...kind('shorted diode', 'A diode of the bridge that conducts both ways'), ...diode }),
  z.strictObject({ ...kind('open line', 'A wire off, or a joint open, between machine and bridge'), line }),
  z.strictObject({
    ...kind('unequal gap', 'A stator that does not stand square: nearer to the magnets on one side'),
    difference_mm: quantity('mm', {
      min: 0,
      max: 50,
      help: 'Distance from the magnets on the wide side less that on the narrow side',
    }),
    at_deg: quantity('deg', {
      min: -360,
      max: 360,
      help: 'Angle about the shaft of the narrow side',
    }).default(0),
  }),
])

export const defectsSchema = z
  .array(defect)
  .max(60)
  .meta({ description: 'Defects to compute with, none in a sound machine' })
  .default([])
