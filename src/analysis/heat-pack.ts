/** The winding as a slab that heat is born in: its footprint, depth and conductivity, and the casting beside it. */
import { conductors } from '../data/conductor.ts'
import type { Machine } from '../machine/machine.ts'
import { coatedWireConductivity, shellConductance, windingConductivity } from '../physics/heat/conduction.ts'
import { levelAbove } from './air-gap-field.ts'
import { type ConductorLayout, coilFormOf } from './conductor-layout.ts'
import { leastGap } from './heat-film.ts'
import type { WoundMachine } from './winding.ts'

export interface WindingPack {
  /** Seen from the magnets [m²]. */
  readonly area: number
  /** Through it, away from the magnets [m]. */
  readonly depth: number
  /** Along the shaft (drum) or the radius (disc) [m]. */
  readonly length: number
  /** Of the near and the far face: of a drum its own, of a disc that of the winding's middle [m]. */
  readonly nearRadius: number
  readonly farRadius: number
  /** Across the wires [W/(m·K)]. */
  readonly conductivity: number
  /** Casting or former within the winding's band that no wire fills, seen from the magnets [m²]. */
  readonly supportArea: number
  /** From the copper's mean to the edges of its bundles, and on into that casting's mean [W/K]. */
  readonly edgeConductance: number
  readonly sideConductance: number
  /** Of copper and enamel, and of what fills the room between the wires [J/K]. */
  readonly copperCapacity: number
  readonly matrixCapacity: number
  /** From the wires into what lies between them [W/K]. */
  readonly matrixConductance: number
  /** In which the warmth within the slab takes its shape [s]: d²/(π² a). */
  readonly shapeTime: number
  /** Share of the far face that a metal part hides, and the air between them [m]. */
  readonly shadow: number
  readonly shadowGap: number
}

const copper = conductors.find(({ name }) => name === 'copper')!

/** Specific heat [J/(kg·K)] and conductivity [W/(m·K)] of polyester and polyamide enamels: from memory, not opened. */
const enamelHeat = 1300
const enamelConductivity = 0.26

/** Air between dry wires [W/(m·K)], [J/(m³·K)]. */
const stillAir = { conductivity: 0.026, perVolume: 1200 }

/** Share of a section that wires can take at all; more is a fault of the document that other rules tell. */
const mostFill = 0.85

/** Less casting than this share of the winding counts for nothing. */
const leastSupport = 0.02

/** Length of the winding along the shaft (drum) or the radius (disc), and the share of the circle it covers [m]. */
function windingBand(machine: Machine): { readonly length: number; readonly width: number } {
  const { winding } = machine.stator
  if (winding.kind === 'serpentine')
    return { length: winding.runLength + 2 * winding.crownHeight, width: Number.POSITIVE_INFINITY }
  const { extent } = coilFormOf(machine, winding)
  return { length: extent.length, width: winding.coilCount * extent.width }
}

/** Section of one strand, metal and over its enamel [m²], and their diameters as if both were round [m]. */
function strandOf({ stator: { wire } }: Machine) {
  const { shape, section } = wire
  const metal = section.area
  const whole =
    shape.kind === 'round'
      ? (Math.PI * shape.outerDiameter ** 2) / 4
      : shape.outerWidth * shape.outerThickness
  const round = (area: number) => Math.sqrt((4 * area) / Math.PI)
  return {
    metal,
    whole: Math.max(whole, metal),
    diameter: round(metal),
    outer: round(Math.max(whole, metal)),
  }
}

function shadowOf(machine: Machine, farDistance: number, area: number, radius: number) {
  const beside = machine.stator.metalParts.filter(
    (part) => part.kind !== 'bolt' && part.distance >= farDistance,
  )
  if (beside.length === 0) return { shadow: 0, shadowGap: leastGap }
  const hidden = beside.reduce(
    (sum, part) => (part.kind === 'bolt' ? sum : sum + part.length * radius * part.covers),
    0,
  )
  const nearest = Math.min(...beside.map(({ distance }) => distance))
  return { shadow: Math.min(hidden / area, 1), shadowGap: Math.max(nearest - farDistance, leastGap) }
}

