/** Checks the concern of a gap that closes. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain, sampleMachine } from '../../../test/sample-chain.ts'
import { magneticPull } from '../../physics/magnetics/magnetic-pull.ts'
import { cornerRise, drawnGap, gapStack, staticClearance } from './gap-stack.ts'

const losses = { print: 0.3e-3, bearing: 0.1e-3, warp: 0.3e-3, deflection: 0 }

describe('agrees: sums and Pythagoras by hand', () => {
  check(
    'pull of twelve pairs of 8 cm² at 0.6 T, newtons',
    magneticPull({ fluxDensity: 0.6, area: 12 * 8e-4 }),
    '1375',
  )
  test('worst and likely', () => {
    const { worst, likely } = staticClearance(1.5e-3, losses)
    expect(worst).toBeCloseTo(0.8e-3, 9)
    expect(likely).toBeCloseTo(1.5e-3 - Math.sqrt(0.19) * 1e-3, 9)
    expect(staticClearance(1.5e-3, { ...losses, deflection: 1e-3 }).worst).toBeCloseTo(-0.2e-3, 9)
    expect(staticClearance(-0.5e-3, losses).worst).toBeCloseTo(-1.2e-3, 9)
  })
  test('corners of flat blocks on a drum stand out', () => {
    const rotor = { ...sampleMachine().rotor, arrangement: 'drum' as const, pitchRadius: 0.05 }
    const magnet = { ...rotor.magnet, thickness: 0.005, width: 0.015 }
    expect(cornerRise({ rotor: { ...rotor, magnet } })).toBeCloseTo(Math.hypot(0.0525, 0.0075) - 0.0525, 12)
    expect(cornerRise({ rotor: { ...rotor, magnet, windingSide: 'inside' } })).toBe(0)
    expect(cornerRise(sampleMachine())).toBe(0)
  })
  test('the drawing: 9 mm to the middle of a bundle 12 mm deep, 18 mm between faces', () => {
    const { inner, outer } = drawnGap(sampleMachine())
    expect(inner).toBeCloseTo(3e-3, 9)
    expect(outer).toBeCloseTo(3e-3, 9)
  })
})

describe('law: the rule', () => {
  const moved = (distance_mm: number, safetyClass = 'outdoor') =>
    gapStack.judge(sampleChain({ 'stator.winding.distance_mm': distance_mm, 'purpose.class': safetyClass }))
  test('silent in the middle, a warning near, blocking in touch', () => {
    expect(moved(9)).toBeUndefined()
    expect(moved(7.6)?.severity).toBe('warning')
    expect(moved(7.6)?.remedies[0]).toContain('1.4 mm away from')
    const wide = { 'rotor.faceDistance_mm': 15, 'stator.winding.distance_mm': 7.5 }
    expect(gapStack.judge(sampleChain(wide))?.remedies[0]).toContain('0.40 mm farther apart')
    expect(moved(6.5)?.severity).toBe('blocking')
    expect(moved(6.5, 'bench')?.severity).toBe('warning')
    expect(moved(11)?.figures).toContain('far side')
    expect(moved(6)?.what).toContain('in each other’s way')
  })
})
