/** Ladders of the dump load: one added, its size, its place, its switch, its volts. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import type { ChainView } from '../concern/concern.ts'
import { workingDuty } from '../electric-duty.ts'
import { valueChange } from '../remedy/change.ts'
import { switchingBand } from './battery.ts'
import { type Ladder, put, roundedUp } from './ladder.ts'

/** Watts over those of the machine that a dump load is sized for, the least first. */
const margins = [1.15, 1.3, 1.5, 1.75, 2, 2.5, 3, 4, 6] as const

/** Three quarters of the way from full at rest to the top, and a third: on, and off again [V]. */
function volts(chain: ChainView): { readonly on: number; readonly off: number } | undefined {
  const { load } = chain.machine
  const duty = workingDuty(chain)
  if (load.kind !== 'battery')
    return duty === undefined
      ? undefined
      : { on: roundedUp(1.05 * duty.loadVoltage), off: roundedUp(duty.loadVoltage) }
  const band = switchingBand(load)
  if (band === undefined) return undefined
  const [low, high] = band
  const at = (share: number) => Number((low + share * (high - low)).toPrecision(4))
  const [on, off] = [at(0.75), at(0.35)]
  return off < on ? { on, off } : undefined
}

const size = (on: number, power: number) => ({
  resistance_ohm: Number((on ** 2 / power).toPrecision(2)),
  power_W: roundedUp(1.5 * power),
})

/** A dump load at the bridge with a fuse of its own, on when its controller is dead, where nothing electrical limits. */
export function dumpAdded(chain: ChainView): Ladder {
  const { electrical, dump } = chain.machine.design.protection
  const duty = workingDuty(chain)
  const at = volts(chain)
  if (electrical === 'dump load' && dump !== undefined) return []
  if (electrical === 'shorting switch' || duty === undefined || !(duty.power > 0) || at === undefined)
    return []
  return margins.map((margin) => [
    ...(electrical === 'dump load' ? [] : [put(['protection', 'electrical'], electrical, 'dump load')]),
    put(['protection', 'dump'], dump, {
      ...size(at.on, margin * duty.power),
      on_V: at.on,
      off_V: at.off,
      place: 'behind the bridge',
      withoutPower: 'on',
      ownFuse: true,
    }),
  ])
}

/** The dump load that is there, fewer ohms and more watts. */
export function dumpLarger(chain: ChainView, least: number): Ladder {
  const { dump } = chain.machine.design.protection
  if (dump === undefined) return []
  const on = nominal(dump.on_V)
  return margins
    .map((margin) => size(on, margin * least))
    .map(({ resistance_ohm, power_W }) => [
      ...(resistance_ohm < nominal(dump.resistance_ohm)
        ? [valueChange(['protection', 'dump', 'resistance_ohm'], dump.resistance_ohm, resistance_ohm)]
        : []),
      ...(power_W > nominal(dump.power_W)
        ? [valueChange(['protection', 'dump', 'power_W'], dump.power_W, power_W)]
        : []),
    ])
    .filter((changes) => changes.length > 0)
}

/** The dump load at the bridge with a fuse of its own, and on when its controller is dead. */
export function dumpPutRight({ protection: { electrical, dump } }: Design): Ladder {
  if (electrical !== 'dump load' || dump === undefined) return []
  const changes = [
    ...(dump.place === 'behind the bridge'
      ? []
      : [put(['protection', 'dump', 'place'], dump.place, 'behind the bridge')]),
    ...(dump.ownFuse ? [] : [put(['protection', 'dump', 'ownFuse'], dump.ownFuse, true)]),
    ...(dump.withoutPower === 'on'
      ? []
      : [put(['protection', 'dump', 'withoutPower'], dump.withoutPower, 'on')]),
  ]
  return changes.length === 0 ? [] : [changes]
}

/** On and off at volts that suit the battery, the ohms with them so that it takes as much. */
export function dumpVoltsPutRight(chain: ChainView): Ladder {
  const { dump } = chain.machine.design.protection
  const at = chain.machine.load.kind === 'battery' ? volts(chain) : undefined
  if (dump === undefined || at === undefined) return []
  const taken = nominal(dump.on_V) ** 2 / nominal(dump.resistance_ohm)
  const resistance = Number((at.on ** 2 / taken).toPrecision(3))
  return [
    [
      valueChange(['protection', 'dump', 'on_V'], dump.on_V, at.on),
      valueChange(['protection', 'dump', 'off_V'], dump.off_V, at.off),
      ...(resistance < nominal(dump.resistance_ohm)
        ? [valueChange(['protection', 'dump', 'resistance_ohm'], dump.resistance_ohm, resistance)]
        : []),
    ],
  ]
}
