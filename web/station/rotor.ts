/** Station of the magnet rotor. */
import { valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Settle, type Station } from './station.ts'

/** What every arrangement asks for. */
const magnets = {
  poleCount: 12,
  pitchRadius_mm: 60,
  magnet: { shape: 'block', length_mm: 40, width_mm: 20, thickness_mm: 10, grade: 'N42' },
}

/** Room for a winding between the faces [mm]. */
const gap_mm = 14

/** Blocks that fit round a drum may collide on a disc, where they point to the shaft: the ring is then made wider. */
const roomForBlocks: Settle = (rotor) => {
  const width = numberAt(rotor, ['magnet', 'width_mm'], 20)
  const length = numberAt(rotor, ['magnet', 'length_mm'], 40)
  const poles = Math.max(2, numberAt(rotor, ['poleCount'], 12))
  const least = poles > 2 ? (1.08 * width) / (2 * Math.tan(Math.PI / poles)) + length / 2 : length / 2
  return numberAt(rotor, ['pitchRadius_mm'], 0) >= least
    ? rotor
    : { ...rotor, pitchRadius_mm: rounded(least + 0.5, 1) }
}

const edge = (document: unknown, name: string, fallback: number) =>
  numberAt(document, ['rotor', 'magnet', name], fallback)
/** The circumferential edge of whatever shape there was [mm]. */
const across = (document: unknown) =>
  edge(document, 'width_mm', edge(document, 'diameter_mm', edge(document, 'innerWidth_mm', 20)))
const along = (document: unknown) => edge(document, 'length_mm', edge(document, 'diameter_mm', 40))
const thick = (document: unknown) => edge(document, 'thickness_mm', 10)

export const rotorStation: Station = {
  noun: 'rotor',
  title: 'Rotor',
  lead: 'The magnets that turn.',
  open: true,
  starts: {
    'rotor.arrangement': {
      drum: () => ({ ...magnets, windingSide: 'outside' }),
      disc: () => ({ ...magnets, backIron: { kind: 'steel', thickness_mm: 6 } }),
      'two-discs': () => ({
        ...magnets,
        backIron: { kind: 'steel', thickness_mm: 6 },
        faceDistance_mm: gap_mm,
      }),
    },
    'rotor.magnet.shape': {
      block: (document) => ({
        length_mm: along(document),
        width_mm: across(document),
        thickness_mm: thick(document),
      }),
      disc: (document) => ({ diameter_mm: across(document), thickness_mm: thick(document) }),
      arc: (document) => ({
        length_mm: along(document),
        thickness_mm: thick(document),
        span_deg: rounded((0.8 * 360) / Math.max(2, numberAt(document, ['rotor', 'poleCount'], 12)), 0.1),
      }),
      wedge: (document) => ({
        length_mm: along(document),
        innerWidth_mm: rounded(0.85 * across(document), 0.1),
        outerWidth_mm: across(document),
        thickness_mm: thick(document),
      }),
    },
    'rotor.magnet.readings[].kind': {
      hall: () => ({ distance_mm: 10, fluxDensity_mT: 100 }),
      pull: () => ({ spacer_mm: 2, force_N: 20 }),
    },
  },
  entries: {
    'rotor.magnet.readings': () => ({ kind: 'hall', distance_mm: 10, fluxDensity_mT: 100 }),
  },
  entryNames: { 'rotor.magnet.readings': 'reading' },
  settles: { 'rotor.arrangement': { disc: roomForBlocks, 'two-discs': roomForBlocks } },
  extras: [
    {
      path: ['rotor', 'carrier'],
      label: 'Printed disc or drum that carries the magnets',
      start: { material: 'PETG', thickness_mm: 10 },
      fits: () => true,
    },
    {
      path: ['rotor', 'opposite'],
      label: 'Plate beyond the winding',
      start: { kind: 'steel', faceDistance_mm: gap_mm },
      fits: (document) => valueAt(document, ['rotor', 'arrangement']) === 'disc',
    },
    {
      path: ['rotor', 'backIron'],
      label: 'Steel ring behind the magnets',
      start: { kind: 'steel', thickness_mm: 6 },
      fits: (document) => valueAt(document, ['rotor', 'arrangement']) === 'drum',
    },
    {
      path: ['rotor', 'sleeve'],
      label: 'Steel sleeve beyond the winding',
      start: { distance_mm: 8, thickness_mm: 3, motion: 'turns' },
      fits: (document) => valueAt(document, ['rotor', 'arrangement']) === 'drum',
    },
  ],
}
