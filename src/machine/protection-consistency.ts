/** Faults of converter, battery electronics and dump load whose values cannot stand together. */
import { nominal } from '../units/quantity.ts'
import { amount, fault, rising } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

const volts = { suffix: 'V' } as const

function converterFaults({ converter, load }: Design): Fault[] {
  if (converter === undefined) return []
  const speeds = converter.curve.map((point) => nominal(point.speed_rpm))
  const powers = converter.curve.map((point) => nominal(point.power_W))
  return [
    ...(load.kind === 'battery'
      ? []
      : [fault('load.kind', 'battery, as a converter works into one', load.kind)]),
    ...rising(speeds, 1e-6, (k) => `converter.curve[${k}].speed_rpm`, 'rpm'),
    ...rising(powers, 0, (k) => `converter.curve[${k}].power_W`, 'W'),
  ]
}

function disconnectFaults({ load }: Design): Fault[] {
  if (load.kind !== 'battery' || load.disconnect?.above_V === undefined) return []
  const above = nominal(load.disconnect.above_V)
  const now = nominal(load.voltage_V)
  return above > now
    ? []
    : [
        fault(
          'load.disconnect.above_V',
          `above ${amount(now, 'V')}, the battery’s voltage as it stands, or it is off already`,
          above,
          volts,
        ),
      ]
}

function dumpFaults({ protection: { dump } }: Design): Fault[] {
  if (dump === undefined) return []
  const [on, off] = [nominal(dump.on_V), nominal(dump.off_V)]
  return off < on
    ? []
    : [
        fault(
          'protection.dump.off_V',
          `below ${amount(on, 'V')}, at which it is switched on, or it flutters`,
          off,
          volts,
        ),
      ]
}

export const protectionFaults = (design: Design): Fault[] => [
  ...converterFaults(design),
  ...disconnectFaults(design),
  ...dumpFaults(design),
]
