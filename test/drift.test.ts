/** Checks that generated files are what their declarations say now. */
import { describe, expect, test } from 'vitest'
import { generatedFiles } from '../scripts/generated-file.ts'
import { concernsPage, designFieldsPage, refusalsPage } from '../scripts/page.ts'
import type { FieldDescription } from '../src/machine/design-fields.ts'
import { exists, textOf } from './repository.ts'

describe('law: generated files have not drifted', () => {
  for (const [path, textNow] of Object.entries(generatedFiles))
    test(path, () => {
      const wanted = textNow()
      expect(exists(path), `${path} is missing; npm run generate writes it`).toBe(true)
      expect(textOf(path) === wanted, `${path} differs; npm run generate writes it anew`).toBe(true)
    })
})

describe('law: generated pages say what they are given', () => {
  test('refusals', () => {
    expect(refusalsPage({ 'too-odd': 'a number | is odd' })).toContain('| `too-odd` | a number \\| is odd |')
  })
  test('concerns, by code', () => {
    const text = concernsPage([
      { code: 'b-late', title: 'Late | last', basis: 'asked so', answeredBy: 'Read twice.' },
      { code: 'a-first', title: 'First', basis: 'asked first' },
    ])
    expect(text).toContain(
      '| `a-first` | First | asked first | none |\n| `b-late` | Late \\| last | asked so | Read twice. |',
    )
  })
  test('design fields, grouped by noun', () => {
    const gap: FieldDescription = {
      path: 'rotor.airGap_mm',
      kind: 'quantity',
      help: 'Gap | clear',
      unit: 'mm',
      symbol: 'g',
      minimum: 0.3,
      maximum: 50,
      words: [],
      default: 2,
      optional: true,
      when: 'rotor.kind = disc',
    }
    const bare = {
      unit: '',
      symbol: '',
      minimum: undefined,
      maximum: undefined,
      default: undefined,
      when: '',
    }
    const text = designFieldsPage([
      { ...gap, ...bare, path: 'name', kind: 'text', optional: false },
      gap,
      { ...gap, ...bare, path: 'rotor.kind', kind: 'choice', words: ['disc', 'drum'] },
      { ...gap, ...bare, path: 'magnets[].width_mm', maximum: 4e6 },
    ])
    expect(text).toContain('## The document itself')
    expect(text.match(/^## rotor$/gm)).toHaveLength(1)
    expect(text).toContain('## magnets')
    expect(text).toContain('| at most 4e+6 |')
    expect(text).toContain(
      '| `rotor.airGap_mm` | quantity | Gap \\| clear | mm | g | 0.3 to 50 |  | `2` | `rotor.kind = disc` |',
    )
    expect(text).toContain(
      '| `rotor.kind` | choice | Gap \\| clear |  |  |  | `disc`, `drum` | may be left out |  |',
    )
    expect(text).toContain('| `name` | text | Gap \\| clear |  |  |  |  | must be there |  |')
  })
})
