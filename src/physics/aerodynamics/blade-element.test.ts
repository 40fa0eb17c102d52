/** Checks of the rotor's coefficients. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { anyRatio, variedBladeRotor } from '../../../test/varied-blade-rotor.ts'
import { sd2030 } from '../../data/airfoil/sd2030.ts'
import {
  type BladeRotor,
  powerCoefficientTable,
  rotorCoefficients,
  rotorTorqueAtRest,
  runawayTipSpeedRatio,
} from './blade-element.ts'
import { bladeReynolds } from './blade-reynolds.ts'
import { elementStates } from './element-state.ts'
import { betzLimit, thrustFromInduction } from './induction.ts'
import { idealPowerCoefficient, optimumRotor } from './optimum-rotor.ts'
import { extendedPolar, type Polar } from './polar.ts'
import { lossFactor } from './tip-loss.ts'
import { measuredLoads, tunnelDensity, tunnelRotor } from './wind-tunnel-rotor.published.ts'

const rad = Math.PI / 180
const rows = sd2030[0]!.rows
const thin: Polar = {
  angle: Float64Array.from(rows, ([α]) => α * rad),
  lift: Float64Array.from(rows, ([, lift]) => lift),
  drag: Float64Array.from(rows, ([, , drag]) => drag),
  reynolds: 100002,
}
const small = optimumRotor({
  bladeCount: 3,
  radius: 0.75,
  hubRadius: 0.1,
  tipSpeedRatio: 6,
  polar: thin,
  greatestChord: 0.15,
})
const still = { windSpeed: 5, kinematicViscosity: 1.46e-5 }

const tunnelLoads = (wind: number, rpm: number, rotor = tunnelRotor) => {
  const R = rotor.radius
  const { torque, thrust } = rotorCoefficients(rotor, ((rpm * Math.PI) / 30) * (R / wind), { elements: 40 })
  const force = 0.5 * tunnelDensity * Math.PI * R ** 2 * wind ** 2
  return { torque: torque * force * R, thrust: thrust * force }
}

describe('source: hand2001, measured means (7 m/s: sequences H, S) — torque and thrust of a 10 m rotor in a wind tunnel', () => {
  // Attached flow at 7 m/s: 5 %. The inner blade stalls at 10 m/s: 10 %.
  for (const { sequence, wind, rpm, torque, thrust } of measuredLoads) {
    if (wind > 10) continue
    const tolerance = { relative: wind === 7 ? 0.05 : 0.1 }
    check(`${wind} m/s ${sequence}, torque N·m`, tunnelLoads(wind, rpm).torque, torque, tolerance)
    check(`${wind} m/s ${sequence}, thrust N`, tunnelLoads(wind, rpm).thrust, thrust, tolerance)
  }
  // With stall delayed by rotation: 10 % of torque, 7 % of thrust. At 20 and 25 m/s the whole blade is in deep stall,
  // where the rule was not made to hold: thrust within 5 %, torque up to two fifths too high.
  const delayed = { ...tunnelRotor, stallDelay: true }
  for (const { sequence, wind, rpm, torque, thrust } of measuredLoads) {
    const [ofTorque, ofThrust] = wind === 7 ? [0.05, 0.05] : wind <= 15 ? [0.1, 0.07] : [0.4, 0.05]
    const loads = () => tunnelLoads(wind, rpm, delayed)
    const title = `${wind} m/s ${sequence}, stall delayed`
    check(`${title}, torque N·m`, () => loads().torque, torque, { relative: ofTorque })
    check(`${title}, thrust N`, () => loads().thrust, thrust, { relative: ofThrust })
  }
  for (const { wind, rpm, torque, thrust } of measuredLoads)
    if (wind > 10)
      test(`${wind} m/s: without the delay of stall below the measured loads, a limit of validity`, () => {
        const loads = tunnelLoads(wind, rpm)
        expect(loads.torque).toBeGreaterThan(0)
        expect(loads.torque).toBeLessThan(Number(torque))
        expect(loads.thrust).toBeLessThan(Number(thrust))
      })
  test('the thrust tells a wrong reading of the pitch: 3° added to the table is over 8 % off', () => {
    const wrong = tunnelLoads(7, 71.88, { ...tunnelRotor, pitch: 3 * rad })
    expect(wrong.thrust / 1132).toBeGreaterThan(1.08)
  })
})

describe('agrees: ideal rotor with wake rotation, reached with many blades and no drag', () => {
  const free: Polar = {
    angle: Float64Array.of(-0.3, 0, 0.3),
    lift: Float64Array.of(-1.5, 0, 1.5),
    drag: new Float64Array(3),
    reynolds: 1e6,
  }
  for (const λ of [1, 2, 4, 6, 8, 10])
    test(`λ = ${λ}: within 0.4 %`, () => {
      const rotor = optimumRotor({
        bladeCount: 400,
        radius: 1,
        hubRadius: 0.004,
        tipSpeedRatio: λ,
        polar: free,
        attackAngle: 0.1,
        liftCoefficient: 0.5,
        stations: 401,
      })
      const { power } = rotorCoefficients({ ...rotor, hubRadius: 0 }, λ, { elements: 200 })
      expect(Math.abs(power / idealPowerCoefficient(λ) - 1)).toBeLessThan(0.004)
    })
})

/** Classical iteration in a and a' (Moriarty & Hansen 2005, drag left out of the swirl), relaxed. */
const iterated = (rotor: BladeRotor, λ: number, n: number) => {
  const { bladeCount, radius, hubRadius, station, chord, twist } = rotor
  const lerp = (values: Float64Array, at: number) => {
    let i = 0
    while (i + 2 < station.length && station[i + 1]! < at) i++
    return values[i]! + ((at - station[i]!) / (station[i + 1]! - station[i]!)) * (values[i + 1]! - values[i]!)
  }
  const section = extendedPolar(rotor.polar, { aspectRatio: radius / lerp(chord, 0.75 * radius) })
  let power = 0
  let thrust = 0
  const dr = (radius - hubRadius) / n
  for (let i = 0; i < n; i++) {
    const r = hubRadius + (i + 0.5) * dr
    const x = (λ * r) / radius
    const σ = (bladeCount * lerp(chord, r)) / (2 * Math.PI * r)
    let a = 0.3
    let swirl = 0
    let [cn, ct] = [0, 0]
    for (let step = 0; step < 4000; step++) {
      const φ = Math.atan2(1 - a, x * (1 + swirl))
      const { lift, drag } = section(φ - lerp(twist, r) - rotor.pitch)
      cn = lift * Math.cos(φ) + drag * Math.sin(φ)
      ct = lift * Math.sin(φ) - drag * Math.cos(φ)
      const F = lossFactor({ bladeCount, distance: r, radius, hubRadius, inflowAngle: φ })
      const W2 = (1 - a) ** 2 + (x * (1 + swirl)) ** 2
      const C = σ * W2 * cn
      const next =
        C < 0.96 * F
          ? (1 - Math.sqrt(1 - C / F)) / 2
          : (18 * F - 20 - 3 * Math.sqrt(C * (50 - 36 * F) + 12 * F * (3 * F - 4))) / (36 * F - 50)
      const nextSwirl = (σ * W2 * lift * Math.sin(φ)) / (4 * F * (1 - a) * x)
      a += 0.1 * (next - a)
      swirl += 0.1 * (nextSwirl - swirl)
    }
    const W2 = (1 - a) ** 2 + (x * (1 + swirl)) ** 2
    thrust += (bladeCount * lerp(chord, r) * W2 * cn * dr) / (Math.PI * radius ** 2)
    power += (λ * bladeCount * lerp(chord, r) * W2 * ct * r * dr) / (Math.PI * radius ** 3)
  }
  return { power, thrust }
}

