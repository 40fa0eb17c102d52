/** The wire sizes next to the design's own, computed on demand: each may be taken or laid over; and the wire to buy. */

import type { WireChoice as Choice, WireChoices } from '../../src/index.ts'
import { formatNumber } from '../../src/units/format.ts'
import { degreesSaid, inMeasure, numberInMeasure, signSaid, windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import {
  keepTurns,
  layWireOver,
  stopWires,
  takeWire,
  tryWires,
  wireChoices,
  wireChoicesStale,
  wireName,
} from '../store/wire-choice.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { type Column, DataTable } from './data-table.tsx'
import { FigureList } from './figure-list.tsx'
import { JobKeys } from './job-keys.tsx'
import { LayOver } from './lay-over.tsx'

/** Wire to buy, and what of it is on the reels. */
function Reel() {
  const reel = useSight('reel')
  if (reel === undefined) return null
  const { reelRest, price, copperMass, wireLength } = reel
  return (
    <FigureList
      label={say`The wire to buy`}
      figures={[
        {
          name: say`Wire of this winding`,
          value: inMeasure(wireLength, 'm'),
          note: say`${inMeasure(copperMass, 'kg')} of copper, as computed from the drawn path; leads within, spare without`,
        },
        {
          name: say`Price`,
          value: price === undefined ? say`not known` : shown(formatNumber(price)),
          note:
            price === undefined
              ? say`Say what a kilogram costs, and it stands here.`
              : say`in the money of the price for a kilogram`,
        },
        reelRest === undefined
          ? {
              name: say`Left on your reels`,
              value: say`not known`,
              note: say`Say what your reels hold, in metres or by weight, and it stands here.`,
            }
          : {
              name: reelRest.length < 0 ? say`Missing on your reels` : say`Left on your reels`,
              value: shown(inMeasure(Math.abs(reelRest.length), 'm')),
              note:
                reelRest.length < 0
                  ? say`${inMeasure(Math.abs(reelRest.mass), 'kg')} with its enamel`
                  : say`${inMeasure(reelRest.mass, 'kg')} with its enamel, ${formatNumber(100 * reelRest.share, 2)} % of what was on them`,
              ...(reelRest.length < 0 ? { trouble: say`the reels do not suffice` } : {}),
            },
      ]}
    />
  )
}

function Answer({ choice }: { readonly choice: Choice }) {
  const name = wireName(choice)
  if (choice.outcome === undefined) return <>–</>
  if (choice.changes.length === 0) return <>{say`as it is`}</>
  return (
    <span class="wire-take">
      <button type="button" aria-label={say`Take it: ${name}`} onClick={() => takeWire(choice)}>
        {say`Take it`}
      </button>
      <LayOver name={name} lay={() => layWireOver(choice)} />
    </span>
  )
}

function Report({ report }: { readonly report: WireChoices }) {
  const { wind, winds, choices } = report
  const of =
    (cell: (outcome: NonNullable<Choice['outcome']>) => string) =>
    ({ outcome }: Choice) =>
      outcome === undefined ? '–' : shown(cell(outcome))
  const columns: Column<Choice>[] = [
    {
      head: say`wire`,
      cell: ({ name, asDrawn, outcome }) => (
        <>
          {shown(name)}
          {asDrawn ? <small class="wire-own">{say`as drawn`}</small> : null}
          {outcome === undefined ? <small class="wire-own">{say`does not go in`}</small> : null}
        </>
      ),
    },
    { head: say`take it over`, cell: (choice) => <Answer choice={choice} /> },
    { head: say`turns`, cell: ({ turns }) => shown(turns) },
    {
      head: say`copper of the room`,
      unit: '%',
      cell: of(({ copperFill }) => formatNumber(100 * copperFill, 2)),
    },
    {
      head: say`a phase at ${inMeasure(293.15, 'degC', 2)}`,
      unit: 'Ω',
      cell: of(({ resistance }) => formatNumber(resistance)),
    },
    {
      head: say`a phase, open`,
      unit: 'mV/rpm',
      cell: of(({ voltage }) => formatNumber((voltage * 2 * Math.PI * 1000) / 60)),
    },
    {
      head: say`wire to buy`,
      unit: signSaid('m'),
      cell: of(({ wireLength }) => numberInMeasure(wireLength, 'm')),
    },
    {
      head: say`copper`,
      unit: signSaid('kg'),
      cell: of(({ copperMass }) => numberInMeasure(copperMass, 'kg')),
    },
    {
      head: say`begins in`,
      unit: signSaid('m_per_s'),
      cell: of(({ cutInWind }) =>
        Number.isFinite(cutInWind) ? numberInMeasure(cutInWind, 'm_per_s') : say`never`,
      ),
    },
    { head: say`lost in the copper`, unit: 'W', cell: of(({ windingLoss }) => formatNumber(windingLoss)) },
    {
      head: say`copper’s warmth`,
      unit: signSaid('degC'),
      cell: of(({ copperTemperature, overheated }) =>
        overheated ? say`burns` : degreesSaid(copperTemperature),
      ),
    },
    ...winds.map(
      (at, k): Column<Choice> => ({
        head: say`useful at ${windSaid(at)}`,
        unit: 'W',
        cell: of(({ useful }) => formatNumber(useful[k] ?? 0)),
      }),
    ),
  ]
  return (
    <>
      {wireChoicesStale.value ? (
        <p class="note">
          {say`The design has been changed since. “Take it” and “Lay it over” start from the design that these were computed for.`}
        </p>
      ) : null}
      <DataTable
        caption={say`Each size computed as a machine of its own; heat in the copper in ${inMeasure(wind, 'm_per_s', 2)}`}
        rows={choices}
        columns={columns}
        chosen={choices.findIndex(({ asDrawn }) => asDrawn)}
      />
      <p class="note">
        {report.keepTurns
          ? say`The turns are those of the design, where a patient hand can lay them into the room that it gives the wire. Volts are rms.`
          : say`As many turns as a patient hand lays into the same room. Volts are rms.`}{' '}
        {say`The guesses of the design let every row be off alike; one row against another is surer than either.`}
      </p>
    </>
  )
}

function statusText(): string {
  const state = wireChoices.value
  if (state.kind === 'running') return say`Computing …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Done.` : ''
}

export function WireChoice() {
  const state = wireChoices.value
  return (
    <section class="card wire-choice">
      <h3>{say`The wire, and the sizes next to it`}</h3>
      <Reel />
      <div class="fault-choice">
        <label class="tick-box">
          <input
            type="checkbox"
            checked={keepTurns.value}
            onChange={({ currentTarget }) => {
              keepTurns.value = currentTarget.checked
            }}
          />{' '}
          {say`keep the turns`}
        </label>
        <JobKeys
          label={say`Compute the sizes next to it`}
          start={tryWires}
          stop={stopWires}
          fraction={state.kind === 'running' ? state.fraction : undefined}
          status={statusText()}
        />
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </section>
  )
}
