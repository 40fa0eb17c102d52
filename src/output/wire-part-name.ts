/** What the parts of a winding are called on pages. */
import type { WirePart } from '../analysis/wire-part.ts'

export const wirePartNames: Readonly<Record<WirePart, string>> = {
  run: 'straight run',
  'slanted run': 'slanted run',
  crown: 'crown',
  side: 'coil side',
  'slanted side': 'slanted coil side',
  'rounded side': 'rounded coil side',
  end: 'coil end',
}
