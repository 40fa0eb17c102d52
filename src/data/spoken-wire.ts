/** Wire sizes and sections of cable as people type and read them: a diameter, a gauge, or a section by its gauge. */
import { isUnfinishedQuantity, type Typed, type TypingPlace, typedQuantity } from '../units/typed-quantity.ts'
import { unit } from '../units/unit.ts'
import { cableSizes } from './cable.ts'
import {
  bareDiameter_mm,
  type GaugeFamily,
  gauge,
  nearestGauge,
  neighbourSizes,
  type WireSize,
} from './wire-gauge.ts'

export type WireMeasure = 'mm' | GaugeFamily

export type TypedWire =
  | Exclude<Typed, { readonly kind: 'number' }>
  | { readonly kind: 'size'; readonly size: WireSize }
  /** A gauge that the tables do not have, or a number that can be none. */
  | { readonly kind: 'no gauge' }

const gaugeWords = /^(?:(AWG|SWG)\s*#?(\d+)|#?(\d+)\s*(AWG|SWG))$/i

/** `20 awg` as "AWG 20"; undefined where no gauge was typed. */
function typedGauge(text: string): string | undefined {
  const found = gaugeWords.exec(text.trim())
  return found ? `${(found[1] ?? found[4])!.toUpperCase()} ${Number(found[2] ?? found[3])}` : undefined
}

/** A bare number is a diameter or the number of a gauge, as `measure` says; a gauge or a unit that is typed wins. */
export function typedWireSize(text: string, measure: WireMeasure, mark: TypingPlace['mark']): TypedWire {
  const bare = text.trim()
  const name =
    typedGauge(bare) ?? (measure !== 'mm' && /^\d+$/.test(bare) ? `${measure} ${Number(bare)}` : undefined)
  if (name !== undefined)
    return gauge(name) === undefined ? { kind: 'no gauge' } : { kind: 'size', size: name }
  const mm = unit('mm')
  const typed = typedQuantity(bare, { kept: mm, said: mm, mark })
  if (typed.kind !== 'number') return typed
  return measure === 'mm' || typed.withUnit ? { kind: 'size', size: typed.value } : { kind: 'no gauge' }
}

const halfGauge = /^(?:#?\d*\s*(?:a|aw|s|sw)|#\d*|(?:awg|swg)\s*#?)$/i

/** A gauge or a diameter in the middle of typing. */
export function isUnfinishedWire(text: string, mark: TypingPlace['mark']): boolean {
  const mm = unit('mm')
  return halfGauge.test(text.trim()) || isUnfinishedQuantity(text, { kept: mm, said: mm, mark })
}

/** Digits of a diameter that belongs to a gauge. */
const diameterDigits = 4

export interface SpokenWire {
  readonly text: string
  /** What stands behind the text. */
  readonly unit: '' | WireMeasure
  /** The same wire in other words: its gauge, or its diameter in mm; empty where there is nothing to add. */
  readonly also: string
  /** Whether `also` is that very size, or the nearest there is. */
  readonly same: boolean
}

const rounded = (diameter_mm: number) => String(Number(diameter_mm.toPrecision(diameterDigits)))

/** A size that is no gauge is a diameter with its unit where gauges are wanted: a gauge is not a continuum. */
export function spokenWireSize(size: WireSize, measure: WireMeasure): SpokenWire {
  const diameter = bareDiameter_mm(size)
  if (diameter === undefined || !(diameter > 0))
    return { text: String(size), unit: '', also: '', same: false }
  if (measure === 'mm')
    return typeof size === 'number'
      ? { text: String(size), unit: 'mm', also: '', same: false }
      : { text: rounded(diameter), unit: 'mm', also: size, same: true }
  if (typeof size === 'string' && size.toUpperCase().startsWith(measure))
    return { text: size.replace(/\D/g, ''), unit: measure, also: `${rounded(diameter)} mm`, same: true }
  const text = typeof size === 'number' ? `${size} mm` : size
  return { text, unit: '', also: nearestGauge(diameter, measure).name, same: false }
}

/** The next size in the family of `measure`, thicker for +1; the same where there is none. */
export function steppedWireSize(size: WireSize, measure: WireMeasure, by: number): WireSize {
  const diameter = bareDiameter_mm(size)
  if (diameter === undefined || !(diameter > 0)) return size
  let from: WireSize = diameter
  if (measure !== 'mm') {
    from = nearestGauge(diameter, measure).name
    const beyond = Math.sign(gauge(from)! - diameter)
    // a diameter between two gauges goes to the one that lies on the way
    if (Math.abs(by) === 1 && Math.abs(gauge(from)! / diameter - 1) > 1e-9 && beyond === Math.sign(by))
      return from
  }
  const { thinner, thicker } = neighbourSizes(from, Math.abs(by))
  return (by > 0 ? thicker : thinner).at(-1) ?? size
}

const sectionOf = (diameter_mm: number): number => (Math.PI / 4) * diameter_mm ** 2

/** Section of a cable of that gauge [mm²], to the digits of tables. */
const gaugeSection_mm2 = (name: string): number | undefined => {
  const diameter = gauge(name)
  return diameter === undefined ? undefined : Number(sectionOf(diameter).toPrecision(4))
}

/** Section of a cable: a number with or without its unit, or a gauge. */
export function typedSection(text: string, mark: TypingPlace['mark']): Typed | { readonly kind: 'no gauge' } {
  const name = typedGauge(text)
  if (name === undefined) {
    const mm2 = unit('mm2')
    return typedQuantity(text, { kept: mm2, said: mm2, mark })
  }
  const value = gaugeSection_mm2(name)
  return value === undefined ? { kind: 'no gauge' } : { kind: 'number', value, withUnit: true }
}

/** The gauge of that section; undefined where it is none of the tables. */
export function gaugeOfSection(section_mm2: number): string | undefined {
  if (!(section_mm2 > 0)) return undefined
  const { name } = nearestGauge(Math.sqrt((4 / Math.PI) * section_mm2), 'AWG')
  return gaugeSection_mm2(name) === section_mm2 ? name : undefined
}

/** The next section that is sold, or that the next gauge has; the same at the end of the table. */
export function steppedSection(section_mm2: number, by: number): number {
  const name = gaugeOfSection(section_mm2)
  if (name !== undefined) {
    const { thinner, thicker } = neighbourSizes(name, Math.abs(by))
    const next = (by > 0 ? thicker : thinner).at(-1)
    return next === undefined ? section_mm2 : gaugeSection_mm2(String(next))!
  }
  const sold = cableSizes.map(({ crossSection_mm2 }) => crossSection_mm2)
  const way =
    by > 0 ? sold.filter((size) => size > section_mm2) : sold.filter((size) => size < section_mm2).reverse()
  return way[Math.min(Math.abs(by), way.length) - 1] ?? section_mm2
}
