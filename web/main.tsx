/** Starts the page. */
import { effect } from '@preact/signals'
import { render } from 'preact'
import { Page } from './page.tsx'
import { fetchRooms } from './room/sight.ts'
import { concerns, faults, firstVisit, snapshot } from './store/design.ts'
import { fetchExamples } from './store/example.ts'
import { keepOffline } from './store/offline.ts'
import { enter } from './store/room.ts'
import { openLink } from './store/sharing.ts'
import { allWords, startLanguage } from './text/language.ts'
import { keepFocus } from './view/focus-keeper.ts'
import { makeReadyToPrint } from './view/printing.ts'
import './style/theme.css'
import './style/page.css'
import './style/room.css'
import './style/river.css'
import './style/bench.css'
import './style/picture.css'
import './style/form.css'
import './style/chart.css'
import './style/table.css'
import './style/power.css'
import './style/mechanics.css'
import './style/tracing.css'
import './style/finger.css'
import './style/print.css'

const place = document.getElementById('page')
if (place) {
  place.replaceChildren()
  void startLanguage()
  if (firstVisit && location.hash === '') enter('begin', true)
  fetchRooms()
  render(<Page />, place)
  keepFocus(place)
  makeReadyToPrint()
  void openLink()
  addEventListener('hashchange', () => void openLink())
  const answered = () => snapshot.value !== undefined || faults.value.length > 0
  // what did not arrive is asked for again with the next numbers
  effect(() => {
    if (answered()) void allWords().catch(() => {})
  })
  effect(() => {
    if (concerns.value !== undefined || faults.value.length > 0) void fetchExamples().catch(() => {})
  })
  keepOffline(answered)
}