describe('agrees: iteration in a and a′ with the explicit high-induction formula', () => {
  for (const λ of [5, 6, 8, 10])
    test(`small rotor, λ = ${λ}`, () => {
      const other = iterated(small, λ, 10)
      const { power, thrust } = rotorCoefficients(small, λ, { elements: 10 })
      expect(Math.abs(power - other.power)).toBeLessThan(2e-6)
      expect(Math.abs(thrust - other.thrust)).toBeLessThan(2e-6)
    })
})

const anyRotor = variedBladeRotor(thin)

describe('law: any rotor at any tip-speed ratio', () => {
  test('finite, never above Betz', () => {
    fc.assert(
      fc.property(anyRotor, anyRatio, (rotor, λ) => {
        const c = rotorCoefficients(rotor, λ, { elements: 12 })
        if (!Number.isFinite(c.power + c.thrust + c.torque)) expect.fail(JSON.stringify(c))
        expect(c.power).toBeLessThanOrEqual(betzLimit)
        expect(c.power).toBeCloseTo(λ * c.torque, 12)
      }),
      { numRuns: 500 },
    )
  })
  test('only shape counts, not size', () => {
    fc.assert(
      fc.property(anyRotor, fc.double({ min: 0.01, max: 100, noNaN: true }), (rotor, s) => {
        const scaled = {
          ...rotor,
          radius: s * rotor.radius,
          hubRadius: s * rotor.hubRadius,
          station: rotor.station.map((r) => s * r),
          chord: rotor.chord.map((c) => s * c),
        }
        const a = rotorCoefficients(rotor, 4, { elements: 6 })
        const b = rotorCoefficients(scaled, 4, { elements: 6 })
        // A stalled section may hold two answers; rounding may then choose the other one in rare shapes.
        if (Math.abs(a.power - b.power) < 1e-6) expect(b.thrust).toBeCloseTo(a.thrust, 5)
        else expect(Math.abs(a.power - b.power)).toBeLessThan(0.05)
      }),
    )
  })
  test('pitch and twist are one', () => {
    const turned = { ...small, twist: small.twist.map((θ) => θ + 0.1) }
    const pitched = { ...small, pitch: 0.1 }
    for (const λ of [0, 2, 6])
      expect(rotorCoefficients(turned, λ).power).toBeCloseTo(rotorCoefficients(pitched, λ).power, 10)
  })
})

