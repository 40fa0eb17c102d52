/** Checks of the simplified loads of a small rotor. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { simplifiedTurbineLoads } from './simplified-turbine-load.ts'

const rpm = Math.PI / 30

/** Three blades of 1.2 m, 700 W at 400 rpm, wind of the second class: the drive passes 60.35 % of the shaft's power. */
const turbine = {
  bladeCount: 3,
  radius: 1.2,
  bladeMass: 1,
  bladeCentre: 0.45,
  bladeInertia: 0.3,
  rotorMass: 6,
  bladeOverhang: 0.1,
  yawDistance: 0.35,
  bladeArea: 0.1,
  torque: 700 / 0.6035 / (400 * rpm),
  speed: 400 * rpm,
  fastest: 700 * rpm,
  tipSpeedRatio: (400 * rpm * 1.2) / (1.4 * 8.5),
  airDensity: 1.225,
  meanWind: 8.5,
  extremeWind: 1.4 * 42.5,
}
const loads = simplifiedTurbineLoads(turbine)

describe('agrees: iec61400-2, equations of the third edition from memory, one rotor reckoned apart by hand', () => {
  check('A, pull at a root', loads.work.bladePull, '1579.1')
  check('A, edgewise', loads.work.bladeEdge, '18.06')
  check('A, flapwise', loads.work.bladeFlap, '38.99')
  check('A, thrust', loads.work.thrust, '146.2')
  check('A, torque', loads.work.shaftTorque, '28.40')
  check('A, moment of the shaft', loads.work.shaftMoment, '41.01')
  check('B, rate of yaw', loads.yaw.rate, '2.975')
  check('B, flapwise', loads.yaw.bladeFlap, '95.65')
  check('D, thrust', loads.thrust, '625.6')
  check('E, pull at a root', loads.fastest.bladePull, '2418.1')
  check('E, moment of the shaft', loads.fastest.shaftMoment, '25.23')
  check('F, torque', loads.shortTorque, '55.38')
  check('H, flapwise', loads.parked.bladeFlap, '195.2')
  check('H, thrust', loads.parked.thrust, '975.8')
})

describe('law: squares and signs', () => {
  test('pull at the root rises with the square of the speed, parked loads with that of the wind', () => {
    const twice = simplifiedTurbineLoads({
      ...turbine,
      fastest: 2 * turbine.fastest,
      extremeWind: 2 * turbine.extremeWind,
    })
    expect(twice.fastest.bladePull / loads.fastest.bladePull).toBeCloseTo(4, 9)
    expect(twice.parked.thrust / loads.parked.thrust).toBeCloseTo(4, 9)
    expect(twice.work).toEqual(loads.work)
  })
  test('a rotor out of balance bends its shaft more; meaningless numbers are refused', () => {
    const heavy = simplifiedTurbineLoads({ ...turbine, eccentricity: 0.02 })
    expect(heavy.fastest.shaftMoment).toBeGreaterThan(loads.fastest.shaftMoment)
    for (const bad of [{ radius: 0 }, { bladeMass: -1 }, { speed: Number.NaN }])
      expect(() => simplifiedTurbineLoads({ ...turbine, ...bad })).toThrow(RangeError)
  })
})
