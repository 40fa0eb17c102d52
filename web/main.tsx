/** Starts the page. */
import { render } from 'preact'
import { Page } from './page.tsx'
import { openLink } from './store/sharing.ts'
import './style/page.css'
import './style/form.css'
import './style/chart.css'

const place = document.getElementById('page')
if (place) {
  place.replaceChildren()
  render(<Page />, place)
  void openLink()
  addEventListener('hashchange', () => void openLink())
}
