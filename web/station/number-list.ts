/** A list of numbers in one line of text, in the units and the language of the page. */
import type { FormField } from '../../src/index.ts'
import { quantitySaying } from './number-saying.ts'

/** Where the comma stands before decimals, a semicolon parts the numbers. */
const parting = { '.': /[\s,;]+/, ',': /[\s;]+|,\s+/ } as const
const joint = { '.': ', ', ',': '; ' } as const

export const numberList = (field: FormField, text: string, mark: '.' | ','): unknown => {
  if (text.trim() === '') return undefined
  const { read } = quantitySaying(field)
  return (
    text
      .split(parting[mark])
      .filter((part) => part !== '')
      // 1,3,5 is no number in any language
      .flatMap((part) => (/^\d+(?:,\d+){2,}$/.test(part) ? part.split(',') : [part]))
      .map(read)
  )
}

export function listText(field: FormField, value: unknown, mark: '.' | ','): string {
  if (!Array.isArray(value)) return value === undefined ? '' : String(value)
  const { show } = quantitySaying(field)
  return value.map(show).join(joint[mark])
}
