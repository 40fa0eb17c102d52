/** What plain arithmetic expects of each kind of defect, beside what the whole machine’s computation gives. */
import { magnetGrades } from '../data/magnet-grade.ts'
import type { Design } from '../machine/design.ts'
import { nominal } from '../units/quantity.ts'
import type { BenchReading } from './bench-reading.ts'
import type { Chain } from './compute.ts'
import { reversedCoilShare } from './concern/reversed-element.ts'
import type { Defect } from './defect-catalogue.ts'
import { shortedDiodeTorque } from './shorted-diode-torque.ts'

export interface SignatureRow {
  /** What is read: "volts of the phase, over a sound one's". */
  readonly what: string
  readonly expected: number
  readonly computed: number
  /** The arithmetic. */
  readonly basis: string
}

interface Compared {
  readonly chain: Chain
  readonly sound: BenchReading
  readonly reading: BenchReading
}

/** Two lines of a star at 60° instead of 120°: of phases a and b. */
export const reversedLine = (a: number, b: number): number => Math.sqrt(Math.max(0, a * a + b * b - a * b))

const soundLine = (a: number, b: number): number => Math.sqrt(a * a + b * b + a * b)

/** What 2p magnets leave of the working volts when one of them counts as `factor` of a sound one. */
export const oneMagnetShare = (poleCount: number, factor: number): number => 1 - (1 - factor) / poleCount

const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : 0)

const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length

/** The volts of all phases together, by the working order. */
const fundamentals = ({ sound, reading }: Compared): number =>
  ratio(mean(reading.phaseFundamentals), mean(sound.phaseFundamentals))

function otherStrength({ rotor: { magnet } }: Design, grade: string): number {
  const remanence = (name: string | undefined) => magnetGrades.find((row) => row.name === name)?.remanence_T
  const own = remanence(magnet.grade) ?? nominal(magnet.polarization_T ?? 0)
  return ratio(remanence(grade) ?? 0, own)
}

function magnetRows(
  compared: Compared,
  defect: Extract<Defect, { position: number }>,
): readonly SignatureRow[] {
  const { rotor, design } = compared.chain.machine
  const { poleCount, polePairs, pitchRadius } = rotor
  // on two discs a magnet named with its disc is one of two that make the pole
  const one = rotor.arrangement === 'two-discs' && defect.disc !== undefined ? 2 : 1
  const seen = (factor: number) => oneMagnetShare(one * poleCount, factor)
  const row = (expected: number, basis: string): SignatureRow[] => [
    {
      what: 'working volts of the phases, over sound ones',
      expected,
      computed: fundamentals(compared),
      basis,
    },
  ]
  const n = one * poleCount
  switch (defect.kind) {
    case 'flipped magnet':
      return row(seen(-1), `1 − 2/${n}: it takes its own volts off instead of adding them`)
    case 'missing magnet':
      return row(seen(0), `1 − 1/${n}: one magnet less`)
    case 'weak magnet':
      return row(seen(nominal(defect.strength)), `1 − (1 − strength)/${n}`)
    case 'other grade':
      return row(seen(otherStrength(design, defect.grade)), `1 − (1 − its remanence over the others’)/${n}`)
    case 'shifted magnet': {
      const φ = (polePairs * nominal(defect.shift_mm)) / 1000 / pitchRadius
      const expected = Math.hypot(1 - (1 - Math.cos(φ)) / n, Math.sin(φ) / n)
      return row(expected, `one phasor of ${n} turned by p times its angle`)
    }
  }
}

/** Phase at whose terminals coil `number` works. */
const phaseOf = ({ chain }: Compared, number: number): number =>
  chain.voltage.coils.find(({ coil }) => coil.number === number)!.coil.phase

const coilsOf = ({ chain }: Compared, phase: number): number =>
  chain.layout.coils.filter((coil) => coil.phase === phase).length

