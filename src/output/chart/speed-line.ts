/** Picture of one line of speeds: where the machine charges, works, is held, whirls and runs away. */
import type { SpeedLine } from '../../analysis/mechanics/speed-line.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { chosenText } from '../measuring.ts'
import { axisBelow, linearScale, niceDomain, spreadApart } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { hatchPath } from './hatch.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { picture, px, textAt } from './picture.ts'

export interface SpeedLineChart {
  readonly width: number
  readonly line: SpeedLine
  /** In the wind looked at [rad/s]. */
  readonly now: number
}

interface Station {
  readonly words: string
  /** [rad/s] */
  readonly speed: number
  readonly className: string
}

const title = 'Along the speeds of the shaft'

const rpm = (speed: number): number => (speed * 30) / Math.PI

/** A critical speed so far above runaway would squeeze all that happens into a corner: it is named only. */
const farAbove = 2.5

/** The slowest first. */
function stations({ cutIn, work, limiter, critical, runaway }: SpeedLine): Station[] {
  const all: (Station | undefined)[] = [
    cutIn === undefined ? undefined : { words: 'current begins', speed: cutIn, className: 'ink-wind' },
    work === undefined
      ? undefined
      : { words: 'slowest in work', speed: work.slowest, className: 'ink-store' },
    work === undefined
      ? undefined
      : { words: 'fastest in work', speed: work.fastest, className: 'ink-store' },
    limiter === undefined
      ? undefined
      : {
          words: `${limiter.kind} holds from ${chosenText(limiter.wind, 'm_per_s')} on`,
          speed: limiter.speed,
          className: 'ink-shaft',
        },
    critical === undefined
      ? undefined
      : { words: 'first critical speed of the shaft', speed: critical.speed, className: 'ink-gives' },
    {
      words: `runaway: no load, nothing holds, ${chosenText(runaway.wind, 'm_per_s')}`,
      speed: runaway.speed,
      className: 'ink-against',
    },
  ]
  return all.filter((one) => one !== undefined).sort((a, b) => a.speed - b.speed)
}

/** Whether the shaft may whirl, in one sentence. */
export function whirlingSentence({ critical, work, runaway }: SpeedLine): string {
  if (critical === undefined)
    return 'Where the shaft whirls cannot be told before its diameter and its bearings are entered.'
  const share = formatNumber(runaway.speed / critical.speed, 2)
  if (work !== undefined && work.fastest > critical.from)
    return `The shaft may whirl in its work: its first critical speed is ${formatSi(critical.speed, 'rpm')}, and it works up to ${formatSi(work.fastest, 'rpm')}.`
  return runaway.speed > critical.from
    ? `In work the shaft stays below the speeds at which it whirls; at runaway it reaches ${share} of its first critical speed.`
    : `The shaft does not whirl: even at runaway it reaches only ${share} of its first critical speed.`
}

const letterOf = (k: number): string => String.fromCharCode(97 + k)

export function speedLineChart({ width, line, now }: SpeedLineChart): string {
  const { work, critical, runaway } = line
  const all = stations(line)
  const most = Math.max(
    ...all.filter(({ speed }) => speed <= farAbove * runaway.speed).map(({ speed }) => rpm(speed)),
    rpm(now),
    1,
  )
  const domain = niceDomain([0, 1.04 * most], 6)
  const plot = { left: 12, top: 44, width: width - 36, height: 62 }
  const x = linearScale(domain, [plot.left, plot.left + plot.width])
  const right = plot.left + plot.width
  const foot = plot.top + plot.height
  const seen = all.filter(({ speed }) => rpm(speed) <= domain[1])
  const places = spreadApart(
    seen.map(({ speed }) => x(rpm(speed))),
    15,
    [plot.left, right],
  )
  const marks = seen.map(({ speed, className }, k) => {
    const at = x(rpm(speed))
    return (
      `<path class="upright ${className}" d="M${px(places[k]!)} ${px(plot.top - 14)}L${px(at)} ${px(plot.top)}V${px(foot)}"/>` +
      textAt(places[k]!, plot.top - 18, letterOf(all.indexOf(seen[k]!)), {
        className: `line-label halo ${className}`,
        anchor: 'middle',
      })
    )
  })
  const shunned =
    critical === undefined || rpm(critical.from) >= domain[1]
      ? ''
      : (() => {
          const from = x(rpm(critical.from))
          const box = {
            x: from,
            y: plot.top,
            width: Math.min(right, x(rpm(critical.to))) - from,
            height: plot.height,
          }
          return `<path class="hatch-line shunned" d="${hatchPath(box, 10)}"/>`
        })()
  const working =
    work === undefined
      ? ''
      : `<rect class="bar ink-store" x="${px(x(rpm(work.slowest)))}" y="${px(plot.top + 22)}" width="${px(Math.max(2, x(rpm(work.fastest)) - x(rpm(work.slowest))))}" height="20"/>`
  const here = x(rpm(now))
  const late = here > plot.left + plot.width * 0.6
  const nowMark =
    `<path class="upright ink-chosen now" d="M${px(here)} ${px(plot.top + 6)}V${px(foot)}"/>` +
    `<circle class="mark ink-chosen" cx="${px(here)}" cy="${px(plot.top + 32)}" r="6"/>` +
    textAt(here + (late ? -9 : 9), plot.top + 14, `now ${formatNumber(rpm(now))} rpm`, {
      className: 'line-label halo ink-chosen',
      anchor: late ? 'end' : 'start',
    })
  const columns = Math.floor((width - 34) / 7)
  let y = foot + 64
  const keys = all.map(({ words, speed, className }, k) => {
    const beyond = seen.includes(all[k]!) ? '' : ', beyond the picture'
    const lines = linesOfParagraph(`${words}: ${formatSi(speed, 'rpm')}${beyond}`, columns)
    const body =
      textAt(8, y, letterOf(k), { className: `line-label ${className}` }) +
      lines.map((text, n) => lineAt(26, y + 18 * n, text, { className: 'tick-text' })).join('')
    y += 18 * lines.length + 2
    return body
  })
  const hatched =
    critical === undefined
      ? []
      : linesOfParagraph(
          `Hatched, from ${formatSi(critical.from, 'rpm')} to ${formatSi(critical.to, 'rpm')}: no speed to stay at, for the shaft may whirl.`,
          columns,
        )
  const legend = hatched.map((text, n) => lineAt(8, y + 4 + 18 * n, text, { className: 'tick-text' }))
  return picture(
    {
      name: 'speed-line',
      title,
      description: `${all.map(({ words, speed }) => `${words} ${formatSi(speed, 'rpm')}`).join(', ')}. Now ${formatSi(now, 'rpm')}. ${whirlingSentence(line)}`,
      width,
      height: y + 18 * hatched.length,
    },
    shunned +
      working +
      axisBelow(plot, { label: 'speed, rpm', domain }) +
      marks.join('') +
      nowMark +
      keys.join('') +
      legend.join(''),
  )
}

export function speedLineTable({ line, now }: Pick<SpeedLineChart, 'line' | 'now'>): ChartTable {
  const critical = line.critical?.speed
  return {
    caption: title,
    columns: [
      { head: 'what happens there' },
      { head: 'speed', unit: 'rpm' },
      { head: 'over the first critical speed' },
    ],
    rows: [...stations(line), { words: 'now', speed: now }].map(({ words, speed }) => [
      words,
      rpm(speed),
      critical === undefined ? undefined : speed / critical,
    ]),
  }
}
