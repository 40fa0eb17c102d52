/** Times the hot kernels, as ratios to plain work done in the same run: machines differ, ratios hardly do. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { fileURLToPath } from 'node:url'
import { rotorField } from '../src/analysis/air-gap-field.ts'
import { chainOf, computeDesign } from '../src/analysis/compute.ts'
import { conductorLayout } from '../src/analysis/conductor-layout.ts'
import { rotorLinkage } from '../src/analysis/flux-linkage.ts'
import { matchMap } from '../src/analysis/match-map.ts'
import { spreadPlan } from '../src/analysis/spread-plan.ts'
import { spreadSamples } from '../src/analysis/spread-sample.ts'
import { finished } from '../src/analysis/step.ts'
import type { Design } from '../src/machine/design.ts'
import { faultText } from '../src/machine/fault.ts'
import { parseDesignText } from '../src/machine/parse.ts'
import { resolveDesign } from '../src/machine/resolve.ts'
import { seriesDerivative, seriesValue } from '../src/numerics/fourier.ts'
import { textTable } from '../src/output/text-table.ts'
import { rectifierPoint } from '../src/physics/electrics/bridge-rectifier.ts'
import { nominal } from '../src/units/quantity.ts'
import { netlistCircuit } from '../test/netlist.ts'
import { growthExponent, medianTime, referenceLoop } from './measure.ts'
import { linkageSize, plainLinkage } from './plain-linkage.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const examples = readdirSync(`${root}examples`)
  .filter((file) => file.endsWith('.json'))
  .sort()

function design(file: string): Design {
  const parsed = parseDesignText(readFileSync(`${root}examples/${file}`, 'utf8'))
  if (!parsed.ok) throw new Error(`${file} is no design`)
  return parsed.design
}

interface Row {
  readonly what: string
  readonly time_ms: number
  readonly reference_ms: number | null
  /** time / reference, or reference / time where that is the gain. */
  readonly ratio: number | null
  readonly note: string
}

/** A plain sum over a whole turn of a ring that does not alternate would take minutes. */
const alternates = (file: string): boolean => resolveDesign(design(file)).rotor.alternating

/** Field and flux linkage of the first conductor shape, against a sum of closed forms point by point. */
function linkageRow(file: string): Row {
  const machine = resolveDesign(design(file))
  const shape = conductorLayout(machine).shapes[0]!
  const ours = medianTime(() => rotorLinkage(machine, rotorField(machine), shape), 5)
  const plain = plainLinkage(machine, rotorField(machine), shape)
  return {
    what: `field and linkage, ${file.replace('.json', '')}`,
    time_ms: ours,
    reference_ms: plain.time_ms,
    ratio: plain.time_ms / ours,
    note: `plain sum: ${plain.sources} sources × ${plain.points} points × ${plain.angles} angles; it is slower by the ratio; fundamentals differ by ${plain.differenceFrom(rotorLinkage(machine, rotorField(machine), shape)).toExponential(1)}`,
  }
}

const loopNote = 'reference: ten million multiplications, additions and square roots'

/** The whole chain from nothing, after two edits that leave the volts alone, and the map drawn from it. */
function computeRows(file: string, loop: number): Row[] {
  const parsed = design(file)
  const name = file.replace('.json', '')
  // a slow design needs no long warm-up to be measured well
  const count = medianTime(() => computeDesign(parsed), 1) > 500 ? 3 : 25
  const row = (what: string, time_ms: number): Row => ({
    what: `${what}, ${name}`,
    time_ms,
    reference_ms: loop,
    ratio: time_ms / loop,
    note: loopNote,
  })
  const previous = computeDesign(parsed)
  const edited = (edit: Partial<typeof parsed>) => {
    const machine = resolveDesign({ ...parsed, ...edit })
    return medianTime(() => finished(chainOf(machine, { previous })), count)
  }
  return [
    row(
      'whole chain',
      medianTime(() => computeDesign(parsed), count),
    ),
    row('longer cable', edited({ cable: { ...parsed.cable, length_m: 1 + nominal(parsed.cable.length_m) } })),
    row(
      'map of the match',
      medianTime(() => finished(matchMap(previous)), count),
    ),
    row(
      'higher hub',
      edited({ site: { ...parsed.site, hubHeight_m: 1 + nominal(parsed.site.hubHeight_m) } }),
    ),
  ]
}

