/** The judgement of a machine tried in the search for a first one: what blocks it, whether it charges, what the year or the wish says. */
import type { Chain } from '../analysis/compute.ts'
import type { Stock } from '../machine/stock.ts'
import { nominal } from '../units/quantity.ts'

/** Warnings that say it cannot be put together count like blocking ones. */
const notBuildable = new Set(['gap-stack', 'wire-fit'])

/** What no size of a machine settles: volts without load are told and stand for every kind alike. */
const notSized = new Set(['shock-band'])

/** Power at the wind in which it is wished for. */
export interface WishMet {
  /** [m/s] */
  readonly wind: number
  /** [W] */
  readonly wanted: number
  readonly watts: number
}

export interface Judgement {
  /** Codes of what blocks its class. */
  readonly blocking: readonly string[]
  /** It gives anything in the year. */
  readonly charges: boolean
  /** Undefined where no power is wished for. */
  readonly wish: WishMet | undefined
  /** Greater is better; of machines from one stock. */
  readonly worth: number
}

function wishMet({ wish }: Stock, chain: Chain): WishMet | undefined {
  if (wish === undefined) return undefined
  const wind = nominal(wish.atWind_m_per_s)
  return { wind, wanted: nominal(wish.power_W), watts: chain.rowAt(wind).watts.useful }
}

/** Worse than any that is not blocked, and the worse the more blocks it; of two too hot the cooler is better. */
function blockedWorth(codes: readonly string[], { rows, year }: Chain): number {
  const heat = codes.includes('stator-heat')
    ? -Math.max(...rows.map(({ copperTemperature }) => copperTemperature))
    : year.energy / (year.energy + 1e6)
  return -1e6 * codes.length + heat
}

/** Worse than any that charges, whatever blocks that one; the nearer its speed comes to where current begins, the better. */
function chargelessWorth({ rows, generator }: Chain): number {
  const fastest = Math.max(...rows.map(({ speed }) => speed))
  return -1e9 + (Number.isFinite(generator.cutIn) ? Math.min(1, fastest / generator.cutIn) : 0)
}

/** The wish first; once it is met the smaller blades are the better, and energy only parts equals. */
const wishedWorth = ({ watts, wanted }: WishMet, diameter: number, energy: number): number =>
  watts < wanted ? watts / wanted : 1 + 1 / (1 + diameter) + (1e-3 * energy) / (energy + 1e9)

/** `diameter` of the blades [m]. */
export function judgementOf(chain: Chain, stock: Stock, diameter: number): Judgement {
  const blocking = chain.concerns
    .filter(({ code, severity }) => severity === 'blocking' || notBuildable.has(code))
    .map(({ code }) => code)
  const sized = blocking.filter((code) => !notSized.has(code))
  const { energy } = chain.year
  const charges = energy > 0
  const wish = wishMet(stock, chain)
  const worth = !charges
    ? chargelessWorth(chain)
    : sized.length > 0
      ? blockedWorth(sized, chain)
      : wish
        ? wishedWorth(wish, diameter, energy)
        : energy
  return { blocking, charges, wish, worth }
}
