/** Numbers as loggers and spreadsheets write them: either decimal mark, a unit behind, words for what is missing. */

export type DecimalMark = '.' | ','

export type CellReading =
  | { readonly kind: 'number'; readonly value: number; readonly unit: string }
  | { readonly kind: 'missing' }
  | { readonly kind: 'unreadable' }

const missing: CellReading = { kind: 'missing' }
const unreadable: CellReading = { kind: 'unreadable' }

const missingWords =
  /^(?:|[-–—*?.x_]+|#?n\/?a|nan|null|none|nil|err|error|missing|invalid|#+|#value!|inf|-inf)$/i

/** Readings that loggers write where they have none: all ones of 15 and 16 bits, and rows of nines. */
const missingNumbers = new Set([
  65535, 65534, 32767, -32768, 6999, 7999, 9999, 999.9, 999, 9999.9, 99.99, 99.9, 99999, -99, -99.9, -999,
  -999.9, -9999,
])

const shape = /^([+-]?)(\d+(?:[.,]\d*)*|[.,]\d+)(e[+-]?\d+)?(?:\s*([\p{L}°%[(][^,;:]{0,15}))?$/iu

/** The digits with a point as decimal mark, groups of three taken together; undefined where the marks make no sense. */
function pointed(digits: string, decimal: DecimalMark): string | undefined {
  const group = decimal === '.' ? ',' : '.'
  if (digits.includes(group)) {
    const [whole = '', ...rest] = digits.split(decimal)
    if (rest.length > 1 || !/^\d{1,3}$/.test(whole.split(group)[0]!)) return undefined
    if (
      !whole
        .split(group)
        .slice(1)
        .every((part) => part.length === 3) ||
      rest.some((part) => part.includes(group))
    )
      return undefined
    // a single group and no decimals may as well be a decimal mark of the other kind
    if (rest.length === 0 && whole.split(group).length < 3) return undefined
    return [whole.replaceAll(group, ''), ...rest].join('.')
  }
  const parts = digits.split(decimal)
  return parts.length > 2 ? undefined : parts.join('.')
}

/** What a cell says, with its numbers in this decimal mark. */
export function cellReading(cell: string, decimal: DecimalMark): CellReading {
  // most cells are plain digits; Number is faster than any pattern
  if (decimal === '.' || !/[.,]/.test(cell)) {
    const plain = cell === '' ? Number.NaN : Number(cell)
    if (Number.isFinite(plain) && /^[+-]?[\d.]/.test(cell) && !/^[+-]?0[xbo]/i.test(cell))
      return missingNumbers.has(plain) ? missing : { kind: 'number', value: plain, unit: '' }
  }
  const text = cell.replace('−', '-')
  if (/^[+-]?0[xbo]/i.test(text)) return unreadable
  if (missingWords.test(text)) return missing
  const match = shape.exec(text)
  if (!match) return unreadable
  const [, sign = '', digits = '', exponent = '', unit = ''] = match
  const point = pointed(digits, decimal)
  if (point === undefined) return unreadable
  const value = Number(`${sign}${point}${exponent}`)
  if (!Number.isFinite(value)) return unreadable
  return missingNumbers.has(value) ? missing : { kind: 'number', value, unit: unit.trim() }
}
