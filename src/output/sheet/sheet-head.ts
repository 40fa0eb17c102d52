/** The head and the foot of the sheet: which design this is, what it is for, and how two sheets are told apart. */
import type { Chain } from '../../analysis/compute.ts'
import { formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { escaped } from '../chart/picture.ts'
import { said } from '../telling.ts'
import { engineVersion } from './engine-version.ts'
import { fingerprint } from './fingerprint.ts'
import { linesIn } from './letter-width.ts'
import { type Block, shortened } from './sheet-markup.ts'
import { lineHeight_mm, room_mm } from './sheet-unit.ts'

/** Longer texts end in … : the head has its room. */
const nameLetters = 56
const goalLetters = 120
const noteLetters = 130

/** Its letters are somewhat larger than the smallest. */
const enlarged = 8.5 / 8
/** Of the name with its rule, and of a line under it [mm]. */
const nameHeight = 7.4
const lineHeight = enlarged * lineHeight_mm

const sentence = (text: string): string => text.trim().replace(/[^.!?…]$/, '$&.')

export function sheetHead({ machine }: Pick<Chain, 'machine'>): Block {
  const { design, name, safetyClass } = machine
  const { goal, power_W, atWind_m_per_s } = design.purpose
  const wanted =
    power_W === undefined
      ? []
      : [
          `Wanted: ${formatSi(nominal(power_W), 'W')}${atWind_m_per_s === undefined ? '' : ` at ${formatSi(nominal(atWind_m_per_s), 'm_per_s', 2)}`}.`,
        ]
  const texts = [
    [
      ...(goal === undefined ? [] : [sentence(shortened(goal, goalLetters))]),
      said(`For use: ${safetyClass}.`),
      ...wanted.map(said),
    ].join(' '),
    ...(design.note === undefined ? [] : [sentence(shortened(design.note, noteLetters))]),
  ]
  const lines = texts.reduce((sum, text) => sum + linesIn(text, room_mm.width / enlarged), 0)
  return {
    markup: `<header><h1>${escaped(shortened(name, nameLetters))}</h1>${texts.map((text) => `<p>${escaped(text)}</p>`).join('')}</header>`,
    height: nameHeight + lineHeight * lines,
  }
}

/** The day is the caller's: the engine has no clock. */
export const sheetFoot = ({ machine }: Pick<Chain, 'machine'>, date: string): string =>
  `<footer>${[
    said(`Sheet of ${date}`),
    `${said('Design, first twelve digits of its SHA-256:')} ${fingerprint(machine.design)}`,
    `Gustloom ${engineVersion}`,
    said('Print at 100 %, A4 or Letter'),
  ]
    .map((text) => `<span>${escaped(text)}</span>`)
    .join('')}</footer>`

/** Of the foot [mm]. */
export const footHeight_mm = lineHeight_mm + 1.1