function shortedRows(compared: Compared, coil: number): readonly SignatureRow[] {
  const { chain, sound, reading } = compared
  const phase = phaseOf(compared, coil)
  const own = chain.voltage.loops.find((loop) => loop.coil === coil)!
  const m = coilsOf(compared, phase)
  const E = (own.share / (1 - own.share)) * reading.coils[coil - 1]!
  return [
    {
      what: 'volts of the coil, over a sound one’s',
      expected: 1 - own.share,
      computed: ratio(reading.coils[coil - 1]!, sound.coils[coil - 1]!),
      basis: '(N − s)/N: so many turns are left in the circuit',
    },
    {
      what: 'volts of its phase, over a sound one’s',
      expected: 1 - own.share / m,
      computed: ratio(reading.phases[phase]!, sound.phases[phase]!),
      basis: `the same of one of ${m} coil${m > 1 ? 's' : ''}`,
    },
    {
      what: 'torque of the shorted turns against the hand, mN·m',
      expected: (1000 * E * E) / own.resistance / reading.handSpeed,
      computed: 1000 * reading.loopTorque,
      basis: 'E²/R of the loop over the speed: at hand speed its reactance hardly counts',
    },
  ]
}

function reversedPhaseRows(compared: Compared, wound: number): readonly SignatureRow[] {
  const { chain, sound, reading } = compared
  const E = sound.phaseFundamentals
  const rows: SignatureRow[] = []
  if (E.length !== 3)
    return [
      {
        what: 'all phases in series, over one of them',
        expected: 0,
        computed: ratio(reading.corner, mean(reading.phases)),
        basis: 'two phases in step take each other away',
      },
    ]
  const r = wound - 1
  if (chain.machine.stator.connection === 'star') {
    const pairs = [0, 1, 2].map((k) => [k, (k + 1) % 3] as const)
    for (const [k, [a, b]] of pairs.entries()) {
      const near = a === r || b === r
      rows.push({
        what: `volts between terminals ${a + 1} and ${b + 1}, over phase ${a + 1}`,
        expected: ratio(near ? reversedLine(E[a]!, E[b]!) : soundLine(E[a]!, E[b]!), E[a]!),
        computed: ratio(reading.lines[k]!, reading.phases[a]!),
        basis: near
          ? 'the phases stand 60° apart instead of 120°: E, not √3 E, where they are alike'
          : 'untouched: √3 E where they are alike',
      })
    }
  }
  // sum of three phasors a third apart, one turned round
  const [a, b, c] = [E[r]!, E[(r + 1) % 3]!, E[(r + 2) % 3]!]
  rows.push({
    what: 'across the open corner of a delta, over a phase',
    expected: ratio(Math.hypot(-a - (b + c) / 2, (Math.sqrt(3) / 2) * (b - c)), mean(E)),
    computed: ratio(reading.corner, mean(reading.phases)),
    basis: '2 E instead of next to nothing, where the phases are alike',
  })
  return rows
}

/**
 * Field at a distance from the magnets over that at another, by its fundamental: cosh between two magnet discs or
 * towards a plate opposite, exp before a single ring.
 */
function fieldAt({ rotor }: Chain['machine'], distance: number): number {
  const k = rotor.polePairs / rotor.pitchRadius
  const face = rotor.faceDistance
  if (rotor.arrangement === 'two-discs') return Math.cosh(k * (distance - face! / 2))
  return rotor.opposite !== undefined && face !== undefined
    ? Math.cosh(k * (face - distance))
    : Math.exp(-k * distance)
}

function gapRows({ chain, reading, sound }: Compared): readonly SignatureRow[] {
  const { machine, layout } = chain
  const { winding } = machine.stator
  const tilt = machine.defects.tilt
  if (tilt === undefined) return []
  const drag: SignatureRow = {
    what: 'working volts of the phases, over sound ones',
    expected: 1,
    computed: ratio(mean(reading.phaseFundamentals), mean(sound.phaseFundamentals)),
    basis: 'what one side gains the other loses, to the first order',
  }
  if (winding.kind === 'serpentine') return [drag]
  const expected = layout.coils.map(({ angle }) =>
    fieldAt(machine, winding.distance - tilt.amplitude * Math.cos(angle - tilt.angle)),
  )
  return [
    {
      what: 'coils round the machine: strongest less weakest, over their mean',
      expected: (Math.max(...expected) - Math.min(...expected)) / mean(expected),
      computed: reading.coilSpread,
      basis:
        'the field’s fundamental falls off as exp(−p d/r), as cosh between two rows of poles; an estimate',
    },
    drag,
  ]
}

/** The machine without its bridge reads as a sound one. */
const aloneRow = ({ sound, reading }: Compared): SignatureRow => ({
  what: 'mean volts between terminals without the bridge, over sound ones',
  expected: 1,
  computed: ratio(mean(reading.lines), mean(sound.lines)),
  basis: 'the machine itself is sound',
})

