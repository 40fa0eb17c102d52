/** Checks the whole way from document to field, flux and steel against three-dimensional finite elements. */
import { readFileSync } from 'node:fs'
import { describe } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { harmonicAmplitude, seriesValue } from '../numerics/fourier.ts'
import { gapProfile, rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { rotorLinkage } from './flux-linkage.ts'

const fixture = <Run>(path: string): Readonly<Record<string, Run>> =>
  (
    JSON.parse(readFileSync(new URL(`../../test/reference/${path}`, import.meta.url), 'utf8')) as {
      runs: Readonly<Record<string, Run>>
    }
  ).runs

/** A thin coil over one pole stands for a window; the chain's own linkage is then the flux through it. */
function throughWindow(
  rotor: object,
  window: { readonly width_mm: number; readonly length_mm: number; readonly distance_mm: number },
) {
  const document = exampleDocument('boathouse-two-disc')
  document.rotor = { retention: { kind: 'pocket' }, ...rotor }
  document.stator.winding = {
    kind: 'coils',
    coilCount: 1,
    phaseCount: 1,
    turns: 1,
    hole: {
      shape: 'rectangular',
      holeWidth_mm: window.width_mm - 0.2,
      holeLength_mm: window.length_mm - 0.2,
      cornerRadius_mm: 0,
    },
    legWidth_mm: 0.2,
    bundleDepth_mm: 0.2,
    distance_mm: window.distance_mm,
  }
  document.stator.connection = 'single'
  document.stator.wire = { size: 0.1 }
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine)
  const shape = conductorLayout(machine).shapes[0]!
  const { flux } = rotorLinkage(machine, field, shape, 15)
  const gap = gapProfile(machine, field, shape.distance)
  return {
    flux: Math.abs(seriesValue(flux, 0)),
    fundamental: gap.fundamental,
    amplitude: harmonicAmplitude(flux, 1),
    iron: field.iron!,
    loadFactor: field.workingPoint.loadFactor,
  }
}

const held = (title: string, found: number, elements: number, relative: number) =>
  check(title, found, elements.toPrecision(5), { relative })

interface PlateRun {
  readonly kind: 'two' | 'plain' | 'single'
  readonly thickness_mm: number
  readonly plainThickness_mm?: number
  readonly innerRadius_mm: number
  readonly outerRadius_mm: number
  readonly fundamental_T: number
  readonly window_Wb: number
  readonly sectionFluxDensity_T: number
}

describe('agrees: steel discs, non-linear finite elements; the gap within 1.5 %, the section between poles within 5 %', () => {
  const runs = Object.entries(fixture<PlateRun>('yoke-plate/plate-sector.json')).filter(
    ([name]) => !name.startsWith('linear'),
  )
  for (const [name, run] of runs)
    describe(name, () => {
      const rims = { innerRadius_mm: run.innerRadius_mm, outerRadius_mm: run.outerRadius_mm }
      const magnet = { shape: 'block', length_mm: 40, width_mm: 20, thickness_mm: 10, polarization_T: 1.28 }
      const ring = { poleCount: 12, pitchRadius_mm: 90, magnet }
      const backIron = { kind: 'steel', thickness_mm: run.thickness_mm, ...rims }
      const plain = { kind: 'steel', thickness_mm: run.plainThickness_mm ?? 4, faceDistance_mm: 16, ...rims }
      const found = throughWindow(
        run.kind === 'two'
          ? { arrangement: 'two-discs', ...ring, backIron, faceDistance_mm: 16 }
          : { arrangement: 'disc', ...ring, backIron, ...(run.kind === 'plain' ? { opposite: plain } : {}) },
        { width_mm: 47, length_mm: 40, distance_mm: 8 },
      )
      const behind = found.iron.steel.find(({ place }) => place === 'behind')!
      held('fundamental at mid-gap, T', found.fundamental, run.fundamental_T, 0.015)
      held('flux through a window over a pole, Wb', found.flux, run.window_Wb, 0.015)
      held('section between poles, T', behind.fluxDensity, run.sectionFluxDensity_T, 0.05)
    })
})

interface DrumRun {
  readonly wall?: 'inner' | 'outer'
  readonly orders: Readonly<Record<string, { readonly normal_T: number }>>
  readonly fluxOverRun_Wb: number
  readonly meanMu0H_T: number
  readonly wallMiddle_T: number
}

describe('agrees: steel round a drum, finite elements; the gap within 1.5 %, the wall within 5 %', () => {
  const runs = fixture<DrumRun>('iron-cylinder/drum-sector.json')
  const magnet = (recoilPermeability: number) => ({
    shape: 'block',
    length_mm: 60,
    width_mm: 15,
    thickness_mm: 5,
    polarization_T: 1.3,
    recoilPermeability,
  })
  const ring = (thickness_mm: number) => ({ backIron: { kind: 'steel', thickness_mm } })
  const sleeve = { sleeve: { distance_mm: 9.5, thickness_mm: 3, motion: 'turns' } }
  // runs of ideal iron, whose steel is far below its knee here; and of the steel’s own curve
  const cases: Readonly<
    Record<string, { readonly rotor: object; readonly recoil: number; readonly inside?: true }>
  > = {
    'ring6-ideal': { rotor: ring(6), recoil: 1 },
    'ring6-recoil': { rotor: ring(6), recoil: 1.05 },
    'ring2-curve': { rotor: ring(2), recoil: 1.05 },
    'both-ideal': { rotor: { ...ring(6), ...sleeve }, recoil: 1 },
    'both2-curve': { rotor: { ...ring(2), ...sleeve }, recoil: 1.05 },
    'sleeve-ideal': { rotor: sleeve, recoil: 1 },
    'inward-ideal': { rotor: ring(6), recoil: 1, inside: true },
  }
  for (const [name, { rotor, recoil, inside }] of Object.entries(cases))
    describe(name, () => {
      const run = runs[name]!
      const radius = inside ? 42.5 : 57.5
      const found = throughWindow(
        {
          arrangement: 'drum',
          windingSide: inside ? 'inside' : 'outside',
          poleCount: 12,
          pitchRadius_mm: 50,
          magnet: magnet(recoil),
          ...rotor,
        },
        { width_mm: (radius * Math.PI) / 6, length_mm: 60, distance_mm: 5 },
      )
      const wall = found.iron.steel.at(name.startsWith('sleeve') ? -1 : 0)!
      held('fundamental at the winding, T', found.fundamental, Math.abs(run.orders['6']!.normal_T), 0.015)
      held('flux through a full pitch, Wb', found.flux, Math.abs(run.fluxOverRun_Wb), 0.015)
      held('wall between poles, T', wall.fluxDensity, run.wallMiddle_T, 0.05)
    })
})
