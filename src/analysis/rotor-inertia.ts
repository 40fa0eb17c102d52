/** Moment of inertia of all that turns: as measured, else estimated from blades, magnets, steel and what carries them. */
import { sectionThickness } from '../data/airfoil/thickness.ts'
import { mildSteel } from '../data/steel.ts'
import type { Iron, Machine } from '../machine/machine.ts'
import type { VerticalBlades } from '../machine/vertical-blades.ts'
import { bladeInertia, blockInertia, ringInertia } from '../physics/mechanics/inertia.ts'
import type { RotorCurve } from './blade-rotor.ts'

export interface InertiaPart {
  readonly name: string
  /** [kg] */
  readonly mass: number
  /** J about the shaft [kg·m²] */
  readonly inertia: number
  /** Half-width at 90 %, as a share. */
  readonly spread: number
}

/** One blade as its root sees it. */
export interface BladeBody {
  /** [kg] */
  readonly mass: number
  /** About the shaft [kg·m²] */
  readonly inertia: number
  /** Of its centre of mass, from the shaft [m] */
  readonly centre: number
  /** Broadside [m²] */
  readonly area: number
  readonly count: number
  /** Of the mass, half-width at 90 %, as a share. */
  readonly spread: number
}

export interface RotorInertia {
  /** J of all that turns [kg·m²]. */
  readonly inertia: number
  /** Half-width at 90 %, as a share; 0 where the document gives the number. */
  readonly spread: number
  /** What the estimate is made of; empty where the document gives the number. */
  readonly parts: readonly InertiaPart[]
}

/**
 * Density of a blade, its hollows counted: between pine and a printed shell with ribs [kg/m³]. A guess, common
 * practice, no source; 350 (foam cores, cedar) to 750 (hardwood, dense prints) holds nearly all.
 */
const bladeDensity = 550
const bladeDensitySpread = 0.4

/** Half-width of the inertia of a weighed blade, as a share: a guess, no source. */
const weighedSpread = 0.15

/** Of what carries magnets without steel: plywood to solid plastic [kg/m³]. A guess, common practice, no source. */
const carrierDensity = 1000
const carrierSpread = 0.5

/** Magnets and plates as drawn: tolerances only. */
const drawnSpread = 0.05

/** Area of a section over chord times thickness: 0.685 of the four-digit sections, by integrating their outline. */
const sectionFill = 0.685

/** Wooden and printed blades are made thicker than the thinnest sections say [m]: common practice, no source. */
const leastThickness = 2e-3

/** Of blades known by their power alone: a shape is guessed. */
const unknownShapeSpread = 0.7
const usualThickness = 0.12

/** Upright rotors have thick blades. */
const uprightThickness = 0.18

interface Shape {
  readonly bladeCount: number
  readonly station: ArrayLike<number>
  readonly chord: ArrayLike<number>
  readonly thickness: number
  readonly spread: number
}

/** The chords that a rotor of that best tip-speed ratio has at a lift coefficient of one: c = 16π R²/(9 B λ² r). */
function guessedShape(machine: Machine, curve: Pick<RotorCurve, 'best'>): Shape {
  const { blades } = machine
  const R = blades.radius
  const B = ('bladeCount' in blades ? blades.bladeCount : undefined) ?? 3
  const λ = Math.max(curve.best.tipSpeedRatio, 1)
  const station = Float64Array.from({ length: 9 }, (_, k) => R * (0.15 + (0.85 * k) / 8))
  const chord = station.map((r) => Math.min((16 * Math.PI * R * R) / (9 * B * λ * λ * r), 0.25 * R))
  return { bladeCount: B, station, chord, thickness: usualThickness, spread: unknownShapeSpread }
}

/** Half drums: sheet of the buckets and of two end plates [kg/m²]: 1.5 mm of aluminium. A guess, no source. */
const sheetDensity = 4

/** Straight blades all at the radius; arms left out, they weigh little and lie nearer. */
function verticalBlades(blades: VerticalBlades): InertiaPart {
  const { radius: R, height: H } = blades
  if (blades.kind === 'drag-rotor') {
    const mass = sheetDensity * (blades.buckets * (Math.PI / 2) * R * H + 2 * Math.PI * R * R)
    // a half circle from axis to rim has ⟨r²⟩ = R²/2, a disc as well
    return { name: 'blades', mass, inertia: (mass * R * R) / 2, spread: unknownShapeSpread }
  }
  const { bladeCount, chord, section } = blades
  const share = sectionThickness(section) ?? uprightThickness
  const thickness = Math.max(share * chord, leastThickness)
  const mass = bladeCount * bladeDensity * sectionFill * chord * thickness * H
  return { name: 'blades', mass, inertia: mass * R * R, spread: bladeDensitySpread }
}

/** A blade of a rotor across the wind; undefined for upright ones, whose blades stand at the radius. */
export function bladeBody(
  machine: Machine,
  curve: Pick<RotorCurve, 'shape' | 'best'>,
): BladeBody | undefined {
  const { blades } = machine
  if ('height' in blades) return undefined
  const shape: Shape =
    curve.shape === undefined || !('section' in blades)
      ? guessedShape(machine, curve)
      : {
          bladeCount: curve.shape.bladeCount,
          station: curve.shape.station,
          chord: curve.shape.chord,
          thickness: sectionThickness(blades.section) ?? usualThickness,
          spread: bladeDensitySpread,
        }
  const { station, chord } = shape
  const massPerLength = Array.from(
    chord,
    (c) => bladeDensity * sectionFill * c * Math.max(shape.thickness * c, leastThickness),
  )
  const one = bladeInertia({ radii: station, massPerLength })
  // a blade on the scales tells its mass; where along it the mass lies is still guessed
  const scale = blades.mass === undefined ? 1 : blades.mass / one.mass
  let area = 0
  for (let k = 1; k < station.length; k++)
    area += ((station[k]! - station[k - 1]!) * (chord[k]! + chord[k - 1]!)) / 2
  return {
    mass: scale * one.mass,
    inertia: scale * one.inertia,
    centre: one.centre,
    area,
    count: shape.bladeCount,
    spread: blades.mass === undefined ? shape.spread : weighedSpread,
  }
}

