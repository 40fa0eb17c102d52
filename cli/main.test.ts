/** Checks of the command as somebody runs it: exit status, streams, colour, JSON. */
import { spawn } from 'node:child_process'
import { describe, expect, test } from 'vitest'
import { severities } from '../src/analysis/concern/concern.ts'
import { resultFields } from '../src/output/result.ts'
import { exampleText } from '../test/example.ts'
import { fixedText } from '../test/fixed-document.ts'
import { repositoryRoot } from '../test/repository.ts'

interface Outcome {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

/** Runs a shell line in which `$gustloom` is the command. */
function shell(
  line: string,
  { input = '', env = {} }: { input?: string; env?: Record<string, string> } = {},
) {
  return new Promise<Outcome>((resolve, reject) => {
    const child = spawn('bash', ['-c', line], {
      cwd: repositoryRoot,
      env: { ...process.env, NO_COLOR: '', gustloom: 'node --import tsx cli/main.ts', ...env },
    })
    let out = ''
    let err = ''
    child.stdout.on('data', (part) => (out += part))
    child.stderr.on('data', (part) => (err += part))
    child.on('error', reject)
    child.on('close', (status) => resolve({ status, out, err }))
    // a command that does not read its input must not fail the one that writes it
    child.stdin.on('error', () => {})
    child.stdin.end(input)
  })
}

const small = 'examples/class-room-fan.json'

describe.concurrent('law: the verb that shapes blades', () => {
  test('takes an own polar as text; a line it cannot read is named with a remedy', async () => {
    const good = 'Re 60000\n-2;-0,1;0,03\n0;0,2;0,02\n8;1;0,03'
    const { status, out } = await shell(`$gustloom blades ${small} --polar - --pipe 75`, { input: good })
    expect(status).toBe(0)
    for (const part of ['own polar', 'Straight lines', 'arch %']) expect(out).toContain(part)
    const bad = await shell(`$gustloom blades ${small} --polar -`, { input: `${good}\n9;x` })
    expect({ status: bad.status, out: bad.out }).toEqual({ status: 2, out: '' })
    expect(bad.err).toContain('line 5 must be readable')
  })
})
const colourCode = '\u001b['

describe.concurrent('law: the exit status tells a program how it went', () => {
  test('0 for a machine that nothing blocks, with the page on standard output only', async () => {
    const { status, out, err } = await shell(`$gustloom compute ${small}`)
    expect({ status, err }).toEqual({ status: 0, err: '' })
    for (const part of ['Class-room fan machine', 'Where the watts go', 'Wind by wind', 'Concerns'])
      expect(out).toContain(part)
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
  })
  test('1 for one that its class forbids', async () => {
    const { status, out } = await shell('$gustloom check examples/many-faults.json')
    expect(status).toBe(1)
    expect(out).toContain('BLOCKING')
  })
  test('2 for a document with faults, all of them on standard error', async () => {
    const input = fixedText('disc').replace('"poleCount":8', '"poleCount": 7, "coverr_mm": 1')
    const { status, out, err } = await shell('$gustloom compute -', { input })
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain('rotor.poleCount must be a multiple of 2; received 7 (not-a-choice)\n')
    expect(err).toContain('rotor.coverr_mm must be a known key, perhaps cover_mm; received 1 (unknown-key)\n')
  })
  test('2 for values that cannot stand together', async () => {
    const input = fixedText('disc').replace('"distance_mm":5', '"distance_mm":1')
    const { status, err } = await shell('$gustloom check -', { input })
    expect(status).toBe(2)
    expect(err).toMatch(/^stator\.winding\.distance_mm must be at least 3\.4 mm, .* \(conflict\)\n$/)
  })
  test('2 for a file that cannot be read, and for a folder', async () => {
    const { out, err } = await shell(
      '$gustloom check /nowhere/design.json; echo $?; $gustloom check examples; echo $?',
    )
    expect(out).toBe('2\n2\n')
    expect(err).toContain('file must be readable; received /nowhere/design.json (ENOENT)')
    expect(err).toContain('file must be readable; received examples (EISDIR)')
  })
  test('2 for a verb it does not know, and for none', async () => {
    const { out, err } = await shell('$gustloom fly; echo $?; $gustloom; echo $?; $gustloom compute; echo $?')
    expect(out).toBe('2\n2\n2\n')
    expect(err).toContain("unknown command 'fly'")
    expect(err).toContain('missing required argument')
  })
  test('0 for a call for help', async () => {
    const { status, out } = await shell('$gustloom --help')
    expect(status).toBe(0)
    for (const verb of ['compute', 'check', 'wires', 'schema', 'Exit status']) expect(out).toContain(verb)
  })
})

describe.concurrent('law: standard input, pipes and colour', () => {
  test('- reads the document from standard input', async () => {
    const fromFile = await shell(`$gustloom check ${small}`)
    const fromInput = await shell('$gustloom check -', { input: exampleText('class-room-fan') })
    expect(fromInput).toEqual(fromFile)
  })
  test('what never ends is too large, and is not waited for', async () => {
    const { out, err } = await shell('$gustloom check /dev/zero; echo $?; yes | $gustloom check -; echo $?')
    expect(out).toBe('2\n2\n')
    expect(err.match(/\(too-large\)/g)).toHaveLength(2)
  })
  test('no colour into a pipe, whatever NO_COLOR says', async () => {
    const plain = await shell(`$gustloom compute ${small}`)
    const asked = await shell(`$gustloom compute ${small}`, { env: { NO_COLOR: '1' } })
    expect(plain.out).not.toContain(colourCode)
    expect(asked.out).toBe(plain.out)
  })
  test('a reader that goes away early is no crash', async () => {
    const { out, err } = await shell(`$gustloom compute ${small} | head -1; echo "\${PIPESTATUS[0]}"`)
    expect(err).toBe('')
    expect(out).toBe('Class-room fan machine — demonstration\n0\n')
  })
})

describe.concurrent('law: JSON for other programs', () => {
  test('compute --json has the declared fields in the declared order, and every number is finite', async () => {
    const { status, out, err } = await shell(`$gustloom compute --json ${small}`)
    expect({ status, err }).toEqual({ status: 0, err: '' })
    const result = JSON.parse(out) as Record<string, unknown>
    expect(Object.keys(result)).toEqual(resultFields.map(({ name }) => name))
    expect(result.gustloomResult).toBe(2)
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
  })
  test('check --json lists the concerns, the gravest first', async () => {
    const { status, out } = await shell('$gustloom check --json examples/many-faults.json')
    expect(status).toBe(1)
    const { concerns } = JSON.parse(out) as { concerns: { severity: (typeof severities)[number] }[] }
    const ranks = concerns.map(({ severity }) => severities.indexOf(severity))
    expect(ranks.length).toBeGreaterThan(5)
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
  })
  test('faults are JSON too, on standard output, with their codes', async () => {
    const { status, out, err } = await shell('$gustloom compute --json -', { input: '{"gustloom": 1}' })
    expect({ status, err }).toEqual({ status: 2, err: '' })
    const { faults } = JSON.parse(out) as { faults: { path: string; code: string }[] }
    expect(faults.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['name', 'site', 'rotor', 'stator']),
    )
    expect(new Set(faults.map(({ code }) => code))).toEqual(new Set(['missing-key']))
  })
  test('turn shows readings by hand as a page and as JSON, compares what was read, and names the points', async () => {
    const { status, out, err } = await shell(`$gustloom turn ${small} --rpm 90 --read 0.5 --between phase-1`)
    expect({ status, err }).toEqual({ status: 0, err: '' })
    for (const part of ['90.0 rpm', 'star point', 'What you read between', 'None by itself', 'four wires'])
      expect(out).toContain(part)
    const json = await shell(`$gustloom turn --json --meter 'true-rms hand meter' ${small}`)
    const { meter, readings } = JSON.parse(json.out) as { meter: string; readings: { shown_V: number }[] }
    expect(meter).toBe('true-rms hand meter')
    for (const { shown_V } of readings) expect(shown_V).toBeGreaterThan(0)
    const wrong = await shell(`$gustloom turn ${small} --between nowhere`)
    expect(wrong.status).toBe(2)
    expect(wrong.err).toContain('line-1-2')
  })
  test('wires lists the sizes next to the design’s own, as a page and as JSON', async () => {
    const page = await shell(`$gustloom wires ${small}`)
    expect({ status: page.status, err: page.err }).toEqual({ status: 0, err: '' })
    expect(page.out).toContain('AWG 25')
    const { out } = await shell(`$gustloom wires --json --keep-turns ${small}`)
    const { choices } = JSON.parse(out) as { choices: { name: string; turns: number }[] }
    expect(choices.map(({ name }) => name)).toContain('AWG 27')
    expect(new Set(choices.map(({ turns }) => turns)).size).toBe(1)
  })
  test('tolerance builds a design many times, and takes whole counts only', async () => {
    const { out } = await shell(`$gustloom tolerance --json ${small} --builds 64 --seed 3`)
    const result = JSON.parse(out) as { seed: number; yield: number }
    expect(result.seed).toBe(3)
    expect(result.yield > 0 && result.yield <= 1).toBe(true)
    expect((await shell(`$gustloom tolerance ${small} --builds 9`)).err).toContain('from 64 to 65536')
  })
  test('schema prints a JSON Schema of 2020-12', async () => {
    const { status, out } = await shell('$gustloom schema')
    expect(status).toBe(0)
    expect(JSON.parse(out)).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' })
  })
})
