/** Picture of the field that the winding meets under one pair of poles. */
import { formatSi } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface GapFieldChart {
  readonly width: number
  readonly height: number
  /** Electrical [rad], from the middle of a magnet over one pole pair. */
  readonly angle: ArrayLike<number>
  /** [T] */
  readonly normal: ArrayLike<number>
}

/** A wave whose peak over its rms is this near to that of a sine is called like it. */
const likeSine = 0.08

/** How strong the field is over the magnets, and how the wave departs from a sine. */
function description(normal: ArrayLike<number>): string {
  const list = Array.from(normal)
  const most = list.reduce((best, B) => Math.max(best, Math.abs(B)), 0)
  const rms = Math.sqrt(list.reduce((sum, B) => sum + B * B, 0) / Math.max(1, list.length))
  const crest = rms > 0 ? most / rms : 0
  if (crest === 0) return 'The winding meets no field.'
  const shape =
    crest < Math.SQRT2 * (1 - likeSine)
      ? 'flatter than a sine'
      : crest > Math.SQRT2 * (1 + likeSine)
        ? 'more pointed than a sine'
        : 'much like a sine'
  const over = list[0] ?? 0
  return `Over one pair of poles the winding meets up to ${formatSi(most, 'mT')}, ${formatSi(Math.abs(over), 'mT')} over the middle of a magnet; the wave is ${shape}.`
}

export function gapFieldChart({ width, height, angle, normal }: GapFieldChart): string {
  const points = Array.from({ length: angle.length + 1 }, (_, k): Point => {
    const within = k % Math.max(angle.length, 1)
    return [(360 * k) / Math.max(angle.length, 1), (normal[within] ?? 0) * 1000]
  })
  const most = Math.max(1e-9, ...points.map(([, B]) => Math.abs(B)))
  const body = panelBody({
    plot: { left: 52, top: 30, width: Math.max(60, width - 52 - 22), height: height - 76 },
    footed: true,
    x: { label: 'electrical angle, °', domain: [0, 360] },
    y: { label: 'flux density through the winding, mT', domain: niceDomain([-most, most], 6) },
    lines: [{ label: 'field', className: 'ink-field', points, labelAt: 'nowhere', filled: true }],
  })
  return picture(
    {
      name: 'gap-field',
      title: 'Field in the gap',
      description: description(normal),
      width,
      height,
    },
    body,
  )
}

export function gapFieldTable({ angle, normal }: Pick<GapFieldChart, 'angle' | 'normal'>): ChartTable {
  return {
    caption: 'Flux density over one pair of poles',
    columns: [
      { head: 'electrical angle', unit: '°' },
      { head: 'flux density', unit: 'mT' },
    ],
    rows: Array.from(angle, (each, k) => [(each * 180) / Math.PI, 1000 * (normal[k] ?? 0)]),
  }
}
