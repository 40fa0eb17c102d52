/** Station of the blades. */
import { isRawObject, valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Station } from './station.ts'

const size = (document: unknown) => ({ diameter_m: numberAt(document, ['blades', 'diameter_m'], 1.2) })

export const bladeStation: Station = {
  noun: 'blades',
  title: 'Blades',
  lead: 'What takes the power out of the wind.',
  open: true,
  starts: {
    'blades.kind': {
      optimum: (document) => ({ ...size(document), bladeCount: 3, section: 'SD2030', tipSpeedRatio: 5 }),
      stations: (document) => {
        const radius_mm = 500 * size(document).diameter_m
        const at = (share: number, chord: number, twist_deg: number) => ({
          radius_mm: rounded(radius_mm * share, 0.5),
          chord_mm: rounded(radius_mm * chord, 0.5),
          twist_deg,
        })
        return {
          ...size(document),
          bladeCount: 3,
          section: 'SD2030',
          stations: [at(0.2, 0.22, 22), at(0.5, 0.15, 9), at(0.75, 0.105, 4.5), at(1, 0.075, 2.5)],
        }
      },
      'straight-blade': (document) => {
        const { diameter_m } = size(document)
        return {
          diameter_m,
          height_m: rounded(1.1 * diameter_m, 0.01),
          bladeCount: 3,
          chord_mm: rounded(125 * diameter_m, 1),
          pitch_deg: 3,
          section: 'NACA 0018',
          strutThickness_mm: rounded(6 * diameter_m, 0.5),
          strutShape: 'streamlined',
        }
      },
      'drag-rotor': (document) => {
        const { diameter_m } = size(document)
        return { diameter_m, height_m: rounded(1.2 * diameter_m, 0.01), bucketCount: 'two', storeys: 'two' }
      },
      table: (document) => ({
        ...size(document),
        points: [
          [0, 0],
          [2, 0.09],
          [4, 0.3],
          [5.5, 0.36],
          [7, 0.3],
          [9, 0],
        ].map(([tipSpeedRatio, powerCoefficient]) => ({ tipSpeedRatio, powerCoefficient })),
      }),
    },
  },
  entries: {
    'blades.stations': (document) => {
      const list = valueAt(document, ['blades', 'stations'])
      const last: unknown = Array.isArray(list) ? list.at(-1) : undefined
      return {
        radius_mm: rounded(numberAt(last, ['radius_mm'], 100) + 50, 0.5),
        chord_mm: numberAt(last, ['chord_mm'], 60),
        twist_deg: numberAt(last, ['twist_deg'], 5),
      }
    },
    'blades.points': (document) => {
      const list = valueAt(document, ['blades', 'points'])
      const last: unknown = Array.isArray(list) ? list.at(-1) : undefined
      return {
        tipSpeedRatio: isRawObject(last) ? numberAt(last, ['tipSpeedRatio'], 8) + 1 : 0,
        powerCoefficient: 0,
      }
    },
  },
  entryNames: { 'blades.stations': 'station', 'blades.points': 'point' },
}
