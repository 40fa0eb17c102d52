/** The parts of a computed chain that a storm needs. */
import type { Chain } from './compute.ts'

export type StormChain = Pick<
  Chain,
  | 'machine'
  | 'rotor'
  | 'blades'
  | 'layout'
  | 'wound'
  | 'voltage'
  | 'generator'
  | 'circulating'
  | 'drag'
  | 'heat'
  | 'cooling'
  | 'rows'
  | 'rowAt'
  | 'runaway'
  | 'airDensity'
  | 'startWind'
  | 'cutInWind'
>
