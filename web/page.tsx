/** The page: the design on one side, what comes of it on the other. */

import { Form } from './station/form.tsx'
import {
  faults,
  form,
  matchDetail,
  row as rowIndex,
  snapshot,
  spreads,
  stale,
  windDetail,
} from './store/design.ts'
import { ConcernList } from './view/concern-list.tsx'
import { ContestView } from './view/contest.tsx'
import { FaultView } from './view/fault.tsx'
import { FileBar } from './view/file-bar.tsx'
import { GapField } from './view/gap-field.tsx'
import { HandTurn } from './view/hand-turn.tsx'
import { KeyFigures } from './view/key-figures.tsx'
import { Match } from './view/match.tsx'
import { PowerCurve } from './view/power-curve.tsx'
import { RecordView } from './view/record.tsx'
import { RemedyView } from './view/remedy.tsx'
import { Ribbon } from './view/ribbon.tsx'
import { Solid } from './view/solid.tsx'
import { SpreadView } from './view/spread.tsx'
import { FaultSummary, Notice, Status } from './view/status.tsx'
import { StormView } from './view/storm.tsx'
import { Waveform } from './view/waveform.tsx'
import { WindChoice } from './view/wind-choice.tsx'
import { WireVoltage } from './view/wire-voltage.tsx'
import { YearView } from './view/year.tsx'

function Results() {
  const result = snapshot.value
  if (!result)
    return (
      <p class="note waiting">
        {faults.value.length > 0
          ? 'Numbers come as soon as the entries of the design are mended.'
          : 'The first numbers are on their way.'}
      </p>
    )
  const index = rowIndex.value
  const row = result.rows[index]!
  const detail = windDetail.value
  const match = matchDetail.value
  return (
    <div class={`results${stale.value ? ' stale' : ''}`}>
      <div class="stale-place">
        {stale.value ? <p class="stale-mark">Numbers of the last valid design</p> : null}
      </div>
      <Ribbon snapshot={result} row={row} />
      <WindChoice snapshot={result} index={index} />
      <KeyFigures snapshot={result} row={row} spreads={spreads.value} />
      <ConcernList concerns={result.concerns} />
      <Solid solid={result.solid} />
      <WireVoltage />
      {match ? <Match snapshot={result} map={match.map} target={match.target} wind={row.wind} /> : null}
      <RemedyView />
      <PowerCurve snapshot={result} index={index} />
      {detail ? <Waveform detail={detail} row={row} /> : null}
      <GapField snapshot={result} />
      <HandTurn />
      <SpreadView />
      <YearView snapshot={result} />
      <RecordView />
      <StormView />
      <FaultView />
      <ContestView />
    </div>
  )
}

function Mark() {
  return (
    <svg class="mark-sign" viewBox="0 0 32 32" width="30" height="30" aria-hidden="true">
      <path class="mark-wind" d="M3 11c4.3-9 8.7-9 13 0s8.700 9 13 0" />
      <path class="mark-wire" d="M3 21c4.3 9 8.700 9 13 0s8.700-9 13 0" />
    </svg>
  )
}

export function Page() {
  return (
    <>
      <a class="skip" href="#numbers">
        Skip to the numbers
      </a>
      <header class="head">
        <h1>
          <Mark /> Gustloom
        </h1>
        <FileBar />
        <Status />
      </header>
      <nav class="jump" aria-label="Parts of the page">
        <a href="#numbers">Numbers</a>
        <a href="#concerns">Concerns</a>
        <a href="#design">Design</a>
      </nav>
      <Notice />
      <div class="columns">
        <main id="numbers" tabIndex={-1}>
          <h2 class="hidden">What comes of it</h2>
          <Results />
          <p class="frank">
            A calculation is not a permit, an inspection or a guarantee. Rotors, magnets, batteries and towers
            injure people: fix the rotor before you reach in, check the voltage at runaway, fit a fuse near
            the battery.
          </p>
        </main>
        <aside id="design" tabIndex={-1} aria-label="Design">
          <h2>{String(form.value.find(({ path }) => path === 'name')?.value ?? 'The design')}</h2>
          <FaultSummary />
          <Form />
        </aside>
      </div>
    </>
  )
}
