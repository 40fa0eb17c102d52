/** The circuit of a design from the phases to the load, each part with its values: what a circuit diagram is drawn from. */
import type { Load, Protection } from '../machine/supply-side.ts'
import type { Chain } from './compute.ts'

export interface CircuitPlan {
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  /** Rms of the EMF over the speed [V·s/rad], resistance of winding, leads and joints at 20 °C [Ω], inductance [H]. */
  readonly phases: readonly {
    readonly emf: number
    readonly resistance: number
    readonly inductance: number
  }[]
  readonly cable: {
    readonly length: number
    readonly area: number
    /** Of one conductor at 20 °C [Ω]. */
    readonly resistance: number
    readonly beforeBridge: boolean
    /** Put into the direct-current line on purpose [Ω]. */
    readonly series: number
  }
  readonly bridge: {
    readonly kind: string
    readonly threshold: number
    readonly reverseVoltage: number | undefined
  }
  /** Undefined where there is none. */
  readonly short: Protection['short'] | undefined
  readonly dump: Protection['dump']
  readonly converter:
    | { readonly leastInput: number; readonly greatestInputVoltage: number | undefined }
    | undefined
  readonly fuse: { readonly current: number | undefined; readonly place: string }
  readonly directSwitch: { readonly kind: string; readonly voltage: number | undefined }
  readonly load: Load
}

export function circuitPlan({ machine, voltage }: Pick<Chain, 'machine' | 'voltage'>): CircuitPlan {
  const { stator, cable, diode, protection, converter, wiring, load } = machine
  const kind = machine.design.wiring.switchKind
  return {
    connection: stator.connection,
    phases: voltage.phases.map(({ rms, resistance, inductance }) => ({ emf: rms, resistance, inductance })),
    cable: {
      length: cable.length,
      area: cable.area,
      resistance: cable.conductorResistance,
      beforeBridge: cable.place === 'before bridge',
      series: cable.seriesResistance,
    },
    bridge: { kind: diode.kind, threshold: diode.threshold, reverseVoltage: diode.reverseVoltage },
    short: protection.electrical === 'shorting switch' ? protection.short : undefined,
    dump: protection.electrical === 'dump load' ? protection.dump : undefined,
    converter:
      converter === undefined
        ? undefined
        : { leastInput: converter.leastInput, greatestInputVoltage: converter.greatestInputVoltage },
    fuse: { current: wiring.fuse, place: wiring.fusePlace },
    directSwitch: { kind, voltage: wiring.switchVoltage },
    load,
  }
}
