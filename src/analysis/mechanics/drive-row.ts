/** Lines of what carries and drives: bearings, shaft, studs, balance, and the loads told for information. */
import { whirlingMarginRange } from '../../physics/mechanics/whirling.ts'
import { formatNumber } from '../../units/format.ts'
import type { Chain } from '../compute.ts'
import { wantedLife, wantedStaticSafety } from '../concern/bearing-life.ts'
import { balance } from './balance.ts'
import { bearingResult } from './bearing-result.ts'
import { type MechanicsRow, mechanicsRow, notAsked } from './mechanics-row.ts'
import { rotorLoad } from './rotor-load.ts'
import { axialPull, stormThrust, turningMass, workThrust } from './shaft-load.ts'
import { shaftResult, workTorque } from './shaft-result.ts'

const commonPractice = 'common practice, no source'

export function bearingRows(chain: Chain): MechanicsRow[] {
  const group = 'bearings'
  const { shaft, blades } = chain.machine
  if ('height' in blades)
    return [
      mechanicsRow({
        group,
        name: 'life',
        value: undefined,
        unit: 'd',
        limit: undefined,
        known: 'not computed for upright rotors: their thrust swings across the shaft with every turn',
      }),
    ]
  const axial = mechanicsRow({
    group,
    name: 'greatest push along the shaft in work',
    value: chain.rows.reduce((most, row) => Math.max(most, workThrust(chain)(row)), 0) + axialPull(chain),
    unit: 'N',
    limit: undefined,
    known: `thrust of the blades${axialPull(chain) > 0 ? ' and the pull to the plate that stands still' : ''}`,
  })
  if (shaft.bearings === undefined)
    return [axial, notAsked(group, 'life', 'shaft.bearings', ['shaft.bearings'], 'd')]
  const result = bearingResult(chain)
  if (result === undefined)
    return [
      axial,
      notAsked(
        group,
        'life',
        'shaft.bearings.dynamicRating_N and staticRating_N from its sheet, or bore_mm',
        ['shaft.bearings.dynamicRating_N', 'shaft.bearings.staticRating_N', 'shaft.bearings.bore_mm'],
        'd',
      ),
    ]
  // a rating enters the life by its cube
  const share = 3 * result.rating.spread
  return [
    axial,
    mechanicsRow({
      group,
      name: `life of the ${result.first} bearing that 90 of 100 reach`,
      value: result.life,
      spread: share * result.life,
      unit: 'd',
      limit: { value: wantedLife, sound: 'above' },
      from: `ten years: ${commonPractice}`,
      known: `ISO 281, wind by wind; ${result.rating.known}`,
    }),
    mechanicsRow({
      group,
      name: 'that 95 of 100 reach',
      value: result.life95,
      spread: share * result.life95,
      unit: 'd',
      limit: undefined,
      known: 'the same with the reliability factor; dirt and water are not in it',
    }),
    mechanicsRow({
      group,
      name: 'static rating over the load of the storm, limiter stuck',
      value: result.staticSafety,
      spread: result.rating.spread * result.staticSafety,
      unit: '1',
      limit: { value: wantedStaticSafety, sound: 'above' },
      from: 'sheets of bearings, from memory, not opened',
      known: result.rating.known,
    }),
  ]
}

export function shaftRows(chain: Chain): MechanicsRow[] {
  const group = 'shaft'
  if ('height' in chain.machine.blades) return []
  const result = shaftResult(chain)
  if (result === undefined)
    return [
      notAsked(
        group,
        'stress and whirling',
        'shaft.diameter_mm and shaft.bearings',
        ['shaft.diameter_mm', 'shaft.bearings'],
        'MPa',
      ),
    ]
  const mass = turningMass(chain)
  const keyed = chain.machine.shaft.key !== undefined
  return [
    mechanicsRow({
      group,
      name: 'shear in work, bending and torque together',
      value: result.shear,
      spread: result.shear * mass.spread,
      unit: 'MPa',
      limit: { value: result.shearLimit, sound: 'below' },
      from: `khurmi2005, section 14.9, ${keyed ? 'with' : 'without'} keyway, from memory, not opened`,
      known: 'weight, unbalance, torque',
    }),
    mechanicsRow({
      group,
      name: `greatest at once: ${result.worst}`,
      value: result.extreme,
      spread: result.extreme * mass.spread,
      unit: 'MPa',
      limit: { value: result.extremeLimit, sound: 'below' },
      from: 'yield of plain steel over 3 (iec61400-2, from memory, not opened)',
      known: `torque ${formatNumber(result.shortTorque)} N·m, twice the greatest steady short; bending ${formatNumber(result.extremeMoment)} N·m`,
    }),
    ...(result.key === undefined
      ? [notAsked(group, 'key', 'shaft.key, where one drives the hub', ['shaft.key'], 'MPa')]
      : [
          mechanicsRow({
            group,
            name: 'pressure on the key’s flanks in a sudden short',
            value: result.key.pressure,
            unit: 'MPa',
            limit: { value: result.key.limit, sound: 'below' },
            from: `half the yield of plain steel: ${commonPractice}`,
            known: 'force at the shaft’s surface, even along the key',
          }),
        ]),
    mechanicsRow({
      group,
      name: 'first critical speed',
      value: result.critical,
      unit: 'rpm',
      limit: { value: chain.runaway.speed / whirlingMarginRange[0], sound: 'above' },
      from: `runaway over ${whirlingMarginRange[0]}: ${commonPractice}`,
      known: 'stiff bearings, one diameter, no stiffening by turning counted on; soft mounts lower it',
    }),
  ]
}

