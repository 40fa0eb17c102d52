/** Checks of what the shaft and its bearings carry. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { rotorField } from '../air-gap-field.ts'
import { balance } from './balance.ts'
import { bearingRating, bearingResult } from './bearing-result.ts'
import { rotorLoad } from './rotor-load.ts'
import { axialPull, gravity, shaftLoads, stormThrust, turningMass, workThrust } from './shaft-load.ts'
import { shaftResult, suddenShortTorque, workTorque } from './shaft-result.ts'
import { sleevePull } from './sleeve-pull.ts'

const bearings = {
  spacing_mm: 100,
  bladeOverhang_mm: 120,
  magnetOverhang_mm: 40,
  dynamicRating_N: 14_000,
  staticRating_N: 7800,
}
const shaft = { 'shaft.bearings': bearings, 'shaft.diameter_mm': 30 }
const chain = (fields: Readonly<Record<string, unknown>> = {}) => sampleChain({ ...shaft, ...fields })

describe('agrees: statics by hand', () => {
  test('weights at rest: the front bearing carries them levered over the rear one', () => {
    const own = chain()
    const mass = turningMass(own)
    const { radial, moment } = shaftLoads(own.machine.shaft.bearings!, mass, {
      speed: 0,
      grade: 0,
      yaw: 0,
    })
    const [b, m] = [mass.blades.mass * gravity, mass.magnets.mass * gravity]
    expect(radial[1] / ((b * 0.12 + m * 0.04) / 0.1)).toBeCloseTo(1, 9)
    expect(radial[0] / (b + m + (b * 0.12 + m * 0.04) / 0.1)).toBeCloseTo(1, 9)
    expect(moment / (b * 0.12 + m * 0.04)).toBeCloseTo(1, 9)
  })
  test('yawing adds the couple J ω Ω, unbalance m G ω', () => {
    const own = chain()
    const mass = turningMass(own)
    const at = { speed: 40, grade: 0, yaw: 0 }
    const place = own.machine.shaft.bearings!
    const still = shaftLoads(place, mass, at)
    const yawing = shaftLoads(place, mass, { ...at, yaw: 2 })
    expect((yawing.moment - still.moment) / (mass.blades.inertia * 40 * 2)).toBeCloseTo(1, 9)
    const shaking = shaftLoads(place, mass, { ...at, grade: 0.016 })
    expect(shaking.radial[0] / still.radial[0]).toBeCloseTo(1 + (0.016 * 40) / gravity, 9)
  })
  test('the moment of a balanced grade: U = G m/ω, and what friction hides is T/g', () => {
    const own = chain()
    const found = balance(own)!
    expect(found.allowed / ((0.016 * found.mass) / found.speed)).toBeCloseTo(1, 9)
    expect(found.seen * gravity).toBeCloseTo(own.machine.shaft.startingFriction, 12)
    expect(balance(chain({ 'shaft.balanceGrade': 'G 6.3' }))).toMatchObject({ grade: 6.3e-3, said: true })
  })
})

describe('law: bearings', () => {
  const result = (more: object) => bearingResult(chain({ 'shaft.bearings': { ...bearings, ...more } }))!
  test('twice the rating, eight times the life', () => {
    // the static rating leads the axial factor and stays
    expect(result({ dynamicRating_N: 28_000 }).life / result({}).life).toBeCloseTo(8, 6)
    expect(result({}).life95 / result({}).life).toBeCloseTo(0.64, 2)
  })
  test('farther overhung blades wear more; a larger static rating is safer', () => {
    expect(result({ bladeOverhang_mm: 200 }).life).toBeLessThan(result({}).life)
    expect(result({ staticRating_N: 15_600 }).staticSafety / result({}).staticSafety).toBeCloseTo(2, 9)
  })
  test('ratings: from the sheet, by the bore, or not at all', () => {
    const { machine } = chain()
    const own = machine.shaft.bearings!
    expect(bearingRating(own)).toMatchObject({ dynamic: 14_000, spread: 0 })
    const bare = { ...own, dynamicRating: undefined, staticRating: undefined }
    expect(bearingRating({ ...bare, bore: 0.025 })?.spread).toBeGreaterThan(0)
    expect(bearingRating({ ...bare, bore: 0.0251 })).toBeUndefined()
    expect(bearingResult(sampleChain())).toBeUndefined()
  })
})

describe('law: shaft', () => {
  test('shear falls with the cube of the diameter, whirling rises with its square where discs weigh more than the shaft', () => {
    const [thin, thick] = [shaftResult(chain())!, shaftResult(chain({ 'shaft.diameter_mm': 60 }))!]
    expect(thin.shear / thick.shear).toBeCloseTo(8, 6)
    expect(thick.critical / thin.critical).toBeGreaterThan(3)
    expect(thick.critical / thin.critical).toBeLessThan(4)
  })
  test('a key is judged with the shaft; torques are those of the rows and of the short', () => {
    const own = shaftResult(chain({ 'shaft.key': { width_mm: 8, height_mm: 7, length_mm: 30 } }))!
    expect(own.shearLimit).toBeLessThan(shaftResult(chain())!.shearLimit)
    const T = Math.max(own.shortTorque, own.torque)
    expect(own.key!.pressure / ((4 * T) / (0.03 * 0.007 * 0.03))).toBeCloseTo(1, 9)
    expect(own.torque).toBe(workTorque(chain()).torque)
    expect(own.shortTorque).toBe(suddenShortTorque(chain()))
  })
  test('thrust is held beyond the limiter’s wind, and more in the storm with it stuck', () => {
    const own = chain()
    const thrust = workThrust(own)
    const at = (wind: number) => thrust(own.rowAt(wind))
    expect(at(8)).toBeGreaterThan(at(5))
    expect(at(20)).toBeCloseTo(at(11), 6)
    expect(stormThrust(own)).toBeGreaterThan(at(20))
  })
  test('a plate that stands still pulls along the shaft, discs that turn together do not', () => {
    const plate = {
      'rotor.arrangement': 'disc',
      'rotor.faceDistance_mm': undefined,
      'rotor.opposite': { kind: 'steel', faceDistance_mm: 18, thickness_mm: 10 },
    }
    const field = ({ machine }: Parameters<typeof axialPull>[0]) => ({ field: rotorField(machine, 293.15) })
    expect(axialPull(sampleChain(plate, field))).toBeGreaterThan(50)
    expect(axialPull(sampleChain({}, field))).toBe(0)
  })
})

describe('law: what is told for information', () => {
  test('a weighed blade pulls by its mass', () => {
    const pull = (mass_kg: number) => rotorLoad(chain({ 'blades.mass_kg': mass_kg }))!.loads.fastest.bladePull
    expect(pull(2) / pull(1)).toBeCloseTo(2, 9)
    expect(rotorLoad(chain({ 'blades.mass_kg': 1 }))!.spread).toBeLessThan(rotorLoad(chain())!.spread)
  })
})

describe('agrees: a sleeve round a drum, two radii apart', () => {
  const { machine } = sampleChain({
    rotor: {
      arrangement: 'drum',
      windingSide: 'outside',
      poleCount: 12,
      pitchRadius_mm: 50,
      magnet: { shape: 'block', length_mm: 60, width_mm: 20, thickness_mm: 8, grade: 'N42' },
      sleeve: { distance_mm: 14, thickness_mm: 6, motion: 'stands' },
    },
    'stator.connection': 'single',
    'stator.winding': {
      kind: 'serpentine',
      turns: 20,
      runLength_mm: 60,
      crownHeight_mm: 12,
      bundleWidth_mm: 6,
      bundleDepth_mm: 2,
      phases: [{ offset_deg: 0, distance_mm: 4 }],
    },
  })
  test('the local slope is that of the exponential between them, and the stiffness P/2ℓ', () => {
    const own = sleevePull(machine, 293.15)!
    expect(own.pull).toBeGreaterThan(10)
    expect(own.stiffness / (own.pull / (2 * own.decay))).toBeCloseTo(1, 3)
    expect(own.turns).toBe(false)
    const { rotor } = machine
    const wider = { ...machine, rotor: { ...rotor, sleeve: { ...rotor.sleeve!, distance: 0.02 } } }
    const far = sleevePull(wider, 293.15)!
    expect(far.pull).toBeLessThan(own.pull)
    // between the two the decay changes little
    expect(Math.log(own.pull / far.pull) / (0.006 / own.decay)).toBeCloseTo(1, 0)
    expect(sleevePull(sampleChain().machine, 293.15)).toBeUndefined()
  })
})
