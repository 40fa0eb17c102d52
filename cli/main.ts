#!/usr/bin/env node
/** The command `gustloom`: reads its words and hands them to the verbs. */
import { Command, InvalidArgumentError, Option } from 'commander'
import {
  type ContestRule,
  contestRules,
  designJsonSchema,
  meterNames,
  type SpeedUnit,
  type StormWindKind,
  speedUnits,
  stormWindKinds,
} from '../src/index.ts'
import { type BladesOptions, bladesVerb } from './blades.ts'
import { compareVerb } from './compare.ts'
import { checkVerb, computeVerb } from './compute.ts'
import { faultsVerb } from './faults.ts'
import { matchVerb } from './match.ts'
import { safetyVerb } from './safety.ts'
import { stormVerb } from './storm.ts'
import { turnVerb } from './turn.ts'
import { windVerb } from './wind.ts'
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

/** Numbers between commas, none below zero. */
const list = (text: string): number[] =>
  text.split(',').map((part) => {
    const value = Number(part)
    if (part.trim() === '' || !(value >= 0) || !Number.isFinite(value))
      throw new InvalidArgumentError('It must be numbers of zero or above with commas between them.')
    return value
  })

program
  .command('turn')
  .description('turned by hand: what a meter shows between any two points, and what that proves')
  .argument('<file>', 'design document, or - for standard input')
  .option('--rpm <number>', 'speed of the shaft', positive, 60)
  .addOption(new Option('--meter <kind>', 'in place of the design’s own meter').choices(meterNames))
  .option('--read <volts>', 'what you read, to compare', positive)
  .option('--between <points>', 'where: line-1-2, phase-1, corner, bridge, capacitor …')
  .option('--lines <volts>', 'read between terminals 1–2, 2–3, 3–1: which defect explains them?', list)
  .option('--phases <volts>', 'read across each phase', list)
  .option('--corner <volts>', 'read across all phases in series', list)
  .option('--ohms <ohms>', 'read between terminals 1–2, 2–3, 3–1', list)
  .option(...json)
  .action(
    async (
      file: string,
      options: {
        rpm: number
        meter?: string
        read?: number
        between?: string
        lines?: number[]
        phases?: number[]
        corner?: number[]
        ohms?: number[]
        json?: boolean
      },
    ) => {
      const { ohms, corner, json: asJson, ...rest } = options
      process.exitCode = await turnVerb(file, {
        ...rest,
        ...(corner?.[0] === undefined ? {} : { corner: corner[0] }),
        ...(ohms ? { resistances: ohms } : {}),
        json: asJson === true,
      })
    },
  )

program
  .command('blades')
  .description('chord and twist for a tip-speed ratio, straight lines for carving, and what each shape costs')
  .argument('<file>', 'design document, or - for standard input')
  .option('--tip-speed-ratio <number>', 'to shape for, instead of the document’s', positive)
  .option('--blades <number>', 'how many, instead of the document’s', positive)
  .option('--chord <mm>', 'widest chord', positive)
  .option('--plank-width <mm>', 'room across the disc', positive)
  .option('--plank-depth <mm>', 'room along the shaft', positive)
  .option('--pipe <mm>', 'mean diameter of the pipe that blades are cut from', positive)
  .option('--wind <m/s>', 'wind to compare in', positive)
  .option('--polar <file>', 'lift and drag of an own section: lines of angle in degrees, lift, drag')
  .option('--reynolds <number>', 'Reynolds number of that file, where it tells none', positive)
  .option(...json)
  .action(async (file: string, options: Omit<BladesOptions, 'json'> & { json?: boolean }) => {
    process.exitCode = await bladesVerb(file, { ...options, json: options.json === true })
  })

program
  .command('match')
  .description(
    'blades against generator wind by wind, what they ask of each other, and remedies with their effect',
  )
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await matchVerb(file, { json: options.json === true })
  })

program
  .command('wind')
  .description('a wind logger’s file: what became of every row, what the wind is like, a design’s year in it')
  .argument('<file>', 'delimited text of times and wind speeds, or - for standard input')
  .option('--design <file>', 'a design document to set into that wind')
  .addOption(
    new Option('--unit <unit>', 'of the speeds, where the file does not say').choices(
      Object.keys(speedUnits),
    ),
  )
  .addOption(
    new Option('--dates <order>', 'what comes first in a date, where no date tells').choices([
      'day',
      'month',
    ]),
  )
  .option('--column <head>', 'head or number of the column of wind speeds')
  .option('--height <metres>', 'height of the anemometer above ground', positive)
  .option('--roughness <metres>', 'roughness length of the ground: height by the logarithmic law', positive)
  .option(...json)
  .action(
    async (
      file: string,
      options: {
        design?: string
        unit?: SpeedUnit
        dates?: 'day' | 'month'
        column?: string
        height?: number
        roughness?: number
        json?: boolean
      },
    ) => {
      process.exitCode = await windVerb(file, {
        json: options.json === true,
        design: options.design,
        unit: options.unit,
        dateOrder: options.dates === undefined ? undefined : `${options.dates} first`,
        windColumn: options.column,
        measuredHeight: options.height,
        roughness: options.roughness,
      })
    },
  )

program
  .command('safety')
  .description('the electrical side: volts and amps, what must stand on the labels, order of switching')
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await safetyVerb(file, { json: options.json === true })
  })

program
  .command('storm')
  .description(
    'a gust or storm second by second with one failure after another: speed, volts, heat, what holds',
  )
  .argument('<file>', 'design document, or - for standard input')
  .addOption(
    new Option('--kind <kind>', 'shape of the wind')
      .choices(stormWindKinds.filter((kind) => kind !== 'logged wind'))
      .default('operating gust'),
  )
  .option('--wind <number>', 'its highest wind, m/s; else the site’s storm', positive)
  .option('--log <file>', 'a logged wind instead: rows of seconds; metres per second')
  .option('--event <key>', 'one failure only, for example load-lost or winding-open')
  .option('--csv', 'the trace of that failure as comma-separated values')
  .option(...json)
  .action(
    async (
      file: string,
      options: {
        kind: Exclude<StormWindKind, 'logged wind'>
        wind?: number
        log?: string
        event?: string
        csv?: boolean
        json?: boolean
      },
    ) => {
      const { kind, wind, log, event } = options
      const csv = options.csv === true
      process.exitCode = await stormVerb(file, {
        kind,
        ...(wind === undefined ? {} : { top: wind }),
        ...(log === undefined ? {} : { log }),
        ...(event === undefined && !csv ? {} : { only: event ?? 'nothing' }),
        csv,
        json: options.json === true,
      })
    },
  )

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
