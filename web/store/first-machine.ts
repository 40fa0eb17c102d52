/** The first machines from the stock on the page: how far the search is, the machines found, one taken. */
import { computed, effect, signal } from '@preact/signals'
import type { FirstCard } from '../../src/output/first-card.ts'
import { say } from '../text/say.ts'
import { notice, openAnother } from './design.ts'
import { jobView } from './job.ts'
import { enter } from './room.ts'
import { stock, stockFaults } from './stock.ts'

const view = jobView('first')
export const firstSearch = view.state

/** Machines of a search that was stopped before its end. */
const leftOver = signal<readonly FirstCard[]>([])

/** The machines that can be taken now: the end of a search, its best so far, or what it had when it was stopped. */
export const firstCards = computed((): readonly FirstCard[] => {
  const state = firstSearch.value
  if (state.kind === 'done') return state.report.cards
  if (state.kind === 'running') return state.soFar ?? []
  return leftOver.value
})

/** The stock has been changed since it was asked about. */
export const firstStale = computed(() => {
  const state = firstSearch.value
  return state.kind === 'done' && state.asked.stock !== stock.value
})

export function findFirst(): void {
  leftOver.value = []
  view.start({ stock: stock.value })
}

export function stopFirst(): void {
  leftOver.value = firstCards.value
  view.stop()
}

effect(() => {
  const state = firstSearch.value
  stockFaults.value = state.kind === 'refused' ? state.faults : []
})

/** The machine becomes a design of its own; the one that stood there stays on the shelf. */
export function takeFirst({ design }: FirstCard): void {
  openAnother(JSON.parse(JSON.stringify(design)), say`a first machine taken`)
  if (notice.value === '')
    notice.value = say`This is your first machine. Every size in it is a proposal: measure magnets, wire and wind, and enter what you find.`
  enter('whole')
}