describe('law: momentum and energy of each ring', () => {
  test('the thrust of every ring is that of its induction', () => {
    fc.assert(
      fc.property(anyRotor, fc.double({ min: 0.5, max: 12, noNaN: true }), (rotor, λ) => {
        const n = 10
        const s = elementStates(rotor, { ...still, tipSpeedRatio: λ }, { elements: n })
        const dr = (1 - rotor.hubRadius / rotor.radius) / n
        for (let i = 0; i < n; i++) {
          const [a, r] = [s.axialInduction[i]!, s.distance[i]! / rotor.radius]
          if (s.inflowAngle[i]! <= 1e-3 || s.inflowAngle[i]! >= Math.PI / 2 || a > 1) continue
          const expected = thrustFromInduction({ induction: a, lossFactor: s.lossFactor[i]! }) * 2 * r * dr
          expect(Math.abs(s.thrustShare[i]! - expected)).toBeLessThan(1e-6 * (1 + Math.abs(expected)))
        }
      }),
    )
  })
  test('without drag: torque × its speed in the swirling air = thrust × the wind in the disc', () => {
    const free = { ...small, polar: { ...thin, drag: thin.drag.map(() => 0) } }
    for (const λ of [4, 6, 9]) {
      const s = elementStates(free, { ...still, tipSpeedRatio: λ })
      s.distance.forEach((r, i) => {
        if (Math.abs(s.attackAngle[i]!) > 0.19) return
        const x = (λ * r) / free.radius
        const taken = s.thrustShare[i]! * (1 - s.axialInduction[i]!)
        const given = (s.torqueShare[i]! / (r / free.radius)) * (x + s.swirl[i]!)
        expect(Math.abs(given - taken)).toBeLessThan(1e-9)
      })
    }
  })
  test('the shares add up to the coefficients', () => {
    for (const λ of [0, 1, 6, 14, 60]) {
      const s = elementStates(small, { ...still, tipSpeedRatio: λ })
      const c = rotorCoefficients(small, λ)
      expect(s.thrustShare.reduce((a, b) => a + b, 0)).toBeCloseTo(c.thrust, 10)
      expect(s.torqueShare.reduce((a, b) => a + b, 0)).toBeCloseTo(c.torque, 10)
    }
  })
  test('speed, angle and Reynolds number belong together; bladeReynolds is the one at 0.75 R', () => {
    const s = elementStates(small, { ...still, tipSpeedRatio: 6 }, { elements: 60 })
    s.distance.forEach((r, i) => {
      const through = 1 - s.axialInduction[i]!
      const along = (6 * r) / small.radius + s.swirl[i]!
      expect(s.airSpeed[i]!).toBeCloseTo(5 * Math.hypot(through, along), 6)
      expect(s.inflowAngle[i]!).toBeCloseTo(Math.atan2(through, along), 6)
      expect(s.reynolds[i]!).toBeCloseTo((s.airSpeed[i]! * s.chord[i]!) / 1.46e-5, 6)
    })
    const near = s.distance.findIndex((r) => r >= 0.75 * small.radius)
    expect(
      Math.abs(bladeReynolds(small, { ...still, tipSpeedRatio: 6 }) / s.reynolds[near]! - 1),
    ).toBeLessThan(0.05)
  })
})

