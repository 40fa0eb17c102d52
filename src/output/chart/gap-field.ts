/** Picture of the field that the winding meets under one pair of poles. */
import { niceDomain } from './axis.ts'
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
      description:
        'Flux density in millitesla that the middle of the winding meets, against electrical angle in degrees over one pair of poles.',
      width,
      height,
    },
    body,
  )
}
