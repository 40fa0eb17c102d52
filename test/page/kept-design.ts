/** What the page keeps in the browser's small store, read and planted by checks. */
import type { Page } from 'playwright-core'

/** The document of the newest copy. */
export const keptDesign = (page: Page): Promise<ReturnType<typeof JSON.parse>> =>
  page.evaluate(() => {
    const copies = Object.entries(localStorage)
      .filter(([place]) => place.startsWith('gustloom.copy.'))
      .map(([, text]) => JSON.parse(text))
      .sort((a, b) => b.changedAt - a.changedAt)
    return copies[0]?.document
  })

/** As if the last visit had left this text where pages before the shelf kept the design, and nothing else. */
export const plantFormer = (page: Page, text: string): Promise<void> =>
  page.evaluate((former) => {
    // the page that is open writes its copy again when it is left
    addEventListener('pagehide', () => {
      localStorage.clear()
      sessionStorage.clear()
      localStorage.setItem('gustloom.document', former)
    })
  }, text)
