/** What somebody has at hand, as it is typed: kept in this browser, and asked about as a whole. */
import { computed, signal } from '@preact/signals'
import type { ShownFault } from '../messages.ts'
import { isRawObject, type Path, type RawObject, valueAt, withValue } from './raw-document.ts'

const files = import.meta.glob('../../examples/stock/shed-drawer.json', { eager: true, import: 'default' })

/** An invented drawer to begin with, so that one press answers. */
const usualStock = Object.values(files).find(isRawObject)!

const place = 'gustloom.stock'

function kept(): RawObject {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(place) ?? 'null')
    return isRawObject(found) ? found : usualStock
  } catch {
    return usualStock
  }
}

export const stock = signal<RawObject>(kept())

/** Nothing has been told yet. */
export const untold = computed(() => stock.value === usualStock)

/** Faults of the stock as it was last asked about; those of a field go when it is changed. */
export const stockFaults = signal<readonly ShownFault[]>([])

const isWithin = (path: string, place: string): boolean => path === place || path.startsWith(`${place}.`)

export const stockFaultsOf = (path: string): readonly ShownFault[] =>
  stockFaults.value.filter((fault) => isWithin(fault.path, path))

export function setStock(path: Path, value: unknown): void {
  stock.value = withValue(stock.value, path, value) as RawObject
  const field = path.join('.')
  if (stockFaultsOf(field).length > 0)
    stockFaults.value = stockFaults.value.filter((fault) => !isWithin(fault.path, field))
  try {
    localStorage.setItem(place, JSON.stringify(stock.value))
  } catch {
    // the drawer then lasts as long as the page is open
  }
}

export function forgetStock(): void {
  stock.value = usualStock
  try {
    localStorage.removeItem(place)
  } catch {
    // nothing was kept
  }
}

export const stockValue = (path: Path): unknown => valueAt(stock.value, path)

/** Another kind of magnet or load: what both have in common stays, the rest begins as usual. */
export function setVariant(noun: 'magnet' | 'store', variant: string): void {
  const before = stockValue([noun])
  const begin = variants[noun][variant]!
  const common = Object.keys(begin).flatMap((key) => {
    const old = isRawObject(before) ? before[key] : undefined
    return old === undefined || key === 'shape' || key === 'kind' ? [] : [[key, old]]
  })
  setStock([noun], { ...begin, ...Object.fromEntries(common) })
}

const variants: Readonly<Record<'magnet' | 'store', Readonly<Record<string, RawObject>>>> = {
  magnet: {
    disc: { shape: 'disc', diameter_mm: 20, thickness_mm: 5 },
    block: { shape: 'block', length_mm: 30, width_mm: 15, thickness_mm: 5 },
  },
  store: {
    battery: { kind: 'battery', chemistry: 'lead-acid', label_V: 12 },
    resistor: { kind: 'resistor', resistance_ohm: 15 },
  },
}

/** Undefined: as much as there is. The wind in which it is wished for begins as a fresh breeze [m/s]. */
export function wishPower(power_W: unknown): void {
  if (power_W === undefined) setStock(['wish'], undefined)
  else setStock(['wish'], { power_W, atWind_m_per_s: stockValue(['wish', 'atWind_m_per_s']) ?? 8 })
}

/** Mean winds of a year by the look of a place, a guess each with half its width [m/s]: common practice, no source. */
export const places = [
  { key: 'sheltered', wind: 2.5, spread: 0.8 },
  { key: 'village', wind: 3.5, spread: 1 },
  { key: 'open', wind: 4.5, spread: 1 },
  { key: 'shore', wind: 6, spread: 1.5 },
] as const

export type PlaceKey = (typeof places)[number]['key']

/** The place whose wind stands there; undefined where somebody typed a number of their own. */
export const chosenPlace = computed((): PlaceKey | undefined => {
  const wind = stockValue(['meanWind_m_per_s'])
  if (!isRawObject(wind)) return undefined
  return places.find(({ wind: mean, spread }) => wind['value'] === mean && wind['spread'] === spread)?.key
})

export function choosePlace(key: PlaceKey): void {
  const { wind, spread } = places.find((one) => one.key === key)!
  setStock(['meanWind_m_per_s'], { value: wind, spread, known: 'guessed' })
}
