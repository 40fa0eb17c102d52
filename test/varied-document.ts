/** Variations of the example documents, for properties that must hold of every design: random, extreme, mistyped. */
import * as fc from 'fast-check'
import { designForm, type FormField } from '../src/machine/design-fields.ts'
import { exampleDocument, exampleNames } from './example.ts'

type Keys = readonly (string | number)[]

/** Sets what stands at `keys`, groups that are missing on the way included. */
export function setAt(document: unknown, keys: Keys, value: unknown): void {
  let place = document as Record<string | number, unknown>
  for (const key of keys.slice(0, -1)) {
    if (typeof place[key] !== 'object' || place[key] === null) place[key] = {}
    place = place[key] as Record<string | number, unknown>
  }
  place[keys.at(-1)!] = value
}

const numeric = ({ kind, minimum, maximum }: FormField): boolean =>
  (kind === 'quantity' || kind === 'count') && minimum !== undefined && maximum !== undefined

const numberOf = (value: unknown): number | undefined =>
  typeof value === 'number'
    ? value
    : typeof value === 'object' && value !== null && 'value' in value
      ? Number(value.value)
      : undefined

/** A number the field allows: an end of its range, near what stood there, or anywhere between. */
function numberFor({ kind, minimum, maximum, value }: FormField): fc.Arbitrary<number> {
  const low = minimum!
  const high = maximum!
  const inside = (x: number) => {
    const bounded = Math.min(Math.max(x, low), high)
    return kind === 'count' ? Math.round(bounded) : Number(bounded.toPrecision(6))
  }
  const now = numberOf(value)
  const anywhere = fc.double({ min: 0, max: 1, noNaN: true }).map((share) => {
    // lengths and powers spread over decades: by ratio where the range allows it
    const from = low > 0 ? low : low === 0 ? high * 1e-4 : undefined
    return from === undefined ? low + share * (high - low) : from * (high / from) ** share
  })
  const near =
    now === undefined
      ? anywhere
      : fc.double({ min: -0.7, max: 0.7, noNaN: true }).map((e) => now * Math.exp(e))
  return fc.oneof(
    { weight: 6, arbitrary: near.map(inside) },
    { weight: 2, arbitrary: anywhere.map(inside) },
    { weight: 1, arbitrary: fc.constantFrom(low, high).map(inside) },
  )
}

function valueFor(field: FormField): fc.Arbitrary<unknown> {
  if (numeric(field)) {
    const bare = numberFor(field)
    if (field.kind === 'count') return bare
    const spread = fc.double({ min: 0, max: 0.3, noNaN: true })
    return fc.oneof(
      bare,
      fc
        .tuple(bare, spread)
        .map(([value, share]) => ({ value, spread: Math.abs(value) * share, known: 'guessed' })),
    )
  }
  if (field.kind === 'choice') return fc.constantFrom(...field.words)
  if (field.kind === 'flag') return fc.boolean()
  if (field.kind === 'wire size')
    return fc.oneof(
      fc.constantFrom('AWG 20', 'SWG 21', 'awg28'),
      fc.double({ min: 0.02, max: 10, noNaN: true }),
    )
  return fc.string({ maxLength: 40 })
}

const changeable = (field: FormField): boolean =>
  numeric(field) || ['choice', 'flag', 'wire size', 'text'].includes(field.kind)

