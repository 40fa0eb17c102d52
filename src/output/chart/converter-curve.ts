/** Picture of what the electronics ask for at each speed, what they get, and what the blades could give. */
import type { ConverterDuty } from '../../analysis/converter-duty.ts'
import { formatSi } from '../../units/format.ts'
import { fromSi, unit } from '../../units/unit.ts'
import { chosenText } from '../measuring.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface ConverterCurveChart {
  readonly width: number
  readonly height: number
  readonly duty: ConverterDuty
  /** The wind looked at [m/s]. */
  readonly chosenWind: number
}

const leastBeside = 460
const rpm = (speed: number): number => fromSi(speed, unit('rpm'))
const labels = ['asked for', 'drawn', 'blades’ best'] as const

const nearest = ({ winds }: ConverterDuty, wind: number) =>
  winds.reduce<ConverterDuty['winds'][number] | undefined>(
    (best, each) =>
      best === undefined || Math.abs(each.wind - wind) < Math.abs(best.wind - wind) ? each : best,
    undefined,
  )

function description(duty: ConverterDuty, wind: number): string {
  const at = nearest(duty, wind)
  if (at === undefined) return 'In no wind of the table does the rotor turn.'
  return `In ${chosenText(at.wind, 'm_per_s')} the machine runs at ${formatSi(at.speed, 'rpm')}: the electronics ask for ${formatSi(at.asked, 'W')} and draw ${formatSi(at.drawn, 'W')}; ${formatSi(at.shaft, 'W')} come in at the shaft. The blades’ most in that wind is ${formatSi(at.best, 'W')}, at ${formatSi(at.bestSpeed, 'rpm')}.`
}

export function converterCurveChart({ width, height, duty, chosenWind }: ConverterCurveChart): string {
  const { curve, winds } = duty
  const narrow = width < leastBeside
  const labelAt = narrow ? ('inside' as const) : ('end' as const)
  const left = 52
  const plot = {
    left,
    top: 30,
    width: Math.max(60, width - left - (narrow ? 12 : labelRoom(labels))),
    height: Math.max(60, height - 76),
  }
  const asked = curve.map(({ speed, power }): Point => [rpm(speed), power])
  const drawn = winds.map(({ speed, drawn: power }): Point => [rpm(speed), power])
  const best = winds.map(({ bestSpeed, best: power }): Point => [rpm(bestSpeed), power])
  // the blades' best in a storm would flatten what the electronics do
  const fastest = Math.max(1, ...asked.map(([speed]) => speed), ...drawn.map(([speed]) => speed))
  const top = Math.max(1e-6, ...asked.map(([, power]) => power), ...drawn.map(([, power]) => power))
  const at = nearest(duty, chosenWind)
  const inside = best.filter(([speed, power]) => speed <= fastest && power <= 1.5 * top)
  return picture(
    {
      name: 'converter-curve',
      title: 'What the electronics ask for at each speed',
      description: description(duty, chosenWind),
      width,
      height,
    },
    panelBody({
      plot,
      footed: true,
      x: { label: 'speed, rpm', domain: [0, fastest] },
      y: { label: 'power, W', domain: niceDomain([0, 1.5 * top], 5) },
      lines: [
        { label: labels[0], className: 'ink-store', points: asked, labelAt },
        { label: labels[1], className: 'ink-phase-1', dash: dashes[1], points: drawn, labelAt },
        { label: labels[2], className: 'ink-wind', dash: dashes[2], points: inside, labelAt },
      ],
      marks:
        at === undefined
          ? []
          : [
              {
                at: [rpm(at.speed), at.drawn],
                className: 'ink-chosen',
                label: chosenText(at.wind, 'm_per_s'),
                radius: 5,
                rising: true,
              },
            ],
    }),
  )
}

export function converterCurveTable({ winds }: ConverterDuty): ChartTable {
  return {
    caption: 'What the electronics ask for and get, wind by wind',
    columns: [
      { head: 'wind', unit: 'm/s', exact: true },
      { head: 'speed', unit: 'rpm' },
      { head: 'asked for', unit: 'W' },
      { head: 'drawn', unit: 'W' },
      { head: 'at the shaft', unit: 'W' },
      { head: 'blades’ best', unit: 'W' },
      { head: 'speed of it', unit: 'rpm' },
    ],
    rows: winds.map(({ wind, speed, asked, drawn, shaft, best, bestSpeed }) => [
      wind,
      rpm(speed),
      asked,
      drawn,
      shaft,
      best,
      rpm(bestSpeed),
    ]),
  }
}
