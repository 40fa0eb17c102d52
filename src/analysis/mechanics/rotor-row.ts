/** Lines of what turns in the gap: hold of the magnets, their pull, the discs, and the air that is left. */
import { creepShare } from '../../data/plastic-swelling.ts'
import { shearStress } from '../../physics/mechanics/retention.ts'
import type { Chain } from '../compute.ts'
import { handForce } from '../concern/assembly-pull.ts'
import { bendingShare } from '../concern/disc-bending.ts'
import { leastClearance } from '../concern/gap-stack.ts'
import { retentionFactor } from '../concern/magnet-retention.ts'
import { type ClearanceSide, clearances } from './clearance.ts'
import { discBending } from './disc-bending.ts'
import { discPull, type PullPoint } from './disc-pull.ts'
import { magnetHold } from './magnet-hold.ts'
import { type MechanicsRow, mechanicsRow, notAsked } from './mechanics-row.ts'
import type { SleevePull } from './sleeve-pull.ts'

const commonPractice = 'common practice, no source'

export function magnetRows(chain: Chain): MechanicsRow[] {
  const { machine, runaway } = chain
  const group = 'what holds the magnets'
  const { rotor } = machine
  const pull = mechanicsRow({
    group,
    name: 'pull outward on one magnet at runaway',
    value: runaway.magnetForce,
    unit: 'N',
    limit:
      rotor.arrangement === 'drum' && rotor.windingSide === 'inside'
        ? undefined
        : { value: runaway.magnetHold / retentionFactor, sound: 'below' },
    from: `what holds it without glue over ${retentionFactor}: ${commonPractice}`,
    known: `m r ω² at the storm’s unloaded speed`,
  })
  if (rotor.arrangement === 'drum' && rotor.windingSide === 'inside')
    return [{ ...pull, from: 'pressed into its ring: not judged' }]
  const { ways, stocky } = magnetHold(machine, runaway.speed)
  const { retention, magnet } = rotor
  const walls = ways.map(({ way, hold, stress }) =>
    stress === undefined
      ? mechanicsRow({
          group,
          name: 'hold by test',
          value: hold,
          unit: 'N',
          limit: { value: retentionFactor * runaway.magnetForce, sound: 'above' },
          from: `${retentionFactor} times the pull: ${commonPractice}`,
          known: 'entered',
        })
      : mechanicsRow({
          group,
          name: `${way} at runaway, ${retention.material}`,
          value: stress * runaway.magnetForce,
          unit: 'MPa',
          limit: { value: (hold * stress) / retentionFactor, sound: 'below' },
          from: `a fifth of the strength across layers${way === 'wall shear' ? ' over √3' : ''}, over ${retentionFactor}: ${commonPractice}`,
          known: stocky
            ? 'plate theory; this wall is stockier than a plate and bears more'
            : way === 'band hoop'
              ? 'thin ring under the magnets, its own weight taken off the limit'
              : 'plate held at its foot and both ends',
        }),
  )
  const face = magnet.volume / magnet.thickness
  return [
    pull,
    ...walls,
    mechanicsRow({
      group,
      name: 'shear of the glue at runaway: second line, not counted',
      value: shearStress({ force: runaway.magnetForce, area: face }),
      unit: 'MPa',
      limit: undefined,
      from: 'bonds let go by age, frost, rust or a greasy face',
      known: 'mean over the magnet’s back; two to three times that at its ends',
    }),
  ]
}

export function pullRows(
  chain: Chain,
  pull: readonly PullPoint[],
  sleeve: SleevePull | undefined,
): MechanicsRow[] {
  const { machine, field } = chain
  const group = 'pull between the faces'
  const own = discPull(machine, field)
  const rows: MechanicsRow[] = []
  if (own !== undefined) {
    const exact = pull.find(({ distance }) => Math.abs(distance - own.distance) < 1e-9)
    rows.push(
      mechanicsRow({
        group,
        name:
          machine.rotor.arrangement === 'two-discs' ? 'disc to disc, as drawn' : 'disc to plate, as drawn',
        value: exact?.pull ?? own.pull,
        spread: (exact?.pull ?? own.pull) * 2 * remanenceShare(chain),
        unit: 'N',
        limit: undefined,
        from: `hands hold ${handForce} N (${commonPractice}); above it, jacking screws`,
        known: 'Maxwell’s stress of the field between the faces; ± by the magnets’ grade',
      }),
      mechanicsRow({
        group,
        name: 'its growth as the gap closes',
        value: own.stiffness,
        spread: own.stiffness * 2 * remanenceShare(chain),
        unit: 'N_per_mm',
        limit: undefined,
        known: `negative stiffness; the pull falls by e over ${(1000 * own.decay).toFixed(1)} mm`,
      }),
      mechanicsRow({
        group,
        name: 'field that would pull as hard over the magnets’ faces',
        value: own.fluxDensity,
        unit: 'T',
        limit: undefined,
        known: '√(2 μ0 F/A)',
      }),
    )
  }
  if (sleeve !== undefined)
    rows.push(
      mechanicsRow({
        group,
        name: 'magnets to sleeve, all round',
        value: sleeve.pull,
        unit: 'N',
        limit: undefined,
        known: 'mean square of the field at the sleeve; it balances while the drum is in the middle',
      }),
      mechanicsRow({
        group,
        name: sleeve.turns
          ? 'one-sided pull for each millimetre out of the middle, turning along'
          : 'one-sided pull for each millimetre out of the middle, on the bearings',
        value: sleeve.stiffness,
        unit: 'N_per_mm',
        limit: undefined,
        known: 'local gap round the circumference; errs upward',
      }),
    )
  if (rows.length === 0)
    rows.push(
      mechanicsRow({
        group,
        name: 'magnets to steel that faces them',
        value: 0,
        unit: 'N',
        limit: undefined,
        known: 'there is none in this machine; loose magnets still jump at tools and at each other',
      }),
    )
  return rows
}

