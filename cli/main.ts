#!/usr/bin/env node
/** The command `gustloom`: reads its words and hands them to the verbs. */
import { Command } from 'commander'
import { designJsonSchema } from '../src/index.ts'
import { checkVerb, computeVerb } from './compute.ts'

const json = ['--json', 'print JSON for other programs instead of a page'] as const

const program = new Command('gustloom')
  .description('Computes small wind generators from the wind to the battery.')
  .showHelpAfterError()
  .exitOverride((error) => {
    process.exit(error.exitCode === 0 ? 0 : 2)
  })
  .addHelpText('after', '\nExit status: 0 fine, 1 concerns that block the design’s class, 2 bad input.')

program
  .command('compute')
  .description('the whole chain: watts, table per wind, concerns')
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await computeVerb(file, { json: options.json === true })
  })

program
  .command('check')
  .description('faults of the document and concerns about the machine, nothing else')
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await checkVerb(file, { json: options.json === true })
  })

program
  .command('schema')
  .description('the JSON Schema of the design document')
  .action(() => {
    process.stdout.write(`${JSON.stringify(designJsonSchema(), null, 2)}\n`)
  })

// a reader that closes early, such as head, is no error
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})

await program.parseAsync()
