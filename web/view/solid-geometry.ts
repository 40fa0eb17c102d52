/** Solids of the three-dimensional picture: a bundle of wire along its path, a plate with a bore. */
import { BufferAttribute, BufferGeometry, Color, ExtrudeGeometry, Path, Shape, SRGBColorSpace } from 'three'
import type { WireElements } from '../../src/analysis/wire-reading.ts'
import { turnPointsAboutZ } from '../../src/numerics/vector.ts'
import type { WirePath } from '../snapshot.ts'

/** A bundle of rectangular section swept along its closed path; flat on the drum or on the disc. */
export function bundleGeometry(
  { points, width, thickness }: Pick<WirePath, 'points' | 'width' | 'thickness'>,
  onDrum: boolean,
): BufferGeometry {
  const last = points.length / 3 - 1
  const same =
    last > 0 &&
    Math.hypot(
      points[0]! - points[3 * last]!,
      points[1]! - points[3 * last + 1]!,
      points[2]! - points[3 * last + 2]!,
    ) <
      width * 1e-3
  const count = same ? last : last + 1
  const corners = new Float32Array(count * 4 * 3)
  const at = (k: number, axis: number) => points[3 * ((k + count) % count) + axis]!
  for (let k = 0; k < count; k++) {
    const along = [0, 1, 2].map((axis) => at(k + 1, axis) - at(k - 1, axis))
    const x = at(k, 0)
    const y = at(k, 1)
    const radius = Math.hypot(x, y) || 1
    const normal = onDrum ? [x / radius, y / radius, 0] : [0, 0, 1]
    const side = [
      normal[1]! * along[2]! - normal[2]! * along[1]!,
      normal[2]! * along[0]! - normal[0]! * along[2]!,
      normal[0]! * along[1]! - normal[1]! * along[0]!,
    ]
    const length = Math.hypot(side[0]!, side[1]!, side[2]!) || 1
    ;[
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ].forEach(([across, up], corner) => {
      for (let axis = 0; axis < 3; axis++)
        corners[(4 * k + corner) * 3 + axis] =
          at(k, axis) + (across! * (width / 2) * side[axis]!) / length + up! * (thickness / 2) * normal[axis]!
    })
  }
  const faces: number[] = []
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count
    for (let side = 0; side < 4; side++) {
      const a = 4 * k + side
      const b = 4 * k + ((side + 1) % 4)
      const c = 4 * next + side
      const d = 4 * next + ((side + 1) % 4)
      faces.push(a, c, b, b, c, d)
    }
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(corners, 3))
  geometry.setIndex(faces)
  // corners are not shared between faces, so that edges stay sharp
  const sharp = geometry.toNonIndexed()
  geometry.dispose()
  sharp.computeVertexNormals()
  return sharp
}

/** Corners of one stretch of a bundle: four sides of two triangles. */
const cornersOfStretch = 24

/** The bundle with every stretch in its own colour, red, green, blue 0…255; they repeat where there are fewer. */
export function coloured(
  bundle: BufferGeometry,
  colours: readonly (readonly [number, number, number])[],
): BufferGeometry {
  const corners = bundle.getAttribute('position').count
  const values = new Float32Array(3 * corners)
  const mixed = colours.map(([r, g, b]) => new Color().setRGB(r / 255, g / 255, b / 255, SRGBColorSpace))
  for (let corner = 0; corner < corners; corner++)
    mixed[Math.floor(corner / cornersOfStretch) % mixed.length]!.toArray(values, 3 * corner)
  bundle.setAttribute('color', new BufferAttribute(values, 3))
  return bundle
}

/** Where the elements of a whole path begin, all round the shaft, for a copy at `angle`. */
export function wholePath({ points, repeats }: WireElements, angle: number): Float64Array {
  // the last point is where the next copy, or the path itself, begins again
  const own = points.subarray(0, points.length - 3)
  const whole = new Float64Array(own.length * repeats)
  for (let copy = 0; copy < repeats; copy++)
    whole.set(turnPointsAboutZ(own, angle + (2 * Math.PI * copy) / repeats), own.length * copy)
  return whole
}

export function plateGeometry(inner: number, outer: number, thickness: number): BufferGeometry {
  const shape = new Shape()
  shape.absarc(0, 0, outer, 0, 2 * Math.PI, false)
  if (inner > 0) {
    const bore = new Path()
    bore.absarc(0, 0, inner, 0, 2 * Math.PI, true)
    shape.holes.push(bore)
  }
  return new ExtrudeGeometry(shape, { depth: thickness, bevelEnabled: false, curveSegments: 64 })
}
