/** Shapes of blades to choose from, as a page of text and as JSON in workshop units. */
import type { BladeDesign, BladeStation, BladeVariant } from '../analysis/blade-design.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

const bare = (value: number, suffix: string, digits = 3): string => {
  const { symbol } = unit(suffix)
  return formatSi(value, suffix, digits).replace(symbol, '')
}

/** A length to a tenth of a millimetre, an angle to a tenth of a degree: as they are marked out. */
const tenths = (value: number, suffix: string): string =>
  fromSi(value, unit(suffix))
    .toFixed(1)
    .replace(/^-0\.0$/, '0.0')
    .replace('-', '−')

const names: Readonly<Record<BladeVariant['kind'], string>> = {
  'as drawn': 'as drawn',
  optimum: 'best of theory',
  straight: 'straight lines',
}

/** What the second shape gives more or less than the first, in percent of the first. */
const difference = (one: number, other: number): string => {
  if (!(one > 0)) return '—'
  const percent = 100 * (other / one - 1)
  const text = formatNumber(Math.abs(percent), 2)
  return Math.abs(percent) < 0.05 ? '0' : `${percent < 0 ? '−' : '+'}${text}`
}

function stationCells(station: BladeStation, pipe: boolean): string[] {
  return [
    tenths(station.radius, 'mm'),
    tenths(station.chord, 'mm'),
    tenths(station.twist, 'deg'),
    formatNumber(Math.round(station.reynolds / 1000) * 1000, 3),
    tenths(station.attackAngle, 'deg'),
    ...(pipe ? [station.camber === undefined ? '—' : formatNumber(100 * station.camber, 2)] : []),
  ]
}

/** Reynolds number at the station nearest to three quarters of the radius. */
const outerReynolds = ({ stations }: BladeVariant, radius: number): number => {
  const near = stations.reduce((best, one) =>
    Math.abs(one.radius - 0.75 * radius) < Math.abs(best.radius - 0.75 * radius) ? one : best,
  )
  return near.reynolds
}

export function bladePage(name: string, design: BladeDesign): PageLine[] {
  const { variants, tipSpeedRatio, wind, bladeCount, radius, section, reynoldsRange } = design
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const prose = (text: string, tone: PageLine['tone'] = 'faint'): PageLine[] =>
    wrapped(`  ${text}`, columns, '  ').map((line) => ({ text: line, tone }))
  const table = (heads: readonly string[], rows: readonly (readonly string[])[]): PageLine[] =>
    textTable(
      heads.map((head, k) => ({ head, align: k === 0 ? ('left' as const) : ('right' as const) })),
      rows,
    ).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  const [first] = variants
  const pipe = variants.some(({ stations }) => stations.some(({ camber }) => camber !== undefined))
  const lowest = outerReynolds(first!, radius)
  const notes: PageLine[] = []
  if (lowest < 0.9 * reynoldsRange[0])
    notes.push(
      ...prose(
        `The outer blade works at a Reynolds number of ${formatNumber(Math.round(lowest / 1000) * 1000, 2)}; the section’s table begins at ${formatNumber(reynoldsRange[0], 2)} and is held below that, so that the power may be too good.`,
        'warning',
      ),
    )
  if (variants.some(({ limited }) => limited))
    notes.push(...prose('Chords were narrowed to what the plank, pipe or printer allows.'))
  if (pipe)
    notes.push(
      ...prose(
        'Arch: height of the pipe’s curve over the chord in percent. Choose a section measured with about that arch; 6 % is GOE 417a (from memory).',
      ),
    )
  return [
    title(`${name} — shapes of the blades`),
    ...prose(
      `${bladeCount} blade${bladeCount === 1 ? '' : 's'} of ${formatSi(radius, 'mm', 4)} radius, section ${section}, shaped for a tip-speed ratio of ${formatNumber(tipSpeedRatio)} and compared there in ${formatSi(wind, 'm_per_s', 2)}.`,
    ),
    plain(''),
    ...table(
      ['', 'C_P', 'difference %', 'C_T', 'blade area %', 'at rest mN·m', 'starts at m/s'],
      variants.map((variant) => [
        names[variant.kind],
        formatNumber(variant.power),
        variant === first ? '' : difference(first!.power, variant.power),
        formatNumber(variant.thrust),
        formatNumber(100 * variant.solidity),
        bare(variant.restTorque, 'mNm'),
        Number.isFinite(variant.startWind) ? formatNumber(variant.startWind) : 'never',
      ]),
    ),
    ...prose(
      'C_P: power over that of the wind through the swept area, at most 0.593. C_T: thrust over wind pressure times that area. Blade area: of the swept area. At rest: torque in that wind before the rotor turns; every section is stalled then, and real blades often give more. Starts: against the shaft’s starting friction alone; cogging comes on top.',
    ),
    ...notes,
    ...variants.flatMap((variant) => [
      plain(''),
      title(`  ${names[variant.kind][0]!.toUpperCase()}${names[variant.kind].slice(1)}`),
      ...table(
        ['radius mm', 'chord mm', 'twist °', 'Reynolds', 'attack °', ...(pipe ? ['arch %'] : [])],
        variant.stations.map((station) => stationCells(station, pipe)),
      ),
    ]),
    plain(''),
    ...prose(
      'Twist: between chord and disc, the leading edge turned into the wind; attack: between air and chord. Between stations lines run straight. Blades that break throw pieces: follow the rules of the place, balance them, and keep people out of the plane of turning.',
    ),
  ]
}

const stationResult = (station: BladeStation) => ({
  radius_mm: fromSi(station.radius, unit('mm')),
  chord_mm: fromSi(station.chord, unit('mm')),
  twist_deg: fromSi(station.twist, unit('deg')),
  reynolds: station.reynolds,
  attackAngle_deg: fromSi(station.attackAngle, unit('deg')),
  ...(station.camber === undefined ? {} : { camber: station.camber }),
})

/** The same as JSON; the stations are ready for the document once they are rounded. */
export const bladeResult = (design: BladeDesign) => ({
  tipSpeedRatio: design.tipSpeedRatio,
  wind_m_per_s: design.wind,
  bladeCount: design.bladeCount,
  radius_mm: fromSi(design.radius, unit('mm')),
  section: design.section,
  lowestReynolds: design.reynoldsRange[0],
  highestReynolds: design.reynoldsRange[1],
  variants: design.variants.map((variant) => ({
    kind: variant.kind,
    powerCoefficient: variant.power,
    thrustCoefficient: variant.thrust,
    solidity: variant.solidity,
    restTorque_mNm: fromSi(variant.restTorque, unit('mNm')),
    startWind_m_per_s: Number.isFinite(variant.startWind) ? variant.startWind : null,
    narrowedByLimits: variant.limited,
    stations: variant.stations.map(stationResult),
  })),
})
