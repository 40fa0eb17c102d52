/** What somebody has at hand, asked in a few calm questions; every one may be left as it stands. */
import { descriptions } from '../store/design.ts'
import { inMeasure } from '../store/measure.ts'
import {
  choosePlace,
  chosenPlace,
  forgetStock,
  type PlaceKey,
  places,
  setStock,
  setVariant,
  stockValue,
  untold,
  wishPower,
} from '../store/stock.ts'
import { say } from '../text/say.ts'
import { StockChoice, StockNumber, StockSelect, StockTick } from './stock-field.tsx'

const chosen = (...keys: string[]): string | undefined => {
  const value = stockValue(keys)
  return typeof value === 'string' ? value : undefined
}

/** The words that a field of the design document may hold; none until the engine has told them. */
const wordsOf = (path: string): readonly string[] =>
  descriptions.value.find((field) => field.path === path && field.words.length > 0)?.words ?? []

function Place() {
  return (
    <fieldset class="card stock-part">
      <legend>{say`Where it will turn`}</legend>
      <StockChoice
        name="stock-class"
        legend={say`Kind of place`}
        value={chosen('class') ?? 'outdoor'}
        choose={(key) => setStock(['class'], key)}
        choices={[
          { key: 'outdoor', words: say`Outdoors, by itself` },
          { key: 'demonstration', words: say`On a table, before a fan` },
          { key: 'bench', words: say`On a bench, by a drill` },
        ]}
      />
    </fieldset>
  )
}

function Magnets() {
  const round = chosen('magnet', 'shape') === 'disc'
  return (
    <fieldset class="card stock-part">
      <legend>{say`Magnets`}</legend>
      <StockChoice
        name="stock-magnet"
        legend={say`Shape of the magnets`}
        value={chosen('magnet', 'shape')}
        choose={(key) => setVariant('magnet', key)}
        choices={[
          { key: 'disc', words: say`Round` },
          { key: 'block', words: say`Blocks` },
        ]}
      />
      {round ? (
        <StockNumber keys={['magnet', 'diameter_mm']} label={say`Diameter`} begin={20} />
      ) : (
        <>
          <StockNumber keys={['magnet', 'length_mm']} label={say`Length`} begin={30} />
          <StockNumber keys={['magnet', 'width_mm']} label={say`Width`} begin={15} />
        </>
      )}
      <StockNumber
        keys={['magnet', 'thickness_mm']}
        label={say`Thickness`}
        begin={5}
        help={say`From one pole face to the other: the edge along which it attracts.`}
      />
      <StockNumber keys={['magnetCount']} kind="count" label={say`How many of them`} begin={16} />
      <StockSelect
        keys={['grade']}
        label={say`Grade`}
        words={wordsOf('rotor.magnet.grade')}
        none={say`not known: N35 is assumed`}
      />
    </fieldset>
  )
}

function Wire() {
  return (
    <fieldset class="card stock-part">
      <legend>{say`Wire`}</legend>
      <StockNumber
        keys={['wire', 'size']}
        kind="wire size"
        label={say`Bare wire`}
        begin={0.5}
        help={say`Enamelled copper wire, measured without its enamel, or its gauge.`}
      />
      <StockNumber
        keys={['wire', 'reelMass_g']}
        label={say`On the reels`}
        begin={500}
        help={say`Weight of the wire that you have. Left empty: as much as it takes.`}
      />
    </fieldset>
  )
}

