/** The choice of units in the settings of the page: the system, and apart from it wind, temperature and wire. */
import {
  measureSystems,
  temperatureMeasures,
  windMeasures,
  wireMeasures,
} from '../../src/units/measure-choice.ts'
import { chooseMeasure, chooseSystem, measure } from '../store/measure.ts'
import { say } from '../text/say.ts'

interface Choice<Word extends string> {
  readonly label: string
  readonly words: readonly Word[]
  readonly chosen: Word
  readonly choose: (word: Word) => void
  readonly said?: (word: Word) => string
}

function UnitChoice<Word extends string>({
  label,
  words,
  chosen,
  choose,
  said = (word) => word,
}: Choice<Word>) {
  return (
    <label class="measure-choice">
      <span>{label}</span>
      <select
        value={chosen}
        onChange={({ currentTarget }) => {
          const word = words.find((each) => each === currentTarget.value)
          if (word !== undefined) choose(word)
        }}
      >
        {words.map((word) => (
          <option key={word} value={word}>
            {said(word)}
          </option>
        ))}
      </select>
    </label>
  )
}

export function MeasureChoice() {
  const { system, wind, temperature, wire } = measure.value
  const systems = { metric: say`metric`, 'inch and pound': say`inch and pound` }
  const winds = { 'm/s': 'm/s', 'km/h': 'km/h', mph: 'mph', knots: say`knots` }
  const wires = { mm: say`diameter, mm`, AWG: say`gauge, AWG`, SWG: say`gauge, SWG` }
  return (
    <fieldset class="measure-choices">
      <legend>{say`Units`}</legend>
      <UnitChoice
        label={say`Lengths, weights, forces`}
        words={measureSystems}
        chosen={system}
        choose={chooseSystem}
        said={(word) => systems[word]}
      />
      <UnitChoice
        label={say`Wind`}
        words={windMeasures}
        chosen={wind}
        choose={(word) => chooseMeasure({ wind: word })}
        said={(word) => winds[word]}
      />
      <UnitChoice
        label={say`Temperature`}
        words={temperatureMeasures}
        chosen={temperature}
        choose={(word) => chooseMeasure({ temperature: word })}
      />
      <UnitChoice
        label={say`Wire`}
        words={wireMeasures}
        chosen={wire}
        choose={(word) => chooseMeasure({ wire: word })}
        said={(word) => wires[word]}
      />
    </fieldset>
  )
}
