/** One first machine: its figures, what stands against it, why it comes first, and the button that takes it. */
import type { FirstCard, FirstReason } from '../../src/output/first-card.ts'
import { inMeasure, intervalInMeasure, measured } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'

export function kindWords(kind: string): string {
  switch (kind) {
    case 'drum, coils':
      return say`Drum with coils around it`
    case 'drum, serpentine':
      return say`Drum with waves of wire around it`
    case 'disc, coils':
      return say`One disc before coils`
    case 'two discs, coils':
      return say`Two discs with coils between`
    default:
      return told(kind)
  }
}

export function reasonWords(reason: FirstReason): string {
  switch (reason.kind) {
    case 'alone':
      return say`It is the only kind that your things allow.`
    case 'fewer blocked':
      return reason.fewer === 1
        ? say`It comes first because one thing fewer blocks it than the next.`
        : say`It comes first because ${reason.fewer} things fewer block it than the next.`
    case 'wish met':
      return say`It comes first because it reaches the power that you wish for, with the smallest blades.`
    case 'wish nearest':
      return say`None reaches the power that you wish for; it comes nearest, with ${Math.round(100 * reason.share)} % of it.`
    case 'energy':
      return reason.times < 1.1
        ? say`Nothing more blocks it than the next, and it gives a little more in a year; take the one that you would rather build.`
        : say`Nothing more blocks it than the next, and it gives ${reason.times.toFixed(1)} times as much in a year.`
  }
}

function windingWords({ coils, turns, strands }: FirstCard): string {
  const what =
    coils === undefined ? say`3 waves, ${turns} turns each` : say`${coils} coils, ${turns} turns each`
  return strands === 1 ? what : say`${what}, ${strands} wires in hand`
}

function concernWords({ concerns: { blocking, warning, note } }: FirstCard): string {
  if (blocking + warning + note === 0) return say`No rule objects to it.`
  return say`Blocking: ${blocking}. Warnings: ${warning}. Notes: ${note}.`
}

function Figures({ card }: { readonly card: FirstCard }) {
  const { energy, watts, cutIn, wish, bladeDiameter, copperMass, wireLength, wireShort } = card
  const wind = inMeasure(watts.wind, 'm_per_s', 2)
  const part = inMeasure(card.greatestPart, 'mm')
  return (
    <dl>
      <div>
        <dt>{say`In a year`}</dt>
        <dd>
          <b>{intervalInMeasure(energy.value, 'kWh', energy.spread)}</b>
        </dd>
      </div>
      <div>
        <dt>{say`In ${wind} of wind`}</dt>
        <dd>
          <b>{intervalInMeasure(watts.value, 'W', watts.spread)}</b>
          {wish === undefined ? null : <small>{say`wished for: ${inMeasure(wish, 'W')}`}</small>}
        </dd>
      </div>
      <div>
        <dt>{say`Charges from`}</dt>
        <dd>
          <b>{intervalInMeasure(cutIn.value, 'm_per_s', cutIn.spread)}</b>
        </dd>
      </div>
      <div>
        <dt>{say`Blades across`}</dt>
        <dd>
          <b>{inMeasure(bladeDiameter, 'm')}</b>
        </dd>
      </div>
      <div>
        <dt>{say`Copper of the winding`}</dt>
        <dd>
          <b>{inMeasure(copperMass, 'kg')}</b>
          <small>{say`${inMeasure(wireLength, 'm')} of wire`}</small>
          {wireShort > 0 ? (
            <small>{say`${inMeasure(wireShort, 'm')} more than is on the reels`}</small>
          ) : null}
        </dd>
      </div>
      <div>
        <dt>{say`Winding`}</dt>
        <dd>
          {windingWords(card)} <small>{say`${card.magnets} magnets`}</small>
        </dd>
      </div>
      <div>
        <dt>{say`Biggest part across`}</dt>
        <dd>
          {part}
          {card.fitsPrinter ? null : <small>{say`too big for the bed: print it in pieces`}</small>}
        </dd>
      </div>
    </dl>
  )
}

interface FirstCardProps {
  readonly card: FirstCard
  /** 1 for the first. */
  readonly place: number | undefined
  readonly reason: FirstReason | undefined
  readonly take: () => void
}

export function FirstCardView({ card, place, reason, take }: FirstCardProps) {
  const name = kindWords(card.kind)
  return (
    <li class="card first-card">
      <h3>{place === undefined ? name : say`${place}. ${name}`}</h3>
      {reason === undefined ? null : <p class="first-reason">{reasonWords(reason)}</p>}
      <div class="figures">
        <Figures card={card} />
      </div>
      <p class="first-concerns">{concernWords(card)}</p>
      {card.blocking.length === 0 ? null : (
        <ul class="first-blocking">
          {card.blocking.map((what) => (
            <li key={what}>{told(measured(what))}</li>
          ))}
        </ul>
      )}
      <button type="button" class="first-button" aria-label={say`Take this one: ${name}`} onClick={take}>
        {say`Take this one`}
      </button>
    </li>
  )
}
