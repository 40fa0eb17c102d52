/** A whole machine from what a maker has and a few free choices: every other size follows by rules of the workshop. */
import { batteryChemistries } from '../data/battery.ts'
import type { Stock } from '../machine/stock.ts'
import { nearestGoodCounts } from '../physics/winding/star-of-slots.ts'
import { nominal } from '../units/quantity.ts'

export type SketchKind = 'drum, coils' | 'drum, serpentine' | 'disc, coils' | 'two discs, coils'

/** The free choices of one kind of machine. */
export interface Sketch {
  readonly kind: SketchKind
  /** Depth of the bundle, of each phase of a serpentine [mm]. */
  readonly depth_mm: number
  readonly strands: number
  /** Turns over those that fill the bundle. */
  readonly filled: number
  readonly connection: 'star' | 'delta'
  /** Of the blades [m]. */
  readonly diameter_m: number
  /** Where the mechanical limiter acts [m/s]; unused without one. */
  readonly limiter_m_per_s: number
}

/** What is sized when it is known what flows. */
export interface Fittings {
  readonly wall_mm: number
  readonly cable_mm2: number
  readonly diode: string
  /** Repetitive peak reverse volts of a diode, and direct volts that the switch may open [V]. */
  readonly reverse_V: number
  readonly switch_V: number
  readonly fuse_A: number
  /** Power that the dump load must take [W]. */
  readonly dump_W: number
}

/** Pole pitch over the width of the magnet, air in a printed or cast gap, plastic over the faces: common practice, no source. */
const pitchRatio = { drum: 1.55, disc: 1.7 } as const
const clearance_mm = 2
const discCover_mm = 0.6

/** On a drum the band that holds the magnets is the cover over their faces. */
const coverOf = (kind: SketchKind, { wall_mm }: Fittings): number =>
  kind.startsWith('drum') ? wall_mm : discCover_mm

/** Round hundredths: what a workshop document says. */
const hundredths = (value: number): number => Math.round(value * 100) / 100

interface Faces {
  readonly length_mm: number
  readonly width_mm: number
  readonly thickness_mm: number
}

function facesOf({ magnet }: Stock): Faces {
  const thickness_mm = nominal(magnet.thickness_mm)
  if (magnet.shape === 'disc') {
    const diameter = nominal(magnet.diameter_mm)
    return { length_mm: diameter, width_mm: diameter, thickness_mm }
  }
  const [width_mm, length_mm] = [nominal(magnet.length_mm), nominal(magnet.width_mm)].sort((a, b) => a - b)
  return { length_mm: length_mm!, width_mm: width_mm!, thickness_mm }
}

/** Poles of one ring: the magnets at hand, an even number, by twos that three phases go with. */
export function poleCountOf({ magnetCount }: Stock, kind: SketchKind): number {
  const rings = kind === 'two discs, coils' ? 2 : 1
  const most = 2 * Math.floor(magnetCount / rings / 2)
  // multiples of four and of twelve poles let three coils stand over four magnets
  return most >= 4 ? most - (most % 4) : most
}

/** Coils for three phases: the count nearest to three for four poles that balances. */
export function coilCountOf(poleCount: number): number | undefined {
  const wanted = (3 * poleCount) / 4
  const { samePoles } = nearestGoodCounts({ coils: Math.round(wanted), polePairs: poleCount / 2 })
  return [...samePoles].sort((a, b) => Math.abs(a.coils - wanted) - Math.abs(b.coils - wanted))[0]?.coils
}

interface Place {
  readonly pitchRadius_mm: number
  readonly poleCount: number
}

function placeOf(stock: Stock, kind: SketchKind): Place {
  const { length_mm, width_mm } = facesOf(stock)
  const poleCount = poleCountOf(stock, kind)
  const drum = kind.startsWith('drum')
  const byPitch = (poleCount * width_mm * (drum ? pitchRatio.drum : pitchRatio.disc)) / (2 * Math.PI)
  // on a disc the inner corners come closest; a hub must go inside
  const byCorners = (poleCount * (width_mm + 2)) / (2 * Math.PI) + length_mm / 2
  return {
    poleCount,
    pitchRadius_mm: Math.ceil(drum ? byPitch : Math.max(byPitch, byCorners, length_mm / 2 + 20)),
  }
}

