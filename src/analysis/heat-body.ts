/** The machine as nodes and ways of heat: winding, its covers, the air on both sides, magnets, steel, outer faces. */
import { conductors } from '../data/conductor.ts'
import { magnetGrades, magnetMaterials } from '../data/magnet-grade.ts'
import { plastics } from '../data/plastic.ts'
import { mildSteel } from '../data/steel.ts'
import type { Iron, Machine, MetalPart } from '../machine/machine.ts'
import { slabConductance } from '../physics/heat/conduction.ts'
import { radiationExchangeFactor } from '../physics/heat/radiation.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { type AirMotion, type Correlation, type Film, leastGap, siteFilms } from './heat-film.ts'
import { type HeatBody, type HeatLink, type HeatNode, openAir } from './heat-net.ts'
import { type WindingPack, windingPack } from './heat-pack.ts'
import { drawnGap } from './mechanics/drawn-gap.ts'
import type { WoundMachine } from './winding.ts'

/** Printed, cast, varnished and painted surfaces: common practice, no source. */
const emissivity = 0.9

/** Thickness of resin or plastic over the copper on each face [m]: common practice, no source. */
export const coverThickness = 1e-3

/** Glue between a magnet and what carries it, per area [m²·K/W]: 0.2 mm of 0.2 W/(m·K), common practice, no source. */
const glueLayer = 1e-3

/** Specific heat of plain steel [J/(kg·K)]: from memory, not opened. */
const steelHeat = 480

const between = radiationExchangeFactor({ first: emissivity, second: emissivity })

/** Collects nodes and links by name. */
function builder(ambient: number) {
  const nodes: HeatNode[] = []
  const links: HeatLink[] = []
  return {
    node: (key: string, name: string, capacity: number): number =>
      nodes.push({ key, name, capacity: Math.max(capacity, 0) }) - 1,
    solid: (from: number, to: number, conductance: number) => {
      links.push({ kind: 'solid', from, to, conductance })
    },
    film: (
      from: number,
      to: number,
      { area, film, shine = 0, series = 0 }: { area: number; film: Film; shine?: number; series?: number },
    ) => {
      if (area > 0) links.push({ kind: 'film', from, to, area, film, emissivity: shine, series })
    },
    flow: (from: number, conductance: (motion: AirMotion) => number) => {
      links.push({ kind: 'flow', from, to: openAir, conductance })
    },
    body: (): HeatBody => ({ nodes, links, ambient }),
  }
}

type Builder = ReturnType<typeof builder>

const bare: Film = { free: undefined, forced: [] }

const isUpright = ({ blades }: Machine): boolean =>
  blades.kind === 'straight-blade' || blades.kind === 'drag-rotor'

/** What stands on one side of the winding. */
type Side =
  | { readonly kind: 'open' }
  | { readonly kind: 'magnets'; readonly gap: number }
  | { readonly kind: 'steel'; readonly gap: number; readonly iron: Iron; readonly turns: boolean }

interface Place {
  readonly machine: Machine
  readonly pack: WindingPack
  readonly films: ReturnType<typeof siteFilms>
  readonly net: Builder
}

/** Both sides of the winding: the one towards the (lower) magnets and the one away from them. */
function sidesOf(machine: Machine): readonly [near: Side, far: Side] {
  const { rotor } = machine
  const drawn = drawnGap(machine)
  const air = (gap: number) => Math.max(gap - coverThickness, leastGap)
  const near: Side = { kind: 'magnets', gap: air(drawn.inner) }
  if (rotor.arrangement === 'two-discs') return [near, { kind: 'magnets', gap: air(drawn.outer ?? 0) }]
  if (rotor.opposite !== undefined && drawn.outer !== undefined)
    return [near, { kind: 'steel', gap: air(drawn.outer), iron: rotor.opposite, turns: false }]
  if (rotor.sleeve !== undefined) {
    const { sleeve } = rotor
    const reach = drawn.inner + Math.max(rotor.cover, 0)
    const gap = sleeve.distance - reach - packDepth(machine)
    return [near, { kind: 'steel', gap: air(gap), iron: sleeve, turns: sleeve.turns }]
  }
  return [near, { kind: 'open' }]
}

