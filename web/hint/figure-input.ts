/** What each figure is computed from: fields of the document as they stand, and figures that come before it. */

import type { SpreadOutput } from '../../src/analysis/spread-output.ts'
import type { FormField, WindRow } from '../../src/index.ts'
import type { Snapshot } from '../snapshot.ts'
import { words } from '../station/label.ts'
import { numberSaying, quantitySaying } from '../station/number-saying.ts'
import { inMeasure } from '../store/measure.ts'
import { isRawObject, type RawObject, valueAt } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import type { FigureKey } from './figure-method.ts'

export interface Earlier {
  readonly snapshot: Snapshot
  readonly row: WindRow
  /** Of the row. */
  readonly index: number
}

interface FigureInput {
  /** Beginnings of the paths whose fields stand for it, as far as the document has them. */
  readonly fields: readonly string[]
  readonly figures?: (of: Earlier) => readonly (readonly [name: string, value: string])[]
  /** The result that carries its spread. */
  readonly output?: SpreadOutput
}

const site = [
  'site.meanWind_m_per_s',
  'site.measuredHeight_m',
  'site.hubHeight_m',
  'site.shearExponent',
  'site.weibullShape',
]
const blades = [
  'blades.kind',
  'blades.diameter_m',
  'blades.height_m',
  'blades.bladeCount',
  'blades.chord_mm',
  'blades.section',
  'blades.tipSpeedRatio',
]
const magnet = [
  'rotor.poleCount',
  'rotor.pitchRadius_mm',
  'rotor.magnet.length_mm',
  'rotor.magnet.width_mm',
  'rotor.magnet.diameter_mm',
  'rotor.magnet.thickness_mm',
]
const strength = ['rotor.magnet.grade', 'rotor.magnet.polarization_T']
const winding = ['stator.winding.kind', 'stator.winding.turns', 'stator.connection']
const wire = [
  'stator.wire.size',
  'stator.wire.strands',
  'stator.wire.strip.width_mm',
  'stator.wire.strip.thickness_mm',
  'stator.leadLength_m',
]
const load = [
  'load.kind',
  'load.voltage_V',
  'load.cells',
  'load.resistance_mohm',
  'load.resistance_ohm',
  'load.drawn_ohm',
  'load.ratedVoltage_V',
]
const cable = ['cable.length_m', 'cable.area_mm2', 'bridge.diode']

const density = ({ snapshot }: Earlier) =>
  [say`density of the air`, inMeasure(snapshot.airDensity, 'kg_per_m3')] as const
const ohms = ({ snapshot }: Earlier) =>
  [say`resistance of a phase at 20 °C`, inMeasure(snapshot.phases[0]!.resistance, 'ohm')] as const
const henries = ({ snapshot }: Earlier) =>
  [say`inductance of a phase`, inMeasure(snapshot.phases[0]!.inductance, 'mH')] as const
const wireLength = ({ snapshot }: Earlier) =>
  [say`length of all wire`, inMeasure(snapshot.wireLength, 'm')] as const
const standing = ({ row }: Earlier) => [say`wind you stand in`, inMeasure(row.wind, 'm_per_s')] as const
const turning = ({ row }: Earlier) => [say`speed of the rotor`, inMeasure(row.speed, 'rpm')] as const
const storm = ({ snapshot }: Earlier) =>
  [say`speed with the load lost`, inMeasure(snapshot.runaway.speed, 'rpm')] as const

