/** Checks of the study of defects: the arithmetic beside the computation, and readings that lead back to their cause. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { terminalResistances } from './bench-reading.ts'
import { defectWords, usualDefects } from './defect-catalogue.ts'
import { likelyDefects } from './fault-diagnosis.ts'
import { oneMagnetShare, reversedLine } from './fault-signature.ts'
import { type FaultStudy, faultStudy } from './fault-study.ts'
import { finished } from './step.ts'

const discs = fixedDocument('twoDiscs')
discs.stator.wire.strands = 2
const discStudy = finished(faultStudy(designOf(discs)))

const drumDocument = fixedDocument('drum')
drumDocument.stator.connection = 'delta'
drumDocument.defects = [
  { kind: 'flipped magnet', position: 4 },
  { kind: 'reversed phase', phase: 2 },
  { kind: 'shorted turns', coil: 1, turns: 3 },
]
const drumStudy = finished(faultStudy(designOf(drumDocument)))

const caseOf = ({ cases }: FaultStudy, kind: string) => cases.find(({ defect }) => defect.kind === kind)!

describe('agrees: plain arithmetic and the whole chain', () => {
  for (const [name, study] of [
    ['two discs in star', discStudy],
    ['drum in delta', drumStudy],
  ] as const)
    for (const { defect, words, signature } of study.cases)
      test(`${name}: ${words}`, () => {
        expect(signature.length).toBeGreaterThan(0)
        for (const { what, expected, computed } of signature) {
          // a gap out of square is estimated by the field's fundamental; a drum's phases are not alike
          const tolerance = defect.kind === 'unequal gap' ? 0.005 : 0.03 * Math.max(1, Math.abs(expected))
          expect(Math.abs(computed - expected), what).toBeLessThan(tolerance)
        }
      })
  test('a flipped magnet of 2p takes 2/(2p) of the working volts, a missing one half of that', () => {
    expect(oneMagnetShare(12, -1)).toBeCloseTo(1 - 2 / 12, 12)
    expect(oneMagnetShare(12, 0)).toBeCloseTo(1 - 1 / 12, 12)
    expect(reversedLine(1, 1)).toBeCloseTo(1, 12)
  })
})

describe('law: what shows where', () => {
  test('a coil tells a flipped magnet by its wave, a serpentine that goes all round does not', () => {
    expect(caseOf(discStudy, 'flipped magnet').reading.coilNotch).toBeGreaterThan(0.1)
    expect(caseOf(drumStudy, 'flipped magnet').reading.coilNotch).toBeLessThan(0.01)
    expect(discStudy.sound.coilNotch).toBe(0)
  })
  test('more of a defect shows more: flipped over missing over weak', () => {
    const notch = (kind: string) => caseOf(discStudy, kind).reading.coilNotch
    expect(notch('flipped magnet')).toBeGreaterThan(notch('missing magnet'))
    expect(notch('missing magnet')).toBeGreaterThan(notch('weak magnet'))
  })
  test('shorted turns hold the hand back and warm their own coil; torque times speed is their heat', () => {
    const { reading } = caseOf(discStudy, 'shorted turns')
    expect(reading.dragTorque).toBeGreaterThan(10 * discStudy.sound.dragTorque)
    expect(reading.hottestCoil.number).toBe(1)
    expect(reading.loopLoss).toBeGreaterThan(0)
  })
  test('swapped phases charge as before', () => {
    const { reading } = caseOf(discStudy, 'swapped phases')
    expect(reading.dcCurrent / discStudy.sound.dcCurrent).toBeCloseTo(1, 6)
    expect(reading.sequence).toBe(-discStudy.sound.sequence)
  })
  test('the whole turn is drawn, p times over where every pole pair is alike', () => {
    const [wave] = discStudy.sound.waveform
    const p = discs.rotor.poleCount / 2
    expect(wave!.length % p).toBe(0)
    expect(wave![0]).toBeCloseTo(wave![wave!.length / p]!, 12)
  })
})

describe('law: a bridge with one bad diode', () => {
  const sound = discStudy.sound
  test('open: the machine alone reads as a sound one, its line carries direct current, the rotor turns faster', () => {
    const { reading, test: words } = caseOf(discStudy, 'open diode')
    expect(reading.phases).toEqual(sound.phases)
    expect(reading.dragTorque).toBe(sound.dragTorque)
    expect(reading.lineDirect[0]!).toBeLessThan(-0.1 * reading.dcCurrent)
    expect(reading.lineDirect.reduce((sum, A) => sum + A, 0)).toBeCloseTo(0, 5)
    expect(sound.lineDirect).toEqual([0, 0, 0])
    expect(reading.pulse).toBeGreaterThan(0.2)
    expect(sound.pulse).toBe(0)
    expect(reading.speed).toBeGreaterThan(sound.speed)
    expect(words).toContain('diode range')
  })
  test('a line off: two lines alone charge, with no direct current in them', () => {
    const { reading } = caseOf(discStudy, 'open line')
    expect(reading.lineDirect).toEqual([0, 0, 0])
    expect(reading.phaseLoss[0]!).toBeCloseTo(0, 9)
    expect(reading.phaseLoss[1]!).toBeCloseTo(reading.phaseLoss[2]!, 6)
    expect(reading.ripple).toBeGreaterThan(5 * sound.ripple)
  })
  test('shorted: it holds the hand back and brakes in the wind', () => {
    const { reading } = caseOf(discStudy, 'shorted diode')
    expect(reading.bridgeTorque).toBeGreaterThan(10 * sound.dragTorque)
    expect(reading.dcCurrent).toBeLessThan(0.6 * sound.dcCurrent)
    expect(reading.speed).toBeLessThan(sound.speed)
  })
  test('readings of a sound machine leave an open diode in question: the next is the test of the bridge', () => {
    const { phases, lines, corner, terminalResistance } = sound
    const { likely, next } = likelyDefects(
      { speed: sound.handSpeed, phases, lines, corner, resistances: terminalResistance, sequence: 1 },
      { ...discStudy, cases: discStudy.cases.filter(({ defect }) => 'line' in defect) },
    )
    expect(likely[0]!.words).toBe('nothing wrong')
    expect(next).toMatch(/^Test the bridge: /)
  })
})

describe('law: ohms between terminals', () => {
  test('alike phases: 2 R of a star, 2 R/3 of a delta, R each by itself', () => {
    expect(terminalResistances('star', [1, 1, 1])).toEqual([2, 2, 2])
    for (const R of terminalResistances('delta', [1, 1, 1])) expect(R).toBeCloseTo(2 / 3, 12)
    expect(terminalResistances('separate', [1, 2])).toEqual([1, 2])
  })
})

describe('law: readings lead back to their cause', () => {
  const readingsOf = ({ reading }: FaultStudy['cases'][number], turn: number) => {
    const turned = (values: readonly number[]) => values.map((_, k) => values[(k + turn) % values.length]!)
    return {
      speed: reading.handSpeed,
      phases: turned(reading.phases),
      lines: turned(reading.lines),
      corner: reading.corner,
      resistances: turned(reading.terminalResistance),
      ...(reading.sequence === 0 ? {} : { sequence: reading.sequence }),
    }
  }
  for (const kind of ['flipped magnet', 'missing magnet', 'reversed coil', 'reversed phase', 'open strand'])
    for (const turn of [0, 1])
      test(`${kind}, ${turn === 0 ? 'where the study has it' : 'in another phase'}`, () => {
        const one = caseOf(discStudy, kind)
        const { likely } = likelyDefects(readingsOf(one, turn), discStudy)
        expect(likely[0]!.words).toBe(one.words)
        expect(likely[0]!.distance).toBeLessThan(0.5)
        expect(likely[1]!.distance).toBeGreaterThan(1)
      })
  test('sound readings, twice as fast as the study and a little off: nothing wrong', () => {
    const { sound } = discStudy
    const off = [1.006, 0.995, 1.002]
    const { likely } = likelyDefects(
      {
        speed: 2 * sound.handSpeed,
        phases: sound.phases.map((volts, k) => 2 * volts * off[k]!),
        lines: sound.lines.map((volts, k) => 2 * volts * off[2 - k]!),
        resistances: sound.terminalResistance,
      },
      discStudy,
    )
    expect(likely[0]!.words).toBe('nothing wrong')
  })
  test('without a speed the ratios tell, and the next reading is one that tells the best two apart', () => {
    const one = caseOf(discStudy, 'reversed phase')
    const { likely, next } = likelyDefects(
      { lines: one.reading.lines.map((volts) => 3.3 * volts) },
      discStudy,
    )
    expect(likely[0]!.words).toBe(one.words)
    expect(next).toMatch(/^Read /)
  })
  test('no readings: nothing is more likely than a sound machine, and nothing is not a number', () => {
    const { likely } = likelyDefects({}, discStudy)
    expect(likely[0]!.words).toBe('nothing wrong')
    for (const { distance } of likely) expect(Number.isFinite(distance)).toBe(true)
  })
})

describe('law: the catalogue', () => {
  test('has every kind once that fits, each with its own words', () => {
    const list = usualDefects(designOf(discs))
    expect(new Set(list.map(({ kind }) => kind)).size).toBe(list.length)
    expect(list).toHaveLength(14)
    expect(new Set(list.map(defectWords)).size).toBe(list.length)
    expect(usualDefects(designOf(fixedDocument('drum'))).map(({ kind }) => kind)).not.toContain(
      'reversed coil',
    )
  })
  test('the document’s own defects come before the catalogue', () => {
    expect(discStudy.own).toBe(false)
    expect(drumStudy.own).toBe(true)
    expect(drumStudy.cases).toHaveLength(3)
    expect([...discStudy.refused, ...drumStudy.refused]).toEqual([])
  })
})
