/** The windings of the finite elements beside this file: their packs, and what is handed over at their faces. */
import { conductorLayout } from '../../../src/analysis/conductor-layout.ts'
import { copperNode } from '../../../src/analysis/copper-node.ts'
import { coverThickness } from '../../../src/analysis/heat-body.ts'
import { type HeatBody, type HeatLink, openAir } from '../../../src/analysis/heat-net.ts'
import { machineHeat } from '../../../src/analysis/machine-heat.ts'
import { woundMachine } from '../../../src/analysis/winding.ts'
import { resolveDesign } from '../../../src/machine/resolve.ts'
import { designOf } from '../../example.ts'
import { type FixedName, fixedDocument } from '../../fixed-document.ts'

/** At a face: film to the air of the gap, what shines to the magnets before the pack [W/(m²·K)]; both warmths [K]. */
export interface Face {
  readonly film: number
  readonly air: number
  readonly shine: number
  readonly metal: number
  readonly castingFilm: number
}

export const windings = {
  'coils between two discs': { document: 'twoDiscs', copper: 60, speed: 40, wind: 8 },
  'coils before one disc': { document: 'disc', copper: 2, speed: 60, wind: 5 },
  'drum in the open': { document: 'drum', copper: 6, speed: 60, wind: 6 },
} as const satisfies Readonly<
  Record<
    string,
    {
      readonly document: FixedName
      readonly copper: number
      readonly speed: number
      readonly wind: number
    }
  >
>
export type WindingName = keyof typeof windings

export function winding(name: WindingName) {
  const { document, copper, speed, wind } = windings[name]
  const machine = resolveDesign(designOf(fixedDocument(document)))
  const layout = conductorLayout(machine)
  const heat = machineHeat(machine, {
    layout,
    wound: woundMachine(machine, layout),
    working: { speed, wind },
  })
  return { machine, layout, heat, copper, motion: { speed, wind } }
}
export type Winding = ReturnType<typeof winding>

/** What the whole net says of a face, in four digits: the elements and the conduction net are both given this. */
export function faceOf({ heat, copper, motion }: Winding, which: 'near' | 'far'): Face {
  const { body, net, pack } = heat
  const state = { ...motion, sources: heat.sources({ copper, metal: 0 }) }
  const rises = new Float64Array(body.nodes.length)
  net.settle(state, rises)
  const flows = net.flows(state, rises)
  const warmth = (node: number) => (node === openAir ? 0 : rises[node]!)
  const key = (node: number) => (node === openAir ? 'open' : body.nodes[node]!.key)
  const four = (x: number) => Number(x.toPrecision(4))
  const face = { film: 0, air: 0, shine: 0, metal: 0, castingFilm: 0 }
  body.links.forEach((link, l) => {
    if (link.kind !== 'film') return
    const { from, to, area, series } = link
    const perArea = flows[l]! / (rises[from]! - warmth(to)) / area
    const toAir = key(to) === `${which}Air` || (which === 'far' && key(to) === 'open')
    if (key(from) === `${which}Cover` && toAir)
      Object.assign(face, { film: four(perArea), air: four(warmth(to)) })
    else if (key(from) === `${which}Cover`)
      Object.assign(face, { shine: four((perArea * area) / pack.area), metal: four(warmth(to)) })
    else if (key(from) === 'support' && toAir) face.castingFilm = four(1 / (1 / perArea - series))
  })
  return face
}

/**
 * The net without air, magnets and steel: its films are the given ones, and their far ends as warm as given. A ring of
 * elements has no place for the little support between the runs of a drum, so that the net goes without it as well.
 */
export function conductionNet({ heat, machine }: Winding, faces: Readonly<Record<'near' | 'far', Face>>) {
  const { body, pack } = heat
  const drum = machine.rotor.arrangement === 'drum'
  const solids = [
    'copper',
    'matrix',
    'nearPack',
    'farPack',
    'nearCover',
    'farCover',
    ...(drum ? [] : ['support']),
  ]
  const kept = body.nodes.filter(({ key }) => solids.includes(key))
  const place = (node: number) => kept.indexOf(body.nodes[node]!)
  const at = (key: string) => kept.findIndex((node) => node.key === key)
  const links: HeatLink[] = body.links.flatMap((link): HeatLink[] =>
    link.kind === 'solid' && place(link.from) >= 0 && place(link.to) >= 0
      ? [{ ...link, from: place(link.from), to: place(link.to) }]
      : [],
  )
  const driven = new Float64Array(kept.length)
  const film = (from: number, area: number, h: number, warmth: number, series: number) => {
    if (from < 0 || h === 0) return
    const free = { name: 'given', symbol: '', number: () => 0, range: [0, 0] as const, coefficient: () => h }
    links.push({ kind: 'film', from, to: openAir, area, film: { free, forced: [] }, emissivity: 0, series })
    driven[from]! += (area / (series + 1 / h)) * warmth
  }
  const seriesOfSupport = body.links.find(
    (link) => link.kind === 'film' && body.nodes[link.from]!.key === 'support',
  )
  const series = seriesOfSupport?.kind === 'film' ? seriesOfSupport.series : 0
  for (const which of ['near', 'far'] as const) {
    const { film: h, air, shine, metal, castingFilm } = faces[which]
    film(at(`${which}Cover`), pack.area, h, air, 0)
    film(at(`${which}Cover`), pack.area, shine, metal, 0)
    film(at('support'), pack.supportArea, castingFilm, air, series)
  }
  /** As the whole net would hand them to those who read it; what was left out is as warm as the copper. */
  const inWhole = (rises: Float64Array) =>
    Float64Array.from(body.nodes, (_, node) => rises[Math.max(place(node), copperNode)]!)
  return { body: { nodes: kept, links, ambient: body.ambient } satisfies HeatBody, driven, at, inWhole }
}

/** What the elements are given of a pack [m], [W/(m·K)], [J/(m³·K)], [W/m³]. */
export function sliceOf({ machine, layout, heat, copper }: Winding) {
  const { pack } = heat
  const { support, winding: wound } = machine.stator
  const volume = pack.area * pack.depth
  const drum = machine.rotor.arrangement === 'drum'
  const sides = layout.coils.reduce((sum, { shape }) => sum + layout.shapes[shape]!.turnLength, 0)
  return {
    axi: drum ? 1 : 0,
    x0: drum ? pack.nearRadius - coverThickness : 0,
    cover: coverThickness,
    depth: pack.depth,
    width: drum ? pack.length : wound.kind === 'coils' ? wound.legWidth : 0,
    // the casting of the whole ring, shared by both sides of every bundle
    beside: drum ? 0 : pack.supportArea / (2 * sides),
    k: pack.conductivity,
    ks: support.conductivity,
    c: (pack.copperCapacity + pack.matrixCapacity) / volume,
    cs: support.density * support.heatCapacity,
    q: copper / volume,
    area: pack.area,
    supportArea: pack.supportArea,
  }
}
