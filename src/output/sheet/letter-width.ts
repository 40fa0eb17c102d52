/** How wide words come out on paper, and how many lines they take in a column. */

/** Size of the smallest type that is set, letters in drawings aside [mm]. */
export const typeSize_mm = 8 * (25.4 / 72)

type Widths = readonly (readonly [width: number, letters: string])[]

/**
 * Advance widths over a thousandth of the size of the type, as a browser measures Liberation Sans. Arial, Helvetica and
 * Nimbus Sans share them by design; a letter that is not listed is as wide as a digit.
 */
const regularWidths: Widths = [
  [191, "'"],
  [222, 'ijl‘’'],
  [278, ' !,./:;I[\\]ft·|'],
  [333, '()-`r„“”²³{}"'],
  [365, '⎓'],
  [400, '°*'],
  [500, 'Jcksvxyzλ'],
  [584, '+<=>~×−µμρ'],
  [611, 'FTZß'],
  [667, '&ABEKPSVXYÄφ'],
  [722, 'CDHNRUwÜ∞'],
  [778, 'GOQÖΩ'],
  [833, 'Mm½'],
  [889, '%'],
  [944, 'W'],
  [1000, '—…→@'],
]

const boldWidths: Widths = [
  [278, " ,./I\\ijl‘’·|'"],
  [333, '!()-:;[]`ft²³'],
  [389, 'r{}⎓°*'],
  [500, 'z„“”"'],
  [584, '+<=>~×−µ'],
  [611, '?FLTZbdghnopquöüßημρ'],
  [667, 'EPSVXY'],
  [722, '&ABCDHKNRUÄÜφ∞'],
  [778, 'GOQwÖΩ'],
  [833, 'M½'],
  [889, '%m'],
  [1000, 'W@—…→'],
]

const byLetter = (widths: Widths): ReadonlyMap<string, number> =>
  new Map(widths.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width / 1000] as const)))

const weights = { regular: byLetter(regularWidths), bold: byLetter(boldWidths) }
export type Weight = keyof typeof weights

const digitWidth = 0.556
/** Of a text in one line of the smallest type [mm]. */
export function textWidth(text: string, weight: Weight = 'regular'): number {
  let width = 0
  for (const letter of text) width += weights[weight].get(letter) ?? digitWidth
  return width * typeSize_mm
}

/** Lines that a text takes in a column of so much width [mm], broken between words. */
export function linesIn(text: string, width_mm: number, weight: Weight = 'regular'): number {
  const space = textWidth(' ', weight)
  let [lines, taken] = [1, 0]
  for (const word of text.split(' ')) {
    const width = textWidth(word, weight)
    if (taken > 0 && taken + space + width > width_mm) {
      lines++
      taken = 0
    }
    taken += (taken > 0 ? space : 0) + width
    // a word wider than its column runs on in the next line
    const over = Math.ceil(taken / width_mm) - 1
    if (over > 0) {
      lines += over
      taken -= over * width_mm
    }
  }
  return lines
}
