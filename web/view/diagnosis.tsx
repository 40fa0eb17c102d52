/** Takes what a meter read of all pairs and says which of the defects computed explains it. */
import { signal } from '@preact/signals'
import { likelyDefects, type MeterReadings } from '../../src/analysis/fault-diagnosis.ts'
import type { FaultStudy } from '../../src/index.ts'
import { formatNumber } from '../../src/units/format.ts'
import { typedNumber } from '../store/turn.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'

/** As typed, by box. */
const typed = signal<Readonly<Record<string, string>>>({})

const numberIn = (name: string): number | undefined => {
  const text = typed.value[name] ?? ''
  return /^\s*0+([.,]0*)?\s*$/.test(text) ? 0 : typedNumber(text)
}

/** All of a list, or nothing: a gap would put a reading in another's place. */
function listOf(kind: string, count: number): readonly number[] | undefined {
  const values = Array.from({ length: count }, (_, k) => numberIn(`${kind}-${k}`))
  return values.every((value) => value !== undefined) ? values : undefined
}

function Box({ name, label }: { readonly name: string; readonly label: string }) {
  return (
    <label>
      {label}{' '}
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={typed.value[name] ?? ''}
        onInput={(event) => {
          typed.value = { ...typed.value, [name]: event.currentTarget.value }
        }}
      />
    </label>
  )
}

function readingsOf(lines: number, pairs: number, withCorner: boolean): MeterReadings | undefined {
  const rpm = numberIn('rpm')
  const volts = listOf('line', lines)
  const resistances = listOf('ohm', pairs)
  const corner = withCorner ? numberIn('corner') : undefined
  if (!volts && !resistances && corner === undefined) return undefined
  return {
    ...(rpm === undefined || rpm === 0 ? {} : { speed: (2 * Math.PI * rpm) / 60 }),
    ...(volts ? { lines: volts } : {}),
    ...(resistances ? { resistances } : {}),
    ...(corner === undefined ? {} : { corner }),
  }
}

export function DiagnosisForm({ made }: { readonly made: FaultStudy }) {
  const lines = made.sound.lines.length
  const pairs = made.sound.terminalResistance.length
  const name = (k: number, count: number) => (count > 1 ? `${k + 1}–${((k + 1) % count) + 1}` : '')
  const readings = readingsOf(lines, pairs, lines > 1)
  const diagnosis = readings ? likelyDefects(readings, made) : undefined
  return (
    <section class="diagnosis" aria-label={say`What you read`}>
      <h4>{say`Which of them explains what you read?`}</h4>
      <p class="note">
        {say`Open terminals, true rms, all at one speed. Leave the speed empty if you do not know it: ratios tell as well.`}
      </p>
      <div class="diagnosis-boxes">
        <Box name="rpm" label={say`Speed, rpm`} />
        {Array.from({ length: lines }, (_, k) => (
          <Box key={k} name={`line-${k}`} label={say`Volts ${name(k, lines)}`} />
        ))}
        {lines > 1 ? <Box name="corner" label={say`Volts, open corner`} /> : null}
        {Array.from({ length: pairs }, (_, k) => (
          <Box key={k} name={`ohm-${k}`} label={say`Ohms ${name(k, pairs)}`} />
        ))}
      </div>
      <output aria-live="polite">
        {diagnosis === undefined ? (
          say`Fill a whole row of volts or of ohms.`
        ) : (
          <>
            <ol>
              {diagnosis.likely.slice(0, 4).map(({ words, distance, amount }) => (
                <li key={words}>
                  {amount === 1
                    ? say`${told(words)}: off by ${formatNumber(distance, 2)} spreads of the meter`
                    : say`${told(words)}, ${formatNumber(amount, 2)} times as much: off by ${formatNumber(distance, 2)} spreads of the meter`}
                </li>
              ))}
            </ol>
            {diagnosis.next === undefined ? null : <p>{told(diagnosis.next)}</p>}
          </>
        )}
      </output>
    </section>
  )
}