/** Outer diameter of the biggest round part [mm]: what a printer's bed must hold. */
export function greatestPart(stock: Stock, { kind, depth_mm }: Sketch): number {
  const { length_mm, thickness_mm } = facesOf(stock)
  const { pitchRadius_mm } = placeOf(stock, kind)
  const layers = kind === 'drum, serpentine' ? 3 : 1
  return kind.startsWith('drum')
    ? 2 * (pitchRadius_mm + thickness_mm / 2 + clearance_mm + layers * depth_mm + 6)
    : 2 * (pitchRadius_mm + length_mm / 2 + 12)
}

function rotorOf(stock: Stock, sketch: Sketch, fittings: Fittings, place: Place, faceDistance_mm: number) {
  const { wall_mm } = fittings
  const { length_mm, width_mm, thickness_mm } = facesOf(stock)
  const magnet =
    stock.magnet.shape === 'disc'
      ? { shape: 'disc', diameter_mm: width_mm, thickness_mm, grade: stock.grade }
      : { shape: 'block', length_mm, width_mm, thickness_mm, grade: stock.grade }
  const retention = sketch.kind.startsWith('drum')
    ? { kind: 'band', wall_mm, material: 'glass fibre in epoxy' }
    : { kind: 'pocket', wall_mm, material: 'ASA' }
  const common = { ...place, magnet, cover_mm: coverOf(sketch.kind, fittings), retention }
  const plate_mm = Math.max(5, Math.ceil(0.8 * thickness_mm))
  const backIron = { kind: stock.steelPlates ? 'steel' : 'none', thickness_mm: plate_mm }
  if (sketch.kind === 'disc, coils')
    return {
      arrangement: 'disc',
      ...common,
      backIron,
      ...(stock.steelPlates ? { opposite: { kind: 'steel', faceDistance_mm, thickness_mm: plate_mm } } : {}),
    }
  if (sketch.kind === 'two discs, coils')
    return { arrangement: 'two-discs', ...common, backIron, faceDistance_mm }
  return { arrangement: 'drum', windingSide: 'outside', ...common }
}

interface CoilSizes {
  readonly leg_mm: number
  /** Hole at its inner and its outer end [mm]; alike on a drum. */
  readonly inner_mm: number
  readonly outer_mm: number
}

/** Share of the circle that coils may fill, and the narrowest hole of a wedge [mm]: common practice, no source. */
const filledCircle = 0.97
const leastHole_mm = 3

/** Side by side on a drum: half of the room is hole at the most, and no more than the magnet. */
function drumCoil(radius_mm: number, coilCount: number, width_mm: number): CoilSizes {
  const room = (filledCircle * 2 * Math.PI * radius_mm) / coilCount
  const hole = Math.max(leastHole_mm, Math.min(0.85 * width_mm, 0.5 * room))
  return { leg_mm: hundredths((room - hole) / 2), inner_mm: hundredths(hole), outer_mm: hundredths(hole) }
}

/** On a disc neighbours touch along their whole length; the inner ends, legs included, have the least room. */
function discCoil(radius_mm: number, coilCount: number, length_mm: number): CoilSizes {
  const perRadius = (filledCircle * 2 * Math.PI) / coilCount
  const innermost = radius_mm - length_mm / 2
  const inner = Math.max(leastHole_mm, 0.3 * perRadius * innermost)
  const leg = (perRadius * innermost - inner) / (2 + perRadius)
  const outer = perRadius * (radius_mm + length_mm / 2) - 2 * leg
  return {
    leg_mm: hundredths(leg),
    inner_mm: hundredths(inner),
    outer_mm: hundredths(Math.max(inner, outer)),
  }
}

/** Section that one bundle may fill [mm]. */
export interface BundleSize {
  readonly width_mm: number
  readonly depth_mm: number
}

interface Wound {
  readonly winding: Readonly<Record<string, unknown>>
  readonly bundle: BundleSize
  /** From the magnets' faces to the faces beyond [mm]. */
  readonly faceDistance_mm: number
}

