/** The blades on the sheet: outline to scale, chord and twist at stations as they are marked out. */
import { bladeFigure } from '../../analysis/blade-figure.ts'
import type { Chain } from '../../analysis/compute.ts'
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import { formatNumber } from '../../units/format.ts'
import { planDrawing, planReach, planWords } from '../chart/blade.ts'
import { lengthNumber } from '../chart/drawn-length.ts'
import { escaped, lineThrough, type Point, picture, px } from '../chart/picture.ts'
import { measuredText, signMeasured } from '../measuring.ts'
import { said } from '../telling.ts'
import { linesIn } from './letter-width.ts'
import {
  type Block,
  figure,
  heading,
  headingHeight_mm,
  printed,
  printedHeight,
  rowTable,
  rowTableHeight,
} from './sheet-markup.ts'
import { drawingScale, lineHeight_mm, unitLength_mm, unitsOf } from './sheet-unit.ts'

/** Width of the block [mm]. */
export const bladeWidth = 93

const stationCount = 8
/** Part of the chord that lies ahead of the straight line about which the outline is drawn. */
const ahead = 0.25
const outlineSteps = 60

export interface BladeStation {
  /** [m], [m], [rad] */
  readonly radius: number
  readonly chord: number
  readonly twist: number
}

type Shape = NonNullable<ReturnType<typeof bladeFigure>['shape']>

/** From the root to the tip at equal steps, the first and the last at the ends. */
export function bladeStations({ hubRadius, station, chord, twist }: Shape, radius: number): BladeStation[] {
  const first = Math.max(hubRadius, station[0]!)
  const [c, β] = [piecewiseLinear(station, chord), piecewiseLinear(station, twist)]
  return Array.from({ length: stationCount }, (_, k) => {
    const r = first + ((radius - first) * k) / (stationCount - 1)
    return { radius: r, chord: c(r), twist: β(r) }
  })
}

const tenths = (value: number): string => (Math.round(10 * value) / 10).toFixed(1).replace('-', '−')

/** One blade seen from the wind, the leading edge above. */
function outline(shape: Shape, radius: number, perMetre: number): string {
  const chord = piecewiseLinear(shape.station, shape.chord)
  const first = Math.max(shape.hubRadius, shape.station[0]!)
  const at = Array.from({ length: outlineSteps + 1 }, (_, k) => first + (k / outlineSteps) * (radius - first))
  const widest = Math.max(...at.map(chord)) * perMetre
  const axis = 4 + ahead * widest
  const x = (r: number) => 2 + r * perMetre
  const edge = (share: number) => at.map((r): Point => [x(r), axis + share * chord(r) * perMetre])
  const marks = bladeStations(shape, radius).map(
    ({ radius: r }) => `<path class="tick" d="M${px(x(r))} 1V${px(8 + widest)}"/>`,
  )
  const hub = Math.min(shape.hubRadius * perMetre, 0.6 * widest + 4)
  return picture(
    {
      name: 'blade-outline',
      title: 'Outline of one blade',
      description:
        'One blade from the axis on the left to its tip, the leading edge above, its stations marked.',
      width: x(radius) + 4,
      height: 10 + widest,
    },
    `<path class="guide" d="M${px(x(0))} ${px(axis)}H${px(x(radius))}"/>` +
      `<path class="guide" d="M${px(x(0))} ${px(axis - hub / 2)}v${px(hub)}"/>` +
      marks.join('') +
      `<path class="blade" d="${lineThrough([...edge(-ahead), ...edge(1 - ahead).reverse()])}Z"/>`,
  )
}

/** Of the upright rotor's plan, as high as wide [mm]. */
const planWidth = 29
/** Beside it, the words [mm]. */
const planTextWidth = bladeWidth - planWidth - 3 - 8 * unitLength_mm

function drawnBlade(shown: ReturnType<typeof bladeFigure>, words: string): Block {
  const { radius, shape, upright } = shown
  if (shape !== undefined) {
    const scale = drawingScale(radius, bladeWidth - 4)
    const stations = bladeStations(shape, radius)
    const drawn = figure(
      outline(shape, radius, scale.perMetre),
      `${words} ${scale.words}, seen from the wind, leading edge above; twist: leading edge out of the disc, into the wind.`,
      bladeWidth,
    )
    const sign = signMeasured('mm')
    const rows = [
      [`radius, ${sign}`, ...stations.map((each) => lengthNumber(each.radius, 1))],
      [`chord, ${sign}`, ...stations.map((each) => lengthNumber(each.chord, 0.1))],
      ['twist, °', ...stations.map((each) => tenths((180 / Math.PI) * each.twist))],
    ]
    return {
      markup:
        drawn.markup +
        rowTable(
          rows.map(([head = '', ...cells]) => [said(head), ...cells.map(said)]),
          'stations',
        ),
      height: drawn.height + rowTableHeight(rows.length),
    }
  }
  if (upright !== undefined) {
    const reach = planReach(shown, upright)
    const scale = drawingScale(2 * reach, planWidth)
    const width = unitsOf(planWidth) + 8
    const centre: Point = [width / 2, reach * scale.perMetre + 4]
    const height = 2 * centre[1]
    const svg = picture(
      { name: 'blade-plan', title: 'Blades along the axis', description: words, width, height },
      planDrawing(shown, upright, { centre, scale: scale.perMetre }),
    )
    const texts = [
      words,
      `${planWords(shown, upright).join('; ')}.`,
      `Seen along the axis, ${scale.words}.`,
    ].map(said)
    return {
      markup: `<div class="beside">${printed(svg)}<div>${texts.map((text) => `<p>${escaped(text)}</p>`).join('')}</div></div>`,
      height: Math.max(
        printedHeight(svg),
        texts.reduce((sum, text) => sum + lineHeight_mm * linesIn(text, planTextWidth), 0),
      ),
    }
  }
  const text = said(
    `${words} The design knows these blades by their power alone: it holds no chord and no twist to carve by.`,
  )
  return { markup: `<p>${escaped(text)}</p>`, height: lineHeight_mm * linesIn(text, bladeWidth) }
}

export function bladeBlock(chain: Chain): Block {
  const shown = bladeFigure(chain)
  const { radius, bladeCount, section, upright, best } = shown
  const kind = upright?.buckets ? 'bucket' : 'blade'
  const count = bladeCount === undefined ? 'Blades' : `${bladeCount} ${kind}${bladeCount === 1 ? '' : 's'}`
  const words = `${count}, ${measuredText(2 * radius, 'm')} across${section === undefined ? '' : `, section ${section}`}; best at a tip-speed ratio of ${formatNumber(best.tipSpeedRatio)}.`
  const { markup, height } = drawnBlade(shown, words)
  return { markup: `${heading('Blades')}${markup}`, height: headingHeight_mm + height }
}
