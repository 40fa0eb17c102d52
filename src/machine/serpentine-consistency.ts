/** Faults of a serpentine: bundles, layers and crowns that would lie where others lie. */

import { type PlacedWave, type WaveRoom, waveRoom } from '../geometry/wave-room.ts'
import type { WindingSurface } from '../geometry/winding-surface.ts'
import { nominal } from '../units/quantity.ts'
import { amount, atLeast, atMost, fault, mm, slack } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'
import { greatestCornerRadius, leastCrownHeight, type WaveFields, waveOn } from './wave.ts'

type Serpentine = Extract<Design['stator']['winding'], { kind: 'serpentine' }>

const at = (name: string): string => `stator.winding.${name}`
const phaseAt = (k: number, name: string): string => at(`phases[${k}].${name}`)

/** Depth over all layers of a phase [mm]. */
export function stackDepth_mm(winding: Serpentine): number {
  const depth = nominal(winding.bundleDepth_mm)
  const pitch = winding.layerPitch_mm === undefined ? depth : nominal(winding.layerPitch_mm)
  return depth + (winding.layers - 1) * pitch
}

/** Radius of what lies `distance` from the faces of a drum's magnets [mm]. */
export function windingRadius_mm(rotor: Design['rotor'], distance: number): number {
  const radius = nominal(rotor.pitchRadius_mm)
  const face = nominal(rotor.magnet.thickness_mm) / 2 + distance
  return rotor.arrangement === 'drum' && rotor.windingSide === 'inside' ? radius - face : radius + face
}

/** The surface `distance` from the faces [mm]; a disc's lies at its height over them. */
const surfaceAt = (rotor: Design['rotor'], distance: number): WindingSurface =>
  rotor.arrangement === 'drum'
    ? { kind: 'drum', radius: windingRadius_mm(rotor, distance), z: 0 }
    : { kind: 'disc', meanRadius: nominal(rotor.pitchRadius_mm), z: distance }

function fieldsOf({ rotor }: Design, winding: Serpentine): WaveFields {
  const pitch = (2 * Math.PI) / rotor.poleCount
  return {
    polePairs: rotor.poleCount / 2,
    runLength: nominal(winding.runLength_mm),
    slant: Math.min((nominal(winding.slant_deg) * Math.PI) / 180, pitch),
    crownHeight: nominal(winding.crownHeight_mm),
    crown: winding.crown,
    cornerRadius: winding.cornerRadius_mm === undefined ? undefined : nominal(winding.cornerRadius_mm),
    lifts: winding.phases.map(({ crownLift_mm }) => nominal(crownLift_mm)),
  }
}

function outlineFaults({ rotor }: Design, winding: Serpentine): Fault[] {
  const pitch = 360 / rotor.poleCount
  const slant = nominal(winding.slant_deg)
  const crownHeight = nominal(winding.crownHeight_mm)
  const inner = nominal(rotor.pitchRadius_mm) - nominal(winding.runLength_mm) / 2 - crownHeight
  return [
    ...(slant < 0
      ? [fault(at('slant_deg'), 'at least 0°', slant, { suffix: 'deg', code: 'below-minimum' })]
      : slant > pitch * (1 + slack)
        ? [
            fault(at('slant_deg'), `at most ${amount(pitch, 'deg')}, the pole pitch`, slant, {
              suffix: 'deg',
              code: 'above-maximum',
            }),
          ]
        : []),
    ...(rotor.arrangement === 'drum' || inner > 0
      ? []
      : [
          fault(
            at('crownHeight_mm'),
            `below ${amount(Math.max(0, inner + crownHeight), 'mm')}, the way from the inner ends of the runs to the shaft`,
            crownHeight,
            mm,
          ),
        ]),
  ]
}

function layerFaults(winding: Serpentine): Fault[] {
  const { layers, layerPitch_mm, turns } = winding
  return [
    ...(turns < layers
      ? [fault(at('layers'), `at most ${turns}, a turn for each layer`, layers, { code: 'above-maximum' })]
      : []),
    ...(layers === 1 || layerPitch_mm === undefined
      ? []
      : atLeast(
          at('layerPitch_mm'),
          nominal(layerPitch_mm),
          nominal(winding.bundleDepth_mm),
          'the depth of a layer',
        )),
  ]
}

/** The surface of the layer nearest the shaft. */
function narrowestSurface({ rotor }: Design, winding: Serpentine): WindingSurface {
  const last = stackDepth_mm(winding) - nominal(winding.bundleDepth_mm)
  const reach = rotor.arrangement === 'drum' && rotor.windingSide === 'inside' ? last : 0
  return winding.phases
    .map(({ distance_mm }) => surfaceAt(rotor, nominal(distance_mm) + reach))
    .reduce((a, b) => (a.kind === 'drum' && b.kind === 'drum' && b.radius < a.radius ? b : a))
}