/** From the face nearest to the magnets to the one farthest from them [m]. */
function packDepth(machine: Machine): number {
  const { winding } = machine.stator
  if (winding.kind === 'coils') return winding.bundleDepth
  const distances = winding.phases.map(({ distance }) => distance)
  return (
    Math.max(...distances) -
    Math.min(...distances) +
    (winding.layers - 1) * winding.layerPitch +
    winding.bundleDepth
  )
}

/** The disc's rim and the hole in its ring of magnets, or the drum's radii behind the magnets [m]. */
function rotorSize({ rotor }: Machine) {
  const { magnet, pitchRadius, backIron } = rotor
  const rim = pitchRadius + magnet.length / 2
  return {
    rim: Math.max(backIron?.outerRadius ?? rim, rim),
    hole: Math.max(pitchRadius - magnet.length / 2, 0),
    length: magnet.length,
  }
}

/** A face in the open air and wind: of a drum round the shaft, or standing across it. */
function outerFilm(
  { machine, films }: Place,
  { radius, length, turns }: { readonly radius: number; readonly length: number; readonly turns: boolean },
): Film {
  const drum = machine.rotor.arrangement === 'drum'
  const upright = isUpright(machine)
  const diameter = 2 * radius
  if (drum)
    return {
      free: upright ? films.wall(length) : films.lyingCylinder(diameter),
      forced: [
        upright ? films.windAcross(diameter) : films.windAlong(length),
        ...(turns ? [films.turningCylinder(diameter)] : []),
      ],
    }
  return {
    // the lying discs of an upright shaft: the worse of their two faces
    free: upright ? films.underside(radius / 2) : films.wall(diameter),
    forced: [films.windAlong(upright ? diameter : radius), ...(turns ? [films.disc(radius)] : [])],
  }
}

/** Faces towards the middle of a gap: still layers, stirred where something turns. */
function gapFilm({ machine, films, pack }: Place, { gap }: { readonly gap: number }, stirred: boolean): Film {
  const free = films.stillGap(gap)
  const forced: Correlation<AirMotion>[] = []
  if (machine.rotor.arrangement !== 'drum') {
    if (stirred) forced.push(films.disc(rotorSize(machine).rim))
  } else if (stirred && machine.rotor.windingSide === 'outside')
    // vortices form only where the inner wall turns
    forced.push(films.vortices(Math.max(pack.nearRadius - gap, gap), gap))
  return { free, forced }
}

function magnetNodes(place: Place, ring: number, names: { readonly key: string; readonly name: string }) {
  const { machine, net } = place
  const { rotor } = machine
  const { magnet, backIron, carrier } = rotor
  const family = magnetGrades.find(({ name }) => name === magnet.grade)?.family ?? 'neodymium'
  const { heatCapacity_J_per_kgK } = magnetMaterials.find((each) => each.family === family)!
  const present = rotor.rings[ring]?.filter(({ strength }) => strength > 0).length ?? rotor.poleCount
  const node = net.node(
    names.key,
    names.name,
    present * magnet.volume * magnet.density * heatCapacity_J_per_kgK,
  )
  const drum = rotor.arrangement === 'drum'
  const { rim, hole, length } = rotorSize(machine)
  const outward = rotor.windingSide === 'outside' ? -1 : 1
  const thickness = backIron?.thickness ?? carrier?.thickness ?? 0
  const backRadius = drum
    ? Math.max(rotor.pitchRadius + outward * (magnet.thickness / 2 + thickness), 1e-3)
    : rim
  const back = drum ? 2 * Math.PI * backRadius * length : Math.PI * rim * rim
  const ringArea = drum ? 2 * Math.PI * rotor.pitchRadius * length : Math.PI * (rim * rim - hole * hole)
  let from = node
  let series = 0
  if (backIron !== undefined) {
    from = net.node(
      names.key === 'magnets' ? 'backIron' : 'farBackIron',
      names.key === 'magnets' ? 'steel behind the magnets' : 'steel behind the farther magnets',
      (drum ? ringArea : back) * backIron.thickness * mildSteel.density_kg_per_m3 * steelHeat,
    )
    net.solid(node, from, ringArea / glueLayer)
  } else if (carrier !== undefined) {
    const plastic = plastics.find(({ name }) => name === carrier.material)
    series = carrier.thickness / (plastic?.thermalConductivity_W_per_mK ?? 0.2)
  }
  net.film(from, openAir, {
    area: backIron === undefined && !drum ? ringArea : back,
    film: outerFilm(place, { radius: backRadius, length, turns: true }),
    shine: emissivity,
    series,
  })
  return { node, area: drum ? ringArea : Math.PI * (rim * rim - hole * hole) }
}

