/** Station of the magnet rotor. */
import { valueAt } from '../store/raw-document.ts'
import { numberAt, rounded, type Settle, type Station } from './station.ts'

/** What every arrangement asks for. */
const magnets = {
  poleCount: 12,
  pitchRadius_mm: 60,
  magnet: { length_mm: 40, width_mm: 20, thickness_mm: 10, grade: 'N42' },
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
  },
  settles: { 'rotor.arrangement': { disc: roomForBlocks, 'two-discs': roomForBlocks } },
  extras: [
    {
      path: ['rotor', 'opposite'],
      label: 'Plate beyond the winding',
      start: { kind: 'steel', faceDistance_mm: gap_mm },
      fits: (document) => valueAt(document, ['rotor', 'arrangement']) === 'disc',
    },
    {
      path: ['rotor', 'magnet', 'hallReading'],
      label: 'Reading of a field sensor',
      start: { distance_mm: 10, fluxDensity_mT: 100 },
      fits: () => true,
    },
  ],
}