describe('agrees: torque at rest by the chord–pitch integral with flat-plate sections, wood2001 (abstract opened; formula from memory)', () => {
  // Q = B ρ v² ∫ c r sin θ cos θ dr, from C_L = 2 sin α cos α and no induction. The author found real machines to start
  // in less wind than it says. The extended polar is that of a blade of finite length, so it gives less again.
  const rotors = [
    ['small rotor', small],
    ['tunnel rotor', tunnelRotor],
  ] as const
  for (const [name, rotor] of rotors)
    test(`${name}: half of it to all of it`, () => {
      const { bladeCount, radius, hubRadius, station, chord, twist, pitch } = rotor
      const at = (values: Float64Array, r: number) => {
        let i = 0
        while (i + 2 < station.length && station[i + 1]! < r) i++
        return (
          values[i]! + ((r - station[i]!) / (station[i + 1]! - station[i]!)) * (values[i + 1]! - values[i]!)
        )
      }
      const n = 400
      let integral = 0
      for (let i = 0; i < n; i++) {
        const r = hubRadius + ((i + 0.5) * (radius - hubRadius)) / n
        const θ = at(twist, r) + pitch
        integral += (at(chord, r) * r * Math.sin(θ) * Math.cos(θ) * (radius - hubRadius)) / n
      }
      const ratio = rotorTorqueAtRest(rotor) / ((2 * bladeCount * integral) / (Math.PI * radius ** 3))
      expect(ratio).toBeGreaterThan(0.5)
      expect(ratio).toBeLessThan(1)
    })
})

describe('law: rest and runaway', () => {
  test('torque goes smoothly to that of the rotor at rest', () => {
    const rest = rotorTorqueAtRest(small)
    expect(rest).toBeGreaterThan(0)
    expect(rotorCoefficients(small, 1e-7).torque).toBeCloseTo(rest, 8)
    expect(rotorCoefficients(small, 0.01).torque / rest).toBeCloseTo(1, 1)
    expect(rotorCoefficients(small, 0).power).toBe(0)
  })
  test('at rest: forces of the polar in the still-standing blade, induction taken out', () => {
    // With one slim blade nothing is induced: C_q = ∫ B c C_l(90° − θ) r dr / πR³.
    const slim = {
      ...small,
      bladeCount: 1,
      hubRadius: 0,
      station: Float64Array.of(0, 0.75),
      chord: Float64Array.of(1e-5, 1e-5),
      twist: Float64Array.of(0.3, 0.3),
    }
    const lift = extendedPolar(thin, { aspectRatio: 0.75 / 1e-5 })(Math.PI / 2 - 0.3).lift
    expect(rotorTorqueAtRest(slim) / ((1e-5 / 0.75) * lift * 0.5 * (1 / Math.PI))).toBeCloseTo(1, 2)
  })
  test('an unloaded rotor stops gaining speed', () => {
    for (const rotor of [small, tunnelRotor]) {
      const λ = runawayTipSpeedRatio(rotor)
      expect(λ).toBeGreaterThan(6)
      expect(λ).toBeLessThan(20)
      expect(rotorCoefficients(rotor, λ - 0.01).torque).toBeGreaterThan(0)
      expect(rotorCoefficients(rotor, λ + 0.01).torque).toBeLessThan(0)
    }
    expect(runawayTipSpeedRatio({ ...small, pitch: Math.PI / 2 })).toBeLessThan(1)
  })
  test('more rings change little: 20 against 320', () => {
    const c = rotorCoefficients(small, 6)
    const fine = rotorCoefficients(small, 6, { elements: 320 })
    expect(Math.abs(c.power / fine.power - 1)).toBeLessThan(0.005)
  })
  test('the table is its rows', () => {
    const table = powerCoefficientTable(small, [6, 0, 9])
    expect(table.power[2]).toBe(rotorCoefficients(small, 9).power)
    expect(table.torque[1]).toBe(rotorTorqueAtRest(small))
  })
})

describe('law: refusals', () => {
  const bad = (change: Partial<BladeRotor>) => () => rotorCoefficients({ ...small, ...change }, 5)
  test('what has no meaning', () => {
    expect(bad({ bladeCount: 2.5 })).toThrow(/below-minimum/)
    expect(bad({ hubRadius: 0.8 })).toThrow(/above-maximum/)
    expect(bad({ chord: small.chord.map(() => 0) })).toThrow(/below-minimum/)
    expect(bad({ twist: new Float64Array(2) })).toThrow(/wrong-length/)
    expect(bad({ station: small.station.map(() => 0.2) })).toThrow(/not-increasing/)
    expect(bad({ pitch: Number.NaN })).toThrow(/not-finite/)
    expect(() => rotorCoefficients(small, -1)).toThrow(/below-minimum/)
    expect(() => rotorCoefficients(small, Number.POSITIVE_INFINITY)).toThrow(/not-finite/)
    expect(() => rotorCoefficients(small, 5, { elements: 0 })).toThrow(/not-a-choice/)
  })
})
