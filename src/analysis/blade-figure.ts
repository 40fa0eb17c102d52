/** The blades as a figure: outline, twist, and power coefficient against tip-speed ratio with the working points. */
import type { Chain } from './compute.ts'

export interface BladeFigure {
  /** R [m] */
  readonly radius: number
  readonly bladeCount: number | undefined
  readonly section: string | undefined
  /** Shape along the radius, the pitch in the twist [m], [rad]; undefined for a table and for an upright rotor. */
  readonly shape:
    | {
        readonly hubRadius: number
        readonly station: Float64Array
        readonly chord: Float64Array
        readonly twist: Float64Array
      }
    | undefined
  /** An upright rotor, its height, chord [m] and pitch [rad]; a drag rotor has buckets for blades, drawn without their overlap. */
  readonly upright:
    | {
        readonly height: number
        readonly chord: number
        readonly pitch: number
        readonly mount: number
        readonly buckets: boolean
      }
    | undefined
  readonly tipSpeedRatio: Float64Array
  readonly powerCoefficient: Float64Array
  readonly best: { readonly tipSpeedRatio: number; readonly power: number }
  /** Where it works, wind by wind, while turning below any limiter. */
  readonly states: readonly {
    readonly wind: number
    readonly tipSpeedRatio: number
    readonly powerCoefficient: number
  }[]
}

export function bladeFigure({
  machine,
  rotor,
  rows,
}: Pick<Chain, 'machine' | 'rotor' | 'rows'>): BladeFigure {
  const { blades } = machine
  const shape = blades.kind === 'optimum' || blades.kind === 'stations' ? rotor.shape : undefined
  return {
    radius: blades.radius,
    bladeCount: blades.kind === 'drag-rotor' ? blades.buckets : blades.bladeCount,
    section: 'section' in blades ? blades.section : undefined,
    shape:
      shape === undefined
        ? undefined
        : {
            hubRadius: shape.hubRadius,
            station: Float64Array.from(shape.station),
            chord: Float64Array.from(shape.chord),
            twist: Float64Array.from(shape.twist, (angle) => angle + shape.pitch),
          },
    upright:
      blades.kind === 'straight-blade'
        ? {
            height: blades.height,
            chord: blades.chord,
            pitch: blades.pitch,
            mount: blades.mount,
            buckets: false,
          }
        : blades.kind === 'drag-rotor'
          ? { height: blades.height, chord: blades.radius, pitch: 0, mount: 0, buckets: true }
          : undefined,
    tipSpeedRatio: Float64Array.from(rotor.tipSpeedRatio),
    powerCoefficient: Float64Array.from(rotor.power),
    best: rotor.best,
    states: rows
      .filter(({ state }) => state !== 'at rest' && state !== 'held')
      .map(({ wind, tipSpeedRatio, powerCoefficient }) => ({ wind, tipSpeedRatio, powerCoefficient })),
  }
}
