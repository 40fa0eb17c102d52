/** Field of arc magnets on an iron core inside an iron bore, endless along the axis, in closed form. */
import { refuse, requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'

export interface LayeredDrum {
  /** Surface of the iron core that carries the magnets [m]. */
  readonly coreRadius: number
  /** Outer faces of the magnets [m]. */
  readonly magnetRadius: number
  /** Surface of the iron around; none when left out [m]. */
  readonly boreRadius?: number
  /** Br, along the radius, alternating [T]. */
  readonly remanence: number
  /** μrec relative to μ0 [1]. */
  readonly recoilPermeability: number
  readonly polePairs: number
  /** α, arc of a magnet over the pole pitch, ≤ 1 [1]. */
  readonly poleArc: number
}

/** Nearer to 1 than this an order is moved aside both ways: its formula reads 0/0 there. */
const aside = 1e-5

/**
 * Amplitude of one harmonic of the flux density between magnets and bore of a long drum.
 *
 *   B_r = M np/((np)² − 1) · A · ((Rm/Rs)^(np+1) (r/Rs)^(np−1) + (Rm/r)^(np+1)) cos npθ, M = 2 (Br/μr) α sin x/x, x = nπα/2
 *
 * A = (np − 1 + 2 q^(np+1) − (np + 1) q^(2np)) / ((1 + 1/μr)(1 − (Rr/Rs)^(2np)) − (1 − 1/μr)((Rm/Rs)^(2np) − q^(2np))),
 * q = Rr/Rm; B_θ the same with −(r/Rs)^(np−1), of sin npθ.
 *
 * Holds: ideal iron, arc magnets polarised along the radius, spaces between them of their permeability, r from Rm to Rs.
 * Accuracy: exact in that model; np = 1 by its limit, 1e-9.
 *
 * @param drum    coreRadius Rr, magnetRadius Rm, boreRadius Rs [m], remanence [T], recoilPermeability, polePairs, poleArc [1]
 * @param n       odd order in p; even orders are zero                  [1]
 * @param radius  r                                                     [m]
 * @returns       normal B_r, of cos npθ from a pole's middle, and tangential B_θ, of sin npθ [T]
 * @throws RangeError   radii not rising; pole arc above 1; n below 1; r outside the gap
 * @source zhu1993, part I, field in the air gap, internal rotor (from memory, not opened)
 * @example layeredDrumFluxDensity({ coreRadius: 0.0475, magnetRadius: 0.0525, boreRadius: 0.062, remanence: 1.3, recoilPermeability: 1.05, polePairs: 6, poleArc: 0.6 }, 1, 0.0575).normal // 0.335792
 */
export function layeredDrumFluxDensity(
  drum: LayeredDrum,
  n: number,
  radius: number,
): { readonly normal: number; readonly tangential: number } {
  const { coreRadius: Rr, magnetRadius: Rm, boreRadius: Rs, remanence, polePairs, poleArc: α } = drum
  const { recoilPermeability: μr } = drum
  requirePositive('coreRadius', Rr, 'm')
  requirePositive('magnetRadius - coreRadius', Rm - Rr, 'm')
  if (Rs !== undefined) requirePositive('boreRadius - magnetRadius', Rs - Rm, 'm')
  requireFinite('remanence', remanence, 'T')
  requireBetween('recoilPermeability', μr, [1, 100])
  requireBetween('poleArc', α, [0, 1])
  for (const [name, value] of [
    ['polePairs', polePairs],
    ['n', n],
  ] as const)
    if (!Number.isInteger(value) || value < 1)
      refuse({ name, condition: 'a whole number, 1 or more', value, code: 'below-minimum' })
  requireBetween('radius', radius, [Rm, Rs ?? Number.MAX_VALUE], 'm')
  if (n % 2 === 0) return { normal: 0, tangential: 0 }
  const x = (n * Math.PI * α) / 2
  const M = (2 * remanence * α * (x === 0 ? 1 : Math.sin(x) / x)) / μr
  const pair = (m: number): readonly [number, number] => {
    const q = Rr / Rm
    const [s, t] = Rs === undefined ? [0, 0] : [Rr / Rs, Rm / Rs]
    const above = m - 1 + 2 * q ** (m + 1) - (m + 1) * q ** (2 * m)
    const below = (1 + 1 / μr) * (1 - s ** (2 * m)) - (1 - 1 / μr) * (t ** (2 * m) - q ** (2 * m))
    const A = (((M * m) / ((m - 1) * (m + 1))) * above) / below
    const back = Rs === undefined ? 0 : t ** (m + 1) * (radius / Rs) ** (m - 1)
    const out = (Rm / radius) ** (m + 1)
    return [A * (back + out), A * (out - back)]
  }
  const m = n * polePairs
  if (m > 1) return { normal: pair(m)[0], tangential: pair(m)[1] }
  const [low, high] = [pair(1 - aside), pair(1 + aside)]
  return { normal: (low[0] + high[0]) / 2, tangential: (low[1] + high[1]) / 2 }
}
