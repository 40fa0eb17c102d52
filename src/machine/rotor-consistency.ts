/** Faults of a rotor whose magnets or iron cannot stand where the document puts them. */
import { largestBlockWidth } from '../physics/magnetics/magnet-ring.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { amount, atLeast, atMost, fault, mm } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

type Rotor = Design['rotor']

/** The magnet's edge along the radius, and the field that sets it. */
function radialEdge({ arrangement, magnet }: Rotor): readonly [name: string, edge: number] {
  const thickness = ['thickness_mm', nominal(magnet.thickness_mm)] as const
  if (arrangement === 'drum') return thickness
  return magnet.shape === 'disc'
    ? ['diameter_mm', nominal(magnet.diameter_mm)]
    : ['length_mm', nominal(magnet.length_mm)]
}

/** Magnets side by side may not reach into each other. */
function neighbourFaults(rotor: Rotor, radius: number, edge: number): Fault[] {
  const { magnet, arrangement } = rotor
  const count = rotor.poleCount * rotor.piecesPerPole
  const why = `or the corners of neighbouring magnets collide at a pitch radius of ${amount(radius, 'mm')}`
  const widest = (at: number) =>
    largestBlockWidth({ count, radius: at / 1000, radialEdge: edge / 1000 }) * 1000
  const path = (name: string) => `rotor.magnet.${name}`
  switch (magnet.shape) {
    case 'block':
      return atMost(path('width_mm'), nominal(magnet.width_mm), widest(radius), why)
    case 'disc': {
      const room = arrangement === 'drum' ? widest(radius) : 2 * radius * Math.sin(Math.PI / count)
      return count < 2 ? [] : atMost(path('diameter_mm'), nominal(magnet.diameter_mm), room, why)
    }
    case 'wedge':
      return [
        ...atMost(path('innerWidth_mm'), nominal(magnet.innerWidth_mm), widest(radius), why),
        ...atMost(path('outerWidth_mm'), nominal(magnet.outerWidth_mm), widest(radius + edge), why),
      ]
    case 'arc': {
      const span = nominal(magnet.span_deg)
      const most = 360 / count
      return span <= most * (1 + 1e-9)
        ? []
        : [
            fault(
              path('span_deg'),
              `at most ${amount(most, 'deg')}, the share of one magnet of the round`,
              span,
              {
                suffix: 'deg',
                code: 'above-maximum',
              },
            ),
          ]
    }
  }
}

function shapeFaults({ magnet, arrangement, piecesPerPole, backIron }: Rotor): Fault[] {
  const faults: Fault[] = []
  if (magnet.shape === 'arc' && magnet.magnetisation !== undefined && arrangement !== 'drum')
    faults.push(
      fault(
        'rotor.magnet.magnetisation',
        'left out on a disc, whose magnets are magnetised along the shaft',
        magnet.magnetisation,
      ),
    )
  if (piecesPerPole > 1 && arrangement === 'drum' && backIron?.kind === 'steel')
    faults.push(
      fault(
        'rotor.backIron.kind',
        '"none" behind pieces set end to end, whose back has hardly any field',
        backIron.kind,
      ),
    )
  if (piecesPerPole > 1 && magnet.shape !== 'block')
    faults.push(fault('rotor.magnet.shape', '"block" where several pieces make a pole', magnet.shape))
  return faults
}

function plateFaults(
  path: string,
  plate: { readonly innerRadius_mm?: Quantity | undefined; readonly outerRadius_mm?: Quantity | undefined },
  pitchRadius: number,
): Fault[] {
  const { innerRadius_mm: inner, outerRadius_mm: outer } = plate
  const why = 'the pitch radius, so that the plate lies behind the magnets'
  return [
    ...(inner === undefined || nominal(inner) < pitchRadius
      ? []
      : [fault(`${path}.innerRadius_mm`, `below ${amount(pitchRadius, 'mm')}, ${why}`, nominal(inner), mm)]),
    ...(outer === undefined || nominal(outer) > pitchRadius
      ? []
      : [fault(`${path}.outerRadius_mm`, `above ${amount(pitchRadius, 'mm')}, ${why}`, nominal(outer), mm)]),
  ]
}

/** Steel behind a drum's magnets or beyond its winding must find room round the shaft. */
function drumIronFaults(rotor: Extract<Rotor, { arrangement: 'drum' }>, pitchRadius: number): Fault[] {
  const { backIron, sleeve, windingSide, magnet } = rotor
  const half = nominal(magnet.thickness_mm) / 2
  const inwards = (path: string, surface: number, thickness: number) =>
    surface > thickness
      ? []
      : [
          fault(
            path,
            `below ${amount(Math.max(0, surface), 'mm')}, where the steel meets the shaft`,
            thickness,
            mm,
          ),
        ]
  return [
    ...(backIron?.kind === 'steel' && windingSide === 'outside'
      ? inwards('rotor.backIron.thickness_mm', pitchRadius - half, nominal(backIron.thickness_mm))
      : []),
    ...(sleeve !== undefined && windingSide === 'inside'
      ? inwards(
          'rotor.sleeve.thickness_mm',
          pitchRadius - half - nominal(sleeve.distance_mm),
          nominal(sleeve.thickness_mm),
        )
      : []),
  ]
}

export function rotorFaults({ rotor }: Design): Fault[] {
  const { poleCount, poleSequence } = rotor
  const radius = nominal(rotor.pitchRadius_mm)
  const [edgeName, edge] = radialEdge(rotor)
  const crossing = atLeast(
    'rotor.pitchRadius_mm',
    radius,
    edge / 2,
    `half of rotor.magnet.${edgeName}, so that no magnet crosses the shaft`,
  )
  return [
    ...(poleSequence === undefined || poleSequence.length === poleCount
      ? []
      : [
          fault('rotor.poleSequence', `${poleCount} letters long, one for each pole`, poleSequence, {
            code: 'conflict',
          }),
        ]),
    ...crossing,
    ...(crossing.length > 0 ? [] : neighbourFaults(rotor, radius, edge)),
    ...shapeFaults(rotor),
    ...(rotor.arrangement === 'drum'
      ? drumIronFaults(rotor, radius)
      : plateFaults('rotor.backIron', rotor.backIron, radius)),
    ...(rotor.arrangement === 'disc' && rotor.opposite !== undefined
      ? plateFaults('rotor.opposite', rotor.opposite, radius)
      : []),
  ]
}