function windingOf(
  stock: Stock,
  { kind, depth_mm }: Sketch,
  fittings: Fittings,
  place: Place,
  turns: number,
): Wound | undefined {
  const cover_mm = coverOf(kind, fittings)
  const { length_mm, width_mm, thickness_mm } = facesOf(stock)
  const { pitchRadius_mm, poleCount } = place
  const face = pitchRadius_mm + thickness_mm / 2
  // corners of flat magnets stand out beyond the middle of their faces on a drum
  const corner = kind.startsWith('drum') ? Math.hypot(face, width_mm / 2) - face : 0
  const first_mm = hundredths(Math.max(cover_mm, corner) + clearance_mm + depth_mm / 2)
  if (kind === 'drum, serpentine') {
    const step_deg = 360 / (3 * poleCount)
    const pitch_mm = (2 * Math.PI * (face + first_mm - depth_mm / 2)) / poleCount
    const width = hundredths(0.3 * pitch_mm)
    return {
      winding: {
        kind: 'serpentine',
        turns,
        runLength_mm: length_mm,
        crownHeight_mm: Math.max(6, Math.ceil(0.45 * pitch_mm)),
        bundleWidth_mm: width,
        bundleDepth_mm: depth_mm,
        phases: [0, 1, 2].map((k) => ({
          offset_deg: Math.round(2e6 * k * step_deg) / 1e6,
          distance_mm: hundredths(first_mm + k * (depth_mm + 0.1)),
        })),
      },
      bundle: { width_mm: width, depth_mm },
      faceDistance_mm: 0,
    }
  }
  const coilCount = coilCountOf(poleCount)
  if (coilCount === undefined) return undefined
  const sizes = kind.startsWith('drum')
    ? drumCoil(face + first_mm - depth_mm / 2, coilCount, width_mm)
    : discCoil(pitchRadius_mm, coilCount, length_mm)
  const { leg_mm, inner_mm, outer_mm } = sizes
  if (leg_mm < 1) return undefined
  const hole = kind.startsWith('drum')
    ? { shape: 'rectangular', holeWidth_mm: inner_mm, holeLength_mm: length_mm, cornerRadius_mm: 1 }
    : {
        shape: 'wedge',
        holeInnerWidth_mm: inner_mm,
        holeOuterWidth_mm: outer_mm,
        holeLength_mm: length_mm,
        cornerRadius_mm: 1,
      }
  const beyond = cover_mm + clearance_mm
  return {
    winding: {
      kind: 'coils',
      coilCount,
      phaseCount: 3,
      turns,
      hole,
      legWidth_mm: leg_mm,
      bundleDepth_mm: depth_mm,
      distance_mm: first_mm,
    },
    bundle: { width_mm: leg_mm, depth_mm },
    faceDistance_mm: hundredths(
      first_mm + depth_mm / 2 + (kind === 'two discs, coils' ? beyond : clearance_mm),
    ),
  }
}

/** A battery at rest between half and full, its resistance after its size. */
function loadOf({ store }: Stock): Readonly<Record<string, unknown>> {
  if (store.kind === 'resistor') return { kind: 'resistor', resistance_ohm: nominal(store.resistance_ohm) }
  const cell = batteryChemistries.find(({ name }) => name === store.chemistry)!
  const cells = Math.round(nominal(store.label_V) / cell.nominal_V_per_cell)
  const capacity_Ah = nominal(store.capacity_Ah ?? 50)
  const rest = (cells * (cell.restHalf_V_per_cell + cell.restFull_V_per_cell)) / 2
  return {
    kind: 'battery',
    chemistry: store.chemistry,
    voltage_V: hundredths(rest),
    resistance_mohm: hundredths((1000 * cells * cell.internalResistance_ohm_Ah_per_cell) / capacity_Ah),
    capacity_Ah: { value: capacity_Ah, known: store.capacity_Ah === undefined ? 'guessed' : 'label' },
  }
}

