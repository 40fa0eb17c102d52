/** The figures by which two designs are compared, read off a computed chain. */
import type { Chain } from './compute.ts'
import { comparedTemperature, motorConstants } from './winding-figure.ts'

/** Magnets glued on; a missing one is not counted. */
export const magnetCount = ({ machine: { rotor } }: Pick<Chain, 'machine'>): number =>
  rotor.piecesPerPole * rotor.rings.flat().filter(({ strength }) => strength > 0).length

interface FigureKind {
  /** Which way is ahead; undefined where neither is by itself. */
  readonly better: 'more' | 'less' | undefined
  /** In SI units; infinite where it never happens, undefined where the document does not say. */
  readonly of: (chain: Chain, wind: number) => number | undefined
}

/** In reading order; `wind` is that in which watts and warmth of both are told [m/s]. */
export const figureKinds = {
  energy: { better: 'more', of: ({ year }) => year.energy },
  startWind: { better: 'less', of: ({ startWind }) => startWind },
  cutInWind: { better: 'less', of: ({ cutInWind }) => cutInWind },
  usefulPower: { better: 'more', of: ({ rowAt }, wind) => rowAt(wind).watts.useful },
  phaseVoltage: { better: undefined, of: ({ voltage }) => voltage.phases[0]?.rms },
  copperTemperature: { better: 'less', of: ({ rowAt }, wind) => rowAt(wind).copperTemperature },
  hottestCopper: {
    better: 'less',
    of: ({ rows }) => Math.max(...rows.map(({ copperTemperature }) => copperTemperature)),
  },
  runawaySpeed: { better: 'less', of: ({ runaway }) => runaway.speed },
  runawayVoltage: { better: 'less', of: ({ runaway }) => runaway.directVoltage },
  motorConstant: {
    better: 'more',
    of: (chain) => motorConstants(chain, comparedTemperature).motorConstant,
  },
  copperMass: { better: 'less', of: ({ wound }) => wound.copperMass },
  magnetMass: { better: 'less', of: (chain) => chain.runaway.magnetMass * magnetCount(chain) },
  wirePrice: { better: 'less', of: ({ wound }) => wound.price },
} as const satisfies Record<string, FigureKind>

export type FigureName = keyof typeof figureKinds

export const figureNames = Object.keys(figureKinds) as readonly FigureName[]

export type DesignFigures = Readonly<Record<FigureName, number | undefined>>

/** Every figure of a chain, its watts and warmth in that wind [m/s]. */
export const designFigures = (chain: Chain, wind: number): DesignFigures =>
  Object.fromEntries(
    figureNames.map((name) => [name, (figureKinds[name] as FigureKind).of(chain, wind)]),
  ) as DesignFigures
