/** The files that are written from declarations in the source, as they should be now. */
import { concernRules } from '../src/analysis/concerns.ts'
import { designJsonSchema } from '../src/machine/design.ts'
import { designFields } from '../src/machine/design-fields.ts'
import { resultFields } from '../src/output/result.ts'
import { refusalCodes } from '../src/refusal/code.ts'
import { concernsPage, designFieldsPage, refusalsPage, resultFieldsPage } from './page.ts'

/** Path from the root → how its text is made, for every generated file. */
export const generatedFiles: Readonly<Record<string, () => string>> = {
  'docs/refusals.md': () => refusalsPage(refusalCodes),
  'docs/concerns.md': () => concernsPage(concernRules),
  'docs/design-fields.md': () => designFieldsPage(designFields()),
  'docs/result-fields.md': () => resultFieldsPage(resultFields),
  'design.schema.json': () => `${JSON.stringify(designJsonSchema(), null, 2)}\n`,
}
