/** Shaft and bearings: the machine cut along its shaft, the speeds along which it runs, and what each part bears. */
import { shaftLineChart, shaftLineTable, shaftSentence } from '../../src/output/chart/shaft-line.ts'
import { speedLineChart, speedLineTable, whirlingSentence } from '../../src/output/chart/speed-line.ts'
import { useSight } from '../store/sight.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { FieldButtons, MechanicsGroupView, MechanicsVerdict } from './mechanics.tsx'
import { SightChart } from './sight-chart.tsx'

const groups = ['bearings', 'shaft', 'balance'] as const

/** `speed` is the rotor's in the wind looked at [rad/s]. */
export function ShaftMechanics({ speed }: { readonly speed: number }) {
  const found = useSight('mechanics')
  const section = useSight('shaftSection')
  const line = useSight('speedLine')
  const rows = found?.rows.filter(({ group }) => (groups as readonly string[]).includes(group)) ?? []
  return (
    <>
      <SightChart
        of="shaftSection"
        name="shaft-line"
        title={say`Cut along the shaft`}
        note={
          section === undefined ? undefined : (
            <>
              {section.bearings === undefined ? null : told(shaftSentence(section))}{' '}
              <FieldButtons paths={section.enter} />
            </>
          )
        }
        draw={(one, width) => shaftLineChart({ width, section: one })}
        data={shaftLineTable}
      />
      <SightChart
        of="speedLine"
        name="speed-line"
        title={say`Along the speeds of the shaft`}
        note={line === undefined ? undefined : told(whirlingSentence(line))}
        draw={(one, width) => speedLineChart({ width, line: one, now: speed })}
        data={(one) => speedLineTable({ line: one, now: speed })}
      />
      {found === undefined ? null : (
        <>
          <MechanicsVerdict rows={rows} />
          {groups.map((group) => (
            <MechanicsGroupView key={group} of={group} rows={found.rows} />
          ))}
          <MechanicsGroupView
            of="blades and tower: for information"
            rows={found.rows}
            caution={say`Blades, hub, shaft and tower are signed for by competent engineers; what stands here about them is information. Keep people out of the plane of what turns, guard every spin test, and never reach in to stop it.`}
          />
        </>
      )}
    </>
  )
}
