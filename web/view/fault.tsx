/** Shows what defects would do to the present machine: the choice of one, its turn by hand, every figure. */

import type { FaultCase, FaultStudy } from '../../src/index.ts'
import { faultWaveformChart, faultWaveformTable } from '../../src/output/chart/fault-waveform.ts'
import { faultCells, faultColumns, faultNote, faultSentence } from '../../src/output/fault-page.ts'
import { formatNumber } from '../../src/units/format.ts'
import { chosenCase, startStudy, stopStudy, study, studyStale } from '../store/fault.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { BenchOpening } from './bench-opening.tsx'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { DiagnosisForm } from './diagnosis.tsx'
import { JobKeys } from './job-keys.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function Turn({ made, one }: { readonly made: FaultStudy; readonly one: FaultCase }) {
  const sound = made.sound.waveform
  const faulty = one.reading.waveform
  return (
    <ChartFrame
      name="fault-waveform"
      title={say`One turn by hand`}
      note={say`Volts of each phase with nothing connected: dashed as they should be, plain with this: ${told(one.words)}.`}
      draw={(width) => faultWaveformChart({ width, sound, faulty, words: one.words })}
      data={() => faultWaveformTable({ sound, faulty, words: one.words })}
    />
  )
}

function Signature({ one }: { readonly one: FaultCase }) {
  if (one.signature.length === 0) return null
  return (
    <>
      <h4>{say`What plain arithmetic expects`}</h4>
      <ul>
        {one.signature.map(({ what, expected, computed, basis }) => (
          <li key={what}>
            {say`${capital(told(what))}: ${formatNumber(expected, 4)} expected, ${formatNumber(computed, 4)} computed (${told(basis)}).`}
          </li>
        ))}
      </ul>
    </>
  )
}

function Report({ made }: { readonly made: FaultStudy }) {
  const one = made.cases[chosenCase.value]
  const rows = [
    { name: say`sound`, cells: faultCells(made.sound) },
    ...made.cases.map(({ words, reading }) => ({ name: told(words), cells: faultCells(reading) })),
  ]
  const columns: Column<(typeof rows)[number]>[] = [
    { head: say`machine`, cell: ({ name }) => name },
    ...faultColumns.map(
      (head, k): Column<(typeof rows)[number]> => ({
        head: told(head),
        cell: ({ cells }) => told(cells[k] ?? ''),
      }),
    ),
  ]
  return (
    <div class="fault-report card">
      {studyStale.value ? (
        <p class="note">{say`The design has been changed since; compute again for its new numbers.`}</p>
      ) : null}
      {one ? (
        <>
          <div class="fault-choice">
            <label>
              {say`Defect`}{' '}
              <select
                value={String(chosenCase.value)}
                onChange={(event) => {
                  chosenCase.value = Number(event.currentTarget.value)
                }}
              >
                {made.cases.map(({ words }, k) => (
                  <option key={words} value={String(k)}>
                    {capital(told(words))}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <p class="fault-sentence">{capital(told(faultSentence(made, one)))}</p>
          {one.test === undefined ? null : <p class="note">{told(one.test)}</p>}
          <Turn made={made} one={one} />
          <Signature one={one} />
        </>
      ) : null}
      {made.refused.map(({ words, reason }) => (
        <p key={words} class="note">
          {say`${capital(told(words))}: not computed, ${told(reason)}`}
        </p>
      ))}
      <DataTable
        caption={say`All of them beside the sound machine`}
        rows={rows}
        columns={columns}
        chosen={chosenCase.value + 1}
      />
      <p class="note">{told(faultNote(made))}</p>
      <DiagnosisForm made={made} />
    </div>
  )
}

const statusText = (): string => {
  const state = study.value
  if (state.kind === 'running') return say`Computing …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Computed.` : ''
}

export function FaultView() {
  const state = study.value
  return (
    <section class="bench faults" id="faults">
      <BenchOpening drawing="fault" drawn={state.kind !== 'done'}>
        <p>
          {say`The machine with one defect at a time: those of the design’s own list, else one of each kind that fits. It shows what a meter and a hand would find before anything burns.`}
        </p>
        <div class="fault-choice">
          <JobKeys
            label={say`Compute the defects`}
            start={startStudy}
            stop={stopStudy}
            fraction={state.kind === 'running' ? state.fraction : undefined}
            status={statusText()}
          />
        </div>
      </BenchOpening>
      {state.kind === 'done' ? <Report made={state.report} /> : null}
    </section>
  )
}