function bladesOf(machine: Machine, curve: Pick<RotorCurve, 'shape' | 'best'>): InertiaPart {
  const { blades } = machine
  if ('height' in blades) return verticalBlades(blades)
  const { mass, inertia, count, spread } = bladeBody(machine, curve)!
  return { name: 'blades', mass: count * mass, inertia: count * inertia, spread }
}

const ring = (name: string, mass: number, inner: number, outer: number, spread: number): InertiaPart => ({
  name,
  mass,
  inertia: ringInertia({ mass, inner, outer }),
  spread,
})

const steelDensity = mildSteel.density_kg_per_m3

/** Length along the radius of a disc's ring of magnets, and its bounds [m]. */
function magnetBand({ rotor }: Machine): { readonly inner: number; readonly outer: number } {
  const { magnet, pitchRadius } = rotor
  const half = rotor.arrangement === 'drum' ? magnet.thickness / 2 : magnet.length / 2
  return { inner: Math.max(0, pitchRadius - half), outer: pitchRadius + half }
}

function plateOf(name: string, machine: Machine, iron: Iron, count: number): InertiaPart {
  const band = magnetBand(machine)
  const inner = iron.innerRadius ?? 0
  const outer = Math.max(iron.outerRadius ?? band.outer, inner)
  const mass = count * steelDensity * Math.PI * (outer ** 2 - inner ** 2) * iron.thickness
  return ring(name, mass, inner, outer, drawnSpread)
}

/** A ring of steel as long as the magnets. */
function hoopOf(name: string, machine: Machine, inner: number, thickness: number): InertiaPart {
  const outer = inner + thickness
  const mass = steelDensity * Math.PI * (outer ** 2 - inner ** 2) * machine.rotor.magnet.length
  return ring(name, mass, inner, outer, drawnSpread)
}

function steelOf(machine: Machine): InertiaPart[] {
  const { rotor } = machine
  const { backIron, sleeve } = rotor
  const band = magnetBand(machine)
  if (rotor.arrangement !== 'drum')
    return backIron === undefined
      ? []
      : [plateOf('steel discs', machine, backIron, rotor.arrangement === 'two-discs' ? 2 : 1)]
  const parts: InertiaPart[] = []
  const outside = rotor.windingSide === 'outside'
  if (backIron !== undefined) {
    const inner = outside ? Math.max(0, band.inner - backIron.thickness) : band.outer
    parts.push(hoopOf('steel ring', machine, inner, backIron.thickness))
  }
  if (sleeve?.turns) {
    const inner = outside
      ? band.outer + sleeve.distance
      : Math.max(0, band.inner - sleeve.distance - sleeve.thickness)
    parts.push(hoopOf('steel sleeve', machine, inner, sleeve.thickness))
  }
  return parts
}

/** What carries the magnets where no steel does: a disc, or a drum's core, as thick as the magnets' retention asks. */
function carrierOf(machine: Machine): InertiaPart[] {
  const { rotor } = machine
  const band = magnetBand(machine)
  const reach = band.outer + rotor.retention.wall
  const drum = rotor.arrangement === 'drum'
  if (rotor.backIron !== undefined) return []
  const count = rotor.arrangement === 'two-discs' ? 2 : 1
  // a drum's core is a shell: the web that carries it weighs little at a small radius
  const inner = drum ? 0.6 * band.inner : 0
  const thickness = drum ? rotor.magnet.length : 2 * rotor.magnet.thickness
  const outer = drum && rotor.windingSide === 'outside' ? band.inner : reach
  const mass = count * carrierDensity * Math.PI * Math.max(0, outer ** 2 - inner ** 2) * thickness
  return [ring('magnet carrier', mass, inner, Math.max(outer, inner), carrierSpread)]
}

/** All that turns, part by part; shaft and hub are left out: they lie near the axis. A plain plate that faces a single disc is taken to stand still. */
export function turningParts(machine: Machine, curve: Pick<RotorCurve, 'shape' | 'best'>): InertiaPart[] {
  const { rotor } = machine
  const { magnet } = rotor
  const count = rotor.rings.reduce((sum, places) => sum + places.length, 0) * rotor.piecesPerPole
  const one = magnet.density * magnet.volume
  const across = rotor.arrangement === 'drum' ? magnet.thickness : magnet.length
  return [
    bladesOf(machine, curve),
    {
      name: 'magnets',
      mass: count * one,
      inertia:
        count * blockInertia({ mass: one, length: across, width: magnet.width, radius: rotor.pitchRadius }),
      spread: drawnSpread,
    },
    ...steelOf(machine),
    ...carrierOf(machine),
  ]
}

/** As the document gives it, else from the parts. */
export function rotorInertia(machine: Machine, curve: Pick<RotorCurve, 'shape' | 'best'>): RotorInertia {
  const { shaft } = machine
  if (shaft.inertia !== undefined) return { inertia: shaft.inertia, spread: 0, parts: [] }
  const parts = turningParts(machine, curve)
  const inertia = parts.reduce((sum, part) => sum + part.inertia, 0)
  const spread = inertia > 0 ? Math.hypot(...parts.map((part) => part.inertia * part.spread)) / inertia : 0
  return { inertia, spread, parts }
}