/** `depth` from face to face; `open` where nothing stands beyond the far face. */
export function windingPack(
  machine: Machine,
  layout: ConductorLayout,
  {
    depth,
    open,
    wound,
  }: {
    readonly depth: number
    readonly open: boolean
    readonly wound: Pick<WoundMachine, 'copperMass' | 'wireLength'>
  },
): WindingPack {
  const { stator, rotor } = machine
  const { winding, wire, support } = stator
  const { length, width } = windingBand(machine)
  const distances = layout.shapes.map(({ distance }) => distance)
  const nearDistance = Math.min(...distances) - winding.bundleDepth / 2
  const farDistance = nearDistance + depth
  const drum = rotor.arrangement === 'drum'
  const middle = winding.kind === 'coils' ? winding.centreRadius : rotor.pitchRadius
  const radiusAt = (distance: number) => (drum ? Math.max(levelAbove(machine, distance), leastGap) : middle)
  const [nearRadius, farRadius] = [radiusAt(nearDistance), radiusAt(farDistance)]
  const around = Math.PI * (nearRadius + farRadius) * length
  const band = Math.min(width * length, around)
  let footprint = 0
  let wires = 0
  let sides = 0
  for (const { shape } of layout.coils) {
    const { turnLength, turns, bundle } = layout.shapes[shape]!
    footprint += turnLength * bundle.width
    wires += turnLength * turns * wire.strands
    sides += turnLength
  }
  const area = Math.max(Math.min(footprint, band), 1e-9)
  const strand = strandOf(machine)
  const volume = area * depth
  const fill = Math.min((wires * strand.whole) / volume, mostFill)
  const metalFill = Math.min((fill * strand.metal) / strand.whole, fill)
  const { across } = windingConductivity({
    wire: coatedWireConductivity({
      conductivity: copper.thermalConductivity_W_per_mK,
      coating: enamelConductivity,
      diameter: strand.diameter,
      outer: strand.outer,
    }),
    matrix: support.cast ? support.conductivity : stillAir.conductivity,
    fill,
    metal: copper.thermalConductivity_W_per_mK,
    metalFill,
  })
  // a casting goes all round; a former reaches as far as the coils
  const supportArea = Math.max((support.cast ? around : band) - area, 0)
  const enamel = Math.max(0, wound.wireLength * wire.massPerLength - wound.copperMass)
  // strips of half-width b = A/P, P being both edges of every bundle, heated or cooled evenly: q b²/(3 k) to their edge
  const toEdge = (k: number, A: number) => (3 * k * depth * (2 * sides) ** 2) / A
  const edgeConductance = toEdge(across, area)
  const matrix = support.cast ? support.density * support.heatCapacity : stillAir.perVolume
  const matrixCapacity = Math.max(1 - fill, 0) * volume * matrix
  const copperCapacity = wound.copperMass * copper.heatCapacity_J_per_kgK + enamel * enamelHeat
  return {
    area,
    depth,
    length,
    nearRadius,
    farRadius,
    conductivity: across,
    supportArea: supportArea > leastSupport * area ? supportArea : 0,
    edgeConductance,
    sideConductance:
      supportArea > 0 ? 1 / (1 / edgeConductance + 1 / toEdge(support.conductivity, supportArea)) : 0,
    copperCapacity,
    matrixCapacity,
    // each wire in a shell of its own as wide as the fill leaves it
    matrixConductance: shellConductance({
      conductivity: support.cast ? support.conductivity : stillAir.conductivity,
      inner: strand.outer / 2,
      outer: strand.outer / 2 / Math.sqrt(fill),
      length: wires,
    }),
    shapeTime: (depth * depth * (copperCapacity + matrixCapacity)) / (Math.PI ** 2 * across * volume),
    ...(open ? shadowOf(machine, farDistance, area, farRadius) : { shadow: 0, shadowGap: leastGap }),
  }
}