/** One draw of all guesses, states of the magnets and blades shared as in use. */
function drawRow(file: string, loop: number): Row {
  const chain = computeDesign(design(file))
  const samples = 128
  // as many draws to a state as in the 1024 of the page
  const plan = { ...spreadPlan(chain, { samples }), perState: 16 }
  const time_ms = medianTime(() => finished(spreadSamples(chain, plan, [0, samples])), 3) / samples
  return {
    what: `one draw of all guesses, ${file.replace('.json', '')}`,
    time_ms,
    reference_ms: loop,
    ratio: time_ms / loop,
    note: `${loopNote}; ${plan.drawn.length} guesses, 16 draws to a state, one core`,
  }
}

function bridgeRow(): Row {
  const netlist = `${root}test/reference/electrics/star-medium.cir`
  const circuit = netlistCircuit(readFileSync(netlist, 'utf8'))
  // many runs: the compiler is done with it after some hundred
  const time_ms = medianTime(() => rectifierPoint(circuit), 401)
  const run = () => spawnSync('ngspice', ['-b', netlist], { encoding: 'utf8', timeout: 60_000 })
  if (run().error)
    return {
      what: 'bridge, star into a battery',
      time_ms,
      reference_ms: null,
      ratio: null,
      note: 'ngspice is not installed: nothing to compare with',
    }
  const simulator = medianTime(run, 3)
  return {
    what: 'bridge, star into a battery',
    time_ms,
    reference_ms: simulator,
    ratio: simulator / time_ms,
    note: 'reference: ngspice with the same circuit, start of the program included; it is slower by the ratio',
  }
}

/** A machine of which finite elements are at hand: two discs with saturable steel, a thin coil over one pole. */
const twoDiscs = {
  arrangement: 'two-discs',
  poleCount: 12,
  pitchRadius_mm: 90,
  magnet: { shape: 'block', length_mm: 40, width_mm: 20, thickness_mm: 10, polarization_T: 1.28 },
  backIron: { kind: 'steel', thickness_mm: 8, innerRadius_mm: 65, outerRadius_mm: 115 },
  faceDistance_mm: 16,
}
const windowCoil = {
  kind: 'coils',
  coilCount: 1,
  phaseCount: 1,
  turns: 1,
  hole: { shape: 'rectangular', holeWidth_mm: 46.8, holeLength_mm: 39.8, cornerRadius_mm: 0 },
  legWidth_mm: 0.2,
  bundleDepth_mm: 0.2,
  distance_mm: 8,
}

/** One finite-element run of the same machine, mesh and solution [ms]; nothing where the programs are missing. */
function elementsTime(): number | undefined {
  const folder = mkdtempSync(`${tmpdir()}/gustloom-bench-`)
  const reference = `${root}test/reference/yoke-plate/plate-sector`
  const sizes = ['variant', '0', 't', '8', 'plain', '0', 'inner', '65', 'outer', '115']
  const numbers = sizes.flatMap((word, k) => (k % 2 === 0 ? ['-setnumber', word, sizes[k + 1]!] : []))
  const start = performance.now()
  const mesh = spawnSync(
    'gmsh',
    [
      '-3',
      '-setnumber',
      'h',
      '2.5',
      ...numbers,
      `${reference}.geo`,
      '-format',
      'msh2',
      '-o',
      `${folder}/m.msh`,
    ],
    { timeout: 600_000 },
  )
  const solved = spawnSync(
    'getdp',
    [`${reference}.pro`, '-name', `${folder}/m`, '-msh', `${folder}/m.msh`, ...numbers, '-solve', 'S'],
    { timeout: 600_000 },
  )
  const time = performance.now() - start
  rmSync(folder, { recursive: true })
  return mesh.status === 0 && solved.status === 0 ? time : undefined
}

