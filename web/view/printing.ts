/** What changes on the page while it is printed: light colours, tables and concerns opened, every picture drawn. */
import { drawNow } from './drawing-turn.ts'

/** Folded parts that paper cannot unfold. */
const folded = ['as-table', 'concern', 'rare', 'fold-group']
  .map((name) => `details.${name}:not([open])`)
  .join(', ')

/** Told at once: the event of the browser itself comes only after the paper. */
const unfold = (element: HTMLDetailsElement, open: boolean): void => {
  element.open = open
  element.dispatchEvent(new Event('toggle'))
}

export function makeReadyToPrint(): void {
  let opened: HTMLDetailsElement[] = []
  let theme: string | undefined
  addEventListener('beforeprint', () => {
    const { dataset } = document.documentElement
    theme = dataset['theme']
    dataset['theme'] = 'light'
    opened = [...document.querySelectorAll<HTMLDetailsElement>(folded)]
    for (const element of opened) unfold(element, true)
    drawNow()
  })
  addEventListener('afterprint', () => {
    const { dataset } = document.documentElement
    if (theme === undefined) delete dataset['theme']
    else dataset['theme'] = theme
    for (const element of opened) unfold(element, false)
    opened = []
  })
}
