/** The rule of the birth certificate: every number in a table says where it comes from. */

interface Certificate {
  readonly source: boolean
  readonly where: boolean
}

const isText = (value: unknown): boolean =>
  (typeof value === 'string' && value.trim() !== '') ||
  (Array.isArray(value) && value.length > 0 && value.every(isText))

const keysOf = (value: unknown): string[] =>
  typeof value === 'string' ? [value] : Array.isArray(value) ? value.flatMap(keysOf) : []

/**
 * Faults of one exported value: a number whose row or table, or anything around them, carries no `source` or no
 * `where`, and a `source` that is not in the bibliography. Functions carry their source in their comment.
 */
export function provenanceFaults(
  name: string,
  value: unknown,
  keys: ReadonlySet<string>,
  around: Certificate = { source: false, where: false },
): string[] {
  if (typeof value === 'number') {
    const lacks = (['source', 'where'] as const).filter((word) => !around[word])
    return lacks.length === 0 ? [] : [`${name} has no ${lacks.join(' and no ')}`]
  }
  if (typeof value !== 'object' || value === null) return []
  const record = value as Record<string, unknown>
  const here = {
    source: around.source || isText(record.source),
    where: around.where || isText(record.where),
  }
  const faults = keysOf(record.source)
    .filter((key) => !keys.has(key))
    .map((key) => `${name}.source: ${key} is not in the bibliography`)
  if (ArrayBuffer.isView(value)) return [...faults, ...provenanceFaults(`${name}[]`, 0, keys, here)]
  for (const [key, inner] of Object.entries(record)) {
    const found = provenanceFaults(`${name}.${key}`, inner, keys, here)
    faults.push(...found)
    // One fault tells the whole list: the next thousand rows lack the same.
    if (Array.isArray(value) && found.length > 0) break
  }
  return faults
}
