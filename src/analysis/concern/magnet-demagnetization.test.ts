/** Checks the concern of magnets that frost or a short weakens for good. */
import { describe, expect, test } from 'vitest'
import { remedyTexts } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { rotorField } from '../air-gap-field.ts'
import { conductorLayout } from '../conductor-layout.ts'
import type { MagnetCase, MagnetDemagnetization } from '../magnet-demagnetization.ts'
import { magnetLoad } from '../magnet-load.ts'
import type { ChainView } from './concern.ts'
import {
  demagnetizationVerdict,
  frostAllowance,
  magnetDemagnetizationRule,
  magnetTemperatures,
} from './magnet-demagnetization.ts'

/** The sample with the real field of its magnets and its real winding. */
const chainWith = (
  fields: Readonly<Record<string, unknown>> = {},
  change: (chain: ChainView) => Partial<ChainView> = () => ({}),
) =>
  sampleChain(fields, (chain) => {
    const { machine } = chain
    const field = rotorField(machine, machine.site.ambient)
    const layout = conductorLayout(machine)
    return { field, layout, magnetLoad: magnetLoad(machine, field, layout), ...change(chain) }
  })

const calm: MagnetCase = {
  temperature: 250,
  polarization: 1.3,
  worstField: -4e5,
  kneeField: 8e5,
  kneeRatio: 0.5,
  greatestRatio: 0.55,
  margin: 4e5,
  shareBeyondKnee: 0,
  irreversibleLoss: 0,
}
const past: MagnetCase = { ...calm, kneeRatio: 1.1, greatestRatio: 1.2, irreversibleLoss: 0.03 }
const result: MagnetDemagnetization = {
  grade: 'N42',
  reversibleCoefficient: -0.0012,
  rest: { cold: calm, hot: calm },
  short: { cold: calm, hot: calm },
  limit: { side: 'hot', rest: 350, short: 340 },
  armature: { speed: 100, steadyCurrent: 50, worstField: -1e5 },
}

describe('law: verdict', () => {
  test('calm says nothing', () => expect(demagnetizationVerdict(result, true)).toBeUndefined())
  test('frost and a meant short are grave, a fault’s short and heat are not', () => {
    const frost = { ...result, rest: { cold: past, hot: calm } }
    expect(demagnetizationVerdict(frost, false)?.kind).toBe('grave')
    const short = { ...result, short: { cold: calm, hot: past } }
    expect(demagnetizationVerdict(short, true)?.kind).toBe('grave')
    expect(demagnetizationVerdict(short, false)?.kind).toBe('past')
    const heat = { ...result, rest: { cold: calm, hot: past } }
    expect(demagnetizationVerdict(heat, true)?.kind).toBe('past')
  })
  test('a little past, or past within the spread only, warns', () => {
    const little = { ...result, rest: { cold: { ...past, irreversibleLoss: 0.004 }, hot: calm } }
    expect(demagnetizationVerdict(little, true)?.kind).toBe('past')
    const open = { ...result, short: { cold: { ...calm, kneeRatio: 0.97, greatestRatio: 1.02 }, hot: calm } }
    expect(demagnetizationVerdict(open, true)?.kind).toBe('perhaps')
  })
  test('the worst of the gravest is told', () => {
    const both = {
      ...result,
      rest: { cold: past, hot: calm },
      short: { cold: { ...past, greatestRatio: 1.4 }, hot: calm },
    }
    expect(demagnetizationVerdict(both, true)?.ofShort).toBe(true)
    expect(demagnetizationVerdict(both, false)?.ofShort).toBe(false)
  })
})

describe('law: the rule', () => {
  test('thick magnets on iron are silent; a field without magnets is too', () => {
    expect(magnetDemagnetizationRule.judge(chainWith())).toBeUndefined()
    expect(magnetDemagnetizationRule.judge(sampleChain())).toBeUndefined()
  })
  test('thin ferrite in frost blocks outdoors and warns on the bench', () => {
    const thin = {
      'rotor.magnet.grade': 'Y30',
      'rotor.magnet.recoilPermeability': 1.1,
      'rotor.magnet.thickness_mm': 6,
      'rotor.backIron': { kind: 'none' },
      'site.ambient_degC': 0,
    }
    const concern = magnetDemagnetizationRule.judge(chainWith(thin))
    expect(concern?.severity).toBe('blocking')
    expect(concern?.what).toContain('frost')
    expect(concern?.why).toContain('ferrite')
    expect(concern?.figures).toMatch(/Y30/)
    expect(concern?.figures).not.toMatch(/NaN|Infinity|undefined/)
    const bench = chainWith({ ...thin, 'purpose.class': 'bench', 'site.ambient_degC': -35 })
    expect(magnetDemagnetizationRule.judge(bench)?.severity).toBe('warning')
  })
  test('a violent short through a low resistance blocks where a switch makes it, else warns', () => {
    const violent = (electrical: string) =>
      chainWith({ 'protection.electrical': electrical }, ({ voltage, rows }) => ({
        voltage: {
          ...voltage,
          phases: voltage.phases.map((phase) => ({ ...phase, resistance: 0.01 })),
          inductance: voltage.inductance.map((row) => row.map((L) => L / 8)),
        },
        rows: rows.map((row) => ({ ...row, copperTemperature: 360 })),
      }))
    const meant = magnetDemagnetizationRule.judge(violent('shorting switch'))
    expect(meant?.severity).toBe('blocking')
    expect(meant?.what).toContain('shorted')
    expect(remedyTexts(meant).join(' ')).toContain('Brake before the storm')
    expect(magnetDemagnetizationRule.judge(violent('dump load'))?.severity).toBe('warning')
  })
  test('temperatures: frost and sun outdoors only, work warms as the net of heat says', () => {
    const outdoor = sampleChain()
    const { ambient } = outdoor.machine.site
    expect(magnetTemperatures(outdoor).coldest).toBe(ambient - frostAllowance)
    const bench = sampleChain({ 'purpose.class': 'bench' })
    expect(magnetTemperatures(bench).coldest).toBe(ambient)
    expect(magnetTemperatures(bench).hottest).toBe(ambient)
    const hottest = Math.max(...outdoor.rows.map(({ temperatures }) => temperatures.magnets))
    expect(hottest).toBeGreaterThan(ambient)
    expect(magnetTemperatures(outdoor).hottestAtWork).toBe(hottest)
  })
})
