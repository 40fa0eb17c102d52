/** Wedge magnets: prisms over a trapezoid, narrow end towards the machine axis, polarised in any direction. */
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import { refuse, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import type { PrismMagnet } from './prism-magnet.ts'

export interface WedgeMagnet {
  /** Halfway along, across and up. */
  readonly centre: Vector3
  /** Rows: local x from the inner to the outer end, local y across, local z along the height. */
  readonly frame: Frame3
  readonly innerWidth: number
  readonly outerWidth: number
  /** From the inner to the outer end [m]. */
  readonly length: number
  /** Along local z [m]. */
  readonly height: number
  /** Direction of J, a unit vector in local axes; [0, 0, 1] along the height when left out. */
  readonly direction?: Vector3
  readonly polarization: number
}

/**
 * A wedge as a prism: exact, not subdivided. With equal widths it is a block whose J may lean in any direction.
 *
 *   A = (w_i + w_o) l/2
 *
 * Holds: any widths, one of them may be zero (a triangle). Accuracy: exact geometry.
 *
 * @param wedge  centre, innerWidth, outerWidth, length, height [m], frame, direction [1], polarization  [T]
 * @returns      the same body as a prism                                                         [m], [T]
 * @throws RangeError   a width below zero or both zero; length or height not above zero
 * @source derived, from the definition of a trapezoid
 * @example wedgeMagnet({ centre: [0.09, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], innerWidth: 0.02, outerWidth: 0.03, length: 0.04, height: 0.01, polarization: 1.3 }).outline[5] // -0.015
 */
export function wedgeMagnet(wedge: WedgeMagnet): PrismMagnet {
  const { centre, frame, innerWidth, outerWidth, length, height, direction, polarization } = wedge
  requireNotNegative('innerWidth', innerWidth, 'm')
  requireNotNegative('outerWidth', outerWidth, 'm')
  requirePositive('length', length, 'm')
  requirePositive('height', height, 'm')
  if (innerWidth + outerWidth === 0)
    refuse({
      name: 'outerWidth',
      condition: 'above zero when innerWidth is zero',
      value: outerWidth,
      unit: 'm',
      code: 'conflict',
    })
  const [x, i, o] = [length / 2, innerWidth / 2, outerWidth / 2]
  const inner = i === 0 ? [-x, 0] : [-x, i, -x, -i]
  const outer = o === 0 ? [x, 0] : [x, -o, x, o]
  return {
    centre,
    frame,
    outline: new Float64Array([...inner, ...outer]),
    height,
    direction: direction ?? [0, 0, 1],
    polarization,
  }
}
