/** Station of the stator: winding, wire and connection. */
import { isRawObject, valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Start, type Station } from './station.ts'

const poles = (document: unknown) => Math.max(2, numberAt(document, ['rotor', 'poleCount'], 12))
const pitchRadius = (document: unknown) => numberAt(document, ['rotor', 'pitchRadius_mm'], 60)

/** Three coils to four poles, in whole sets of three. */
const coilCount = (document: unknown) => Math.max(3, 3 * Math.round(poles(document) / 4))

/** Arc that one coil has for itself [mm]. */
const arc = (document: unknown) => (2 * Math.PI * pitchRadius(document)) / coilCount(document)

const coilRoom = (document: unknown, share: number) => rounded(share * arc(document), 0.1)

const holeLength = (document: unknown) =>
  rounded(0.8 * numberAt(document, ['rotor', 'magnet', 'length_mm'], 40), 0.5)

const firstDistance = (document: unknown) =>
  numberAt(
    document,
    ['stator', 'winding', 'distance_mm'],
    numberAt(document, ['stator', 'winding', 'phases', 0, 'distance_mm'], 4),
  )

const depth = (document: unknown) => numberAt(document, ['stator', 'winding', 'bundleDepth_mm'], 2.5)

/** The next phase of a serpentine: 120 electrical degrees on, in a layer above. */
const nextPhase = (document: unknown, k: number) => ({
  offset_deg: rounded((k * 240) / poles(document), 0.001),
  distance_mm: rounded(firstDistance(document) + k * (depth(document) + 0.1), 0.05),
})

const serpentine: Start = (document) => ({
  turns: 40,
  runLength_mm: numberAt(document, ['rotor', 'magnet', 'length_mm'], 40),
  crownHeight_mm: rounded((Math.PI * pitchRadius(document)) / poles(document) / 2, 0.5),
  bundleWidth_mm: rounded((0.6 * Math.PI * pitchRadius(document)) / poles(document) / 2, 0.1),
  bundleDepth_mm: depth(document),
  phases: [0, 1, 2].map((k) => nextPhase(document, k)),
})

const rectangularHole: Start = (document) => ({
  holeWidth_mm: coilRoom(document, 0.36),
  holeLength_mm: holeLength(document),
})

export const statorStation: Station = {
  noun: 'stator',
  title: 'Stator',
  lead: 'The wire that stands still.',
  open: true,
  starts: {
    'stator.winding.kind': {
      serpentine,
      coils: (document) => ({
        coilCount: coilCount(document),
        phaseCount: 3,
        turns: 60,
        hole: { shape: 'rectangular', ...rectangularHole(document) },
        legWidth_mm: coilRoom(document, 0.26),
        bundleDepth_mm: depth(document),
        distance_mm: firstDistance(document),
      }),
    },
    'stator.winding.hole.shape': {
      round: (document) => ({ holeDiameter_mm: coilRoom(document, 0.36) }),
      rectangular: rectangularHole,
      wedge: (document) => ({
        holeInnerWidth_mm: coilRoom(document, 0.26),
        holeOuterWidth_mm: coilRoom(document, 0.46),
        holeLength_mm: holeLength(document),
      }),
    },
  },
  entries: {
    'stator.winding.phases': (document) => {
      const list = valueAt(document, ['stator', 'winding', 'phases'])
      return nextPhase(document, Array.isArray(list) ? list.filter(isRawObject).length : 0)
    },
  },
  entryNames: { 'stator.winding.phases': 'phase' },
}
