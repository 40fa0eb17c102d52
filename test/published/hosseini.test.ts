/** Checks the chain from document to volts against a coreless disc generator that was built and measured. */
import { describe, expect, test } from 'vitest'
import { parseDesign } from '../../src/machine/parse.ts'
import { check } from '../check.ts'
import { textOf } from '../repository.ts'
import { openCircuit } from './open-circuit.ts'

const folder = 'examples/measured/hosseini-2008/'
// biome-ignore lint/suspicious/noExplicitAny: tests change the document at will
const design = (): any => JSON.parse(textOf(`${folder}design.json`))
const { measured, asPrinted } = JSON.parse(textOf(`${folder}measurements.json`)) as {
  measured: { openCircuitPhasePeakToPeak_V: { value: number; speed_rpm: number } }
  asPrinted: Record<string, { value: number | number[] }>
}
const { value: volts, speed_rpm: rpm } = measured.openCircuitPhasePeakToPeak_V
const speed = (rpm * Math.PI) / 30

const peakToPeak = (document: unknown): number => {
  const { emf } = openCircuit(document).voltage.phases[0]!
  const samples = Array.from({ length: 720 }, (_, k) => {
    let e = 0
    for (let h = 1; h < emf.cos.length; h++) {
      const x = (2 * Math.PI * h * k) / 720
      e += emf.cos[h]! * Math.cos(x) + emf.sin[h]! * Math.sin(x)
    }
    return e * speed
  })
  return Math.max(...samples) - Math.min(...samples)
}

describe('source: hosseini2008, table 3, p. 201 — open-circuit phase volts, peak to peak, at 3000 rpm', () => {
  // The print contradicts itself about the number of poles, and says nothing of the coils' ends: 15 % is the gate that
  // fits what is known. The difference reached is in the accuracy page.
  const iron = peakToPeak(design())
  check('twelve poles, V', iron, String(volts), { relative: 0.15 })
  test('without the iron behind the magnets, over 40 V less', () => {
    const bare = design()
    bare.rotor.backIron = { kind: 'none' }
    expect(iron - peakToPeak(bare)).toBeGreaterThan(40)
  })
  test('the frequency printed beside it, 300 Hz, is that of twelve poles', () => {
    expect((openCircuit(design()).machine.rotor.polePairs * rpm) / 60).toBe(asPrinted.frequency_Hz!.value)
  })
  test('twenty-four poles, as printed, do not fit: 24 magnets of 10 mm round a circle of 35 mm', () => {
    const asTold = design()
    asTold.rotor.poleCount = 24
    const parsed = parseDesign(asTold)
    expect(parsed.ok ? [] : parsed.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'rotor.magnet.width_mm conflict',
    ])
  })
})

describe('law: the document holds what the paper prints', () => {
  test('magnets, gap, winding, wire', () => {
    const { rotor, stator } = design()
    const { magnet, pitchRadius_mm: radius } = rotor
    expect([magnet.length_mm, magnet.width_mm, magnet.thickness_mm]).toEqual(asPrinted.magnets_mm!.value)
    expect([radius - magnet.length_mm / 2, radius + magnet.length_mm / 2]).toEqual(asPrinted.radii_mm!.value)
    expect(stator.winding.bundleDepth_mm).toBe(asPrinted.windingThickness_mm!.value)
    expect((rotor.faceDistance_mm - stator.winding.bundleDepth_mm) / 2).toBe(
      asPrinted.airGapEachSide_mm!.value,
    )
    expect(stator.winding.turns).toBe(asPrinted.conductorsPerCoil!.value)
    expect(stator.winding.coilCount).toBe(asPrinted.coils!.value)
    expect(stator.wire.size).toBe(asPrinted.wire_mm!.value)
    expect(magnet.polarization_T.value).toBe(asPrinted.remanence_T!.value)
  })
  test('a phase is one string of six coils in step', () => {
    const { voltage } = openCircuit(design())
    for (const phase of voltage.phases) expect(phase.inStep).toBeCloseTo(1, 9)
    expect(voltage.coils.filter(({ coil }) => coil.phase === 0)).toHaveLength(6)
    expect(voltage.phases.map(({ lag }) => Math.round((lag * 180) / Math.PI)).sort((a, b) => a - b)).toEqual([
      -120, 0, 120,
    ])
  })
})
