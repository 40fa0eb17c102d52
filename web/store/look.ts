/** How the page looks: as the system is set, light, dark, or in the contrast that full sunlight needs. */
import { computed, effect, signal } from '@preact/signals'

export const looks = ['system', 'light', 'dark', 'sun'] as const
export type Look = (typeof looks)[number]

const place = 'gustloom.look'

function kept(): Look {
  try {
    const found = localStorage.getItem(place)
    return looks.find((look) => look === found) ?? 'system'
  } catch {
    return 'system'
  }
}

export const look = signal<Look>(kept())

const dark = matchMedia('(prefers-color-scheme: dark)')
const contrast = matchMedia('(prefers-contrast: more)')
const system = signal<Exclude<Look, 'system'>>('light')
const ask = () => {
  system.value = dark.matches ? 'dark' : contrast.matches ? 'sun' : 'light'
}
ask()
dark.addEventListener('change', ask)
contrast.addEventListener('change', ask)

/** The theme that the style sheets know. */
export const theme = computed(() => (look.value === 'system' ? system.value : look.value))

effect(() => {
  document.documentElement.dataset['theme'] = theme.value
})

effect(() => {
  try {
    localStorage.setItem(place, look.value)
  } catch {
    // the look then lasts as long as the page is open
  }
})
