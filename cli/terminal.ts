/** What the program says on a terminal: colour only there, progress only where somebody watches. */
import type { WriteStream } from 'node:tty'
import type { PageLine, Tone } from '../src/output/chain-page.ts'

const codes: Readonly<Record<Tone, string>> = {
  plain: '',
  title: '\u001b[1m',
  faint: '\u001b[2m',
  good: '\u001b[32m',
  warning: '\u001b[33m',
  blocking: '\u001b[31m',
}

type Stream = Pick<WriteStream, 'write'> & { readonly isTTY?: boolean }

/** https://no-color.org: any value that is not empty switches colour off. */
const coloured = (stream: Stream): boolean => stream.isTTY === true && !process.env.NO_COLOR

export function print(lines: readonly PageLine[], stream: Stream = process.stdout): void {
  const colour = coloured(stream)
  for (const { text, tone } of lines)
    stream.write(colour && codes[tone] !== '' ? `${codes[tone]}${text}\u001b[0m\n` : `${text}\n`)
}

const patience = 500

/** Runs steps to their end; after half a second shows the fraction done on a watched standard error. */
export function withProgress<Result>(
  steps: Generator<number, Result>,
  stream: Stream = process.stderr,
): Result {
  const start = Date.now()
  let shown = false
  for (;;) {
    const step = steps.next()
    if (step.done === true) {
      if (shown) stream.write('\r\u001b[K')
      return step.value
    }
    if (stream.isTTY === true && Date.now() - start > patience) {
      shown = true
      stream.write(`\rcomputing ${Math.round(100 * step.value)} %`)
    }
  }
}
