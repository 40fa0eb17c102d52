#!/usr/bin/env node
/** The command `gustloom`: reads its words and hands them to the verbs. */
import { Command, InvalidArgumentError, Option } from 'commander'
import {
  type ContestRule,
  contestRules,
  designJsonSchema,
  fewestBuilds,
  meterNames,
  mostBuilds,
  type SpeedUnit,
  type StormWindKind,
  speedUnits,
  stormWindKinds,
} from '../src/index.ts'
import { type BladesOptions, bladesVerb } from './blades.ts'
import { compareVerb } from './compare.ts'
import { checkVerb, computeVerb } from './compute.ts'
import { faultsVerb } from './faults.ts'
import { firstVerb } from './first.ts'
import { heatVerb } from './heat.ts'
import { matchVerb } from './match.ts'
import { mechanicsVerb } from './mechanics.ts'
import { remediesVerb } from './remedies.ts'
import { safetyVerb } from './safety.ts'
import { scenariosVerb } from './scenarios.ts'
import { dayOf, sheetVerb } from './sheet.ts'
import { spreadVerb } from './spread.ts'
import { toleranceVerb } from './tolerance.ts'
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
  .addHelpText('after', '\nExit status: 0 fine, 1 open concerns that block the design’s class, 2 bad input.')

program
  .command('first')
  .description('first whole machines from the magnets, wire, battery and wind that you have')
  .argument('<file>', 'what you have, as in examples/stock, or - for standard input')
  .option('--trials <number>', 'whole machines computed for each kind, 80 if left out', positive)
  .option('--design [kind]', 'the design document of the best machine, or of the best of a kind, instead')
  .option(...json)
  .action(async (file: string, options: { trials?: number; design?: string | true; json?: boolean }) => {
    process.exitCode = await firstVerb(file, { ...options, json: options.json === true })
  })

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
  .command('remedies')
  .description('what helps against the concerns: each remedy tried on the whole chain, with what it costs')
  .argument('<file>', 'design document, or - for standard input')
  .option('--concern <code>', 'this concern only')
  .option(...json)
  .action(async (file: string, options: { concern?: string; json?: boolean }) => {
    process.exitCode = await remediesVerb(file, { concern: options.concern, json: options.json === true })
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
  .command('spread')
  .description(
    'all guesses at once: how far they let the results be off, whose doing it is, what to measure next',
  )
  .argument('<file>', 'design document, or - for standard input')
  .option('--samples <number>', 'a power of two, 16 to 16384', positive)
  .option('--seed <number>', 'another draw of them, 1 if left out', positive)
  .option(...json)
  .action(async (file: string, options: { samples?: number; seed?: number; json?: boolean }) => {
    process.exitCode = await spreadVerb(file, { ...options, json: options.json === true })
  })

const whole = (least: number, most: number) => (text: string) => {
  const value = Number(text)
  if (!Number.isInteger(value) || value < least || value > most)
    throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`)
  return value
}

program
  .command('tolerance')
  .description(
    'built many times as sloppily as the document says: scatter, share that reaches the target, what to tighten',
  )
  .argument('<file>', 'design document, or - for standard input')
  .option('--builds <number>', 'how many builds', whole(fewestBuilds, mostBuilds))
  .option('--seed <number>', 'another draw of them, 1 if left out', whole(0, 0xffffffff))
  .option(...json)
  .action(async (file: string, options: { builds?: number; seed?: number; json?: boolean }) => {
    process.exitCode = await toleranceVerb(file, { ...options, json: options.json === true })
  })

program
  .command('mechanics')
  .description(
    'will it burst, rub, bend or seize: each quantity beside its limit, and force against distance',
  )
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await mechanicsVerb(file, { json: options.json === true })
  })

program
  .command('safety')
  .description('the electrical side: volts and amps, what must stand on the labels, order of switching')
  .argument('<file>', 'design document, or - for standard input')
  .option(...json)
  .action(async (file: string, options: { json?: boolean }) => {
    process.exitCode = await safetyVerb(file, { json: options.json === true })
  })

program
  .command('scenarios')
  .description(
    'second by second from the first turn to gusts and one failure after another: speed, volts, heat, what holds, what each class of use makes of it',
  )
  .argument('<file>', 'design document, or - for standard input')
  .addOption(
    new Option('--kind <kind>', 'shape of the wind in which things fail')
      .choices(stormWindKinds.filter((kind) => kind !== 'logged wind'))
      .default('operating gust'),
  )
  .option('--wind <number>', 'its highest wind, m/s; else the site’s storm', positive)
  .option('--log <file>', 'a logged wind instead: rows of seconds; metres per second')
  .option('--only <key>', 'one scenario only, for example cut-in, load-lost or magnet-off')
  .option('--csv <key>', 'the trace of one scenario as comma-separated values')
  .option(...json)
  .action(
    async (
      file: string,
      options: {
        kind: Exclude<StormWindKind, 'logged wind'>
        wind?: number
        log?: string
        only?: string
        csv?: string
        json?: boolean
      },
    ) => {
      const { kind, wind, log, csv, only = csv } = options
      process.exitCode = await scenariosVerb(file, {
        kind,
        ...(wind === undefined ? {} : { top: wind }),
        ...(log === undefined ? {} : { log }),
        ...(only === undefined ? {} : { only }),
        csv: csv !== undefined,
        json: options.json === true,
      })
    },
  )

program
  .command('heat')
  .description('copper, resin, gap air and magnets by wind, where the heat goes, and how long until a limit')
  .argument('<file>', 'design document, or - for standard input')
  .option('--current <number>', 'of a heat run on the bench, A in every phase', positive)
  .option(...json)
  .action(async (file: string, { current, json: asJson }: { current?: number; json?: boolean }) => {
    process.exitCode = await heatVerb(file, {
      ...(current === undefined ? {} : { current }),
      json: asJson === true,
    })
  })

program
  .command('sheet')
  .description('the design on one page, A4 or Letter, as HTML to print and hang beside the bench')
  .argument('<file>', 'design document, or - for standard input')
  .option('--date <day>', 'day that the sheet bears, today if left out', dayOf)
  .action(async (file: string, options: { date?: string }) => {
    process.exitCode = await sheetVerb(file, options)
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
