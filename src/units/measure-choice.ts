/** Which units somebody wants to read and type, and the unit this gives each quantity of the document. */
import { spokenUnit } from './spoken-unit.ts'
import type { Unit } from './unit.ts'

export const measureSystems = ['metric', 'inch and pound'] as const
export const windMeasures = ['m/s', 'km/h', 'mph', 'knots'] as const
export const temperatureMeasures = ['°C', '°F'] as const
export const wireMeasures = ['mm', 'AWG', 'SWG'] as const

export interface MeasureChoice {
  readonly system: (typeof measureSystems)[number]
  readonly wind: (typeof windMeasures)[number]
  readonly temperature: (typeof temperatureMeasures)[number]
  readonly wire: (typeof wireMeasures)[number]
}

/** What goes with each system where nothing else is chosen. */
const usual: Readonly<Record<MeasureChoice['system'], MeasureChoice>> = {
  metric: { system: 'metric', wind: 'm/s', temperature: '°C', wire: 'mm' },
  'inch and pound': { system: 'inch and pound', wind: 'mph', temperature: '°F', wire: 'AWG' },
}

export const metricMeasure = usual.metric

/** Another system; what was chosen apart from the former one stays. */
export function withSystem(choice: MeasureChoice, system: MeasureChoice['system']): MeasureChoice {
  const [before, after] = [usual[choice.system], usual[system]]
  return {
    system,
    wind: choice.wind === before.wind ? after.wind : choice.wind,
    temperature: choice.temperature === before.temperature ? after.temperature : choice.temperature,
    wire: choice.wire === before.wire ? after.wire : choice.wire,
  }
}

/** By the suffix of the document; a section of copper is said in mm² or by its gauge everywhere. */
const inchAndPound: Readonly<Record<string, string>> = {
  mm: 'in',
  m: 'ft',
  m2: 'ft2',
  mm_per_s: 'in_per_s',
  kg: 'lb',
  g: 'oz',
  kg_per_m3: 'lb_per_ft3',
  kg_m2: 'lb_ft2',
  N: 'lbf',
  N_per_mm: 'lbf_per_in',
  MPa: 'psi',
  Nm: 'lbf_ft',
  mNm: 'ozf_in',
  mV_per_mm: 'mV_per_in',
}

const winds = { 'm/s': 'm_per_s', 'km/h': 'km_per_h', mph: 'mi_per_h', knots: 'kn' } as const
const temperatures = { '°C': 'degC', '°F': 'degF' } as const

/** The unit in which a quantity of the document, by its suffix, is said. */
export function saidUnit(suffix: string, choice: MeasureChoice): Unit {
  if (suffix === 'm_per_s') return spokenUnit(winds[choice.wind])
  if (suffix === 'degC') return spokenUnit(temperatures[choice.temperature])
  return spokenUnit(choice.system === 'metric' ? suffix : (inchAndPound[suffix] ?? suffix))
}

const isOneOf = <Word extends string>(words: readonly Word[], word: unknown): word is Word =>
  words.some((each) => each === word)

/** A choice as it was kept, with the usual in place of what cannot be read. */
export function measureChoice(kept: unknown): MeasureChoice {
  const found = (typeof kept === 'object' && kept !== null ? kept : {}) as Readonly<Record<string, unknown>>
  const { system, wind, temperature, wire } = found
  const start = isOneOf(measureSystems, system) ? usual[system] : metricMeasure
  return {
    system: start.system,
    wind: isOneOf(windMeasures, wind) ? wind : start.wind,
    temperature: isOneOf(temperatureMeasures, temperature) ? temperature : start.temperature,
    wire: isOneOf(wireMeasures, wire) ? wire : start.wire,
  }
}
