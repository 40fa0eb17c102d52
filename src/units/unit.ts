/** The units that names may end in: suffix, UCUM code, symbol, and the way to SI and back. */
import { refuse } from '../refusal/require.ts'

export interface Unit {
  /** What a name outside the engine ends in, after an underscore. */
  readonly suffix: string
  /** Code of the Unified Code for Units of Measure. */
  readonly ucum: string
  /** What people read behind the number, with its space. */
  readonly symbol: string
  /** SI value = (value + offset) · factor / divisor; the divisor is a whole number, so that rounding happens once. */
  readonly divisor: number
  readonly factor: number
  readonly offset: number
}

const rows: readonly (readonly [
  suffix: string,
  ucum: string,
  symbol: string,
  divisor?: number,
  factor?: number,
])[] = [
  ['m', 'm', ' m'],
  ['mm', 'mm', ' mm', 1000],
  ['mm2', 'mm2', ' mm²', 1_000_000],
  ['m2', 'm2', ' m²'],
  ['deg', 'deg', '°', 180, Math.PI],
  ['rpm', '{rotation}/min', ' rpm', 60, 2 * Math.PI],
  ['m_per_s', 'm/s', ' m/s'],
  ['mm_per_s', 'mm/s', ' mm/s', 1000],
  ['s', 's', ' s'],
  ['h', 'h', ' h', 1, 3600],
  ['d', 'd', ' days', 1, 86_400],
  ['Hz', 'Hz', ' Hz'],
  ['V', 'V', ' V'],
  ['A', 'A', ' A'],
  ['W', 'W', ' W'],
  ['J', 'J', ' J'],
  ['Wh', 'W.h', ' Wh', 1, 3600],
  ['kWh', 'kW.h', ' kWh', 1, 3_600_000],
  ['Ah', 'A.h', ' Ah', 1, 3600],
  ['ohm', 'Ohm', ' Ω'],
  ['mohm', 'mOhm', ' mΩ', 1000],
  ['F', 'F', ' F'],
  ['mH', 'mH', ' mH', 1000],
  ['T', 'T', ' T'],
  ['mT', 'mT', ' mT', 1000],
  ['kg', 'kg', ' kg'],
  ['g', 'g', ' g', 1000],
  ['g_mm', 'g.mm', ' g·mm', 1_000_000],
  ['kg_per_m3', 'kg/m3', ' kg/m³'],
  ['kg_m2', 'kg.m2', ' kg·m²'],
  ['N', 'N', ' N'],
  ['N_per_mm', 'N/mm', ' N/mm', 1, 1000],
  ['MPa', 'MPa', ' MPa', 1, 1_000_000],
  ['Nm', 'N.m', ' N·m'],
  ['mNm', 'mN.m', ' mN·m', 1000],
  ['K_per_W', 'K/W', ' K/W'],
  ['A_per_mm2', 'A/mm2', ' A/mm²', 1, 1_000_000],
  ['percent', '%', ' %', 100],
]

const table: readonly Unit[] = [
  ...rows.map(([suffix, ucum, symbol, divisor = 1, factor = 1]) => ({
    suffix,
    ucum,
    symbol,
    divisor,
    factor,
    offset: 0,
  })),
  { suffix: 'degC', ucum: 'Cel', symbol: ' °C', divisor: 1, factor: 1, offset: 273.15 },
  { suffix: '1', ucum: '1', symbol: '', divisor: 1, factor: 1, offset: 0 },
]

export const units: ReadonlyMap<string, Unit> = new Map(table.map((unit) => [unit.suffix, unit]))

/** The unit of that suffix. */
export function unit(suffix: string): Unit {
  const found = units.get(suffix)
  if (!found)
    refuse({
      name: 'unit suffix',
      condition: `one of ${[...units.keys()].join(', ')}`,
      value: suffix,
      code: 'not-a-choice',
    })
  return found
}

/** The unit that a name outside the engine carries: `airGap_mm` → mm; a name without a suffix is a pure number. */
export function unitOfName(name: string): Unit {
  const at = name.indexOf('_')
  return unit(at < 0 ? '1' : name.slice(at + 1))
}

export const toSi = (value: number, { divisor, factor, offset }: Unit): number =>
  ((value + offset) * factor) / divisor

export const fromSi = (value: number, { divisor, factor, offset }: Unit): number =>
  (value * divisor) / factor - offset