function lineRows(compared: Compared, line: number): readonly SignatureRow[] {
  const { sound, reading } = compared
  const carried = (diodes: BenchReading['diodes']) =>
    diodes.reduce((sum, one) => (one.line === line - 1 ? sum + one.current : sum), 0)
  const usual = carried(sound.diodes)
  return [
    aloneRow(compared),
    ...(usual > 0
      ? [
          {
            what: 'current of its diodes, over that of a sound machine’s',
            expected: 0,
            computed: carried(reading.diodes) / usual,
            basis: 'nothing reaches them; the other lines carry all',
          },
        ]
      : []),
  ]
}

function diodeRows(compared: Compared, defect: Extract<Defect, { side: string }>): readonly SignatureRow[] {
  const { chain, sound, reading } = compared
  const { line, side, end = 'start', kind } = defect
  const rows = [aloneRow(compared)]
  if (kind === 'shorted diode') {
    const turn = { speed: sound.handSpeed, volts: sound.waveform, resistance: sound.phaseResistance }
    return [
      ...rows,
      {
        what: 'torque against the hand with the bridge on the machine and nothing behind it, mN·m',
        expected: 1000 * shortedDiodeTorque(chain.machine, turn, { line: line - 1, side, end }),
        computed: 1000 * reading.bridgeTorque,
        basis:
          'other lines drive current into the shorted one through its neighbours; ohms and threshold alone',
      },
    ]
  }
  const other = reading.diodes.find(
    (one) => one.line === line - 1 && (one.end ?? 'start') === end && one.side !== side,
  )
  if (!other || !(other.current > 0)) return rows
  const direct = (end === 'finish' ? -1 : 1) * reading.lineDirect[line - 1]!
  return [
    ...rows,
    {
      what: 'direct current in its line by a clamp meter, over what the other diode of its leg carries',
      expected: side === 'positive' ? -1 : 1,
      computed: direct / other.current,
      basis: 'current passes the leg one way only; none in a line of a sound bridge',
    },
  ]
}

export function signatureOf(defect: Defect, compared: Compared): readonly SignatureRow[] {
  const { sound, reading, chain } = compared
  switch (defect.kind) {
    case 'reversed coil': {
      const phase = phaseOf(compared, defect.coil)
      const m = coilsOf(compared, phase)
      return [
        {
          what: 'volts of its phase, over a sound one’s',
          expected: reversedCoilShare(m),
          computed: ratio(reading.phases[phase]!, sound.phases[phase]!),
          basis: `(${m} − 2)/${m}: it takes its volts off the others’, where they are in step`,
        },
      ]
    }
    case 'reversed phase':
      return reversedPhaseRows(compared, defect.phase)
    case 'swapped phases':
      return [
        {
          what: 'mean volts between terminals, over sound ones',
          expected: 1,
          computed: ratio(mean(reading.lines), mean(sound.lines)),
          basis: 'the same volts at other terminals: only their order in time turns round',
        },
        {
          what: 'order of the phases: 1 as counted, −1 turned round',
          expected: -sound.sequence,
          computed: reading.sequence,
          basis: 'a second machine on the same terminals, or a motor, would turn the other way',
        },
      ]
    case 'shorted turns':
      return shortedRows(compared, defect.coil)
    case 'open strand': {
      const { strands } = chain.machine.stator.wire
      const joint = chain.machine.stator.jointResistance
      const k = defect.phase - 1
      return [
        {
          what: 'resistance of the phase without its joints, over a sound one’s',
          expected: strands / (strands - defect.strands),
          computed: ratio(reading.phaseResistance[k]! - joint, sound.phaseResistance[k]! - joint),
          basis: `S/(S − o): ${strands - defect.strands} of ${strands} strands carry the current`,
        },
        {
          what: 'volts of the phase, over a sound one’s',
          expected: 1,
          computed: ratio(reading.phases[k]!, sound.phases[k]!),
          basis: 'every strand that is left has all its turns',
        },
      ]
    }
    case 'open diode':
    case 'shorted diode':
      return diodeRows(compared, defect)
    case 'open line':
      return lineRows(compared, defect.line)
    case 'unequal gap':
      return gapRows(compared)
    default:
      return magnetRows(compared, defect)
  }
}
