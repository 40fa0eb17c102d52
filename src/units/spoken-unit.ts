/** Units that people say and type beside those that names may end in, each with the words for it, kind by kind. */
import { fromSi, toSi, type Unit, unit } from './unit.ts'

/** A unit with the words that are typed for it; the first is what a remedy offers. */
export interface SpokenUnit {
  readonly unit: Unit
  readonly words: readonly string[]
}

/** Of the document: its own unit, and words for it beside its symbol. */
const own = (suffix: string, ...words: string[]): SpokenUnit => {
  const found = unit(suffix)
  return { unit: found, words: [found.symbol.trim(), ...words] }
}

interface Factor {
  /** SI value = (value + offset) · factor / divisor; whole numbers as far as the definition allows. */
  readonly factor?: number
  readonly divisor?: number
  readonly offset?: number
}

const other = (
  suffix: string,
  ucum: string,
  symbol: string,
  { factor = 1, divisor = 1, offset = 0 }: Factor,
  ...words: string[]
): SpokenUnit => ({
  unit: { suffix, ucum, symbol, factor, divisor, offset },
  words: [symbol.trim(), ...words],
})

/*
 * By definition: 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s², 1 nautical mile = 1852 m
 * (nist-sp811, appendix B; iso-80000-4 for the forces). Everything else follows by multiplication.
 */
const pound = { factor: 45_359_237, divisor: 100_000_000 }
const poundForce = 4.448_221_615_260_5

/** Units of one kind turn into one another. */
const kinds: readonly (readonly SpokenUnit[])[] = [
  [
    own('mm'),
    own('m'),
    other('cm', 'cm', ' cm', { divisor: 100 }),
    other('um', 'um', ' µm', { divisor: 1_000_000 }, 'μm', 'um'),
    other('in', '[in_i]', ' in', { factor: 254, divisor: 10_000 }, '"', 'inch', 'inches', 'zoll'),
    other('ft', '[ft_i]', ' ft', { factor: 3048, divisor: 10_000 }, "'", 'foot', 'feet', 'fuß'),
    other('thou', '[mil_i]', ' thou', { factor: 254, divisor: 10_000_000 }, 'mil', 'mils'),
  ],
  [
    own('mm2', 'mm2', 'mm^2', 'qmm'),
    own('m2', 'm2', 'm^2', 'qm'),
    other('cm2', 'cm2', ' cm²', { divisor: 10_000 }, 'cm2', 'cm^2'),
    other('in2', '[sin_i]', ' in²', { factor: 64_516, divisor: 100_000_000 }, 'in2', 'sq in'),
    other('ft2', '[sft_i]', ' ft²', { factor: 9_290_304, divisor: 100_000_000 }, 'ft2', 'sq ft'),
  ],
  [
    own('m_per_s', 'mps'),
    own('mm_per_s'),
    other('km_per_h', 'km/h', ' km/h', { factor: 5, divisor: 18 }, 'kmh', 'kph'),
    other('mi_per_h', '[mi_i]/h', ' mph', { factor: 1397, divisor: 3125 }, 'mi/h'),
    other('kn', '[kn_i]', ' knots', { factor: 463, divisor: 900 }, 'knot', 'kn', 'kt', 'kts', 'knoten'),
    other('in_per_s', '[in_i]/s', ' in/s', { factor: 254, divisor: 10_000 }),
  ],
  [
    own('kg'),
    own('g'),
    other('lb', '[lb_av]', ' lb', pound, 'lbs', 'pound', 'pounds'),
    other('oz', '[oz_av]', ' oz', { factor: pound.factor, divisor: 16 * pound.divisor }, 'ounce', 'ounces'),
  ],
  [
    own('kg_per_m3', 'kg/m3'),
    // a cubic foot is 0.028 316 846 592 m³
    other(
      'lb_per_ft3',
      '[lb_av]/[cft_i]',
      ' lb/ft³',
      { factor: 453_592_370, divisor: 28_316_846.592 },
      'lb/ft3',
    ),
  ],
  [
    own('degC', 'C', '°', 'celsius'),
    other('degF', '[degF]', ' °F', { factor: 5, divisor: 9, offset: 459.67 }, 'F', 'fahrenheit'),
    other('K', 'K', ' K', {}),
  ],
  [
    own('N'),
    other('kN', 'kN', ' kN', { factor: 1000 }),
    other('lbf', '[lbf_av]', ' lbf', { factor: poundForce }),
    other('kgf', 'kgf', ' kgf', { factor: 9.806_65 }, 'kp'),
  ],
  [
    own('Nm', 'Nm', 'N m'),
    own('mNm', 'mNm', 'mN m'),
    other('Ncm', 'N.cm', ' N·cm', { divisor: 100 }, 'Ncm', 'N cm'),
    other(
      'lbf_ft',
      '[lbf_av].[ft_i]',
      ' lbf·ft',
      { factor: poundForce * 3048, divisor: 10_000 },
      'lbf ft',
      'ft lbf',
      'lb ft',
      'ft lb',
      'ft·lbf',
    ),
    other(
      'lbf_in',
      '[lbf_av].[in_i]',
      ' lbf·in',
      { factor: poundForce * 254, divisor: 10_000 },
      'lbf in',
      'in lbf',
      'lb in',
      'in lb',
    ),
    other(
      'ozf_in',
      '[ozf_av].[in_i]',
      ' ozf·in',
      { factor: poundForce * 254, divisor: 160_000 },
      'ozf in',
      'oz in',
      'in oz',
    ),
  ],
  [
    own('kg_m2', 'kg m2', 'kg·m2', 'kgm2'),
    other(
      'lb_ft2',
      '[lb_av].[sft_i]',
      ' lb·ft²',
      { factor: 0.453_592_37 * 9_290_304, divisor: 100_000_000 },
      'lb ft2',
      'lb·ft2',
    ),
  ],
  [
    own('N_per_mm'),
    other('lbf_per_in', '[lbf_av]/[in_i]', ' lbf/in', { factor: poundForce * 10_000, divisor: 254 }),
  ],
  [
    own('MPa', 'N/mm²', 'N/mm2'),
    other('psi', '[psi]', ' psi', { factor: poundForce * 100_000_000, divisor: 64_516 }),
  ],
  [own('V', 'volt', 'volts'), other('mV', 'mV', ' mV', { divisor: 1000 })],
  // volts per length of wire, which no field asks for; 1 mV/mm is 1 V/m
  [
    other('mV_per_mm', 'mV/mm', ' mV/mm', {}),
    other('mV_per_in', 'mV/[in_i]', ' mV/in', { factor: 10, divisor: 254 }),
  ],
  [own('A', 'amp', 'amps'), other('mA', 'mA', ' mA', { divisor: 1000 })],
  [own('W', 'watt', 'watts'), other('kW', 'kW', ' kW', { factor: 1000 })],
  [
    own('ohm', 'ohm', 'ohms', 'Ω'),
    own('mohm', 'mohm', 'mΩ'),
    other('kohm', 'kOhm', ' kΩ', { factor: 1000 }, 'kΩ', 'kohm'),
    other('Mohm', 'MOhm', ' MΩ', { factor: 1_000_000 }, 'MΩ', 'Mohm'),
  ],
  [own('mH'), other('uH', 'uH', ' µH', { divisor: 1_000_000 }, 'μH', 'uH'), other('H', 'H', ' H', {})],
  [
    own('F'),
    other('mF', 'mF', ' mF', { divisor: 1000 }),
    other('uF', 'uF', ' µF', { divisor: 1_000_000 }, 'μF', 'uF'),
  ],
  [own('T'), own('mT'), other('G', 'G', ' G', { divisor: 10_000 }, 'gauss')],
  [
    own('s'),
    own('h', 'hours', 'hour'),
    own('d', 'day', 'd'),
    other('min', 'min', ' min', { factor: 60 }, 'minutes'),
    other('ms', 'ms', ' ms', { divisor: 1000 }),
  ],
  [own('Wh'), own('kWh'), own('J')],
  [own('Ah'), other('mAh', 'mA.h', ' mAh', { factor: 36, divisor: 10 })],
  [own('rpm', '1/min', 'min⁻¹'), other('per_s', '/s', ' 1/s', { factor: 2 * Math.PI })],
  [own('deg', 'deg', 'degrees')],
  [own('Hz'), other('kHz', 'kHz', ' kHz', { factor: 1000 })],
  [own('percent', 'percent')],
]

