/** Whom the design is set against in the contest, and what is held equal: tracings, own designs, examples, a file. */
import { useEffect } from 'preact/hooks'
import { type ContestRule, contestRules, contestRuleWords } from '../../src/analysis/contest-rule.ts'
import {
  contest,
  contestRule,
  holdContest,
  type RivalGroup,
  rival,
  rivalGroups,
  stopContest,
} from '../store/contest.ts'
import { foreignDocument, tooLargeFile } from '../store/foreign-document.ts'
import { watchShelf } from '../store/shelf-list.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'

async function openRival(file: File | undefined): Promise<void> {
  if (!file) return
  const refuse = (reason: string) => {
    contest.value = { kind: 'refused', reason, faults: [] }
  }
  const tooLarge = tooLargeFile(file, file.name)
  if (tooLarge !== undefined) return refuse(tooLarge)
  try {
    const found = foreignDocument(await file.text(), file.name)
    if (found.kind === 'refused') refuse(found.reason)
    else rival.value = { name: String(found.document['name'] ?? file.name), document: found.document }
  } catch (error) {
    refuse(say`${file.name} cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

const groupNames: Readonly<Record<RivalGroup['of'], () => string>> = {
  tracings: () => say`Tracings`,
  'own designs': () => say`Your designs`,
  examples: () => say`Examples, invented`,
}

export function ContestChoice() {
  useEffect(watchShelf, [])
  const running = contest.value.kind === 'running'
  const chosen = rival.value
  const groups = rivalGroups.value.filter(({ rivals }) => rivals.length > 0)
  const all = groups.flatMap(({ rivals }) => rivals)
  return (
    <form
      class="contest-choice"
      onSubmit={(event) => {
        event.preventDefault()
        holdContest()
      }}
    >
      <label>
        {say`Compare with`}{' '}
        <select
          value={all.some(({ key }) => key === chosen?.key) ? chosen?.key : ''}
          onChange={(event) => {
            rival.value = all.find(({ key }) => key === event.currentTarget.value)
          }}
        >
          <option value="">{chosen?.name ?? say`a design …`}</option>
          {groups.map(({ of, rivals }) => (
            <optgroup key={of} label={groupNames[of]()}>
              {rivals.map(({ key, name }) => (
                <option key={key} value={key}>
                  {name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <label class="button">
        {say`or a file`}
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            void openRival(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
          }}
        />
      </label>
      <label>
        {say`with this held equal`}{' '}
        <select
          value={contestRule.value}
          onChange={(event) => {
            contestRule.value = event.currentTarget.value as ContestRule
          }}
        >
          {contestRules.map((rule) => (
            <option key={rule} value={rule}>
              {told(contestRuleWords[rule])}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" class="chief" disabled={chosen === undefined || running}>
        {say`Compare`}
      </button>
      {running ? (
        <button type="button" onClick={stopContest}>
          {say`Stop`}
        </button>
      ) : null}
    </form>
  )
}