/** End of charge of the battery [V]; undefined for another load. */
function chargeVolts({ store }: Stock): { on_V: number; off_V: number } | undefined {
  if (store.kind !== 'battery') return undefined
  const cell = batteryChemistries.find(({ name }) => name === store.chemistry)!
  const cells = Math.round(nominal(store.label_V) / cell.nominal_V_per_cell)
  return {
    on_V: hundredths(cells * cell.charge_V_per_cell),
    off_V: hundredths(cells * Math.max(cell.float_V_per_cell, cell.restFull_V_per_cell + 0.02)),
  }
}

function supplyOf(stock: Stock, sketch: Sketch, { fuse_A, dump_W, switch_V }: Fittings) {
  const outdoor = stock.class === 'outdoor'
  const charge = chargeVolts(stock)
  const dump = charge && {
    resistance_ohm: hundredths(charge.on_V ** 2 / dump_W),
    power_W: Math.ceil(2 * dump_W),
    ...charge,
    place: 'behind the bridge',
    withoutPower: 'on',
    ownFuse: true,
  }
  return {
    protection: outdoor
      ? {
          mechanical: 'furling tail',
          actsAt_m_per_s: sketch.limiter_m_per_s,
          ...(dump ? { electrical: 'dump load', dump } : { electrical: 'none' }),
        }
      : {},
    ...(charge
      ? {
          wiring: {
            fuse_A,
            fusePlace: 'near the battery',
            switchKind: 'for direct current',
            switchVoltage_V: switch_V,
          },
        }
      : {}),
  }
}

/** As it was told, a bare number as the guess that it is. */
const guessedWind = ({ meanWind_m_per_s }: Stock): object =>
  typeof meanWind_m_per_s === 'number' ? { value: meanWind_m_per_s, known: 'guessed' } : meanWind_m_per_s

/** The document, as JSON; undefined where no such machine can be drawn from the stock. */
export function sketchDocument(
  stock: Stock,
  sketch: Sketch,
  fittings: Fittings,
  turns: number,
): { readonly document: object; readonly bundle: BundleSize } | undefined {
  const place = placeOf(stock, sketch.kind)
  if (place.poleCount < 4) return undefined
  const wound = windingOf(stock, sketch, fittings, place, turns)
  if (wound === undefined) return undefined
  const outdoor = stock.class === 'outdoor'
  const wind = nominal(stock.meanWind_m_per_s)
  const reel = stock.wire.reelMass_g
  const document = {
    gustloom: 2,
    name: `First machine: ${sketch.kind}`,
    note: 'Drawn up from what is at hand. Every size is a proposal: measure the magnets, the wire and the wind, and enter what you find.',
    purpose: { class: stock.class, ...stock.wish },
    site: {
      meanWind_m_per_s: guessedWind(stock),
      measuredHeight_m: outdoor ? 8 : 1,
      hubHeight_m: outdoor ? 8 : 1,
      ...(outdoor ? {} : { weibullShape: 6 }),
      ambient_degC: outdoor ? 10 : 20,
      stormWind_m_per_s: outdoor ? 25 : Math.min(25, Math.ceil(1.6 * wind)),
    },
    blades: {
      kind: 'optimum',
      diameter_m: sketch.diameter_m,
      bladeCount: 3,
      hubDiameter_mm: Math.max(30, Math.round(140 * sketch.diameter_m)),
      section: sketch.diameter_m < 0.7 ? 'NACA 6409' : 'SD2030',
      tipSpeedRatio: sketch.diameter_m < 0.7 ? 4 : 5,
    },
    ...supplyOf(stock, sketch, fittings),
    rotor: rotorOf(stock, sketch, fittings, place, wound.faceDistance_mm),
    stator: {
      winding: wound.winding,
      wire: {
        ...stock.wire,
        strands: sketch.strands,
        ...(reel === undefined ? {} : { reelMass_g: nominal(reel) }),
      },
      connection: sketch.connection,
      leadLength_m: 0.6,
      jointResistance_mohm: 20,
      support: sketch.kind.startsWith('drum') ? 'ASA' : 'vinyl ester',
    },
    cable: { length_m: outdoor ? 15 : 1, area_mm2: fittings.cable_mm2 },
    bridge: { diode: fittings.diode, reverseVoltage_V: fittings.reverse_V },
    load: loadOf(stock),
  }
  return { document, bundle: wound.bundle }
}