function Store() {
  const battery = chosen('store', 'kind') !== 'resistor'
  return (
    <fieldset class="card stock-part">
      <legend>{say`What it feeds`}</legend>
      <StockChoice
        name="stock-store"
        legend={say`Kind of load`}
        value={battery ? 'battery' : 'resistor'}
        choose={(key) => setVariant('store', key)}
        choices={[
          { key: 'battery', words: say`A battery` },
          { key: 'resistor', words: say`A lamp or a heater` },
        ]}
      />
      {battery ? (
        <>
          <StockNumber
            keys={['store', 'label_V']}
            label={say`Volts on its label`}
            begin={12}
            help={say`12, 24 or 48 V are usual.`}
          />
          <StockSelect
            keys={['store', 'chemistry']}
            label={say`Chemistry`}
            words={wordsOf('load.chemistry')}
          />
          <StockNumber
            keys={['store', 'capacity_Ah']}
            label={say`Charge that it holds`}
            begin={12}
            help={say`Left empty: a middling one is assumed.`}
          />
        </>
      ) : (
        <StockNumber
          keys={['store', 'resistance_ohm']}
          label={say`Its resistance when hot`}
          begin={15}
          help={say`The volts of its label times themselves, over its watts: 12 V and 10 W make ${'14.4 Ω'}.`}
        />
      )}
    </fieldset>
  )
}

const placeWords = (key: PlaceKey): string => {
  switch (key) {
    case 'sheltered':
      return say`A garden among houses and trees`
    case 'village':
      return say`The edge of a village, a few obstacles`
    case 'open':
      return say`Open fields`
    case 'shore':
      return say`A shore or a bare hilltop`
  }
}

function Wind() {
  const outdoor = (chosen('class') ?? 'outdoor') === 'outdoor'
  const about = (wind: number, spread: number) =>
    say`about ${inMeasure(wind - spread, 'm_per_s', 2)} to ${inMeasure(wind + spread, 'm_per_s', 2)}`
  return (
    <fieldset class="card stock-part">
      <legend>{say`Wind`}</legend>
      {outdoor ? (
        <StockChoice
          name="stock-place"
          legend={say`What the place looks like`}
          value={chosenPlace.value}
          choose={(key) => choosePlace(key as PlaceKey)}
          choices={places.map(({ key, wind, spread }) => ({
            key,
            words: placeWords(key),
            note: about(wind, spread),
          }))}
        />
      ) : null}
      <StockNumber
        keys={['meanWind_m_per_s']}
        label={outdoor ? say`Mean of a year` : say`Wind before the fan`}
        begin={4}
        help={
          outdoor
            ? say`The places are guesses from common practice, without a source. A number that you know is better: type it.`
            : say`Hold a wind meter where the rotor will turn; without one, 3 m/s is a fair guess for a desk fan.`
        }
      />
    </fieldset>
  )
}

function Wishes() {
  const wished = stockValue(['wish']) !== undefined
  return (
    <fieldset class="card stock-part">
      <legend>{say`If you like`}</legend>
      <StockNumber
        keys={['wish', 'power_W']}
        label={say`Power that you wish for`}
        write={wishPower}
        begin={10}
        help={say`Left empty: as much as your things give.`}
      />
      {wished ? <StockNumber keys={['wish', 'atWind_m_per_s']} label={say`In a wind of`} begin={8} /> : null}
      <StockNumber
        keys={['printerBed_mm']}
        label={say`Bed of your printer, shorter side`}
        begin={220}
        help={say`Left empty: parts are cut or cast.`}
      />
      <StockTick keys={['steelPlates']}>{say`I can get steel plates cut to size`}</StockTick>
      <StockChoice
        name="stock-winding"
        legend={say`How to wind it`}
        value={chosen('winding') ?? 'either'}
        choose={(key) => setStock(['winding'], key)}
        choices={[
          { key: 'either', words: say`Whichever does better` },
          { key: 'coils', words: say`Single coils` },
          { key: 'serpentine', words: say`Waves of wire` },
        ]}
      />
    </fieldset>
  )
}

export function StockForm({ ask, busy }: { readonly ask: () => void; readonly busy: boolean }) {
  return (
    <form
      class="stock-form"
      aria-label={say`What you have at hand`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        ask()
      }}
    >
      <Place />
      <Magnets />
      <Wire />
      <Store />
      <Wind />
      <Wishes />
      <p class="stock-end">
        <button type="submit" class="first-button" disabled={busy}>
          {say`Find machines for these`}
        </button>
        {untold.value ? null : (
          <button type="button" class="quiet" onClick={forgetStock}>
            {say`Begin again with the drawer of the example`}
          </button>
        )}
      </p>
    </form>
  )
}
