/** A computed chain as flat, plain data that may cross to the page. */

import type { RotorField } from '../src/analysis/air-gap-field.ts'
import { coilPolyline } from '../src/analysis/conductor-layout.ts'
import { magnetCount } from '../src/analysis/design-figure.ts'
import { drawnMagnets } from '../src/analysis/drawn-magnet.ts'
import { loadPoint } from '../src/analysis/load-point.ts'
import { warmVoltage } from '../src/analysis/magnet-strength.ts'
import { windShare } from '../src/analysis/site-wind.ts'
import { type TurnSource, turnSource } from '../src/analysis/turn-source.ts'
import type { UnjudgedChain as Chain } from '../src/analysis/unjudged-chain.ts'
import type { Machine, Meter, WindRow } from '../src/index.ts'
import { meterOf } from '../src/machine/meter.ts'
import { yearSeconds } from '../src/physics/aerodynamics/annual-energy.ts'
import type { Magnet } from '../src/physics/magnetics/magnet.ts'
import { turnedMagnet } from '../src/physics/magnetics/magnet-pose.ts'
import { nominal } from '../src/units/quantity.ts'

/** A magnet as it is drawn: an outline in its own x and y, as high along its own z. */
export interface MagnetBody {
  readonly centre: readonly number[]
  /** Rows: local x, y, z. */
  readonly frame: readonly (readonly number[])[]
  /** x y of each corner, counter-clockwise [m]. */
  readonly outline: readonly number[]
  readonly height: number
  /** Direction of its north pole in its own axes. */
  readonly north: readonly number[]
  /** Edge of the letters on its poles, 0 for none: one facet of an arc bears them for all [m]. */
  readonly letter: number
}

export interface WirePath {
  readonly number: number
  readonly phase: number
  readonly sense: 1 | -1
  /** x0 y0 z0 x1 … of the closed middle line [m]. */
  readonly points: Float64Array
  readonly width: number
  readonly thickness: number
}

export interface SolidView {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  readonly magnets: readonly MagnetBody[]
  readonly wires: readonly WirePath[]
  /** Steel plates: lower face and thickness along the shaft [m]. */
  readonly plates: readonly { readonly z: number; readonly thickness: number }[]
  /** Steel tubes about the shaft, as long as the magnets [m]. */
  readonly tubes: readonly { readonly inner: number; readonly outer: number; readonly length: number }[]
  readonly innerRadius: number
  readonly outerRadius: number
}

export interface PhaseFigures {
  /** [V·s/rad], rms and peak of the EMF over the speed. */
  readonly rms: number
  readonly peak: number
  /** [rad] */
  readonly lag: number
  /** At 20 °C [Ω]. */
  readonly resistance: number
  /** [H] */
  readonly inductance: number
  /** [m], [kg] */
  readonly wireLength: number
  readonly copperMass: number
}

export interface Snapshot {
  readonly name: string
  readonly rows: readonly WindRow[]
  readonly year: Chain['year']
  /** Of a year, the half step to either side of each row's wind [h]. */
  readonly hours: Float64Array
  readonly runaway: Chain['runaway']
  readonly gap: Chain['gap']
  readonly steel: Chain['steel']
  readonly airDensity: number
  readonly startWind: number
  readonly cutInWind: number
  /** [rad/s] */
  readonly cutInSpeed: number
  readonly phases: readonly PhaseFigures[]
  readonly connection: string
  /** Largest between lines over the speed, rms and peak [V·s/rad]. */
  readonly lineRms: number
  readonly linePeak: number
  readonly copperMass: number
  readonly wireLength: number
  readonly wirePrice: number | undefined
  readonly fit: Chain['wound']['fit']
  readonly turns: number
  readonly magnetMass: number
  readonly solid: SolidView
  readonly loadKind: Machine['load']['kind']
  readonly converter: boolean
  readonly cableBeforeBridge: boolean
  readonly wanted: { readonly power: number; readonly wind: number } | undefined
  /** Wind above which a limiter holds [m/s]. */
  readonly limiter: string
  /** For readings by hand, and the meter of the bench. */
  readonly turn: TurnSource
  readonly meter: Meter
}

