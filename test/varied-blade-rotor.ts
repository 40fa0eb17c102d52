/** Blade rotors and tip-speed ratios for properties that must hold of every one. */
import * as fc from 'fast-check'
import type { BladeRotor } from '../src/physics/aerodynamics/blade-element.ts'
import type { Polar } from '../src/physics/aerodynamics/polar.ts'

/** Rotors of any count, size and shape, with the section given. */
export const variedBladeRotor = (polar: Polar): fc.Arbitrary<BladeRotor> =>
  fc
    .record({
      bladeCount: fc.integer({ min: 1, max: 8 }),
      radius: fc.double({ min: 0.05, max: 6, noNaN: true }),
      hub: fc.double({ min: 0, max: 0.6, noNaN: true }),
      chords: fc.array(fc.double({ min: 0.01, max: 0.35, noNaN: true }), { minLength: 4, maxLength: 4 }),
      twists: fc.array(fc.double({ min: -0.5, max: 1.6, noNaN: true }), { minLength: 4, maxLength: 4 }),
    })
    .map(
      ({ bladeCount, radius, hub, chords, twists }): BladeRotor => ({
        bladeCount,
        radius,
        hubRadius: hub * radius,
        station: Float64Array.of(0, 1 / 3, 2 / 3, 1).map((t) => radius * (hub + t * (1 - hub))),
        chord: Float64Array.from(chords, (c) => c * radius),
        twist: Float64Array.from(twists),
        pitch: 0,
        polar,
      }),
    )

/** Tip-speed ratios, the extreme ones among them. */
export const anyRatio = fc.oneof(
  fc.double({ min: 0, max: 15, noNaN: true }),
  fc.constantFrom(0, 1e-9, 1e-3, 20, 50, 300, 1e4),
)
