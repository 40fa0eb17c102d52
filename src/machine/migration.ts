/** Steps that carry an older document to the present version. */
export type JsonObject = Readonly<Record<string, unknown>>

export interface Migration {
  /** The version that this step reads; it writes the next one. */
  readonly from: number
  readonly step: (document: JsonObject) => JsonObject
}

/** Version that the program reads and writes. */
export const designVersion = 2

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Magnets came in blocks only, with at most one reading of a field sensor. */
function withMagnetShape(document: JsonObject): JsonObject {
  const { rotor } = document
  if (!isObject(rotor) || !isObject(rotor.magnet)) return document
  const { hallReading, ...magnet } = rotor.magnet
  const readings = isObject(hallReading) ? { readings: [{ kind: 'hall', ...hallReading }] } : {}
  return { ...document, rotor: { ...rotor, magnet: { shape: 'block', ...magnet, ...readings } } }
}

/** In rising order, one for every version before the present. */
export const migrations: readonly Migration[] = [{ from: 1, step: withMagnetShape }]

export const oldestVersion = 1

/** The document at `target`, or the version that cannot be read. */
export function migrated(
  document: JsonObject,
  steps: readonly Migration[] = migrations,
  target: number = designVersion,
): { readonly document: JsonObject } | { readonly unknownVersion: unknown } {
  let current = document
  while (current.gustloom !== target) {
    const version = current.gustloom
    const next = steps.find(({ from }) => from === version)
    if (!next) return { unknownVersion: version }
    current = { ...next.step(current), gustloom: next.from + 1 }
  }
  return { document: current }
}
