/** The machine on the sheet: along its shaft and cut through a magnet, each to a stated scale. */
import type { Chain } from '../../analysis/compute.ts'
import { machineFace } from '../../analysis/machine-face.ts'
import { machineSection } from '../../analysis/machine-section.ts'
import type { Magnet } from '../../machine/machine.ts'
import { formatSi } from '../../units/format.ts'
import { lengthNumber, lengthText } from '../chart/drawn-length.ts'
import { faceReach, machineFaceChart } from '../chart/machine-face.ts'
import { machineSectionChart, sectionMargin } from '../chart/machine-section.ts'
import { escaped } from '../chart/picture.ts'
import { said } from '../telling.ts'
import { linesIn } from './letter-width.ts'
import { type Block, printed, printedHeight } from './sheet-markup.ts'
import {
  columnGap_mm,
  type DrawingScale,
  drawingScale,
  lineHeight_mm,
  unitLength_mm,
  unitsOf,
} from './sheet-unit.ts'

/** Width of each drawing, and room of the drawings in them, letters and labels aside [mm]. */
const faceWidth = 58
const faceAcross = 34
const sectionWidth = 62
const sectionAlong = sectionWidth - sectionMargin * unitLength_mm
const sectionAcross = 32
/** Of both [mm]. */
export const machineWidth = faceWidth + columnGap_mm + sectionWidth
/** A section lower than this no longer tells its layers apart [mm]. */
const leastAcross = 15

function magnetSize({ shape, length, width, thickness }: Magnet): string {
  const [long, wide, thick] = [length, width, thickness].map((each) => lengthText(each))
  switch (shape.kind) {
    case 'block':
      return `${lengthNumber(length)} × ${lengthNumber(width)} × ${thick}`
    case 'disc':
      return `round, ${wide} across, ${thick} thick`
    case 'arc':
      return `arcs ${long} long, ${wide} wide, ${thick} thick`
    case 'wedge':
      return `wedges ${long} long, ${lengthNumber(shape.innerWidth)} to ${lengthText(shape.outerWidth)} wide, ${thick} thick`
  }
}

/** What the rotor is made of, in a line. */
export function rotorWords({ machine: { rotor } }: Pick<Chain, 'machine'>): string {
  const { arrangement, poleCount, piecesPerPole, magnet, pitchRadius } = rotor
  const rings = { drum: 'Drum', disc: 'Disc', 'two-discs': 'Two discs, each' }[arrangement]
  const pieces = piecesPerPole > 1 ? `, ${piecesPerPole} magnets a pole` : ''
  const stuff = magnet.grade ?? `remanence ${formatSi(magnet.labelRemanence, 'T')}`
  return `${rings} with ${poleCount} poles${pieces}: ${magnetSize(magnet)}, ${stuff}; middles ${lengthText(pitchRadius)} from the axis.`
}

/** Drawn whole where its layers stay legible, else cut short: by height and by length [m]. */
function sectionScale(tall: number, long: number): DrawingScale {
  const byHeight = drawingScale(tall, sectionAcross)
  const whole = drawingScale(long, sectionAlong)
  if (whole.perMetre >= byHeight.perMetre) return byHeight
  return tall * whole.perMetre >= unitsOf(leastAcross) ? whole : byHeight
}

export function machineBlock(chain: Chain): Block {
  const face = machineFace(chain)
  const across = drawingScale(2 * faceReach(face), faceAcross)
  const section = machineSection(chain)
  const { bodies } = section
  const tall = Math.max(...bodies.map(({ top }) => top)) - Math.min(...bodies.map(({ foot }) => foot))
  const long = Math.max(...bodies.map(({ end }) => end)) - Math.min(...bodies.map(({ start }) => start))
  const cut = sectionScale(tall, long)
  const drawings = [
    machineFaceChart({ width: unitsOf(faceWidth), face, scale: across.perMetre }),
    machineSectionChart({ width: unitsOf(sectionWidth), section, scale: cut.perMetre }),
  ]
  const texts = [
    `${across.words}. ${rotorWords(chain)}`,
    `Section through a magnet, ${cut.words}, where the bar measures what it says.`,
  ].map(said)
  return {
    markup: `<div class="machine"><div class="row">${drawings.map(printed).join('')}</div>${texts.map((text) => `<p>${escaped(text)}</p>`).join('')}</div>`,
    height:
      Math.max(...drawings.map(printedHeight)) +
      texts.reduce((sum, text) => sum + lineHeight_mm * linesIn(text, machineWidth), 0),
  }
}
