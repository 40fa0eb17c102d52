/** The machine on the sheet: along its shaft and cut through a magnet, each to a stated scale. */
import type { Chain } from '../../analysis/compute.ts'
import { machineFace } from '../../analysis/machine-face.ts'
import { machineSection } from '../../analysis/machine-section.ts'
import type { Magnet } from '../../machine/machine.ts'
import { formatSi } from '../../units/format.ts'
import { faceReach, machineFaceChart } from '../chart/machine-face.ts'
import { machineSectionChart, sectionMargin } from '../chart/machine-section.ts'
import { shortNumber } from '../chart/picture.ts'
import { type Block, figure } from './sheet-markup.ts'
import { type DrawingScale, drawingScale, unitLength_mm, unitsOf } from './sheet-unit.ts'

/** Width of each figure, and room of the drawings in them, letters and labels aside [mm]. */
const faceWidth = 62
const faceAcross = 34
const sectionWidth = 65
const sectionAlong = sectionWidth - sectionMargin * unitLength_mm
const sectionAcross = 32
/** A section lower than this no longer tells its layers apart [mm]. */
const leastAcross = 15

const mm = (length: number): string => shortNumber(Math.round(length * 1e5) / 100)

function magnetSize({ shape, length, width, thickness }: Magnet): string {
  switch (shape.kind) {
    case 'block':
      return `${mm(length)} × ${mm(width)} × ${mm(thickness)} mm`
    case 'disc':
      return `round, ${mm(width)} mm across, ${mm(thickness)} mm thick`
    case 'arc':
      return `arcs ${mm(length)} mm long, ${mm(width)} mm wide, ${mm(thickness)} mm thick`
    case 'wedge':
      return `wedges ${mm(length)} mm long, ${mm(shape.innerWidth)} to ${mm(shape.outerWidth)} mm wide, ${mm(thickness)} mm thick`
  }
}

/** What the rotor is made of, in a line. */
export function rotorWords({ machine: { rotor } }: Pick<Chain, 'machine'>): string {
  const { arrangement, poleCount, piecesPerPole, magnet, pitchRadius } = rotor
  const rings = { drum: 'Drum', disc: 'Disc', 'two-discs': 'Two discs, each' }[arrangement]
  const pieces = piecesPerPole > 1 ? `, ${piecesPerPole} magnets a pole` : ''
  const stuff = magnet.grade ?? `remanence ${formatSi(magnet.labelRemanence, 'T')}`
  return `${rings} with ${poleCount} poles${pieces}: ${magnetSize(magnet)}, ${stuff}; middles ${mm(pitchRadius)} mm from the axis.`
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
  const figures = [
    figure(
      machineFaceChart({ width: unitsOf(faceWidth), face, scale: across.perMetre }),
      `${across.words}. ${rotorWords(chain)}`,
      faceWidth,
    ),
    figure(
      machineSectionChart({ width: unitsOf(sectionWidth), section, scale: cut.perMetre }),
      `Section through a magnet, ${cut.words}, where the bar measures what it says.`,
      sectionWidth,
    ),
  ]
  return {
    markup: figures.map(({ markup }) => markup).join(''),
    height: Math.max(...figures.map(({ height }) => height)),
  }
}
