/** What fails in a storm, and which protections are counted on meanwhile. */
import type { Dump } from './storm-bus.ts'

export type StormEvent =
  | 'nothing'
  | 'load lost'
  | 'fuse blown'
  | 'battery disconnects'
  | 'battery full'
  | 'frost'
  | 'dump dead'
  | 'converter dead'
  | 'winding open'
  | 'phase open'
  | 'magnet off'
  | 'diode open'
  | 'diode shorted'

export interface StormCase {
  readonly event: StormEvent
  /** When it happens [s]. */
  readonly at: number
  /** Whether the mechanical limiter, the switch that closes by itself, and the dump's controller do their work. */
  readonly limiterWorks: boolean
  readonly shortWorks: boolean
  readonly dumpWorks: boolean
  /** When somebody closes the shorting switch [s]; undefined where nobody is there. */
  readonly shortAt?: number | undefined
  /** When the load is lost besides [s]; undefined where it stays. */
  readonly lostAt?: number | undefined
  readonly dump: Dump | undefined
}