/** Whole nouns of every variant, sized for a small machine, to be put in the place of an example's own. */
const nouns: Readonly<Record<string, { readonly keys: Keys; readonly choices: readonly unknown[] }>> = {
  blades: {
    keys: ['blades'],
    choices: [
      { kind: 'optimum', diameter_m: 1.2, bladeCount: 3, section: 'SD2030', tipSpeedRatio: 5 },
      {
        kind: 'optimum',
        diameter_m: 0.5,
        bladeCount: 12,
        section: 'NACA 6409',
        tipSpeedRatio: 1,
        straightTaper: true,
      },
      {
        kind: 'stations',
        diameter_m: 1.5,
        bladeCount: 2,
        section: 'SD2030',
        stations: [
          { radius_mm: 100, chord_mm: 140, twist_deg: 22 },
          { radius_mm: 400, chord_mm: 90, twist_deg: 7 },
          { radius_mm: 750, chord_mm: 55, twist_deg: 2 },
        ],
      },
      {
        kind: 'table',
        diameter_m: 1,
        points: [
          { tipSpeedRatio: 0, powerCoefficient: 0 },
          { tipSpeedRatio: 0.8, powerCoefficient: 0.18 },
          { tipSpeedRatio: 1.7, powerCoefficient: 0 },
        ],
      },
      {
        kind: 'straight-blade',
        diameter_m: 1.2,
        height_m: 1.3,
        bladeCount: 3,
        chord_mm: 160,
        pitch_deg: 3,
        section: 'NACA 0018',
      },
      { kind: 'drag-rotor', diameter_m: 0.8, height_m: 1.2, bucketCount: 'three' },
    ],
  },
  arrangement: {
    keys: ['rotor'],
    choices: [
      { arrangement: 'drum', windingSide: 'outside' },
      { arrangement: 'drum', windingSide: 'inside' },
      { arrangement: 'drum', windingSide: 'outside', backIron: { kind: 'steel', thickness_mm: 3 } },
      {
        arrangement: 'drum',
        windingSide: 'outside',
        piecesPerPole: 2,
        sleeve: { distance_mm: 25, thickness_mm: 2, motion: 'turns' },
      },
      {
        arrangement: 'drum',
        windingSide: 'inside',
        backIron: { kind: 'steel', thickness_mm: 3 },
        sleeve: { distance_mm: 20, thickness_mm: 2, motion: 'stands' },
      },
      { arrangement: 'disc', backIron: { kind: 'none' } },
      { arrangement: 'disc', backIron: { kind: 'steel', thickness_mm: 5 } },
      {
        arrangement: 'disc',
        backIron: { kind: 'steel', thickness_mm: 5 },
        opposite: { kind: 'steel', faceDistance_mm: 18 },
      },
      { arrangement: 'disc', backIron: { kind: 'none' }, opposite: { kind: 'steel', faceDistance_mm: 18 } },
      { arrangement: 'two-discs', backIron: { kind: 'steel' }, faceDistance_mm: 20 },
      { arrangement: 'two-discs', backIron: { kind: 'none' }, faceDistance_mm: 20 },
      {
        arrangement: 'two-discs',
        backIron: { kind: 'steel', thickness_mm: 2, innerRadius_mm: 30, outerRadius_mm: 120 },
        faceDistance_mm: 20,
        piecesPerPole: 2,
      },
    ],
  },
  winding: {
    keys: ['stator', 'winding'],
    choices: [
      ...[
        { shape: 'round', holeDiameter_mm: 8 },
        { shape: 'rectangular', holeWidth_mm: 9, holeLength_mm: 30 },
        { shape: 'wedge', holeInnerWidth_mm: 6, holeOuterWidth_mm: 14, holeLength_mm: 30 },
        { shape: 'lap', span: 0.9, runLength_mm: 30, endHeight_mm: 14 },
      ].flatMap((hole) =>
        [
          { coilCount: 9, phaseCount: 3 },
          { coilCount: 12, phaseCount: 1, parallelGroups: 2 },
          { coilCount: 1, phaseCount: 1 },
          { coilCount: 8, phaseCount: 2 },
          { coilCount: 9, phaseCount: 3, reversedCoils: [2], reversedPhases: [3] },
        ].map((counts) => ({
          kind: 'coils',
          turns: 60,
          hole,
          legWidth_mm: 5,
          bundleDepth_mm: 5,
          distance_mm: 4,
          ...counts,
        })),
      ),
      ...[1, 2, 3].flatMap((count) =>
        [0, 12].map((slant_deg) => ({
          kind: 'serpentine',
          turns: 25,
          runLength_mm: 30,
          slant_deg,
          crownHeight_mm: 8,
          bundleWidth_mm: 4,
          bundleDepth_mm: 1.5,
          phases: Array.from({ length: count }, (_, k) => ({ offset_deg: 20 * k, distance_mm: 2 + 2 * k })),
        })),
      ),
    ],
  },
  layers: {
    keys: ['stator', 'winding'],
    choices: [
      { layers: 2, phases: [{ offset_deg: 0, distance_mm: 3 }] },
      {
        crown: 'rounded corners',
        cornerRadius_mm: 2,
        phases: [0, 1, 2].map((k) => ({ offset_deg: 20 * k, distance_mm: 4, crownLift_mm: 2.2 * k })),
      },
    ].map((own) => ({
      kind: 'serpentine',
      turns: 25,
      runLength_mm: 30,
      crownHeight_mm: 10,
      bundleWidth_mm: 4,
      bundleDepth_mm: 1.5,
      ...own,
    })),
  },
  magnet: {
    keys: ['rotor', 'magnet'],
    choices: [
      { shape: 'disc', diameter_mm: 14, thickness_mm: 5, grade: 'N42' },
      { shape: 'arc', length_mm: 30, thickness_mm: 5, span_deg: 18, grade: 'Y30' },
      {
        shape: 'wedge',
        length_mm: 25,
        innerWidth_mm: 9,
        outerWidth_mm: 12,
        thickness_mm: 6,
        grade: 'N35',
        readings: [{ kind: 'pull', spacer_mm: 2, force_N: 20 }],
      },
      {
        shape: 'block',
        length_mm: 30,
        width_mm: 10,
        thickness_mm: 5,
        grade: 'N42',
        readings: [{ kind: 'hall', distance_mm: 10, fluxDensity_mT: 60, sensorRange_mT: 200 }],
      },
    ],
  },
  defects: {
    keys: ['defects'],
    choices: [
      [{ kind: 'missing magnet', position: 2 }],
      [
        { kind: 'weak magnet', position: 1, strength: 0.8 },
        { kind: 'shifted magnet', position: 3, shift_mm: 1.5 },
      ],
      [{ kind: 'other grade', position: 2, grade: 'Y30' }],
      [{ kind: 'reversed coil', coil: 1 }],
      [{ kind: 'shorted turns', coil: 1, turns: 3 }],
      [{ kind: 'unequal gap', difference_mm: 1 }],
    ],
  },
  load: {
    keys: ['load'],
    choices: [
      { kind: 'open' },
      { kind: 'resistor', resistance_ohm: 3 },
      { kind: 'battery', chemistry: 'LiFePO4', voltage_V: 13.2, resistance_mohm: 0 },
      { kind: 'battery', chemistry: 'lead-acid', voltage_V: 2.1 },
    ],
  },
}