export const figureInputs: Readonly<Record<FigureKey, FigureInput>> = {
  energy: {
    fields: [...site, 'blades.diameter_m'],
    figures: ({ snapshot }) => [
      [say`mean wind at the hub`, inMeasure(snapshot.year.meanWind, 'm_per_s')],
      [say`mean power`, inMeasure(snapshot.year.meanPower, 'W')],
    ],
    output: 'energy',
  },
  wind: {
    fields: site,
    figures: ({ snapshot, index }) => [
      [say`hours of a year about this wind`, inMeasure(3600 * (snapshot.hours[index] ?? 0), 'h')],
    ],
  },
  speed: {
    fields: [...blades, 'shaft.friction_mNm'],
    figures: (of) => [standing(of), density(of)],
  },
  tipSpeedRatio: {
    fields: ['blades.diameter_m'],
    figures: (of) => [standing(of), turning(of)],
  },
  loadVoltage: { fields: [...load, ...cable], figures: (of) => [turning(of)] },
  loadCurrent: { fields: [...load, ...cable], figures: (of) => [turning(of), ohms(of), henries(of)] },
  copperTemperature: {
    fields: ['site.ambient_degC', 'stator.wire.size', 'stator.wire.insulationClass', 'stator.support'],
    figures: (of) => [
      standing(of),
      [say`current in a phase, rms`, inMeasure(of.row.phaseCurrent, 'A')],
      [say`heat in the winding`, inMeasure(of.row.watts.winding + of.row.watts.eddy, 'W')],
    ],
    output: 'copperTemperature',
  },
  cutInWind: {
    fields: [...load.slice(0, 3), 'bridge.diode', 'stator.winding.turns', 'blades.diameter_m'],
    figures: ({ snapshot }) => [
      [say`speed at which the bridge opens`, inMeasure(snapshot.cutInSpeed, 'rpm')],
      [
        say`peak volts between lines per 100 rpm`,
        inMeasure(snapshot.linePeak * ((100 * 2 * Math.PI) / 60), 'V'),
      ],
    ],
    output: 'cutInWind',
  },
  startWind: {
    fields: [...blades, 'shaft.startingFriction_mNm', 'shaft.friction_mNm'],
    figures: (of) => [density(of)],
    output: 'startWind',
  },
  emf: {
    fields: [...magnet, ...strength, ...winding],
    figures: ({ snapshot }) => [
      [say`fundamental of the flux density in the winding`, inMeasure(snapshot.gap.fundamental, 'T')],
    ],
    output: 'phaseVoltage',
  },
  resistance: {
    fields: [...wire, 'stator.winding.turns', 'stator.jointResistance_mohm'],
    figures: ({ snapshot }) => [
      [say`length of wire in a phase`, inMeasure(snapshot.phases[0]!.wireLength, 'm')],
    ],
  },
  inductance: { fields: winding, figures: (of) => [wireLength(of)] },
  copperMass: { fields: wire, figures: (of) => [wireLength(of)] },
  magnetMass: { fields: [...magnet, ...strength] },
  runawaySpeed: {
    fields: ['site.stormWind_m_per_s', ...blades, 'protection.mechanical', 'shaft.friction_mNm'],
    figures: (of) => [density(of)],
    output: 'runawaySpeed',
  },
  runawayVoltage: {
    fields: ['site.stormWind_m_per_s', 'stator.winding.turns', 'stator.connection'],
    figures: (of) => [
      storm(of),
      [
        say`peak volts between lines per 100 rpm`,
        inMeasure(of.snapshot.linePeak * ((100 * 2 * Math.PI) / 60), 'V'),
      ],
    ],
    output: 'runawayVoltage',
  },
}

/** What stands in a field, with its unit and what is said of its sureness; the usual where it is left out. */
export function fieldText(field: FormField): string {
  const { value, kind } = field
  const parts = isRawObject(value) ? value : { value }
  const kept = parts.value ?? field.default
  if (kept === undefined) return ''
  if (!['quantity', 'count', 'wire size'].includes(kind)) return told(String(kept))
  const saying = numberSaying(field)
  const spread = parts.spread
  const width = typeof spread === 'number' ? ` ± ${quantitySaying(field, true).show(spread)}` : ''
  return `${saying.show(kept)}${width} ${saying.unit(kept)}`.trim()
}

export interface ShownField {
  readonly path: string
  readonly name: string
  readonly text: string
}

/** The fields of the open document that a figure is computed from, in the order of its list. */
export const shownFields = (
  key: FigureKey,
  form: readonly FormField[],
  document: RawObject,
): readonly ShownField[] =>
  figureInputs[key].fields.flatMap((path) => {
    const field = form.find((each) => each.path === path)
    if (field === undefined) return []
    // the form is told anew when fields come or go; what stands in them is the document's
    const text = fieldText({ ...field, value: valueAt(document, field.keys) })
    return text === '' ? [] : [{ path, name: words(path.split('.').at(-1)!), text }]
  })