/** Half-width of the remanence as a share: the pull goes with its square. */
function remanenceShare({ machine }: Chain): number {
  const { remanence, remanenceSpread } = machine.rotor.magnet
  return remanenceSpread / remanence
}

export function discRows(chain: Chain): MechanicsRow[] {
  const { machine, field } = chain
  const group = 'discs under that pull'
  const pull = discPull(machine, field)
  if (pull === undefined) return []
  const bending = discBending(machine, field)
  if (bending === undefined)
    return [notAsked(group, 'bending of a disc', 'rotor.carrier', ['rotor.carrier'], 'mm')]
  const { disc, ends } = bending
  const how = `plate of ${bending.material}, ${bending.hubKnown ? 'clamped at its hub' : 'hub guessed: enter rotor.hubRadius_mm'}${
    bending.plastic ? `, ${creepShare.share_1} of its stiffness left after years (${creepShare.where})` : ''
  }`
  const spreadOf = (of: (one: typeof disc) => number | undefined) => {
    const [a, b] = ends.map(of)
    const own = of(disc)
    return a === undefined || b === undefined || own === undefined
      ? 0
      : Math.max(Math.abs(a - own), Math.abs(b - own))
  }
  const [side] = clearances(chain)
  return [
    mechanicsRow({
      group,
      name: disc.rim === undefined ? 'the discs snap together' : 'bending of one disc at its rim',
      value: disc.rim,
      spread: spreadOf(({ rim }) => rim),
      unit: 'mm',
      limit:
        side !== undefined && side.drawn > 0
          ? { value: bendingShare * side.drawn, sound: 'below' }
          : undefined,
      from: `${100 * bendingShare} % of the air by the drawing: ${commonPractice}`,
      known: how,
      enter: bending.hubKnown ? [] : ['rotor.hubRadius_mm'],
    }),
    mechanicsRow({
      group,
      name: 'times larger because the pull grows',
      value: disc.amplification,
      unit: '1',
      limit: undefined,
      known: 'spring against an exponential pull',
    }),
    mechanicsRow({
      group,
      name: 'pull over what makes the discs snap',
      value: disc.closeness,
      spread: spreadOf(({ closeness }) => closeness),
      unit: '1',
      limit: { value: 1, sound: 'below' },
      from: 'no rest beyond 1: derived',
      known: how,
    }),
    mechanicsRow({
      group,
      name: 'greatest stress of the disc',
      value: disc.stress,
      spread: spreadOf(({ stress }) => stress),
      unit: 'MPa',
      limit: bending.strength === undefined ? undefined : { value: bending.strength / 2, sound: 'below' },
      from: bending.strength === undefined ? '' : `half the yield of plain steel: ${commonPractice}`,
      known: 'at the hub, where it is clamped',
    }),
  ]
}

/** Both sides of a winding in the middle between two like discs are told once. */
const alike = ([a, b]: readonly ClearanceSide[]): boolean =>
  a !== undefined &&
  b !== undefined &&
  Math.abs(a.clearance.worst - b.clearance.worst) < 1e-6 &&
  Math.abs(a.drawn - b.drawn) < 1e-6

export function gapRows(sides: readonly ClearanceSide[]): MechanicsRow[] {
  const group = 'air between rotor and stator'
  const same = alike(sides)
  return (same ? sides.slice(0, 1) : sides).flatMap(({ side, drawn, losses, clearance }) => {
    const where = same ? 'either side' : side === 'inner' ? 'magnets’ side' : 'far side'
    return [
      mechanicsRow({
        group,
        name: `${where}: by the drawing`,
        value: drawn,
        unit: 'mm',
        limit: undefined,
        known: 'the document',
      }),
      ...losses.map((loss) =>
        mechanicsRow({
          group,
          name: `${where}: less ${loss.name}`,
          value: loss.closing,
          spread: loss.halfWidth,
          unit: 'mm',
          limit: undefined,
          known: `${loss.known}: ${loss.how}`,
          enter: loss.enter === undefined ? [] : [loss.enter],
        }),
      ),
      mechanicsRow({
        group,
        name: `${where}: likely left`,
        value: clearance.likely,
        unit: 'mm',
        limit: undefined,
        known: 'tolerances added as independent errors',
      }),
      mechanicsRow({
        group,
        name: `${where}: left at the worst`,
        value: clearance.worst,
        unit: 'mm',
        limit: { value: leastClearance, sound: 'above' },
        from: commonPractice,
        known: 'all at their worst at once',
      }),
    ]
  })
}