/** Document to EMF waveform of a two-disc machine with steel, all harmonics, against finite elements of the same. */
function waveformRow(): Row {
  const document = JSON.parse(readFileSync(`${root}examples/boathouse-two-disc.json`, 'utf8')) as {
    rotor: object
    stator: { winding: object; connection: string; wire: object }
  }
  document.rotor = twoDiscs
  document.stator = { ...document.stator, winding: windowCoil, connection: 'single', wire: { size: 0.1 } }
  const parsed = parseDesignText(JSON.stringify(document))
  if (!parsed.ok) throw new Error(`the two discs are no design: ${parsed.faults.map(faultText).join('; ')}`)
  const machine = resolveDesign(parsed.design)
  const waveform = () => {
    const field = rotorField(machine)
    const { flux, base } = rotorLinkage(machine, field, conductorLayout(machine).shapes[0]!)
    const emf = seriesDerivative(flux)
    const samples = Float64Array.from(
      { length: 256 },
      (_, k) => -base * seriesValue(emf, (2 * Math.PI * k) / 256),
    )
    return { samples, flux: Math.abs(seriesValue(flux, 0)) }
  }
  // many runs: the compiler is done with it after some hundred
  const time_ms = medianTime(waveform, 401)
  const runs = (
    JSON.parse(readFileSync(`${root}test/reference/yoke-plate/plate-sector.json`, 'utf8')) as {
      runs: Record<string, { window_Wb: number }>
    }
  ).runs
  const elements = runs['two-8-coarse']!.window_Wb
  const reference_ms = elementsTime() ?? null
  return {
    what: 'EMF waveform, two discs with steel',
    time_ms,
    reference_ms,
    ratio: reference_ms === null ? null : reference_ms / time_ms,
    note: `magnets, steel that saturates, linkage, 256 samples of the EMF; ${reference_ms === null ? 'gmsh and getdp are not installed: nothing to time against' : 'reference: gmsh and getdp, one rotor position; it is slower by the ratio'}; flux through a pole’s window differs from theirs by ${(100 * (waveform().flux / elements - 1)).toFixed(2)} %`,
  }
}

/** Time of field and linkage against magnets × points of the path: should grow as the first power. */
function growthRow(): Row {
  const points: { size: number; time: number }[] = []
  for (const poles of [16, 32, 64, 120]) {
    const text = JSON.parse(readFileSync(`${root}examples/class-room-fan.json`, 'utf8')) as {
      rotor: { poleCount: number; pitchRadius_mm: number }
    }
    text.rotor.poleCount = poles
    text.rotor.pitchRadius_mm = 5 * poles
    const parsed = parseDesignText(JSON.stringify(text))
    if (!parsed.ok) throw new Error('a ring of the growth series is no design')
    const machine = resolveDesign(parsed.design)
    const field = rotorField(machine)
    const shape = conductorLayout(machine).shapes[0]!
    points.push({
      size: linkageSize(field, shape),
      time: medianTime(() => rotorLinkage(machine, rotorField(machine), shape), 9),
    })
  }
  const exponent = growthExponent(points)
  return {
    what: 'growth of field and linkage with magnets × path points',
    time_ms: points.at(-1)!.time,
    reference_ms: points[0]!.time,
    ratio: exponent,
    note: `ratio here: exponent of time over size, ${points.map(({ size, time }) => `${size}: ${time.toFixed(1)} ms`).join(', ')}; 1 is straight`,
  }
}

const loop = medianTime(referenceLoop, 5)
const rows: Row[] = [
  ...examples.filter(alternates).map(linkageRow),
  waveformRow(),
  growthRow(),
  bridgeRow(),
  ...examples.flatMap((file) => computeRows(file, loop)),
  ...examples.filter(alternates).map((file) => drawRow(file, loop)),
]

if (process.argv.includes('--json'))
  process.stdout.write(`${JSON.stringify({ node: process.version, rows }, null, 2)}\n`)
else {
  const number = (value: number | null) =>
    value === null ? '–' : value >= 100 ? value.toFixed(0) : value.toPrecision(3)
  const table = textTable(
    [
      { head: 'what', align: 'left' },
      { head: 'time ms', align: 'right' },
      { head: 'reference ms', align: 'right' },
      { head: 'ratio', align: 'right' },
    ],
    rows.map(({ what, time_ms, reference_ms, ratio }) => [
      what,
      number(time_ms),
      number(reference_ms),
      number(ratio),
    ]),
  )
  process.stdout.write(`${table.join('\n')}\n\n`)
  for (const { what, note } of rows) process.stdout.write(`${what}: ${note}\n`)
}
