#!/usr/bin/env node
/** The command `gustloom`: reads its words and hands them to the verbs. */
import { Command, InvalidArgumentError, Option } from 'commander'
import { type ContestRule, contestRules, designJsonSchema } from '../src/index.ts'
import { compareVerb } from './compare.ts'
import { checkVerb, computeVerb } from './compute.ts'
import { faultsVerb } from './faults.ts'
import { wiresVerb } from './wires.ts'

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

/** What one of the units that people give an amount in is in SI: grams, cubic centimetres, watts, money. */
const amountUnits: Readonly<Record<ContestRule, number>> = {
  'equal-copper-mass': 1e-3,
  'equal-winding-volume': 1e-6,
  'equal-loss': 1,
  'equal-cost': 1,
  'as-they-are': 1,
}

function positive(text: string): number {
  const value = Number(text)
  if (!(value > 0) || !Number.isFinite(value))
    throw new InvalidArgumentError('It must be a number above zero.')
  return value
}

program
  .command('compare')
  .description('two or more designs under a rule that holds something equal: figures, watts by wind, verdict')
  .argument('<files...>', 'design documents; the first sets what is held equal')
  .addOption(
    new Option('--rule <rule>', 'what is held equal').choices(contestRules).default('equal-copper-mass'),
  )
  .option('--amount <number>', 'of it: g of copper, cm³ of winding, W in the copper, or money', positive)
  .option('--keep-turns', 'leave the turns as they are, instead of letting current begin at one speed')
  .option(...json)
  .action(
    async (
      files: string[],
      options: { rule: ContestRule; amount?: number; keepTurns?: boolean; json?: boolean },
    ) => {
      const { rule, amount, keepTurns } = options
      process.exitCode = await compareVerb(files, {
        rule,
        ...(amount === undefined ? {} : { amount: amount * amountUnits[rule] }),
        keepTurns: keepTurns === true,
        json: options.json === true,
      })
    },
  )

program
  .command('wires')
  .description('the same winding in the wire sizes next to its own: turns, ohms, volts, heat, watts')
  .argument('<file>', 'design document, or - for standard input')
  .option('--keep-turns', 'the design’s own turns in every size, where they fit')
  .option(...json)
  .action(async (file: string, options: { keepTurns?: boolean; json?: boolean }) => {
    process.exitCode = await wiresVerb(file, {
      keepTurns: options.keepTurns === true,
      json: options.json === true,
    })
  })

program
  .command('faults')
  .description('the machine with one defect at a time: volts, ohms, amps, heat, and what tells them apart')
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await faultsVerb(file, { json: options.json === true })
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
