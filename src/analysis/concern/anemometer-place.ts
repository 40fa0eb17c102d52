/** Concern: the anemometer stands in the wake of a rotor, in the lee of its mast, or too near it. */
import {
  mastSpeedError,
  WAKE_SECTOR_DISTANCES,
  wakeSector,
} from '../../physics/aerodynamics/anemometer-place.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ChainView, ConcernRule } from './concern.ts'

/** Error of the wind speed beside the mast that may be left: common practice, no source. */
export const mastErrorLimit = 0.01

/** Diameter of the disc that is as large as what the blades sweep [m]. */
const sweptDiameter = (area: number): number => Math.sqrt((4 * area) / Math.PI)

/** Rotor diameters within which nothing round the anemometer is undisturbed. */
const [nearest, farthest] = WAKE_SECTOR_DISTANCES

function placeOf({ machine, blades, airDensity }: ChainView) {
  const { record } = machine.design.site
  const boom = record?.boom_mm === undefined ? undefined : nominal(record.boom_mm) / 1000
  const mast = record?.mastWidth_mm === undefined ? undefined : nominal(record.mastWidth_mm) / 1000
  const L = record?.rotorDistance_m === undefined ? undefined : nominal(record.rotorDistance_m)
  const diameter = sweptDiameter(blades.available(1) / (0.5 * airDensity))
  return {
    record,
    boom,
    mast,
    L,
    diameter,
    error:
      boom !== undefined && boom > 0 && mast !== undefined
        ? mastSpeedError({ diameter: mast, distance: Math.max(boom, mast / 2) })
        : undefined,
  }
}

const winds = (from: number, to: number): string => {
  const round = (angle: number) => ((Math.round(angle) % 360) + 360) % 360
  return `${round(from)}° to ${round(to)}°`
}

export const anemometerPlace: ConcernRule = {
  code: 'anemometer-place',
  title: 'The anemometer stands in a wake, in a lee, or too near its mast',
  basis: `The sector of winds that come through a rotor, 1.3 arctan(2.5 D/L + 0.15) + 10° wide (IEC 61400-12-1, annex A, from memory, not opened; verify the edition in force), where it is not said that those winds were left out: a warning up to ${farthest} diameters. Nearer than ${nearest} diameters all winds are disturbed: a warning in any case. Beside a round mast away from the lee the error (d/(2 r))² of frictionless flow above 1 % (common practice, no source): a warning; an anemometer on a boom whose lee was not left out: a note. Asked where the record of the wind says where it stood.`,
  judge: (chain) => {
    const { record, boom, mast, L, diameter, error } = placeOf(chain)
    if (record === undefined) return undefined
    const inRotor = L !== undefined && L < nearest * diameter
    const waked = L !== undefined && !inRotor && L <= farthest * diameter && !record.wakeLeftOut
    const tooNear = error !== undefined && error > mastErrorLimit
    const lee = boom !== undefined && boom > 0 && !record.wakeLeftOut
    if (!inRotor && !waked && !tooNear && !lee) return undefined
    const sector =
      L === undefined || L <= 0 ? undefined : (wakeSector({ diameter, distance: L }) * 180) / Math.PI
    const bearing = record.rotorBearing_deg === undefined ? undefined : nominal(record.rotorBearing_deg)
    return {
      code: 'anemometer-place',
      severity: inRotor || waked || tooNear ? 'warning' : 'note',
      path: inRotor || waked ? 'site.record.rotorDistance_m' : 'site.record.boom_mm',
      what: inRotor
        ? 'The anemometer stands so near the rotor that no wind reaches it undisturbed.'
        : waked
          ? 'Some of the winds came to the anemometer through the rotor.'
          : tooNear
            ? 'The anemometer stands too near its mast.'
            : 'Winds that came past the mast were not left out.',
      why: 'Behind a rotor at work the wind has lost a third and more of its speed, behind a mast up to a half; power goes with the cube, so a few degrees of such winds make blades look better than they are and a site poorer.',
      figures: [
        L === undefined
          ? ''
          : `The rotor stands ${formatSi(L, 'm')} away, ${formatNumber(L / diameter, 2)} diameters of ${formatSi(diameter, 'm')}${
              sector === undefined
                ? ''
                : `; its wake takes ${formatNumber(sector, 2)}°${bearing === undefined ? '' : `, winds from ${winds(bearing - sector / 2, bearing + sector / 2)}`}`
            }.`,
        error === undefined || boom === undefined || mast === undefined
          ? ''
          : `${formatSi(boom, 'mm')} from a mast of ${formatSi(mast, 'mm')}: up to ${formatSi(error, 'percent', 2)} of the speed and ${formatSi(1 - (1 - error) ** 3, 'percent', 2)} of the power away from the lee (limit 1 %).`,
        lee && error === undefined ? 'The mast’s width is not said.' : '',
      ]
        .filter((text) => text !== '')
        .join(' '),
      remedies: [
        ...(inRotor || waked
          ? [
              'Set the anemometer 2 to 4 diameters before the rotor, on the side from which the wind mostly comes.',
              'Leave out the winds of that sector, and say so.',
            ]
          : []),
        ...(tooNear || lee
          ? [
              mast === undefined
                ? 'Put it on top of the mast, alone.'
                : `Put it on top of the mast, alone, or on a boom of ${formatSi(mast / (2 * Math.sqrt(mastErrorLimit)), 'mm', 2)} and more.`,
              'Look at the rose of the record: a sector much weaker than both its neighbours is the lee.',
            ]
          : []),
        'Masts, booms and guys go up and down by the hands of competent people.',
      ],
    }
  },
  measure: (chain) => {
    const { error } = placeOf(chain)
    return error === undefined
      ? undefined
      : {
          name: 'error beside the mast',
          value: error,
          limit: mastErrorLimit,
          unit: 'percent',
          sound: 'below',
        }
  },
  answeredBy:
    'The record’s rose with the disturbed sector cut out, or a second anemometer on the other side.',
}
