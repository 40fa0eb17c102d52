/** What a straight wire across the magnets gives per metre, against the angle at which it crosses them. */
import type { Machine } from '../machine/machine.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { skewFactor } from '../physics/winding/winding-factor.ts'
import { levelAbove, type RotorField } from './air-gap-field.ts'
import { cutField } from './cut-field.ts'

export interface WireAngleCurve {
  /** Between the wire and the run direction [rad]. */
  readonly lean: Float64Array
  /** Peak of the fundamental over the speed, per metre of wire [V·s/(rad·m)]: integrated along the wire. */
  readonly perMetre: Float64Array
  /** The straight wire's value times cos(lean): what the direction alone takes away. */
  readonly cosine: Float64Array
  /** That times the skew factor: the ends of a leaning wire lie in another phase of the field. */
  readonly textbook: Float64Array
}

const steepest = (75 * Math.PI) / 180
const steps = 30
const gaussPoints = 24
const orders = 9
const nodeDistance = 0.5

/**
 * A wire from one end of the magnets to the other, `distance` above their faces, its middle under the middle of a
 * pole. With the lean β its metre meets cos β of a straight one's flux; it reaches over s = p L tan β/R of the field's
 * phase and keeps sin(s/2)/(s/2) of it. Where the field fades towards the magnets' ends, or widens with the radius,
 * the integral says more than the two factors.
 */
export function wireAngleCurve(
  machine: Machine,
  field: RotorField,
  { distance, base }: { readonly distance: number; readonly base: number },
): WireAngleCurve {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const level = levelAbove(machine, distance)
  const radius = drum ? level : rotor.pitchRadius
  const length = rotor.magnet.length
  const lean = Float64Array.from({ length: steps + 1 }, (_, k) => (steepest * k) / steps)
  const { nodes, weights } = gaussLegendre(gaussPoints)
  const rings = new Float64Array(2 * lean.length * gaussPoints)
  lean.forEach((β, k) => {
    nodes.forEach((node, i) => {
      const y = (node * length) / 2
      const at = 2 * (k * gaussPoints + i)
      rings[at] = drum ? level : Math.hypot(radius + y, y * Math.tan(β))
      rings[at + 1] = drum ? y : level
    })
  })
  const working = rotor.polePairs / base
  const kept = orders * working
  const { values } = cutField(machine, field, rings, {
    base,
    orders: kept,
    spacing: nodeDistance * Math.max(distance, 0.5e-3),
  })
  const gain = field.iron?.gain(rotor.polePairs, distance, 'run').normal ?? 1
  const width = kept + 1
  const perMetre = lean.map((β, k) => {
    let [a, b] = [0, 0]
    for (let i = 0; i < gaussPoints; i++) {
      const y = (nodes[i]! * length) / 2
      const across = y * Math.tan(β)
      const dy = (weights[i]! * length) / 2
      const place = 4 * width * (k * gaussPoints + i)
      // r dr = x dx + y dy along the leaning line of a disc; r dz on a drum
      const cut = drum ? radius * dy : (radius + y + across * Math.tan(β)) * dy
      const at = place + (drum ? 0 : 2 * width) + working
      const azimuth = rotor.polePairs * (drum ? across / radius : Math.atan2(across, radius + y))
      const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)]
      const [cos, sin] = [values[at]!, values[at + width]!]
      a += cut * (cos * c + sin * s)
      b += cut * (sin * c - cos * s)
    }
    return (gain * Math.hypot(a, b) * Math.cos(β)) / length
  })
  const straight = perMetre[0]!
  const cosine = lean.map((β) => straight * Math.cos(β))
  const textbook = lean.map((β, k) => {
    const skew = (rotor.polePairs * length * Math.tan(β)) / radius
    return cosine[k]! * Math.abs(skewFactor({ skew, harmonic: 1 }))
  })
  return { lean, perMetre, cosine, textbook }
}
