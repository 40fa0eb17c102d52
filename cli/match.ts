/** The verb that sets blades against generator, and tries remedies on the whole chain. */
import { chainOf, generatorTarget, matchMap, matchRemedies, Refusal, resolveDesign } from '../src/index.ts'
import { type MatchPageParts, matchPage, matchResult } from '../src/output/match-page.ts'
import { type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export async function matchVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const parsed = await readDesign(file)
  if (!parsed.ok) return printFaults(parsed.faults, json)
  const { design } = parsed
  let parts: MatchPageParts
  try {
    const chain = withProgress(chainOf(resolveDesign(design)))
    const map = withProgress(matchMap(chain))
    const report = withProgress(matchRemedies(design, { chain }))
    parts = { name: design.name, map, target: generatorTarget(chain, map), report }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the machine', condition, received: 'this design', code }], json)
  }
  if (json) process.stdout.write(`${JSON.stringify(matchResult(parts), null, 2)}\n`)
  else print(matchPage(parts))
  return 0
}