export function mountingRows(chain: Chain): MechanicsRow[] {
  const { mounting } = chain.machine.stator
  const { torque } = workTorque(chain)
  const group = 'shaft'
  if (mounting === undefined)
    return [notAsked(group, 'force on each stud of the stator', 'stator.mounting', ['stator.mounting'], 'N')]
  return [
    mechanicsRow({
      group,
      name: 'force on each stud of the stator, greatest in work',
      value: torque / mounting.radius / mounting.count,
      unit: 'N',
      limit: undefined,
      known: 'torque of the shaft shared evenly; a sudden short takes several times that',
    }),
  ]
}

export function balanceRows(chain: Chain): MechanicsRow[] {
  const group = 'balance'
  const found = balance(chain)
  if (found === undefined) return []
  const spread = turningMass(chain).spread
  const grade = `G ${Number((1000 * found.grade).toPrecision(3))}`
  return [
    mechanicsRow({
      group,
      name: `unbalance that ${grade} allows at the fastest work`,
      value: found.allowed,
      spread: spread * found.allowed,
      unit: 'g_mm',
      limit: undefined,
      known: `ISO 21940-11; ${found.said ? 'grade as entered' : `usual grade, ${commonPractice}`}; mass of ${formatNumber(found.mass)} kg estimated`,
    }),
    mechanicsRow({
      group,
      name: 'the same as a mass at the blades’ tips',
      value: found.tipMass,
      spread: spread * found.tipMass,
      unit: 'g',
      limit: undefined,
      known: 'one blade heavier by this is as much as is allowed',
    }),
    mechanicsRow({
      group,
      name: 'grade that balancing by hand on its own bearings reaches',
      value: found.reached,
      spread: spread * found.reached,
      unit: 'mm_per_s',
      limit: { value: found.grade, sound: 'below' },
      from: found.said ? 'the grade entered' : `usual grade, ${commonPractice}`,
      known: `a heavy side of ${formatNumber(1e6 * found.seen)} g·mm just turns against the starting friction; weigh the blades, or balance on knife edges`,
    }),
  ]
}

export function informationRows(chain: Chain): MechanicsRow[] {
  const group = 'blades and tower: for information'
  const found = rotorLoad(chain)
  if (found === undefined) return []
  const { loads, spread, bladeMass } = found
  const blade = `blade of ${formatNumber(bladeMass, 2)} kg${spread > 0.3 ? ', guessed: enter blades.mass_kg' : ''}`
  const row = (name: string, value: number, unit: string, known: string, share = 0): MechanicsRow =>
    mechanicsRow({
      enter: share > 0.3 ? ['blades.mass_kg'] : [],
      group,
      name,
      value,
      spread: share * value,
      unit,
      limit: undefined,
      from: 'judged by a competent engineer, iec61400-2 and the local permit',
      known,
    })
  return [
    row('pull at a blade’s root at runaway', loads.fastest.bladePull, 'N', `${blade}, load case E`, spread),
    row('flapwise bending at a root, yawing', loads.yaw.bladeFlap, 'Nm', `${blade}, load case B`, spread),
    row(
      'flapwise bending at a root, parked in the gust of fifty years',
      loads.parked.bladeFlap,
      'Nm',
      'load case H',
    ),
    row('thrust on the tower top, greatest in work', loads.thrust, 'N', 'load case D'),
    row(
      'thrust on the tower top, limiter stuck in the storm',
      stormThrust(chain),
      'N',
      'own blades at their hardest push',
    ),
    row(
      'thrust on the tower top, parked in the gust of fifty years',
      loads.parked.thrust,
      'N',
      `load case H at ${found.extremeWind.toFixed(0)} m/s`,
    ),
  ]
}