/** Units into which one of that suffix turns, its own among them; a unit that stands alone is its whole kind. */
export const unitsOfKind = (suffix: string): readonly SpokenUnit[] =>
  kinds.find((kind) => kind.some((each) => each.unit.suffix === suffix)) ?? [own(suffix)]

/** What stands behind numbers on the page, whatever units are chosen. */
export const spokenSymbols: readonly string[] = kinds.flat().map((each) => each.unit.symbol.trim())

/** A unit by its sign behind a number, among those that are said: "mm", "mV/mm". */
export const unitOfSign = (sign: string): Unit | undefined =>
  kinds.flat().find((each) => each.unit.symbol.trim() === sign)?.unit

/** A unit by its suffix, among those that names end in or those that are said. */
export const spokenUnit = (suffix: string): Unit =>
  kinds.flat().find((each) => each.unit.suffix === suffix)?.unit ?? unit(suffix)

/** What was typed behind a number, as a unit that turns into that of `suffix`; capitals count only where they must. */
export function unitInWords(word: string, suffix: string): Unit | undefined {
  const kind = unitsOfKind(suffix)
  const bare = word.trim().replace(/\s+/g, ' ').replace(/\.$/, '')
  const exact = kind.find(({ words }) => words.includes(bare))
  if (exact) return exact.unit
  const alike = kind.filter(({ words }) => words.some((each) => each.toLowerCase() === bare.toLowerCase()))
  return alike.length === 1 ? alike[0]!.unit : undefined
}

/** Digits that survive a change of units: more than any instrument has, few enough to drop the noise of binary numbers. */
const keptDigits = 12

/**
 * A number in another unit of its kind, as a decimal that somebody could have typed: 1/4 in gives 6.35 mm, not a number
 * beside it. In its own unit it stays bit for bit. A spread is a `difference`: degrees lose their zero.
 */
export function inUnit(value: number, from: Unit, to: Unit, difference = false): number {
  if (from.suffix === to.suffix) return value
  const span = (of: Unit): Unit => (difference ? { ...of, offset: 0 } : of)
  const next = fromSi(toSi(value, span(from)), span(to))
  if (!Number.isFinite(next)) return next
  // beside a zero of its own, the noise stands in the ninth decimal
  return from.offset === to.offset || difference
    ? Number(next.toPrecision(keptDigits))
    : Number(next.toFixed(9))
}
