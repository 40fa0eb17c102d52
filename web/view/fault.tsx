/** Shows what defects would do to the present machine: the choice of one, its turn by hand, every figure. */
import type { FaultCase, FaultStudy } from '../../src/index.ts'
import { faultWaveformChart } from '../../src/output/chart/fault-waveform.ts'
import { faultCells, faultColumns, faultNote, faultSentence } from '../../src/output/fault-page.ts'
import { formatNumber } from '../../src/units/format.ts'
import { chosenCase, startStudy, stopStudy, study, studyStale } from '../store/fault.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { DiagnosisForm } from './diagnosis.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function Turn({ made, one }: { readonly made: FaultStudy; readonly one: FaultCase }) {
  const sound = made.sound.waveform
  const faulty = one.reading.waveform
  const count = faulty[0]?.length ?? 0
  const rows = Array.from({ length: count }, (_, k) => k).filter((k) => k % 5 === 0)
  const columns: Column<number>[] = [
    { head: 'turn', unit: '°', cell: (k) => formatNumber((360 * k) / count) },
    ...faulty.flatMap((values, phase): Column<number>[] => [
      { head: `sound ${phase + 1}`, unit: 'V', cell: (k) => formatNumber(sound[phase]![k]!) },
      { head: `defect ${phase + 1}`, unit: 'V', cell: (k) => formatNumber(values[k]!) },
    ]),
  ]
  return (
    <ChartFrame
      name="fault-waveform"
      title="One turn by hand"
      note={`Volts of each phase with nothing connected: dashed as they should be, plain with ${one.words}.`}
      draw={(width) => faultWaveformChart({ width, sound, faulty, words: one.words })}
      table={() => <DataTable caption="One turn, every fifth sample" rows={rows} columns={columns} />}
    />
  )
}

function Signature({ one }: { readonly one: FaultCase }) {
  if (one.signature.length === 0) return null
  return (
    <>
      <h4>What plain arithmetic expects</h4>
      <ul>
        {one.signature.map(({ what, expected, computed, basis }) => (
          <li key={what}>
            {capital(what)}: <b>{formatNumber(expected, 4)}</b> expected, <b>{formatNumber(computed, 4)}</b>{' '}
            computed ({basis}).
          </li>
        ))}
      </ul>
    </>
  )
}

function Report({ made }: { readonly made: FaultStudy }) {
  const one = made.cases[chosenCase.value]
  const rows = [
    { name: 'sound', cells: faultCells(made.sound) },
    ...made.cases.map(({ words, reading }) => ({ name: words, cells: faultCells(reading) })),
  ]
  const columns: Column<(typeof rows)[number]>[] = [
    { head: 'machine', cell: ({ name }) => name },
    ...faultColumns.map(
      (head, k): Column<(typeof rows)[number]> => ({ head, cell: ({ cells }) => cells[k] }),
    ),
  ]
  return (
    <div class="fault-report">
      {studyStale.value ? (
        <p class="note">The design has been changed since; compute again for its new numbers.</p>
      ) : null}
      {one ? (
        <>
          <div class="fault-choice">
            <label>
              Defect{' '}
              <select
                value={String(chosenCase.value)}
                onChange={(event) => {
                  chosenCase.value = Number(event.currentTarget.value)
                }}
              >
                {made.cases.map(({ words }, k) => (
                  <option key={words} value={String(k)}>
                    {capital(words)}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <p class="fault-sentence">{capital(faultSentence(made, one))}</p>
          {one.test === undefined ? null : <p class="note">{one.test}</p>}
          <Turn made={made} one={one} />
          <Signature one={one} />
        </>
      ) : null}
      {made.refused.map(({ words, reason }) => (
        <p key={words} class="note">
          {capital(words)}: not computed, {reason}
        </p>
      ))}
      <DataTable
        caption="All of them beside the sound machine"
        rows={rows}
        columns={columns}
        chosen={chosenCase.value + 1}
      />
      <p class="note">{faultNote(made)}</p>
      <DiagnosisForm made={made} />
    </div>
  )
}

const statusText = (): string => {
  const state = study.value
  if (state.kind === 'running') return 'Computing …'
  if (state.kind === 'refused') return state.reason
  return state.kind === 'done' ? 'Computed.' : ''
}

export function FaultView() {
  const state = study.value
  const running = state.kind === 'running'
  return (
    <details class="card faults" id="faults">
      <summary>
        <h3>What if something is wrong with it</h3>
      </summary>
      <p class="note">
        The machine with one defect at a time: those of the design’s own list, else one of each kind that
        fits. It shows what a meter and a hand would find before anything burns.
      </p>
      <div class="fault-choice">
        <button type="button" disabled={running} onClick={startStudy}>
          Compute the defects
        </button>
        {running ? (
          <button type="button" onClick={stopStudy}>
            Stop
          </button>
        ) : null}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label="Computed so far" max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report made={state.study} /> : null}
    </details>
  )
}
