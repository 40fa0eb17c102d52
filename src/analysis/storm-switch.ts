/** What fails and what switches in a storm: the event itself, the dump, the short, the battery's own electronics. */
import type { Bus } from './storm-bus.ts'
import type { StormCase } from './storm-case.ts'
import type { StormCircuit } from './storm-circuit.ts'
import type { StormMachine } from './storm-machine.ts'

export interface Happening {
  /** [s] */
  readonly time: number
  readonly words: string
}

export interface Switchboard {
  readonly happened: readonly Happening[]
  /** Looks at volts and speed after a step, and switches; true where something was switched. */
  readonly look: (time: number, bus: Bus | undefined, speed: number) => boolean
  /** The next moment at which something is due [s]; infinite for none. */
  readonly due: () => number
}

/** Delay of a dump's switch, and of a short that closes by itself [s]. Guesses, no source. */
const switchDelay = 0.1
/** Time between the two steps of a switch that first takes the load off [s]. A guess, no source. */
const handGap = 1

export function switchboard(parts: StormMachine, given: StormCase, circuit: StormCircuit): Switchboard {
  const { load, protection, cable } = parts.chain.machine
  const { is } = circuit
  const { dump } = given
  const happened: Happening[] = []
  let fired = given.event === 'nothing'
  let dumpDue = Number.POSITIVE_INFINITY
  let shortDue = given.shortAt ?? Number.POSITIVE_INFINITY
  let loadGone = false
  let lostDue = given.lostAt ?? Number.POSITIVE_INFINITY
  if (dump !== undefined && !given.dumpWorks) is.dump = dump.withoutPower === 'on' ? 'on' : 'gone'

  const loseLoad = (time: number, words: string) => {
    if (!is.battery && !is.load) return
    is.battery = false
    is.load = false
    is.converter = false
    loadGone = true
    const taken = dump?.place === 'at the battery' && is.dump !== 'gone'
    if (taken) is.dump = 'gone'
    happened.push({ time, words: taken ? `${words}, and the dump load with it` : words })
  }

  const closeShort = (time: number) => {
    if (is.winding === 'open') {
      happened.push({ time, words: 'the short is closed, but the open winding carries no current' })
      shortDue = Number.POSITIVE_INFINITY
      return
    }
    const behind = protection.short.place === 'after the bridge'
    is.short = behind ? 'bridge' : cable.place === 'before bridge' ? 'far end' : 'leads'
    happened.push({
      time,
      words:
        behind && is.battery
          ? 'the short is closed behind the bridge; it shorts the battery too, whose fuse must blow'
          : 'the winding is shorted',
    })
    is.battery = false
    is.load = false
    is.converter = false
    shortDue = Number.POSITIVE_INFINITY
  }

  const events: Readonly<Record<StormCase['event'], (time: number) => void>> = {
    nothing: () => {},
    'load lost': (time) => loseLoad(time, 'the load is lost'),
    'fuse blown': (time) => {
      loseLoad(time, 'the battery’s fuse blows')
      if (dump === undefined || dump.ownFuse || is.dump === 'gone') return
      is.dump = 'gone'
      happened.push({ time, words: 'the dump load hangs on the same fuse' })
    },
    'battery disconnects': (time) => loseLoad(time, 'the battery takes itself off'),
    'battery full': () => {},
    frost: (time) => loseLoad(time, 'the battery refuses charge in the frost'),
    'dump dead': (time) => {
      if (dump === undefined || is.dump === 'gone') return
      is.dump = dump.withoutPower === 'on' ? 'on' : 'gone'
      happened.push({ time, words: `the dump’s controller dies and leaves it ${dump.withoutPower}` })
    },
    'converter dead': (time) => loseLoad(time, 'the converter dies and draws nothing'),
    'winding open': (time) => {
      is.winding = 'open'
      happened.push({ time, words: 'the winding opens: no current flows any more' })
    },
    'phase open': (time) => {
      is.winding = 'phase open'
      happened.push({ time, words: 'one phase opens; the others go on' })
    },
    'magnet off': (time) => {
      is.winding = 'magnet off'
      happened.push({ time, words: time > 1 ? 'a magnet leaves the rotor' : 'a magnet is missing' })
    },
    'diode open': (time) => {
      is.winding = 'diode open'
      happened.push({ time, words: 'one diode opens' })
    },
    'diode shorted': (time) => {
      is.winding = 'diode shorted'
      happened.push({ time, words: 'one diode becomes a short' })
    },
  }

  /** The switch of a dump between its two voltages, late by its delay. */
  const dumpSwitched = (time: number, sensed: number): boolean => {
    if (dump === undefined || is.dump === 'gone' || is.short !== 'none') return false
    if (!given.dumpWorks || (fired && given.event === 'dump dead')) return false
    const change = is.dump === 'off' ? sensed >= dump.on : sensed <= dump.off
    if (!change) dumpDue = Number.POSITIVE_INFINITY
    else if (dumpDue === Number.POSITIVE_INFINITY) dumpDue = time + switchDelay
    else if (time >= dumpDue - 1e-9) {
      is.dump = is.dump === 'off' ? 'on' : 'off'
      dumpDue = Number.POSITIVE_INFINITY
      const words = 'the dump load switches on'
      if (is.dump === 'on' && !happened.some((one) => one.words === words)) happened.push({ time, words })
      return true
    }
    return false
  }

  const shortSwitched = (time: number, speed: number): boolean => {
    if (is.short !== 'none') return false
    const { actsAt, order } = protection.short
    if (
      shortDue === Number.POSITIVE_INFINITY &&
      given.shortWorks &&
      protection.electrical === 'shorting switch' &&
      actsAt !== undefined &&
      speed >= actsAt &&
      is.winding !== 'open'
    )
      shortDue = time + switchDelay
    if (time < shortDue - 1e-9) return false
    if (order === 'disconnect, then short' && !loadGone && is.load) {
      loseLoad(time, 'the switch first takes the load off')
      shortDue = time + handGap
    } else closeShort(time)
    return true
  }

  const look = (time: number, bus: Bus | undefined, speed: number): boolean => {
    let changed = false
    if (time >= lostDue - 1e-9) {
      lostDue = Number.POSITIVE_INFINITY
      loseLoad(time, 'the load is lost')
      changed = true
    }
    if (!fired && time >= given.at - 1e-9) {
      fired = true
      events[given.event](time)
      changed = true
    }
    if (shortSwitched(time, speed)) changed = true
    const sensed = circuit.sensed(bus, speed)
    const battery = circuit.atBattery(bus) ?? sensed
    if (dumpSwitched(time, dump?.place === 'at the battery' ? battery : sensed)) changed = true
    if (is.battery && load.kind === 'battery' && load.disconnect !== undefined)
      if (battery > load.disconnect.above) {
        loseLoad(time, 'the battery takes itself off above its limit')
        changed = true
      }
    return changed
  }

  return {
    happened,
    look,
    due: () => Math.min(fired ? Number.POSITIVE_INFINITY : given.at, lostDue, shortDue, dumpDue),
  }
}