export interface WindSnapshot {
  readonly row: number
  /** [Hz] of the period drawn; 0 at rest. */
  readonly frequency: number
  readonly emf: readonly Float64Array[]
  /** Between the machine's terminals; of a machine whose phases have leads of their own, between those. */
  readonly lineVoltages: readonly Float64Array[]
  readonly ownLeads: boolean
  readonly phaseCurrent: readonly Float64Array[]
  /** Behind bridge and cable. */
  readonly dcVoltage: Float64Array
  readonly dcCurrent: Float64Array
}

/** Points of one period of the waveforms. */
export const waveformSamples = 180
const yearHours = yearSeconds / 3600

function hoursOf({ rows, year }: Chain): Float64Array {
  const share = (wind: number) => windShare(year.wind, wind)
  return Float64Array.from(rows, ({ wind }, k) => {
    const before = rows[k - 1]?.wind ?? 0
    const after = rows[k + 1]?.wind ?? wind
    return yearHours * (share((wind + after) / 2) - share((before + wind) / 2))
  })
}

/** Corners that stand for a round magnet. */
const roundCorners = 40

function outlineOf(magnet: Magnet): number[] {
  if ('size' in magnet) {
    const [x, y] = [magnet.size[0] / 2, magnet.size[1] / 2]
    return [-x, -y, x, -y, x, y, -x, y]
  }
  if ('outline' in magnet) return [...magnet.outline]
  return Array.from({ length: 2 * roundCorners }, (_, k) => {
    const angle = (2 * Math.PI * Math.floor(k / 2)) / roundCorners
    return magnet.radius * (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle))
  })
}

/** The bodies of every pole; of components in one place the stronger is drawn. */
/** A letter that stays within the pole, round or narrowing as it may be; on an arc it stands out a little. */
function letterOf({ rotor: { magnet } }: Machine): number {
  const { shape, length, width, thickness } = magnet
  const least = Math.min(length, width)
  switch (shape.kind) {
    case 'block':
      return 0.92 * Math.min(least, Math.max(width, thickness))
    case 'disc':
      return 0.66 * least
    case 'wedge':
      return 0.9 * Math.min(length, shape.innerWidth, shape.outerWidth)
    case 'arc':
      return 0.55 * least
  }
}

function bodiesOf({ poles }: RotorField, letter: number): MagnetBody[] {
  return poles.flatMap(({ magnets, places }) => {
    const drawn = drawnMagnets(magnets)
    const middle = Math.floor(drawn.length / 2)
    return places
      .filter(({ factor }) => factor !== 0)
      .flatMap(({ angle, factor }) =>
        drawn.map((one, k): MagnetBody => {
          const magnet = turnedMagnet(one, angle)
          const sign = Math.sign(factor * magnet.polarization)
          return {
            centre: [...magnet.centre],
            frame: magnet.frame.map((row) => [...row]),
            outline: outlineOf(magnet),
            height: 'size' in magnet ? magnet.size[2] : magnet.height,
            north: ('outline' in magnet ? [...magnet.direction] : [0, 0, 1]).map((x) => sign * x),
            letter: 'outline' in magnet && k !== middle ? 0 : letter,
          }
        }),
      )
  })
}

/** A drum's ring behind the magnets and its sleeve. */
function tubesOf({ rotor }: Machine): SolidView['tubes'] {
  if (rotor.arrangement !== 'drum') return []
  const { backIron, sleeve, magnet, pitchRadius, windingSide } = rotor
  const tube = (radius: number, thickness: number, grows: 1 | -1) => {
    const [inner, outer] = [radius, radius + grows * thickness].sort((a, b) => a - b)
    return { inner: Math.max(0, inner!), outer: outer!, length: magnet.length }
  }
  const towards = windingSide === 'outside' ? 1 : -1
  const face = (distance: number) => pitchRadius + towards * (magnet.thickness / 2 + distance)
  return [
    ...(backIron === undefined
      ? []
      : [tube(face(-magnet.thickness), backIron.thickness, -towards as 1 | -1)]),
    ...(sleeve === undefined ? [] : [tube(face(sleeve.distance), sleeve.thickness, towards)]),
  ]
}

