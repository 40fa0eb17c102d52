/** Drag rotors of half-drum buckets in the wind tunnel: torque against tip-speed ratio, and torque at rest. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one

export interface DragRotor {
  readonly buckets: 2 | 3
  /** Greatest power coefficient. */
  readonly peak: number
  /** Half-width of the power, as a share of it. */
  readonly spreadShare: number
  /** Torque coefficient at rest: mean round the turn, and where it is least. */
  readonly restMean: number
  readonly restLeast: number
  readonly source: string
  readonly where: string
  /** Torque coefficient on diameter × height and the radius; the last row is runaway. */
  readonly rows: readonly (readonly [tipSpeedRatio: number, torque: number])[]
}

const shape =
  'shape of the curve, runaway and torque at rest from memory, not opened; rotors of 1 m by 1 m with end plates, overlap a tenth to a sixth of the bucket'

// biome-ignore format: a table
export const dragRotors: readonly DragRotor[] = [
  {
    buckets: 2,
    peak: 0.24,
    spreadShare: 0.2,
    restMean: 0.33,
    restLeast: 0.05,
    source: 'sheldahl1978',
    where: `figure 7, peak 0.24 as read by the transcriber of the paper (jjamesonclausen/HRIxSmith-Summer-2026-public, sources/va30.md, commit 381704b); ${shape}`,
    rows: [
      [0,   0.330],
      [0.2, 0.380],
      [0.4, 0.400],
      [0.6, 0.372],
      [0.7, 0.341],
      [0.8, 0.298],
      [1,   0.215],
      [1.2, 0.142],
      [1.4, 0.080],
      [1.6, 0.025],
      [1.7, 0],
    ],
  },
  {
    buckets: 3,
    peak: 0.16,
    spreadShare: 0.2,
    restMean: 0.28,
    restLeast: 0.2,
    source: 'sheldahl1978',
    where: `figure 6, the two-bucket peak is “approximately 1.5 times” this one and lies at a higher ratio (the same transcription); ${shape}`,
    rows: [
      [0,    0.280],
      [0.2,  0.310],
      [0.4,  0.310],
      [0.5,  0.290],
      [0.6,  0.264],
      [0.65, 0.246],
      [0.7,  0.226],
      [0.8,  0.185],
      [1,    0.110],
      [1.2,  0.045],
      [1.33, 0],
    ],
  },
]

/** What buckets set edge to edge, or overlapping by a fifth and more, keep of that torque: a guess, the source only says less. */
export const otherOverlapShare = {
  share: 0.9,
  source: 'sheldahl1978',
  where: 'conclusion 5, without a number; 0.9 is a guess, no source',
} as const

/** Times by which the least torque at rest grows when two storeys stand a quarter turn apart: “approximately 5”. */
export const twoStoreyGain = {
  factor: 5,
  source: 'sheldahl1978',
  where: 'text on figure 4, the same transcription',
} as const

/** Streamwise force on the frontal area: the rotor is a bluff body. */
export const dragRotorThrust = {
  coefficient: 1.1,
  source: 'common-practice',
  where: 'common practice, no source',
} as const
