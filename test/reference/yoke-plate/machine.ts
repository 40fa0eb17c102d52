/** The twelve-pole machine of the finite elements beside this file, with ideal iron by images. */
import { mildSteel } from '../../../src/data/steel.ts'
import { bhCurve } from '../../../src/physics/magnetics/bh-curve.ts'
import { blockFluxDensity } from '../../../src/physics/magnetics/block-magnet.ts'
import { imageMagnets } from '../../../src/physics/magnetics/image-plane.ts'
import { alternatingSequence, discMagnets } from '../../../src/physics/magnetics/magnet-ring.ts'
import { workingPoint } from '../../../src/physics/magnetics/working-point.ts'
import type { YokeArrangement } from '../../../src/physics/magnetics/yoke-plate.ts'
import { blockFootprint } from '../../../src/physics/magnetics/yoke-plate-source.ts'

export const steel = bhCurve({
  fluxDensity: mildSteel.fluxDensity_T,
  fieldStrength: mildSteel.fieldStrength_A_per_m,
})

export type Kind = 'two' | 'plain' | 'single'

export const ring = {
  count: 12,
  radius: 0.09,
  radialLength: 0.04,
  width: 0.02,
  thickness: 0.01,
  sequence: alternatingSequence(12),
}

/** The twelve-pole machine of the finite elements, ideal iron by images, magnets at their working point. */
function machine(kind: Kind, remanence = 1.28) {
  const low = (J: number) => discMagnets({ ...ring, height: 0.005, polarization: J })
  const planeDistance = kind === 'two' ? 0.036 : 0.026
  const arranged = (J: number) => {
    if (kind === 'single') return imageMagnets({ magnets: low(J), lowerPlane: 0 })
    const high = kind === 'two' ? discMagnets({ ...ring, height: 0.031, polarization: J }) : []
    return imageMagnets({
      magnets: [...low(J), ...high],
      lowerPlane: 0,
      upperPlane: planeDistance,
      reflections: 4,
    })
  }
  const { polarization } = workingPoint({
    magnets: arranged(remanence),
    own: 0,
    remanence,
    recoilPermeability: 1.05,
  })
  const sources = arranged(polarization)
  const seen = new Map<string, Float64Array>()
  const fluxDensity = (points: Float64Array) => {
    const key = points.join()
    const known = seen.get(key) ?? blockFluxDensity(sources, points, { relativeError: 1e-4 })
    seen.set(key, known)
    return known
  }
  const arrangement = (
    thickness: number,
    rims: readonly [number, number] = [0.065, 0.115],
    plain = 0.004,
  ): YokeArrangement => {
    const plate = { thickness, innerRadius: rims[0], outerRadius: rims[1] }
    return {
      polePairs: 6,
      steel,
      plate,
      opposite: kind === 'two' ? 'mirrored' : kind === 'single' ? 'none' : { ...plate, thickness: plain },
      planeDistance,
      fluxDensity,
      magnets: blockFootprint({ ...ring, polarization, recoilPermeability: 1.05 }),
      winding: { height: 0.018, innerRadius: 0.07, outerRadius: 0.11 },
    }
  }
  return { arrangement, fluxDensity }
}
export const machines = { two: machine('two'), plain: machine('plain'), single: machine('single') }

/** Bz's harmonic of order n at 90 mm, 8 mm from the faces. */
export function idealHarmonic(fluxDensity: YokeArrangement['fluxDensity'], n: number): number {
  const points = new Float64Array(90)
  for (let i = 0; i < 30; i++) {
    const θ = (i * Math.PI) / 360
    points.set([0.09 * Math.cos(θ), 0.09 * Math.sin(θ), 0.018], 3 * i)
  }
  const B = fluxDensity(points)
  let sum = 0
  for (let i = 0; i < 30; i++) sum += (i === 0 ? 0.5 : 1) * B[3 * i + 2]! * Math.cos((n * i * Math.PI) / 60)
  return sum / 15
}
