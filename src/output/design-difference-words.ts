/** Differences between two designs in words and figures: each with its sign, its unit, its share, and how sure it is. */
import type { FigureDifference } from '../analysis/design-difference.ts'
import type { FigureName } from '../analysis/design-figure.ts'
import type { DifferenceSpread } from '../analysis/paired-spread.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { unit } from '../units/unit.ts'

interface FigureWords {
  /** As a row of a table. */
  readonly title: string
  /** Of the SI value times `scale`. */
  readonly suffix: string
  readonly scale: number
}

const words = (title: string, suffix: string, scale = 1): FigureWords => ({ title, suffix, scale })

const hundredRpm = (100 * 2 * Math.PI) / 60

/** Where a figure has no unit of the table of units. */
const ownUnits: Partial<Readonly<Record<FigureName, string>>> = {
  motorConstant: ' mN·m/√W',
}

export const figureWords: Readonly<Record<FigureName, FigureWords>> = {
  energy: words('energy of a year', 'kWh'),
  startWind: words('wind that starts the rotor', 'm_per_s'),
  cutInWind: words('wind in which current begins', 'm_per_s'),
  usefulPower: words('power in the wind that is told', 'W'),
  phaseVoltage: words('volts of a phase at 100 rpm', 'V', hundredRpm),
  copperTemperature: words('copper in the wind that is told', 'degC'),
  hottestCopper: words('copper at its hottest', 'degC'),
  runawaySpeed: words('speed with the load lost', 'rpm'),
  runawayVoltage: words('direct volts with the load lost', 'V'),
  motorConstant: words('k_m, torque per √W in the copper', '1', 1000),
  copperMass: words('copper of the winding', 'g'),
  magnetMass: words('magnets', 'g'),
  wirePrice: words('price of the wire in your money', '1'),
}

const unitText = (name: FigureName): string => ownUnits[name] ?? unit(figureWords[name].suffix).symbol

/** A figure with its unit; “never” where it never happens. */
export function figureText(name: FigureName, value: number): string {
  if (!Number.isFinite(value)) return 'never'
  const { suffix, scale } = figureWords[name]
  return `${formatSi(scale * value, suffix)}${ownUnits[name] ?? ''}`
}

/** A difference in the unit of its figure; one of temperatures has no zero of its own. */
function bareDifference(name: FigureName, difference: number): number {
  const { suffix, scale } = figureWords[name]
  const { divisor, factor } = unit(suffix)
  return (scale * difference * divisor) / factor
}

const differenceUnit = (name: FigureName): string =>
  figureWords[name].suffix === 'degC' ? ' K' : unitText(name)

const sign = (value: number): string => (value < 0 ? '−' : '+')

/** `+7.84 kWh`, `−3.2 K`, `0 V`. */
export function signedText(name: FigureName, difference: number): string {
  const value = bareDifference(name, difference)
  const size = value === 0 ? '0' : `${sign(value)}${formatNumber(Math.abs(value))}`
  return `${size}${differenceUnit(name)}`
}

/** `+2.7 %`; changes too small to show at all are told as such. */
export function shareText(share: number): string {
  if (share === 0) return '0 %'
  const percent = Math.abs(100 * share)
  return percent < 0.005 ? `${sign(share)}under 0.01 %` : `${sign(share)}${formatNumber(percent, 2)} %`
}

/** `+7.84 kWh (+2.7 %)`, `never before`, `never any more`, `the same`. */
export function differenceText({ name, from, to, difference, share }: FigureDifference): string {
  if (difference === 0) return 'the same'
  if (!Number.isFinite(from)) return 'never before'
  if (!Number.isFinite(to)) return 'never any more'
  return `${signedText(name, difference)}${share === undefined ? '' : ` (${shareText(share)})`}`
}

/** `+1.1 to +2.8 kWh`: both ends with the decimals that the distance between them deserves. */
function intervalText(name: FigureName, low: number, high: number): string {
  const ends = [low, high].map((end) => bareDifference(name, end))
  const width = Math.abs(ends[1]! - ends[0]!)
  if (!(width > 0)) return signedText(name, low)
  const decimals = Math.min(9, Math.max(0, 1 - Math.floor(Math.log10(width))))
  const text = ends.map((end) => {
    const size = Math.abs(end).toFixed(decimals)
    return Number(size) === 0 ? '0' : `${sign(end)}${size}`
  })
  return `${text.join(' to ')}${differenceUnit(name)}`
}

/** How sure a difference is, in a few words and its interval. */
export function surenessText(name: FigureName, spread: DifferenceSpread): string {
  const { low, high, verdict, difference, never } = spread
  const interval = intervalText(name, low, high)
  const sometimes = never > 0 && never < 1 ? `, never in ${formatNumber(100 * never, 2)} % of the draws` : ''
  switch (verdict) {
    case 'none':
      return 'the same in every draw'
    case 'told':
      return Number.isFinite(difference) ? `sure: ${interval}${sometimes}` : 'sure in every draw'
    case 'small':
      return `sure, but less than two hand-made machines differ: ${interval}${sometimes}`
    case 'open':
      return Number.isFinite(difference) ? `may go either way: ${interval}${sometimes}` : 'not in every draw'
  }
}

/** How far the guesses leave each machine open by itself, to hold against the difference. */
export const aloneText = (name: FigureName, { alone }: DifferenceSpread): string =>
  alone.every((half) => half === 0)
    ? 'open by nothing'
    : `± ${alone.map((half) => formatNumber(Math.abs(bareDifference(name, half)), 2)).join(' and ± ')}${differenceUnit(name)}`

/** What the words of the table mean. */
export const pairedNote = (samples: number): string =>
  `Both machines are put through the same ${samples} draws of what is guessed: a guess that both share moves both, so a difference is surer than either number. “Sure” means nine of ten draws lie on one side, by more than the 2 % by which two hand-made machines of one drawing differ (common practice, no source). Masses, price and k_m are compared at the best guesses; how sure k_m is, the fair contest tells.`
