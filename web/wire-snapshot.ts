/** The volts along the wire as flat, plain data that may cross to the page. */
import { voltageAlongWire } from '../src/analysis/voltage-along-wire.ts'
import { type WireAngleCurve, wireAngleCurve } from '../src/analysis/wire-angle.ts'
import type { VoltageAlongWire } from '../src/analysis/wire-reading.ts'
import type { Chain } from '../src/index.ts'

export interface WireSnapshot {
  readonly along: VoltageAlongWire
  /** At the distance of the first shape of conductor. */
  readonly angle: WireAngleCurve
  /** Section of each shape's bundle [m]. */
  readonly bundles: readonly { readonly width: number; readonly thickness: number }[]
}

export function wireSnapshotOf(chain: Chain): WireSnapshot {
  const { machine, field, layout, voltage } = chain
  return {
    along: voltageAlongWire(chain),
    angle: wireAngleCurve(machine, field, {
      distance: layout.shapes[0]!.distance,
      base: voltage.base,
    }),
    bundles: layout.shapes.map(({ bundle: { width, thickness } }) => ({ width, thickness })),
  }
}