/** Whether the winding lies within the shaft, which is a fault of its distance. */
function inShaft(design: Design, winding: Serpentine): boolean {
  const surface = narrowestSurface(design, winding)
  return surface.kind === 'drum' && surface.radius <= nominal(winding.bundleDepth_mm) / 2
}

/** Faults of one wave by itself, its outline being sound. */
function waveFaults(design: Design, winding: Serpentine): Fault[] {
  const fields = fieldsOf(design, winding)
  const { slant, polePairs, lifts, crownHeight } = fields
  const narrowest = narrowestSurface(design, winding)
  const radius = narrowest.kind === 'drum' ? narrowest.radius : narrowest.meanRadius
  const zigzag = Math.PI / polePairs - slant <= 1e-9
  const corner = greatestCornerRadius(fields, narrowest)
  return [
    ...atMost(
      at('bundleWidth_mm'),
      nominal(winding.bundleWidth_mm),
      (Math.PI / polePairs) * radius,
      'the way from run to run, or the runs of one phase lie on each other',
    ),
    ...(zigzag
      ? lifts.flatMap((lift, k) =>
          lift > 0
            ? [
                fault(
                  phaseAt(k, 'crownLift_mm'),
                  '0 mm, as runs that lean from pole to pole have no crowns',
                  lift,
                  mm,
                ),
              ]
            : [],
        )
      : atLeast(
          at('crownHeight_mm'),
          crownHeight,
          leastCrownHeight(lifts),
          `room for crowns to climb ${amount(Math.max(...lifts), 'mm')}; lower lifts need less`,
        )),
    ...(winding.crown === 'half-ellipse' || fields.cornerRadius === undefined
      ? []
      : atMost(
          at('cornerRadius_mm'),
          fields.cornerRadius,
          corner,
          'or the corners do not fit into the crown',
        )),
  ]
}

/** What two phases must do to clear each other. */
function meetingFaults(winding: Serpentine, j: number, k: number, depth: number, room: WaveRoom): Fault[] {
  if (room.room >= -slack * depth) return []
  const [first, second] = [winding.phases[j]!, winding.phases[k]!]
  const distance = nominal(second.distance_mm)
  const other = nominal(first.distance_mm)
  const lift = nominal(second.crownLift_mm)
  if (room.beside < -slack * depth && room.over < -slack * depth) {
    const lifted = lift > 0 || nominal(first.crownLift_mm) > 0
    return [
      fault(
        phaseAt(k, 'distance_mm'),
        `${amount(depth, 'mm')} or more from that of phases[${j}], ${amount(other, 'mm')}, as their runs lie on each other${
          lifted ? ' or on the ramps to lifted crowns' : ''
        }`,
        distance,
        mm,
      ),
    ]
  }
  const least = nominal(first.crownLift_mm) + other - distance + depth
  return [
    fault(
      phaseAt(k, 'crownLift_mm'),
      `at least ${amount(least, 'mm')}, for its crowns to pass over those of phases[${j}], or distance_mm ${amount(depth, 'mm')} or more from that one’s`,
      lift,
      mm,
    ),
  ]
}

/** Every two phases: their runs side by side or over each other, and their crowns over each other. */
function phaseFaults(design: Design, winding: Serpentine): Fault[] {
  const fields = fieldsOf(design, winding)
  const depth = stackDepth_mm(winding)
  const towards = design.rotor.arrangement === 'drum' && design.rotor.windingSide === 'inside' ? -1 : 1
  const middle = (depth - nominal(winding.bundleDepth_mm)) / 2
  const waves = winding.phases.map(
    ({ distance_mm, offset_deg, crownLift_mm }): PlacedWave => ({
      serpentine: waveOn(fields, {
        surface: surfaceAt(design.rotor, nominal(distance_mm) + middle),
        away: towards,
        lift: nominal(crownLift_mm),
        angle: (nominal(offset_deg) * Math.PI) / 180,
      }),
      bundle: { width: nominal(winding.bundleWidth_mm), thickness: depth },
    }),
  )
  return waves.flatMap((wave, k) => {
    for (let j = 0; j < k; j++) {
      const faults = meetingFaults(winding, j, k, depth, waveRoom(waves[j]!, wave))
      // one remedy at a time: what clears the first often clears the next
      if (faults.length > 0) return faults
    }
    return []
  })
}

export function serpentineFaults(design: Design, winding: Serpentine): Fault[] {
  const outline = outlineFaults(design, winding)
  return [
    ...outline,
    ...layerFaults(winding),
    ...(outline.length > 0 || inShaft(design, winding)
      ? []
      : [...waveFaults(design, winding), ...phaseFaults(design, winding)]),
  ]
}
