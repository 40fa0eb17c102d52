/** Currents that run round between strands in hand which lie side by side in unlike field: bounds with and without a twist. */
import type { Machine } from '../machine/machine.ts'
import { fourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import type { RotorField } from './air-gap-field.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import { linkageSamples } from './flux-linkage.ts'
import type { WoundMachine } from './winding.ts'

export interface StrandCirculation {
  /**
   * Watts at one radian per second where the strands lie in a row the worse way and keep their places from the first
   * turn to the last; resistance alone limits them, so nothing is lost beyond this [W·s²/rad²].
   */
  readonly untwisted: number
  /** The same where the hand is twisted once a turn or more: half a twist is left over at most. */
  readonly twisted: number
}

/** Samples of a period: the first orders suffice for a difference between neighbours. */
const samples = 8

/** Sum over orders of (h ψ_h)²/2: mean square of dψ/dθ, electrical. */
function meanSquareRate(values: Float64Array): number {
  const series = fourierSeries(values, samples / 2 - 1)
  let sum = 0
  for (let h = 1; h < series.cos.length; h++) sum += (h * harmonicAmplitude(series, h)) ** 2 / 2
  return sum
}

/** ψ of one turn for some of the filaments, their weights made one again. */
function partLinkage(
  machine: Machine,
  field: RotorField,
  shape: ConductorShape,
  part: ConductorShape['filaments'],
) {
  const whole = part.reduce((sum, { weight }) => sum + weight, 0)
  return linkageSamples({
    shape: {
      ...shape,
      filaments: part.map((filament) => ({ ...filament, weight: filament.weight / whole })),
    },
    copies: shape.repeats,
    sources: field.sources,
    span: (2 * Math.PI) / machine.rotor.polePairs,
    count: samples,
  })
}

/** Mean square of the difference of dψ/dθ per metre between the outer filaments of the section along one way [V²s²/m²]. */
function slopeSquare(machine: Machine, field: RotorField, shape: ConductorShape, way: 0 | 1): number {
  const places = shape.filaments.map(({ offset }) => offset[way])
  const least = Math.min(...places)
  const most = Math.max(...places)
  if (!(most - least > 1e-7)) return 0
  const at = (place: number) =>
    partLinkage(
      machine,
      field,
      shape,
      shape.filaments.filter(({ offset }) => Math.abs(offset[way] - place) < 1e-7),
    )
  const low = at(least)
  const high = at(most)
  const { polePairs } = machine.rotor
  return (polePairs ** 2 * meanSquareRate(low.map((value, k) => high[k]! - value))) / (most - least) ** 2
}

/** Undefined for a single strand. */
export function strandCirculation(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
  wound: WoundMachine,
): StrandCirculation | undefined {
  const { strands, shape: wire } = machine.stator.wire
  if (strands < 2) return undefined
  const pitch = wire.kind === 'round' ? wire.outerDiameter : Math.max(wire.outerWidth, wire.outerThickness)
  const slopes = layout.shapes.map((shape) => {
    const spread = (extent: number) => Math.min((strands ** 2 - 1) * pitch ** 2, extent ** 2) / 12
    // a wave's bundle is the wave turned: across it the volts differ in phase
    const turned =
      shape.spreadAngle > 0
        ? (machine.rotor.polePairs ** 2 *
            meanSquareRate(partLinkage(machine, field, shape, shape.filaments)) *
            (shape.spreadAngle * machine.rotor.polePairs) ** 2) /
          shape.bundle.width ** 2
        : 0
    return Math.max(
      slopeSquare(machine, field, shape, 1) * spread(shape.bundle.thickness),
      (slopeSquare(machine, field, shape, 0) + turned) * spread(shape.bundle.width),
    )
  })
  let untwisted = 0
  let twisted = 0
  layout.coils.forEach(({ shape }, k) => {
    const { turns } = layout.shapes[shape]!
    // N strands of N times the coil's resistance each
    const loss = (turns ** 2 * slopes[shape]!) / wound.coilResistance[k]!
    untwisted += loss
    twisted += loss / (Math.PI * turns) ** 2
  })
  return { untwisted, twisted }
}
