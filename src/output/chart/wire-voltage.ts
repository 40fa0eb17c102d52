/** Picture of which part of a winding raises the volts of a phase, beside the wire that it takes. */
import { formatNumber } from '../../units/format.ts'
import { linearScale } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { labelRoom } from './panel.ts'
import { picture, px, textAt } from './picture.ts'

export interface WireVoltageChart {
  readonly width: number
  readonly parts: readonly {
    readonly label: string
    /** Of the phase's fundamental, below zero where the part works against it. */
    readonly share: number
    /** Of the winding's copper. */
    readonly copperShare: number
  }[]
}

const rowHeight = 62
const barHeight = 13

export const shareText = (share: number): string => `${formatNumber(100 * share)} %`

export function wireVoltageChart({ width, parts }: WireVoltageChart): string {
  const shares = parts.map(({ share }) => share)
  const greatest = Math.max(0.01, ...shares, ...parts.map(({ copperShare }) => copperShare))
  const least = Math.min(0, ...shares)
  const words = parts.map(({ share, copperShare }) => ({
    volts: `${shareText(share)} of volts`,
    wire: `${shareText(copperShare)} of wire`,
  }))
  const end = Math.max(80, width - labelRoom(words.flatMap(({ volts, wire }) => [volts, wire])))
  const at = linearScale([least, greatest], [4, end])
  const zero = at(0)
  const bar = (share: number, y: number, className: string) => {
    const to = at(share)
    return `<rect class="bar ${className}" x="${px(Math.min(zero, to))}" y="${px(y)}" width="${px(Math.max(Math.abs(to - zero), share === 0 ? 0 : 1))}" height="${barHeight}"/>`
  }
  const rows = parts.map(({ label, share, copperShare }, k) => {
    const top = 6 + k * rowHeight
    const ink = share < 0 ? 'ink-against' : 'ink-gives'
    return (
      textAt(4, top + 12, share < 0 ? `${label} — works against the rest` : label, {
        className: 'part-text',
      }) +
      bar(share, top + 19, ink) +
      textAt(end + 8, top + 30, words[k]!.volts, { className: `line-label ${ink}` }) +
      bar(copperShare, top + 19 + barHeight + 3, 'ink-wire') +
      textAt(end + 8, top + 46, words[k]!.wire, { className: 'loss-text' })
    )
  })
  const height = 8 + parts.length * rowHeight
  const axis = `<path class="axis" d="M${px(zero)} 4V${px(height - 6)}"/>`
  const description = parts.map(
    ({ label, share, copperShare }) =>
      `${label} ${shareText(share)} of the volts from ${shareText(copperShare)} of the wire`,
  )
  return picture(
    {
      name: 'wire-voltage',
      title: 'Volts and wire by part of the winding',
      description: `${description.join('; ')}.`,
      width,
      height,
    },
    rows.join('') + axis,
  )
}

/** A part of a phase with all that is told of it; volts per speed [V·s/rad]. */
export interface WirePartRow {
  readonly label: string
  readonly volts: number
  readonly share: number
  /** Of the phase's volts, from wire under the magnets. */
  readonly underShare: number
  /** [m] */
  readonly length: number
  readonly copperShare: number
  /** In step, per length [V·s/rad/m]. */
  readonly perMetre: number
  /** To the run [rad]. */
  readonly lean: number
}

/** At a speed [rad/s]. */
export function wireVoltageTable(parts: readonly WirePartRow[], speed: number): ChartTable {
  return {
    caption: 'Volts and wire by part of the winding',
    columns: [
      { head: 'part' },
      { head: 'volts, peak', unit: 'V' },
      { head: 'of the volts', unit: '%' },
      { head: 'of it under the magnets', unit: '%' },
      { head: 'wire', unit: 'm' },
      { head: 'of the ohms', unit: '%' },
      { head: 'in step', unit: 'mV/mm' },
      { head: 'angle to the run', unit: '°' },
    ],
    rows: parts.map(({ label, volts, share, underShare, length, copperShare, perMetre, lean }) => [
      label,
      volts * speed,
      100 * share,
      share === 0 ? undefined : (100 * underShare) / share,
      length,
      100 * copperShare,
      perMetre * speed,
      (180 * lean) / Math.PI,
    ]),
  }
}
