/** How grave the failure of an electrical part is, a mechanical limiter beside it or none. */
import { mechanicalHolds } from '../electric-duty.ts'
import { type ChainView, type Severity, severityFor } from './concern.ts'

/** A warning where a mechanical limiter still holds the rotor; without one it blocks the outdoor class. */
export const limitedSeverity = (chain: ChainView): Severity =>
  mechanicalHolds(chain.machine) ? 'warning' : severityFor(chain, ['outdoor'])
