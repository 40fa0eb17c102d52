/** Picture of the match: what the blades offer in several winds and what the generator takes, against speed. */
import { formatNumber } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
import { dashes, type PanelLine, panelBody } from './panel.ts'
import { type Point, picture, shortNumber } from './picture.ts'

/** [rad/s] and [W]. */
export interface SpeedCurve {
  readonly speed: ArrayLike<number>
  readonly power: ArrayLike<number>
}

export interface MatchChart {
  readonly width: number
  readonly height: number
  readonly blades: readonly (SpeedCurve & { readonly wind: number })[]
  readonly generator: SpeedCurve
  /** Steady states [rad/s], [W]. */
  readonly points: readonly { readonly wind: number; readonly speed: number; readonly power: number }[]
  readonly chosenWind: number
}

export const rpmOf = (speed: number): number => (speed * 60) / (2 * Math.PI)

const pairs = ({ speed, power }: SpeedCurve): Point[] =>
  Array.from(speed, (value, k): Point => [rpmOf(value), power[k]!])

export function matchChart({ width, height, blades, generator, points, chosenWind }: MatchChart): string {
  const left = 52
  const plot = { left, top: 30, width: Math.max(60, width - left - 18), height: height - 76 }
  const highest = Math.max(
    1e-6,
    ...points.map(({ power }) => power),
    ...blades.flatMap(({ power }) => Array.from(power)),
  )
  const fastest = Math.max(
    1,
    ...blades.flatMap((curve) =>
      pairs(curve)
        .filter(([, power]) => power > 0)
        .map(([rpm]) => rpm),
    ),
    ...points.map(({ speed }) => rpmOf(speed)),
  )
  const lines: PanelLine[] = [
    ...blades.map(
      (curve): PanelLine => ({
        label: `${shortNumber(curve.wind)} m/s`,
        className: curve.wind === chosenWind ? 'ink-chosen' : 'ink-wind',
        dash: curve.wind === chosenWind ? dashes[0] : dashes[2],
        points: pairs(curve).filter(([, power], k, all) => power >= 0 || (all[k - 1]?.[1] ?? 0) > 0),
        labelAt: 'top',
      }),
    ),
    { label: 'generator', className: 'ink-generator', points: pairs(generator), labelAt: 'nowhere' },
  ]
  const chosen = points.find(({ wind }) => wind === chosenWind)
  const body = panelBody({
    plot,
    footed: true,
    x: { label: 'speed, rpm', domain: [0, fastest * 1.02] },
    y: { label: 'shaft power, W', domain: niceDomain([0, highest * 1.06], 5) },
    lines,
    marks: [
      ...points.map(({ speed, power }) => ({
        at: [rpmOf(speed), power] as const,
        className: 'ink-generator',
        radius: 3,
      })),
      ...(chosen && chosen.speed > 0
        ? [
            {
              at: [rpmOf(chosen.speed), chosen.power] as const,
              className: 'ink-chosen',
              radius: 7,
              label: `${formatNumber(rpmOf(chosen.speed))} rpm, ${formatNumber(chosen.power)} W`,
            },
          ]
        : []),
    ],
  })
  return picture(
    {
      name: 'match',
      title: 'Blades and generator at every speed',
      description:
        'Shaft power in watts against speed in rpm: one curve of the blades for each of several winds, the solid curve of the generator, and the points where the machine settles.',
      width,
      height,
    },
    body,
  )
}
