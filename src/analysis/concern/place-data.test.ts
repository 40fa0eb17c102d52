/** Checks the concern of files that tell a place. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { placeData, tellsPlace } from './place-data.ts'

describe('law: what is stamped by the machine that made it', () => {
  test('kinds', () => {
    expect(tellsPlace({ kind: 'photo', placeData: 'not said' })).toBe('perhaps')
    expect(tellsPlace({ kind: 'drawing', placeData: 'not said' })).toBe('no')
    expect(tellsPlace({ kind: 'drawing', placeData: 'still in it' })).toBe('yes')
    expect(tellsPlace({ kind: 'photo', placeData: 'stripped' })).toBe('no')
  })
  const shared = (...files: readonly (readonly [string, string, string?])[]) =>
    placeData.judge(
      sampleChain({
        'sharing.files': files.map(([name, kind, place]) => ({
          name,
          kind,
          ...(place === undefined ? {} : { placeData: place }),
        })),
      }),
    )
  test('the ones that tell come first', () => {
    expect(placeData.judge(sampleChain())).toBeUndefined()
    expect(shared(['mast.jpg', 'photo', 'stripped'], ['rotor.dxf', 'drawing'])).toBeUndefined()
    expect(shared(['mast.jpg', 'photo'])?.severity).toBe('note')
    const both = shared(['coil.jpg', 'photo'], ['mast.jpg', 'photo', 'still in it'])
    expect(both?.severity).toBe('warning')
    expect(both?.path).toBe('sharing.files[1].placeData')
    expect(both?.figures).toBe('1 of 2 hold it: “mast.jpg”. 1 of 2 may: “coil.jpg”.')
  })
})
