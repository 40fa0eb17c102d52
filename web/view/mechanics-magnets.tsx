/** What holds the magnets, how hard the faces pull as they come together, and the air that is left between what turns and what stands. */
import { useEffect } from 'preact/hooks'
import { discPullChart, discPullTable } from '../../src/output/chart/disc-pull.ts'
import type { ReportOf } from '../job/plan.ts'
import { snapshot } from '../store/design.ts'
import { inMeasure } from '../store/measure.ts'
import { followPull, pullReport, pullStale, pullState, stopPull } from '../store/pull.ts'
import { useSight } from '../store/sight.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { MechanicsGroupView, MechanicsVerdict } from './mechanics.tsx'

const before = ['what holds the magnets'] as const
const after = ['discs under that pull', 'air between rotor and stator'] as const

const standardGravity = 9.80665

function handWords({ pull, handForce, handDistance }: ReportOf<'pull'>): string {
  const hands = inMeasure(handForce, 'N')
  if (handDistance !== undefined)
    return say`Two hands hold about ${hands}: beyond ${inMeasure(handDistance, 'mm', 2)} between the faces that is enough, nearer only jacking screws are.`
  return (pull[0]?.pull ?? 0) < handForce
    ? say`Two hands hold about ${hands}, which is enough at every distance here.`
    : say`Two hands hold about ${hands}, which is not enough at any distance here: use jacking screws.`
}

function Pull({ report }: { readonly report: ReportOf<'pull'> }) {
  const { pull, drawn, handForce, handDistance, caution } = report
  const own = pull.find(({ distance }) => drawn !== undefined && Math.abs(distance - drawn) < 1e-9)
  if (pull.length === 0 || drawn === undefined) return null
  return (
    <ChartFrame
      name="disc-pull"
      title={say`Pull between the faces as they come together`}
      note={
        <>
          {own === undefined
            ? null
            : say`As drawn the faces pull with ${inMeasure(own.pull, 'N')}, the weight of ${inMeasure(own.pull / standardGravity, 'kg', 2)}.`}{' '}
          {handWords(report)}
        </>
      }
      draw={(width) => discPullChart({ width, pull, drawn, handForce, handDistance })}
      data={() => discPullTable(pull)}
    >
      <p class="mechanics-caution">{told(caution)}</p>
    </ChartFrame>
  )
}

function PullStatus() {
  const state = pullState.value
  if (state.kind === 'refused') return <p class="note">{told(state.reason)}</p>
  if (state.kind !== 'running') return null
  return (
    <p class="note">
      <progress aria-label={say`The pull, computed so far`} max={1} value={state.fraction} />{' '}
      {say`The pull between the faces is being computed.`}
    </p>
  )
}

export function MagnetMechanics() {
  const found = useSight('mechanics')
  const result = snapshot.value
  useEffect(() => {
    if (result !== undefined) followPull()
  }, [result])
  useEffect(() => stopPull, [])
  const report = pullReport.value
  const pulls = report?.rows ?? []
  const rows = found?.rows.filter(({ group }) => [...before, ...after].some((one) => one === group)) ?? []
  return (
    <>
      {found === undefined ? null : (
        <>
          <MechanicsVerdict rows={rows} />
          {before.map((group) => (
            <MechanicsGroupView key={group} of={group} rows={found.rows} />
          ))}
        </>
      )}
      <div class={`mechanics-pull${pullStale.value ? ' stale' : ''}`}>
        <PullStatus />
        {report === undefined ? null : (
          <>
            <Pull report={report} />
            <MechanicsGroupView of="pull between the faces" rows={pulls} />
          </>
        )}
      </div>
      {found === undefined
        ? null
        : after.map((group) => <MechanicsGroupView key={group} of={group} rows={found.rows} />)}
      {found === undefined ? null : <p class="note">{say`Temperatures: ${told(found.temperatures)}.`}</p>}
    </>
  )
}