function steelNode(place: Place, { iron, turns }: Extract<Side, { kind: 'steel' }>, farRadius: number) {
  const { machine, net } = place
  const drum = machine.rotor.arrangement === 'drum'
  const { rim, hole, length } = rotorSize(machine)
  const outer = Math.max(iron.outerRadius ?? rim, 1e-3)
  const area = drum
    ? 2 * Math.PI * farRadius * length
    : Math.PI * (outer ** 2 - (iron.innerRadius ?? hole) ** 2)
  const node = net.node(
    'opposite',
    drum ? 'steel sleeve' : 'steel plate opposite',
    area * iron.thickness * mildSteel.density_kg_per_m3 * steelHeat,
  )
  net.film(node, openAir, {
    area,
    film: outerFilm(place, { radius: drum ? farRadius + iron.thickness : outer, length, turns }),
    shine: emissivity,
  })
  return { node, area }
}

/** Air of one side, what lies beyond it, and how the winding's cover and the casting meet it. */
function buildSide(
  place: Place,
  side: Side,
  which: 'near' | 'far',
  cover: number,
  support: number | undefined,
) {
  const { machine, pack, net, films } = place
  const area = pack.area
  const halfCasting = pack.depth / (6 * machine.stator.support.conductivity)
  const radius = which === 'near' ? pack.nearRadius : pack.farRadius
  if (side.kind === 'open') {
    const film = outerFilm(place, { radius, length: pack.length, turns: false })
    net.film(cover, openAir, { area: area * (1 - pack.shadow), film, shine: emissivity })
    if (support !== undefined)
      net.film(support, openAir, { area: pack.supportArea, film, shine: emissivity, series: halfCasting })
    return
  }
  const air = net.node(
    `${which}Air`,
    which === 'near' ? 'air between winding and magnets' : 'air beyond the winding',
    0,
  )
  const beyond =
    side.kind === 'magnets'
      ? magnetNodes(place, which === 'near' ? 0 : 1, {
          key: which === 'near' ? 'magnets' : 'farMagnets',
          name: which === 'near' ? 'magnets' : 'magnets of the farther disc',
        })
      : steelNode(place, side, radius + side.gap)
  const stirred = side.kind === 'magnets' || side.turns
  const film = gapFilm(place, side, stirred)
  net.film(cover, air, { area, film })
  if (support !== undefined) net.film(support, air, { area: pack.supportArea, film, series: halfCasting })
  net.film(beyond.node, air, { area: beyond.area, film, series: 0 })
  net.film(cover, beyond.node, { area: Math.min(area, beyond.area), film: bare, shine: between })
  if (machine.rotor.arrangement !== 'drum' && stirred)
    net.flow(air, films.drawnThrough(rotorSize(machine).rim))
}

