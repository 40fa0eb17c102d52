/** How long and how deep a document from outside may be: a guard against hostile ones, asked before it is read. */

/** A document of a whole workshop is some kilobytes [characters]. */
export const longestDocument = 1_000_000
export const deepestDocument = 40

/** Nesting depth, counted without recursion so that a hostile document cannot exhaust the stack. */
export function depthOf(value: unknown): number {
  let deepest = 0
  const queue: (readonly [unknown, number])[] = [[value, 0]]
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const [item, depth] = next
    if (typeof item !== 'object' || item === null) continue
    deepest = Math.max(deepest, depth + 1)
    if (deepest > deepestDocument) return deepest
    for (const inner of Object.values(item)) queue.push([inner, depth + 1])
  }
  return deepest
}
