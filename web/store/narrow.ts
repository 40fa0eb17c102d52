/** Whether the page is as narrow as a phone's, where the river runs down it. */
import { signal } from '@preact/signals'

const query = matchMedia('(max-width: 899px)')

export const narrow = signal(query.matches)

const paper = matchMedia('print')

query.addEventListener('change', ({ matches }) => {
  // paper is narrow too, but what is printed is the page as it stood
  if (!paper.matches) narrow.value = matches
})
