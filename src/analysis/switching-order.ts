/** In which order the electrical side is switched on, stopped and made safe to touch, for this machine's own parts. */
import type { Machine } from '../machine/machine.ts'

export interface SwitchingStep {
  readonly name: 'before the first turn' | 'to start' | 'to stop' | 'before a storm' | 'before touching'
  readonly steps: readonly string[]
}

const says = (condition: boolean, text: string): string[] => (condition ? [text] : [])

/** Only steps whose part the document names; whatever the machine lacks is told by its concerns. */
export function switchingOrder(machine: Machine): readonly SwitchingStep[] {
  const { load, protection, converter } = machine
  const { electrical, mechanical, short } = protection
  const battery = load.kind === 'battery'
  const brake = electrical === 'shorting switch'
  const dump = electrical === 'dump load'
  const atLeads = short.place === 'at the machine'
  const brakeName = atLeads ? 'the short at the machine’s leads' : 'the short behind the bridge'
  const loadName = battery ? 'the battery’s switch' : 'the load’s switch'
  // a short behind the bridge that stays on the battery would short it
  const openFirst = brake && !atLeads && battery
  return [
    {
      name: 'before the first turn',
      steps: [
        'Block the rotor by hand or rope; keep everybody out of its plane.',
        'Read plus and minus at the bridge with the rotor turned by hand, and mark them.',
        ...says(
          brake,
          'Close the short, turn the rotor by hand and feel it hold; open it and feel it run free.',
        ),
        ...says(battery, 'Connect the bridge to the wiring first, the battery’s fuse last, plus to plus.'),
        ...says(
          dump,
          'Raise the controller’s volts with a bench supply, and see the dump load come on and go off.',
        ),
        ...says(dump, 'Take the controller’s supply away, and see what the dump load does.'),
      ],
    },
    {
      name: 'to start',
      steps: [
        ...says(brake, `Leave ${brakeName} closed.`),
        ...says(battery, 'Put the battery’s fuse in.'),
        ...says(dump, 'See that the dump load’s fuse is in and its controller awake.'),
        ...(openFirst
          ? [`Open ${brakeName}, then close ${loadName} at once, in light wind only.`]
          : [`Close ${loadName}.`, ...says(brake, `Open ${brakeName}, in light wind.`)]),
        ...says(converter !== undefined, 'Wait until the converter draws current before you leave.'),
      ],
    },
    {
      name: 'to stop',
      steps: [
        ...says(
          mechanical !== 'none' && mechanical !== 'friction brake',
          'In strong wind wait for a lull; the mechanical limiter must do the rest.',
        ),
        ...says(mechanical === 'friction brake', 'Draw the friction brake and hold it.'),
        ...(openFirst
          ? [
              `This wiring opens ${loadName} first and then closes ${brakeName}: between the two the rotor has no load.`,
            ]
          : brake
            ? [
                `Close ${brakeName} with the load still connected, in a wind in which it was tried.`,
                'Wait until the rotor has stopped or only creeps.',
                `Then open ${loadName}.`,
              ]
            : ['Leave the load connected until the rotor has stopped: never open it on a turning rotor.']),
      ],
    },
    {
      name: 'before a storm',
      steps: [
        ...says(
          brake,
          `Stop it and leave ${brakeName} closed before the wind rises; a turning rotor may be past holding.`,
        ),
        ...says(mechanical !== 'none', `See that the ${mechanical} moves freely and is not lashed.`),
        ...says(dump, 'See that nothing that burns lies near the dump load.'),
        ...says(
          !brake && mechanical === 'none' && machine.safetyClass === 'outdoor',
          'Nothing of the document holds this rotor in a storm: take it down.',
        ),
      ],
    },
    {
      name: 'before touching',
      steps: [
        'Stop it as above, and tie the rotor down: it turns again in the next gust.',
        ...says(battery, 'Take the battery’s fuse out.'),
        ...says(load.kind === 'capacitor', 'Discharge the capacitor through a resistor.'),
        'Prove with a meter between every pair of wires, alternating and direct, that they are dead; try the meter on something live before and after.',
      ],
    },
  ]
}
