/** The bench of the tracings: kept states of the design, laid over it in the pictures and held against it in figures. */
import { row as rowIndex, snapshot, windDetail } from '../store/design.ts'
import { tracingProgress, tracingRefusal, tracings, tracingsOver, tracingTrouble } from '../store/tracing.ts'
import { chosenTracing } from '../store/tracing-difference.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { BenchOpening } from './bench-opening.tsx'
import { EnergyByWindView } from './energy-by-wind.tsx'
import { PowerCurve } from './power-curve.tsx'
import { TemperatureByWindView } from './temperature-by-wind.tsx'
import { TracingDifference } from './tracing-difference.tsx'
import { KeepTracingForm } from './tracing-keep.tsx'
import { TracingList } from './tracing-list.tsx'
import { Waveform } from './waveform.tsx'

function Pictures() {
  const result = snapshot.value
  const index = rowIndex.value
  const row = result?.rows[index]
  const detail = windDetail.value
  if (result === undefined || row === undefined || tracingsOver.value.length === 0) return null
  return (
    <>
      <PowerCurve snapshot={result} index={index} />
      <EnergyByWindView wind={row.wind} />
      <TemperatureByWindView wind={row.wind} />
      {detail ? <Waveform detail={detail} row={row} /> : null}
    </>
  )
}

export function TracingView() {
  const chosen = chosenTracing.value
  const progress = tracingProgress.value
  return (
    <>
      <section class="tracings" aria-labelledby="tracings-title">
        <BenchOpening drawing="tracing" drawn={tracings.value.length === 0}>
          <h3 id="tracings-title">{say`Tracings`}</h3>
          {tracings.value.length === 0 ? (
            <p>
              {say`Keep the design as it stands as on tracing paper, and go on changing it. The tracing lies over the pictures of every room, and here stands what differs, by how much, and how sure that is.`}
            </p>
          ) : null}
          <KeepTracingForm />
          <TracingList />
          {tracingTrouble.value === '' ? null : (
            <p class="fault" role="alert">
              {tracingTrouble.value}
            </p>
          )}
          {tracingRefusal.value === '' ? null : <p class="fault">{told(tracingRefusal.value)}</p>}
          {progress === undefined ? null : (
            <progress aria-label={say`Tracings computed so far`} max={1} value={progress} />
          )}
        </BenchOpening>
      </section>
      {chosen === undefined ? null : <TracingDifference key={chosen.id} tracing={chosen} />}
      <Pictures />
    </>
  )
}
