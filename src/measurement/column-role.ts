/** What the columns of a logger's file hold, told by their heads and their units. */

export const columnRoles = [
  'time',
  'date',
  'clock',
  'wind',
  'gust',
  'deviation',
  'direction',
  'temperature',
  'pressure',
] as const
export type ColumnRole = (typeof columnRoles)[number]

/** Factor to metres per second. Knot 1852 m/h, mile 1609.344 m (nist-sp811, appendix B.8). */
export const speedUnits = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 0.44704,
  kn: 1852 / 3600,
  'ft/s': 0.3048,
} as const
export type SpeedUnit = keyof typeof speedUnits

const unitShapes: readonly (readonly [SpeedUnit, RegExp])[] = [
  ['km/h', /km\s*[/p]?\s*h|kph|kmh|km\s*h-1|km\s*h⁻¹/i],
  ['mph', /\bm\.?p\.?h\b|mi(?:les)?\s*[/p]\s*h|miles per hour/i],
  ['kn', /\bkn(?:ots?)?\b|\bkts?\b|knoten|n(?:œ|oe)uds|nudos/i],
  ['ft/s', /ft\s*[/p]\s*s|feet per second|\bfps\b/i],
  ['m/s', /\bm\s*[/p]\s*s\b|m\s*s-1|m\s*s⁻¹|\bm\.s-1|\bmps\b|met(?:er|re)s? per second/i],
]

/** The unit of speed that a head or a cell's tail names. */
export const speedUnitIn = (text: string): SpeedUnit | undefined =>
  unitShapes.find(([, shape]) => shape.test(text.replaceAll('_', ' ')))?.[0]

const isUnit =
  /^[[(]?\s*(?:m\/s|m s-1|km\/h|kph|mph|kn|kts?|knots|ft\/s|°|deg(?:rees)?(?: (?:true|magn))?|grad|°\s?[cf]|deg\s?[cf]|[cf]|k|hpa|mbar|mb|kpa|pa|inhg|mmhg|%|v|volts?|w\/m2|w\/m²|mm|utc|local|hh:mm(?::ss)?|yyyy-mm-dd.*|dd[./]mm.*|mm\/dd.*|ts|rn|smp|avg|std|min|max|wvc)?\s*[\])]?$/i

/** A row of units: every cell is a unit or empty, and two at least are there. */
export const isUnitRow = (cells: readonly string[]): boolean =>
  cells.every((cell) => isUnit.test(cell)) && cells.filter((cell) => cell !== '').length >= 1

const windWord =
  /wind|\bws\b|\bws[ _\d]|speed|\bff\b|anemo|veloc|geschw|vent|viento|velocidad|vitesse|\bvel\b/i
const gustWord = /gust|b(?:ö|oe)e?n?\b|rafale|racha|\bmax|peak|\bfx\b/i
const deviationWord = /std|stdev|\bsd\b|sigma|deviation|abweichung|[ée]cart|σ/i
const minimumWord = /\bmin(?:imum)?\b/i
const directionWord = /direction|\bdir\b|dir\d|richtung|\bwd\b|\bdd\b|vane|azimut|direcci/i
const temperatureWord = /temp|°\s?[cf]\b|\bt_?air\b/i
const pressureWord = /press|baro|druck|\bh?pa\b|mbar|presi/i
const dateWord = /^(?:date|datum|day|fecha|tag|jour)\b/i
const clockWord = /^(?:time|zeit|uhrzeit|hour|clock|heure|hora|hh:?mm)\b/i
const timeWord = /time|stamp|zeit|datum|date|heure|fecha|\butc\b/i

/** The role a head stands for, or nothing. Minima, and words that belong to no role, are of no use here. */
export function roleOfHead(head: string): ColumnRole | undefined {
  const text = head.replaceAll('_', ' ').trim()
  if (/\brpm\b|batt|solar|rain|rotor|volt|\bamps?\b/i.test(text)) return undefined
  if (dateWord.test(text) && !/time|zeit|heure|hora/i.test(text)) return 'date'
  if (clockWord.test(text) && !/date|datum|stamp/i.test(text)) return 'clock'
  if (directionWord.test(text)) return deviationWord.test(text) ? undefined : 'direction'
  if (minimumWord.test(text)) return undefined
  const speed = windWord.test(text) || speedUnitIn(text) !== undefined
  if (deviationWord.test(text)) return speed || !temperatureWord.test(text) ? 'deviation' : undefined
  if (gustWord.test(text)) return temperatureWord.test(text) || pressureWord.test(text) ? undefined : 'gust'
  if (temperatureWord.test(text)) return 'temperature'
  if (pressureWord.test(text)) return 'pressure'
  if (speed) return 'wind'
  return timeWord.test(text) ? 'time' : undefined
}

/** Kelvin from the number in the unit that the head names; degrees Celsius where it names none. */
export function kelvinOf(head: string): (value: number) => number {
  if (/°?\s?F\b|fahrenheit/.test(head)) return (value) => (value - 32) / 1.8 + 273.15
  if (/\bK\b|kelvin/.test(head)) return (value) => value
  return (value) => value + 273.15
}

/** Pascals from the number in the unit that the head names, else by the size of a first reading. */
export function pascalFactor(head: string, sample: number): number {
  if (/hpa|mbar|\bmb\b/i.test(head)) return 100
  if (/kpa/i.test(head)) return 1000
  if (/in\s?hg/i.test(head)) return 3386.39
  if (/mm\s?hg|torr/i.test(head)) return 133.322
  if (/\bpa\b/i.test(head)) return 1
  return sample > 20_000 ? 1 : sample > 200 ? 100 : 1000
}
