/** Which documented functions of the engine stand behind each figure of the page, by the design that is open. */
import type { RawObject } from '../store/raw-document.ts'

/** `room/file#function` below `src/physics`. */
export type MethodName = string

export interface MethodUse {
  readonly method: MethodName
  /** The designs whose figure comes this way; all of them where it is left out. */
  readonly when?: (document: RawObject) => boolean
}

const partOf = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as RawObject)[key]
    : undefined

const wordAt =
  (noun: string, key: string, ...wanted: readonly string[]) =>
  (document: RawObject): boolean =>
    wanted.includes(String(partOf(partOf(document, noun), key)))

const hasHistogram = (document: RawObject): boolean =>
  partOf(partOf(document, 'site'), 'windHistogram') !== undefined
const ofStrip = (document: RawObject): boolean =>
  partOf(partOf(partOf(document, 'stator'), 'wire'), 'strip') !== undefined
const magnetShaped =
  (...shapes: readonly string[]) =>
  (document: RawObject): boolean =>
    shapes.includes(String(partOf(partOf(partOf(document, 'rotor'), 'magnet'), 'shape')))
const inIronTubes = (document: RawObject): boolean =>
  wordAt('rotor', 'arrangement', 'drum')(document) &&
  partOf(partOf(document, 'rotor'), 'backIron') !== undefined

const blades: readonly MethodUse[] = [
  {
    method: 'aerodynamics/blade-element#rotorCoefficients',
    when: wordAt('blades', 'kind', 'optimum', 'stations'),
  },
  { method: 'aerodynamics/power-table#powerTableCoefficients', when: wordAt('blades', 'kind', 'table') },
  { method: 'aerodynamics/streamtube#straightBladeTurn', when: wordAt('blades', 'kind', 'straight-blade') },
]

const siteWind: readonly MethodUse[] = [
  { method: 'aerodynamics/wind-profile#windSpeedByPowerLaw' },
  { method: 'aerodynamics/weibull#windDistribution', when: (document) => !hasHistogram(document) },
]

const magnetField: readonly MethodUse[] = [
  { method: 'winding/path-linkage#pathLinkage' },
  { method: 'magnetics/block-magnet#blockVectorPotential', when: magnetShaped('block') },
  { method: 'magnetics/cylinder-magnet#cylinderVectorPotential', when: magnetShaped('disc') },
  { method: 'magnetics/prism-magnet#prismVectorPotential', when: magnetShaped('arc', 'wedge') },
]

const bridge: MethodUse = { method: 'electrics/bridge-rectifier#rectifierPoint' }
const warmCopper: MethodUse = { method: 'electrics/resistance#resistanceRatio' }

/** The first of each list is told open, the others when somebody asks. */
export const figureMethods = {
  energy: [
    { method: 'aerodynamics/annual-energy#meanPower', when: (document) => !hasHistogram(document) },
    { method: 'aerodynamics/wind-histogram#histogramMeanPower', when: hasHistogram },
    ...siteWind,
    ...blades,
    bridge,
  ],
  wind: [
    { method: 'aerodynamics/weibull#windSpeedShare', when: (document) => !hasHistogram(document) },
    ...siteWind,
  ],
  speed: [...blades, bridge],
  tipSpeedRatio: [{ method: 'aerodynamics/wind-power#tipSpeedRatio' }, ...blades],
  loadVoltage: [bridge, warmCopper],
  loadCurrent: [bridge, warmCopper],
  copperTemperature: [
    warmCopper,
    { method: 'heat/conduction#windingConductivity' },
    { method: 'heat/radiation#radiationCoefficient' },
  ],
  cutInWind: [...magnetField, ...blades],
  startWind: [...blades],
  emf: [...magnetField],
  resistance: [
    { method: 'electrics/resistance#conductorResistance' },
    { method: 'electrics/strand-section#roundSection', when: (document) => !ofStrip(document) },
    { method: 'electrics/strand-section#stripSection', when: ofStrip },
  ],
  inductance: [
    { method: 'magnetics/inductance#selfInductance' },
    { method: 'magnetics/inductance#mutualInductance' },
    { method: 'magnetics/iron-cylinder-inductance#ironTubeInductance', when: inIronTubes },
  ],
  copperMass: [
    { method: 'electrics/strand-section#roundSection', when: (document) => !ofStrip(document) },
    { method: 'electrics/strand-section#stripSection', when: ofStrip },
  ],
  magnetMass: [{ method: 'magnetics/magnet#magnetVolume' }],
  runawaySpeed: [
    {
      method: 'aerodynamics/blade-element#runawayTipSpeedRatio',
      when: wordAt('blades', 'kind', 'optimum', 'stations'),
    },
    ...blades,
    { method: 'mechanics/retention#centrifugalForce' },
  ],
  runawayVoltage: [...magnetField, ...blades],
} as const satisfies Readonly<Record<string, readonly MethodUse[]>>

export type FigureKey = keyof typeof figureMethods

export const figureKeys = Object.keys(figureMethods) as readonly FigureKey[]

/** Formulas that the engine writes in place, or reaches through the sum over all magnets, instead of calling these. */
export const notCalled: readonly MethodName[] = [
  'aerodynamics/wind-power#tipSpeedRatio',
  'magnetics/block-magnet#blockVectorPotential',
  'magnetics/cylinder-magnet#cylinderVectorPotential',
  'magnetics/magnet#magnetVolume',
  'magnetics/prism-magnet#prismVectorPotential',
]

/** Those that apply to one design. */
export const methodsFor = (key: FigureKey, document: RawObject): readonly MethodName[] =>
  (figureMethods[key] as readonly MethodUse[])
    .filter(({ when }) => when?.(document) ?? true)
    .map(({ method }) => method)

/** Every function named, each once. */
export const namedMethods: readonly MethodName[] = [
  ...new Set(figureKeys.flatMap((key) => figureMethods[key].map(({ method }) => method))),
].sort()