function solidOf({ machine, field, layout }: Chain): SolidView {
  const { rotor } = machine
  const { magnet, pitchRadius } = rotor
  const half = rotor.arrangement === 'drum' ? magnet.thickness / 2 : magnet.length / 2
  const plates: { z: number; thickness: number }[] = []
  if (rotor.arrangement !== 'drum') {
    const face = magnet.thickness + (rotor.faceDistance ?? 0)
    if (rotor.backIron !== undefined)
      plates.push({ z: -rotor.backIron.thickness, thickness: rotor.backIron.thickness })
    if (rotor.arrangement === 'two-discs' && rotor.backIron !== undefined)
      plates.push({ z: face + magnet.thickness, thickness: rotor.backIron.thickness })
    if (rotor.opposite !== undefined) plates.push({ z: face, thickness: rotor.opposite.thickness })
  }
  return {
    arrangement: rotor.arrangement,
    magnets: bodiesOf(field, letterOf(machine)),
    wires: layout.coils.map((coil) => {
      const { bundle } = layout.shapes[coil.shape]!
      return {
        number: coil.number,
        phase: coil.phase,
        sense: coil.sense,
        points: coilPolyline(layout, coil, pitchRadius / 250),
        width: bundle.width,
        thickness: bundle.thickness,
      }
    }),
    plates,
    tubes: tubesOf(machine),
    innerRadius: Math.max(0, pitchRadius - half),
    outerRadius: pitchRadius + half,
  }
}

export function snapshotOf(chain: Chain): Snapshot {
  const { machine, voltage, wound, generator } = chain
  const { design } = machine
  const { power_W, atWind_m_per_s } = design.purpose
  return {
    name: machine.name,
    rows: chain.rows,
    year: chain.year,
    hours: hoursOf(chain),
    runaway: chain.runaway,
    gap: chain.gap,
    steel: chain.steel,
    airDensity: chain.airDensity,
    startWind: chain.startWind,
    cutInWind: chain.cutInWind,
    cutInSpeed: generator.cutIn,
    phases: voltage.phases.map(({ rms, peak, lag, resistance, inductance }, k) => ({
      rms,
      peak,
      lag,
      resistance,
      inductance,
      wireLength: wound.phases[k]!.length,
      copperMass: wound.phases[k]!.mass,
    })),
    connection: machine.stator.connection,
    lineRms: Math.max(...voltage.lines.map(({ rms }) => rms)),
    linePeak: voltage.greatestLinePeak,
    copperMass: wound.copperMass,
    wireLength: wound.wireLength,
    wirePrice: wound.price,
    fit: wound.fit,
    turns: machine.stator.winding.turns,
    magnetMass: chain.runaway.magnetMass * magnetCount(chain),
    solid: solidOf(chain),
    loadKind: machine.load.kind,
    converter: machine.converter !== undefined,
    cableBeforeBridge: machine.cable.place === 'before bridge',
    wanted:
      power_W === undefined || atWind_m_per_s === undefined
        ? undefined
        : { power: nominal(power_W), wind: nominal(atWind_m_per_s) },
    limiter: machine.protection.mechanical,
    turn: turnSource(chain),
    meter: meterOf(design.bench),
  }
}

/** What is drawn of one row; a machine at rest has no period. */
export function windSnapshotOf(chain: Chain, row: number): WindSnapshot {
  const { machine, rows } = chain
  const { speed, copperTemperature } = rows[row]!
  const voltage = warmVoltage(chain, copperTemperature)
  const ownLeads = ['single', 'separate'].includes(machine.stator.connection)
  const still = {
    row,
    frequency: 0,
    emf: [],
    lineVoltages: [],
    ownLeads,
    phaseCurrent: [],
    dcVoltage: new Float64Array(0),
    dcCurrent: new Float64Array(0),
  }
  if (!(speed > 0)) return still
  const { waveforms } = loadPoint(machine, voltage, { speed, copperTemperature, samples: waveformSamples })
  return waveforms === undefined
    ? still
    : {
        row,
        frequency: (voltage.base * speed) / (2 * Math.PI),
        emf: waveforms.emf,
        lineVoltages: waveforms.lineVoltages,
        ownLeads,
        phaseCurrent: waveforms.phaseCurrent,
        dcVoltage: waveforms.loadVoltage,
        dcCurrent: waveforms.dcCurrent,
      }
}
