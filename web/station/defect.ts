/** Station of the defects: what was done wrong, on purpose or not. */
import { isRawObject, type RawObject, valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Start, type Station } from './station.ts'

const magnet: Start = () => ({ position: 1 })
const coil: Start = () => ({ coil: 1 })

/** A tenth of a pole pitch. */
const shift = (document: RawObject) => {
  const poles = Math.max(2, numberAt(document, ['rotor', 'poleCount'], 12))
  return rounded((0.1 * 2 * Math.PI * numberAt(document, ['rotor', 'pitchRadius_mm'], 60)) / poles, 0.1)
}

const otherGrade = (document: RawObject) => {
  const own = valueAt(document, ['rotor', 'magnet', 'grade'])
  return typeof own === 'string' && own.startsWith('Y') ? 'N42' : 'Y30'
}

export const defectStation: Station = {
  noun: 'defects',
  title: 'Defects',
  lead: 'What was done wrong: nothing in a sound machine.',
  open: false,
  starts: {
    'defects[].kind': {
      'flipped magnet': magnet,
      'weak magnet': () => ({ position: 1, strength: 0.8 }),
      'missing magnet': magnet,
      'shifted magnet': (document) => ({ position: 1, shift_mm: shift(document) }),
      'other grade': (document) => ({ position: 1, grade: otherGrade(document) }),
      'reversed coil': coil,
      'reversed phase': () => ({ phase: 1 }),
      'swapped phases': () => ({ phase: 1, other: 2 }),
      'shorted turns': () => ({ coil: 1, turns: 1 }),
      'open strand': () => ({ phase: 1, strands: 1 }),
      'open diode': () => ({ line: 1, side: 'positive' }),
      'shorted diode': () => ({ line: 1, side: 'positive' }),
      'open line': () => ({ line: 1 }),
      'unequal gap': () => ({ difference_mm: 0.5 }),
    },
  },
  entries: {
    defects: (document) => {
      const list = document['defects']
      // the next magnet, so that two entries are not about one
      const count = Array.isArray(list) ? list.filter(isRawObject).length : 0
      return { kind: 'flipped magnet', position: count + 1 }
    },
  },
  entryNames: { defects: 'defect' },
}
