/** The files that are written from declarations in the source, as they should be now. */
import { concernRules } from '../src/analysis/concerns.ts'
import { designJsonSchema } from '../src/machine/design.ts'
import { designFields } from '../src/machine/design-fields.ts'
import { resultFields } from '../src/output/result.ts'
import { refusalCodes } from '../src/refusal/code.ts'
import { figureMethodText } from './figure-method.ts'
import { methods } from './method.ts'
import { methodPage, roomsOf } from './method-page.ts'
import { concernsPage, designFieldsPage, refusalsPage, resultFieldsPage } from './page.ts'
import { engineTemplateText } from './text.ts'

const physics = methods()

/** Path from the root → how its text is made, for every generated file. */
export const generatedFiles: Readonly<Record<string, () => string>> = {
  'docs/refusals.md': () => refusalsPage(refusalCodes),
  'docs/concerns.md': () => concernsPage(concernRules),
  'docs/design-fields.md': () => designFieldsPage(designFields()),
  'docs/result-fields.md': () => resultFieldsPage(resultFields),
  ...Object.fromEntries(
    roomsOf(physics).map((room) => [`docs/methods/${room}.md`, () => methodPage(room, physics)]),
  ),
  'web/hint/figure-method.json': figureMethodText,
  'web/text/engine-template.json': engineTemplateText,
  'design.schema.json': () => `${JSON.stringify(designJsonSchema(), null, 2)}\n`,
}
