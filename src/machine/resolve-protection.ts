/** Protection, wiring and converter of a design in SI. */
import { type ConverterLoss, converterLoss } from '../physics/electrics/converter.ts'
import { nominal } from '../units/quantity.ts'
import type { Design } from './design.ts'
import { si, siOr } from './si.ts'
import type { Converter, Protection, Wiring } from './supply-side.ts'

export function resolveProtection({ protection }: Design): Protection {
  const { mechanical, electrical, short, dump } = protection
  return {
    mechanical,
    electrical,
    actsAt: siOr(protection.actsAt_m_per_s, 'm_per_s'),
    short: {
      place: short?.place ?? 'at the machine',
      order: short?.order ?? 'short, then disconnect',
      actsAt: siOr(short?.actsAt_rpm, 'rpm'),
    },
    dump: dump && {
      resistance: si(dump.resistance_ohm, 'ohm'),
      power: si(dump.power_W, 'W'),
      on: si(dump.on_V, 'V'),
      off: si(dump.off_V, 'V'),
      place: dump.place,
      withoutPower: dump.withoutPower,
      ownFuse: dump.ownFuse,
    },
  }
}

export function resolveWiring({ wiring }: Design): Wiring {
  const { fusePlace, switchKind, surroundings, earthing } = wiring
  return {
    fuse: siOr(wiring.fuse_A, 'A'),
    fusePlace,
    switchKind,
    switchVoltage: siOr(wiring.switchVoltage_V, 'V'),
    surroundings,
    earthing,
  }
}

/**
 * What a converter loses whose efficiency nobody measured: a hundredth of its greatest power standing, half a volt of
 * drop, and a resistance that costs three hundredths at the battery's volts. Common practice, no source.
 */
function usualLoss(greatestPower: number, voltage: number): ConverterLoss {
  return {
    standing: 0.01 * greatestPower,
    drop: 0.5,
    resistance: greatestPower > 0 ? (0.03 * voltage ** 2) / greatestPower : 0,
  }
}

export function resolveConverter({ converter, load }: Design): Converter | undefined {
  if (converter === undefined || load.kind !== 'battery') return undefined
  const curve = converter.curve.map((point) => ({
    speed: si(point.speed_rpm, 'rpm'),
    power: si(point.power_W, 'W'),
  }))
  const greatest = Math.max(...curve.map(({ power }) => power))
  return {
    curve,
    leastInput: si(converter.leastInput_V, 'V'),
    greatestInputCurrent: siOr(converter.greatestInput_A, 'A') ?? Number.POSITIVE_INFINITY,
    greatestInputVoltage: siOr(converter.greatestInput_V, 'V'),
    standby: si(converter.standby_W, 'W'),
    loss:
      converter.efficiency === undefined
        ? usualLoss(greatest, si(load.voltage_V, 'V'))
        : converterLoss(
            converter.efficiency.map((point) => ({
              voltage: si(point.input_V, 'V'),
              power: si(point.input_W, 'W'),
              efficiency: nominal(point.efficiency),
            })),
          ),
  }
}