const partVolume = (part: MetalPart, radius: number): number =>
  part.kind === 'bolt'
    ? (part.count * Math.PI * part.diameter ** 2 * part.length) / 4
    : part.thickness * part.length * radius * part.covers

const partArea = (part: MetalPart, radius: number): number =>
  part.kind === 'bolt'
    ? part.count * Math.PI * part.diameter * part.length
    : 2 * part.length * radius * part.covers

/** Metal that stands near the magnets: warm by its own currents, cooled on its own faces, near the winding perhaps. */
function metalNode(place: Place, farCover: number): void {
  const { machine, net, pack, films } = place
  const { metalParts } = machine.stator
  if (metalParts.length === 0) return
  const radius = pack.farRadius
  const capacity = metalParts.reduce((sum, part) => {
    const row = conductors.find(({ name }) => name === part.material)
    const perVolume = (row?.density_kg_per_m3 ?? 7850) * (row?.heatCapacity_J_per_kgK ?? steelHeat)
    return sum + partVolume(part, radius) * perVolume
  }, 0)
  const node = net.node('metal', 'metal near the magnets', capacity)
  const longest = Math.max(...metalParts.map(({ length }) => length))
  net.film(node, openAir, {
    area: metalParts.reduce((sum, part) => sum + partArea(part, radius), 0),
    film: { free: films.wall(longest), forced: [films.windAlong(longest)] },
    shine: emissivity,
  })
  if (pack.shadow > 0)
    net.film(farCover, node, {
      area: pack.area * pack.shadow,
      film: { free: films.stillGap(2 * pack.shadowGap), forced: [] },
      shine: between,
    })
}

/** The bodies and ways of heat of a machine, and the winding as they see it. */
export function heatBody(
  machine: Machine,
  layout: ConductorLayout,
  wound: Pick<WoundMachine, 'copperMass' | 'wireLength'>,
): { readonly body: HeatBody; readonly pack: WindingPack } {
  const { support } = machine.stator
  const sides = sidesOf(machine)
  const pack = windingPack(machine, layout, {
    depth: packDepth(machine),
    open: sides[1].kind === 'open',
    wound,
  })
  const net = builder(machine.site.ambient)
  const place: Place = { machine, pack, net, films: siteFilms(machine) }
  const copper = net.node('copper', 'copper', pack.copperCapacity)
  const perVolume = support.density * support.heatCapacity
  const coverHeat = pack.area * coverThickness * perVolume
  const faces = [
    net.node('nearPack', 'winding’s face to the magnets', 0),
    net.node('farPack', 'winding’s other face', 0),
  ] as const
  const covers = [
    net.node('nearCover', `${support.name} over the winding, to the magnets`, coverHeat),
    net.node('farCover', `${support.name} over the winding, other side`, coverHeat),
  ] as const
  // air between dry wires holds nothing
  if (support.cast) {
    const matrix = net.node('matrix', `${support.name} between the wires`, pack.matrixCapacity)
    net.solid(copper, matrix, pack.matrixConductance)
  }
  const slab = (pack.conductivity * pack.area) / pack.depth
  // a slab heated evenly: its mean and its two faces, exact as a triangle whose third side is below zero
  for (const face of faces) net.solid(copper, face, 6 * slab)
  net.solid(faces[0], faces[1], -2 * slab)
  const through = slabConductance({
    conductivity: support.conductivity,
    area: pack.area,
    thickness: coverThickness,
  })
  for (const k of [0, 1] as const) net.solid(faces[k], covers[k], through)
  const casting =
    pack.supportArea > 0
      ? net.node('support', `${support.name} beside the winding`, pack.supportArea * pack.depth * perVolume)
      : undefined
  if (casting !== undefined) net.solid(copper, casting, pack.sideConductance)
  buildSide(place, sides[0], 'near', covers[0], casting)
  buildSide(place, sides[1], 'far', covers[1], casting)
  metalNode(place, covers[1])
  return { body: net.body(), pack }
}
