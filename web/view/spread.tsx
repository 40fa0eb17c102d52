/** How far the guesses let the results be off together, whose doing it is, and what to measure next. */
import type { ResultSpread, SpreadOutput, SpreadStudy } from '../../src/index.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { effortText, leastTogether, percent, rangeText } from '../../src/output/spread-page.ts'
import { type SpreadWords, scaledSpread, spreadWords } from '../../src/output/spread-result.ts'
import { spreadProgress, spreadStudy } from '../store/design.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { DataTable } from './data-table.tsx'
import { guessName } from './field-words.ts'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Results for which measurements are told. */
const measuredFor = ['energy', 'usefulPower', 'cutInWind', 'hottestCopper'] as const

interface Row {
  readonly words: SpreadWords
  readonly spread: ResultSpread
}

const rowsOf = ({ results }: SpreadStudy): Row[] =>
  Object.entries(spreadWords).map(([output, words]) => ({
    words,
    spread: scaledSpread(results[output as SpreadOutput], words.scale),
  }))

function togetherWords({ together, pair }: ResultSpread): string {
  if (together < leastTogether) return ''
  const share = percent(together)
  return pair === undefined
    ? say`${share} of it comes only from guesses together`
    : say`${share} of it comes only from guesses together, most of all ${guessName(pair[0])} and ${guessName(pair[1])}`
}

/** A number and its unit stay on one line. */
const unparted = (text: string): string => text.replaceAll(' %', '\u00a0%')

const causesText = (spread: ResultSpread): string =>
  [
    ...spread.causes
      .slice(0, 3)
      .map(({ path, share }) => unparted(shown(`${guessName(path)} ${percent(share)}`))),
    togetherWords(spread),
  ]
    .filter((text) => text !== '')
    .join('; ')

function Next({ words, spread }: Row) {
  return (
    <section class="spread-next">
      <h4>
        {capital(told(words.title))}: {told(intervalText(spread.value, words.suffix, spread))}
      </h4>
      <ol>
        {spread.next.slice(0, 3).map((each) => (
          <li key={each.path}>
            <b>{capital(guessName(each.path))}</b>
            <br />
            {say`With this: ${told(each.instrument)}. ${capital(told(each.doing))}.`}{' '}
            {say`Then ${told(rangeText(each.low, each.high, words.suffix))}, ${percent(each.gain)} narrower, for ${told(effortText(each))}.`}
          </li>
        ))}
      </ol>
    </section>
  )
}

function Study({ study }: { readonly study: SpreadStudy }) {
  if (study.drawn.length === 0) return <p class="note">{say`Nothing in this design is guessed.`}</p>
  const rows = rowsOf(study)
  const worth = rows.filter(
    ({ words, spread }) => spread.next.length > 0 && measuredFor.some((name) => spreadWords[name] === words),
  )
  return (
    <>
      <DataTable
        caption={say`${study.samples} draws of ${study.drawn.length} guesses at once; nine of ten lie between`}
        rows={rows}
        columns={[
          { head: say`result`, cell: ({ words }) => told(words.title) },
          {
            head: say`with its spread`,
            cell: ({ words, spread }) => told(intervalText(spread.value, words.suffix, spread)),
          },
          {
            head: say`nine of ten between`,
            cell: ({ words, spread }) =>
              spread.spread > 0 ? told(rangeText(spread.low, spread.high, words.suffix)) : '–',
          },
          { head: say`whose doing`, cell: ({ spread }) => causesText(spread) || '–' },
        ]}
      />
      {worth.length === 0 ? null : (
        <>
          <h3>{say`What to measure next`}</h3>
          <div class="spread-nexts">
            {worth.map((row) => (
              <Next key={row.words.name} {...row} />
            ))}
          </div>
          <p class="note">
            {say`Hours, and what an instrument leaves open, are common practice without a source.`}
          </p>
        </>
      )}
    </>
  )
}

export function SpreadView() {
  const fraction = spreadProgress.value
  const study = spreadStudy.value
  return (
    <section class="bench spread card" id="spread" aria-labelledby="spread-title">
      <h3 id="spread-title">{say`How far the guesses let it be off`}</h3>
      {fraction === undefined ? null : (
        <p class="note">
          <progress aria-label={say`Drawing the guesses`} max={1} value={fraction} />{' '}
          {say`drawing the guesses`}
        </p>
      )}
      {study !== undefined ? (
        <Study study={study} />
      ) : fraction === undefined ? (
        <p class="note">{say`It is drawn as soon as the first numbers are there.`}</p>
      ) : null}
    </section>
  )
}
