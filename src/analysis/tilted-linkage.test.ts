/** Checks the flux through a stator out of square against that through the whole path moved as one piece. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { curveQuadrature, turnedCurve } from '../geometry/curve.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type FourierSeries, harmonicAmplitude, seriesValue } from '../numerics/fourier.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import { magnetVectorPotential } from '../physics/magnetics/magnet.ts'
import { pathLinkage } from '../physics/winding/path-linkage.ts'
import { type RotorField, rotorField } from './air-gap-field.ts'
import { type ConductorShape, conductorLayout } from './conductor-layout.ts'
import { rotorLinkage } from './flux-linkage.ts'
import { tiltedLinkages } from './tilted-linkage.ts'

const caseOf = (name: FixedName, difference_mm: number, at_deg: number, defects: readonly object[] = []) => {
  const document = fixedDocument(name)
  document.defects = [{ kind: 'unequal gap', difference_mm, at_deg }, ...defects]
  const machine = resolveDesign(designOf(document))
  return { machine, field: rotorField(machine), layout: conductorLayout(machine) }
}

type Move = (points: Float64Array, steps: Float64Array) => void

/** ψ of all filaments of the whole path, standing at `angle`, moved, the rotor turned by θ. */
function movedFlux(
  shape: ConductorShape,
  field: RotorField,
  place: { readonly angle: number; readonly θ: number },
  move: Move,
) {
  const { nodes, weights } = gaussLegendre(shape.spreadAngle === 0 ? 1 : 6)
  let flux = 0
  for (const { curve, weight } of shape.filaments)
    nodes.forEach((x, j) => {
      for (let copy = 0; copy < shape.repeats; copy++) {
        const angle = place.angle + (x * shape.spreadAngle) / 2 + (2 * Math.PI * copy) / shape.repeats
        const { points, steps } = curveQuadrature(turnedCurve(curve, angle), { longestStep: 3e-3, order: 4 })
        const [p, s] = [Float64Array.from(points), Float64Array.from(steps)]
        move(p, s)
        const A = magnetVectorPotential(field.sources, turnPointsAboutZ(p, -place.θ), { relativeError: 1e-6 })
        flux += (weights[j]! / 2) * weight * pathLinkage(A, turnPointsAboutZ(s, -place.θ))
      }
    })
  return flux
}

describe('agrees: flux of every coil with the whole path moved rigidly', () => {
  test('a disc’s coils tilted by half a millimetre each way', () => {
    const { machine, field, layout } = caseOf('disc', 1, 40)
    const tilted = tiltedLinkages(machine, field, layout)!
    const { amplitude, angle } = machine.defects.tilt!
    const radius = machine.rotor.pitchRadius
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
    const slope = amplitude / radius
    const tilt: Move = (points, steps) => {
      for (let k = 0; k < points.length; k += 3) {
        points[k + 2]! -= slope * (points[k]! * ux + points[k + 1]! * uy)
        steps[k + 2]! -= slope * (steps[k]! * ux + steps[k + 1]! * uy)
      }
    }
    const shape = layout.shapes[0]!
    const squareFlux = rotorLinkage(machine, field, shape)
    let change = 0
    let worst = 0
    for (const [k, coil] of layout.coils.slice(0, 4).entries())
      for (const θ of [0, 0.13]) {
        const { flux, base } = tilted[k]!
        const direct = movedFlux(shape, field, { angle: coil.angle, θ }, tilt)
        const square = seriesValue(squareFlux.flux, base * (θ - coil.angle))
        change = Math.max(change, Math.abs(direct - square))
        worst = Math.max(worst, Math.abs(seriesValue(flux, base * θ) - direct))
      }
    expect(worst / change).toBeLessThan(0.06)
  }, 60_000)
  test('a drum’s wave moved sideways by a millimetre, among unlike magnets', () => {
    const { machine, field, layout } = caseOf('drum', 1.5, 25, [{ kind: 'missing magnet', position: 3 }])
    const tilted = tiltedLinkages(machine, field, layout)!
    const { amplitude, angle } = machine.defects.tilt!
    const move: Move = (points) => {
      for (let k = 0; k < points.length; k += 3) {
        points[k]! -= amplitude * Math.cos(angle)
        points[k + 1]! -= amplitude * Math.sin(angle)
      }
    }
    const shape = layout.shapes[0]!
    const squareFlux = rotorLinkage(machine, field, shape)
    let change = 0
    let worst = 0
    for (const θ of [0.1, 1.3, 2.9]) {
      const { flux, base } = tilted[0]!
      const { angle: at } = layout.coils[0]!
      const direct = movedFlux(shape, field, { angle: at, θ }, move)
      const square = seriesValue(squareFlux.flux, base * (θ - at))
      change = Math.max(change, Math.abs(direct - square))
      worst = Math.max(worst, Math.abs(seriesValue(flux, base * θ) - direct))
    }
    expect(worst / change).toBeLessThan(0.06)
  }, 60_000)
})

describe('law: what one side gains the other loses', () => {
  const meanGain = (name: FixedName, difference: number) => {
    const { machine, field, layout } = caseOf(name, difference, 10)
    const order = machine.rotor.polePairs / rotorLinkage(machine, field, layout.shapes[0]!).base
    const size = (flux: FourierSeries) => harmonicAmplitude(flux, order)
    const square = size(rotorLinkage(machine, field, layout.shapes[0]!).flux)
    const own = tiltedLinkages(machine, field, layout)!.filter((_, k) => layout.coils[k]!.shape === 0)
    return own.reduce((sum, { flux }) => sum + size(flux), 0) / own.length / square - 1
  }
  test('the mean of a disc’s coils changes by the square of the tilt', () => {
    // a path in pieces has other points than the whole one
    const none = meanGain('disc', 1e-6)
    expect(Math.abs(none)).toBeLessThan(5e-4)
    const ratio = (meanGain('disc', 1.6) - none) / (meanGain('disc', 0.8) - none)
    expect(ratio).toBeGreaterThan(3.9)
    expect(ratio).toBeLessThan(4.1)
  })
  test('a wave that goes all round a drum hardly feels that it stands aside', () => {
    expect(Math.abs(meanGain('drum', 1.4))).toBeLessThan(1e-3)
  })
})
