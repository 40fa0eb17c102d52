/** Colours of the wire by what it gives: purple in step, orange against, grey nothing; told apart by any eye. */
import { inPhasePerMetre, type VoltageAlongWire } from '../../src/analysis/wire-reading.ts'

const nothing = [176, 172, 162] as const
const gives = [72, 28, 128] as const
const against = [206, 104, 8] as const

/** Red, green, blue 0…255 for −1…1 of the greatest. */
export function wireColour(value: number): readonly [number, number, number] {
  const end = value < 0 ? against : gives
  const t = Math.min(1, Math.abs(value))
  const mixed = (k: 0 | 1 | 2) => Math.round(nothing[k] + t * (end[k] - nothing[k]))
  return [mixed(0), mixed(1), mixed(2)]
}

export const cssColour = (value: number): string => `rgb(${wireColour(value).join(' ')})`

/** Greatest amount per metre of any coil, in step or against [V·s/(rad·m)]. */
export const greatestPerMetre = (along: VoltageAlongWire): number =>
  along.coils.reduce(
    (most, coil) =>
      inPhasePerMetre(along, coil).reduce((best, value) => Math.max(best, Math.abs(value)), most),
    0,
  )
