/** The guess that bears most of a spread, in the words of the document. */
import type { ResultSpread } from '../../src/index.ts'
import { words } from '../station/label.ts'
import { say } from '../text/say.ts'

/** Empty where nothing is guessed, or the spread is not worked out yet. */
export function dominantGuess(spread: ResultSpread | undefined): string {
  const cause = spread?.causes[0]
  return cause === undefined
    ? ''
    : say`The spread is ${Math.round(100 * cause.share)} % from “${words(cause.path.split('.').at(-1) ?? '')}”.`
}
