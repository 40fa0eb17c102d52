/** Station of the stator: winding, wire and connection. */
import { isRawObject, valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Settle, type Start, type Station } from './station.ts'

const poles = (document: unknown) => Math.max(2, numberAt(document, ['rotor', 'poleCount'], 12))
const pitchRadius = (document: unknown) => numberAt(document, ['rotor', 'pitchRadius_mm'], 60)

/** Three coils to four poles, in whole sets of three. */
const coilCount = (document: unknown) => Math.max(3, 3 * Math.round(poles(document) / 4))

const holeLength = (document: unknown) =>
  rounded(0.8 * numberAt(document, ['rotor', 'magnet', 'length_mm'], 40), 0.5)

/** Arc that one coil has for itself, on a disc at the inner end of its hole [mm]. */
const arc = (document: unknown) => {
  const drum = valueAt(document, ['rotor', 'arrangement']) === 'drum'
  const radius = pitchRadius(document) - (drum ? 0 : holeLength(document) / 2)
  return (2 * Math.PI * Math.max(radius, 0.2 * pitchRadius(document))) / coilCount(document)
}

const legWidth = (document: unknown) =>
  numberAt(document, ['stator', 'winding', 'legWidth_mm'], rounded(0.26 * arc(document), 0.1))

/** Width of a hole that leaves its coil a little room beside the next one [mm]. */
const holeWidth = (document: unknown, share: number) =>
  rounded(share * Math.max(0.15 * arc(document), 0.94 * arc(document) - 2 * legWidth(document)), 0.1)

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

/** Three layers of runs share what lies between the faces. */
const roomForLayers: Settle = (winding, document) => {
  const two = numberAt(document, ['rotor', 'faceDistance_mm'], Number.NaN)
  const faceDistance = numberAt(document, ['rotor', 'opposite', 'faceDistance_mm'], two)
  const phases = winding.phases
  if (!(faceDistance > 0) || !Array.isArray(phases)) return winding
  const air_mm = 0.1 * faceDistance
  const layer = (faceDistance - 2 * air_mm) / phases.length
  return {
    ...winding,
    bundleDepth_mm: rounded(Math.min(depth(document), 0.95 * layer), 0.05),
    phases: phases.map((phase, k) => ({ ...phase, distance_mm: rounded(air_mm + (k + 0.5) * layer, 0.05) })),
  }
}

/** Lap coils as wide as lie side by side, at most full pitch: more of them, or a greater span, and they overlap. */
const lapHole: Start = (document) => {
  const drum = valueAt(document, ['rotor', 'arrangement']) === 'drum'
  const runLength = numberAt(document, ['rotor', 'magnet', 'length_mm'], 40)
  const inner = Math.max(pitchRadius(document) - (drum ? 0 : runLength / 2), 0.2 * pitchRadius(document))
  const coils = numberAt(document, ['stator', 'winding', 'coilCount'], coilCount(document))
  const leg = (legWidth(document) * poles(document)) / (2 * Math.PI * inner)
  return {
    span: rounded(Math.min(1, Math.max(0.3, 0.96 * (poles(document) / coils - leg))), 0.01),
    runLength_mm: runLength,
    endHeight_mm: rounded((0.8 * Math.PI * pitchRadius(document)) / poles(document), 0.5),
  }
}

const rectangularHole: Start = (document) => ({
  holeWidth_mm: holeWidth(document, 1),
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
        legWidth_mm: legWidth(document),
        bundleDepth_mm: depth(document),
        distance_mm: firstDistance(document),
      }),
    },
    'stator.winding.hole.shape': {
      round: (document) => ({ holeDiameter_mm: holeWidth(document, 1) }),
      rectangular: rectangularHole,
      wedge: (document) => ({
        holeInnerWidth_mm: holeWidth(document, 0.9),
        holeOuterWidth_mm: holeWidth(document, 1.1),
        holeLength_mm: holeLength(document),
      }),
      lap: lapHole,
    },
  },
  settles: { 'stator.winding.kind': { serpentine: roomForLayers } },
  entries: {
    'stator.winding.phases': (document) => {
      const list = valueAt(document, ['stator', 'winding', 'phases'])
      return nextPhase(document, Array.isArray(list) ? list.filter(isRawObject).length : 0)
    },
  },
  entryNames: { 'stator.winding.phases': 'phase' },
  extras: [
    {
      path: ['stator', 'mounting'],
      label: 'Studs or screws that hold the stator',
      start: { radius_mm: 120, count: 6 },
      fits: () => true,
    },
  ],
}