const connectionsFor: Readonly<Record<number, readonly string[]>> = {
  1: ['single', 'separate'],
  2: ['separate'],
  3: ['star', 'delta', 'separate'],
}

/** Puts a noun in its place; a rotor keeps its magnets and takes only the arrangement. */
function graft(document: unknown, name: string, choice: unknown, connection: number): void {
  const raw = document as {
    rotor: { poleCount: number; pitchRadius_mm: number; magnet: unknown }
    stator: { connection: string }
  }
  if (name === 'arrangement') {
    const { poleCount, pitchRadius_mm, magnet } = raw.rotor
    raw.rotor = { poleCount, pitchRadius_mm, magnet, ...(choice as object) }
    return
  }
  setAt(document, nouns[name]!.keys, structuredClone(choice))
  if (name !== 'winding' && name !== 'layers') return
  const { phases, phaseCount } = choice as { phases?: readonly unknown[]; phaseCount?: number }
  const fitting = connectionsFor[phases?.length ?? phaseCount!]!
  raw.stator.connection = fitting[connection % fitting.length]!
}

const grafts = fc.record({
  parts: fc.subarray(Object.keys(nouns)),
  pick: fc.array(fc.nat({ max: 999 }), { minLength: 7, maxLength: 7 }),
  connection: fc.nat({ max: 5 }),
})

/**
 * An example, some of its nouns exchanged for other variants, with up to `most` fields set anew, each to a value that
 * the field alone allows.
 */
export const variedDocument = (
  most: number,
  names: readonly string[] = exampleNames,
): fc.Arbitrary<{ readonly example: string; readonly document: unknown }> =>
  fc.tuple(fc.constantFrom(...names), grafts).chain(([example, { parts, pick, connection }]) => {
    const grafted = () => {
      const document: unknown = exampleDocument(example)
      parts.forEach((name, k) => {
        const { choices } = nouns[name]!
        graft(document, name, choices[pick[k]! % choices.length], connection)
      })
      return document
    }
    const fields = designForm(grafted()).filter(changeable)
    const change = fc
      .nat({ max: fields.length - 1 })
      .chain((k) => valueFor(fields[k]!).map((value) => ({ keys: fields[k]!.keys, value })))
    return fc.array(change, { maxLength: most }).map((changes) => {
      const document = grafted()
      for (const { keys, value } of changes) setAt(document, keys, value)
      return { example, document }
    })
  })
