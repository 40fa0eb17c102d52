/** Lengths on the paper: the unit that drawings are made in, the room of a page, and the scales of true drawings. */
import { typeSize_mm } from './letter-width.ts'

/**
 * Of a drawing's unit [mm]: the smallest letters of a picture are 12 units high and come out at 7.5 points, legible at
 * arm's length.
 */
export const unitLength_mm = (7.5 / 12) * (25.4 / 72)

/**
 * What A4 and US Letter have in common inside margins of 10 mm: the width of the one, 210 − 20, and less than the height
 * of the other, 279.4 − 20 [mm].
 */
export const room_mm = { width: 190, height: 258 } as const

/** Between two blocks [mm]. */
export const blockGap_mm = 1.5
/** Between two columns [mm]. */
export const columnGap_mm = 4

export const unitsOf = (millimetres: number): number => millimetres / unitLength_mm

/** Those of ISO 5455 (from memory, not opened) and, between them, those that a ruler still reads easily. */
const scales: readonly (readonly [paper: number, machine: number])[] = [
  ...[20, 10, 5, 2, 1].map((paper): [number, number] => [paper, 1]),
  ...[2, 2.5, 3, 4, 5, 8, 10, 15, 20, 25, 40, 50, 60, 80, 100].map((machine): [number, number] => [
    1,
    machine,
  ]),
]

export interface DrawingScale {
  /** As drawings state it: 1:2. */
  readonly words: string
  /** Units of the drawing over metres of the machine. */
  readonly perMetre: number
}

const smallestScale = scales[scales.length - 1]!

/** The largest at which a length of the machine [m] takes no more than so much paper [mm]. */
export function drawingScale(length: number, paper_mm: number): DrawingScale {
  const fits = ([paper, machine]: readonly [number, number]) => (1000 * length * paper) / machine <= paper_mm
  const [paper, machine] = scales.find(fits) ?? smallestScale
  return { words: `${paper}:${machine}`, perMetre: (1000 * paper) / machine / unitLength_mm }
}

/** Of a line of the smallest type [mm]. */
export const lineHeight_mm = 1.18 * typeSize_mm
/** Between two ruled rows: a browser draws no line thinner than this [mm]. */
export const hairline_mm = 25.4 / 96
