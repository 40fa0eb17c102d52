/** The verb that follows the heat of a design: its parts by wind, where the watts go, and how long it lasts. */
import { type HeatStudyOptions, heatStudy } from '../src/index.ts'
import { heatPage, heatResult } from '../src/output/heat-page.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export async function heatVerb(
  file: string,
  { json, ...options }: HeatStudyOptions & { readonly json: boolean },
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  const study = withProgress(heatStudy(chain, options))
  if (json) process.stdout.write(`${JSON.stringify(heatResult(study), null, 2)}\n`)
  else print(heatPage(study))
  const blocked = chain.concerns.some(
    ({ code, severity }) =>
      severity === 'blocking' && ['stator-heat', 'magnet-heat', 'plastic-softening'].includes(code),
  )
  return blocked ? 1 : 0
}
