/** The computed chain as JSON in workshop units: every field declared once, with its meaning. */
import type { Chain } from '../analysis/compute.ts'
import { plainConcern } from '../analysis/concern/concern.ts'
import { type Concern, isOpen } from '../analysis/concerns.ts'
import { noLoadRows, partsSpread } from '../analysis/no-load-torque.ts'
import { openCorner } from '../analysis/open-corner.ts'
import type { Spreads } from '../analysis/spread.ts'
import { voltageAlongWire } from '../analysis/voltage-along-wire.ts'
import { shaftPower, wattColumns } from '../analysis/watts.ts'
import type { Worth } from '../analysis/worth.ts'
import { fromSi, unit } from '../units/unit.ts'
import { signOff } from './sign-off.ts'
import { intervalResults, spreadNames } from './spread-result.ts'
import { worthResult } from './worth-page.ts'

/** Version of this form; it rises when a field goes or changes its meaning. */
export const resultVersion = 2

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

interface ResultField {
  readonly name: string
  readonly meaning: string
  readonly of: (chain: Chain, spreads: Spreads | undefined, worth: Worth | undefined) => Json
}

/** An SI value in the unit that the field's name ends in; null for what has no finite value, such as "never". */
const inUnit = (suffix: string, value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : fromSi(value, unit(suffix))

const perRpm = (voltsPerRadian: number): number => (voltsPerRadian * 2 * Math.PI) / 60

/** A number field whose unit is the suffix of its name. */
const number = (name: string, meaning: string, of: (chain: Chain) => number | undefined): ResultField => {
  const suffix = name.includes('_') ? name.slice(name.indexOf('_') + 1) : '1'
  return { name, meaning, of: (chain) => inUnit(suffix, of(chain)) }
}

const wattNames = {
  friction: 'bearings and seals',
  eddy: 'eddy currents in the strands',
  parts: 'eddy currents in metal near the magnets',
  winding: 'copper of the winding',
  cable: 'cable',
  diodes: 'bridge',
  converter: 'converter',
  battery: 'inside the battery, as heat',
  useful: 'stored, or given to the resistor',
} as const satisfies Record<(typeof wattColumns)[number], string>

/** A concern for other programs: its remedies in words. */
export function concernResult(concern: Concern) {
  const { answer } = concern
  return {
    ...plainConcern(concern),
    answer:
      answer === undefined
        ? null
        : {
            note: answer.note,
            file: answer.file ?? null,
            date: answer.date ?? null,
            unfit: answer.unfit ?? null,
          },
    open: isOpen(concern),
  }
}

export const resultFields: readonly ResultField[] = [
  { name: 'gustloomResult', meaning: 'version of this form', of: () => resultVersion },
  { name: 'name', meaning: 'name of the design', of: ({ machine }) => machine.name },
  number('airDensity_kg_per_m3', 'density of the air at the site', ({ airDensity }) => airDensity),
  number('hubWind_m_per_s', 'mean wind at the hub', ({ year }) => year.meanWind),
  number(
    'magnetPolarization_T',
    'polarisation of the magnets at their working point',
    ({ field }) => field.workingPoint.polarization,
  ),
  number(
    'magnetFluxDensity_T',
    'mean flux density inside a magnet',
    ({ field }) => field.workingPoint.fluxDensity,
  ),
  number(
    'gapFundamental_T',
    'peak fundamental of the field through the middle of the winding',
    ({ gap }) => gap.fundamental,
  ),
  number(
    'yokeFluxDensity_T',
    'mean flux density between two poles in the fullest steel of the rotor; null without steel',
    ({ steel }) =>
      steel.length === 0 ? undefined : Math.max(...steel.map(({ fluxDensity }) => fluxDensity)),
  ),
  number('copperMass_kg', 'copper of all phases', ({ wound }) => wound.copperMass),
  number(
    'wireLength_m',
    'wire of all phases, strands counted, leads included',
    ({ wound }) => wound.wireLength,
  ),
  {
    name: 'price',
    meaning: 'price of that wire in the money of the document; null where no price is given',
    of: ({ wound }) => wound.price ?? null,
  },
  {
    name: 'phases',
    meaning:
      'for each phase: volts_V_per_rpm_rms and volts_V_per_rpm_peak on open circuit, lag_deg (electrical, fundamental, behind the first phase), resistance20_ohm, inductance_mH, inStep (1: its series coils are in step)',
    of: ({ voltage }) =>
      voltage.phases.map((phase) => ({
        volts_V_per_rpm_rms: perRpm(phase.rms),
        volts_V_per_rpm_peak: perRpm(phase.peak),
        lag_deg: fromSi(phase.lag, unit('deg')),
        resistance20_ohm: phase.resistance,
        inductance_mH: fromSi(phase.inductance, unit('mH')),
        inStep: phase.inStep,
      })),
  },
  {
    name: 'wireParts',
    meaning:
      'for each phase, where along its wire the volts arise: part (of a wave run, slanted run, crown; of a coil side, slanted side, rounded side, end), voltsShare (of the fundamental, in step with it; below zero it works against it), underMagnetsShare (what of that lies within the length of the magnets), volts_V_per_rpm_peak, wire_m (strands counted once), ohmsShare (of the winding without leads)',
    of: (chain) =>
      voltageAlongWire(chain).phases.map(({ parts }) =>
        parts.map(({ part, share, underShare, volts, length, copperShare }) => ({
          part,
          voltsShare: share,
          underMagnetsShare: underShare,
          volts_V_per_rpm_peak: perRpm(volts),
          wire_m: length,
          ohmsShare: copperShare,
        })),
      ),
  },
  {
    name: 'lineVolts_V_per_rpm_rms',
    meaning: 'volts between the lines on open circuit, rms, one for each pair',
    of: ({ voltage }) => voltage.lines.map(({ rms }) => perRpm(rms)),
  },
  number(
    'openCornerShare',
    'rms sum round the open corner of a delta over the phases’ mean rms',
    ({ voltage }) => voltage.openCorner,
  ),
  number('cutIn_rpm', 'speed at which current begins; null where never', ({ generator }) => generator.cutIn),
  number(
    'startWind_m_per_s',
    'wind that starts the rotor from rest; null where none does',
    ({ startWind }) => startWind,
  ),
  number(
    'cutInWind_m_per_s',
    'least wind in which current flows; null where none does',
    ({ cutInWind }) => cutInWind,
  ),
  number('bestPowerCoefficient', 'greatest power coefficient of the blades', ({ rotor }) => rotor.best.power),
  number('bestTipSpeedRatio', 'tip-speed ratio of it', ({ rotor }) => rotor.best.tipSpeedRatio),
  number('runawayTipSpeedRatio', 'tip-speed ratio of the unloaded rotor', ({ rotor }) => rotor.runaway),
  {
    name: 'winds',
    meaning: `one row per wind: wind_m_per_s, state, speed_rpm, tipSpeedRatio, powerCoefficient, available_W, shaft_W, current_A (mean, direct), voltage_V (mean, at the load), phaseCurrent_A (rms), currentDensity_A_per_mm2, copper_degC, overheated, and the watts ${wattColumns
      .map((column) => `${column}_W (${wattNames[column]})`)
      .join(', ')}`,
    of: ({ rows }) =>
      rows.map((row) => ({
        wind_m_per_s: row.wind,
        state: row.state,
        speed_rpm: fromSi(row.speed, unit('rpm')),
        tipSpeedRatio: row.tipSpeedRatio,
        powerCoefficient: row.powerCoefficient,
        available_W: row.available,
        shaft_W: shaftPower(row.watts),
        current_A: row.loadCurrent,
        voltage_V: row.loadVoltage,
        phaseCurrent_A: row.phaseCurrent,
        currentDensity_A_per_mm2: fromSi(row.currentDensity, unit('A_per_mm2')),
        copper_degC: fromSi(row.copperTemperature, unit('degC')),
        overheated: row.overheated,
        ...Object.fromEntries(wattColumns.map((column) => [`${column}_W`, row.watts[column]])),
      })),
  },
  {
    name: 'openCornerOrders',
    meaning:
      'volts round the open corner of a delta by harmonic, the strongest first: order and volts_V_per_rpm_rms; the list is empty for other connections',
    of: ({ machine, voltage }) =>
      machine.stator.connection === 'delta'
        ? openCorner(voltage).orders.map(({ order, rms }) => ({ order, volts_V_per_rpm_rms: perRpm(rms) }))
        : [],
  },
  {
    name: 'noLoad',
    meaning:
      'turned with nothing connected, one row per speed: speed_rpm, torque_mNm, and the watts friction_W, strands_W (eddy currents in the wire), parts_W (eddy currents in metal near the magnets) with partsSpread (half-width at 90 %, as a share), branches_W, delta_W and loops_W (currents inside the winding: between branches, round a delta, in shorted turns)',
    of: (chain) =>
      noLoadRows(chain).map(({ speed, torque, watts }) => ({
        speed_rpm: fromSi(speed, unit('rpm')),
        torque_mNm: fromSi(torque, unit('mNm')),
        friction_W: watts.friction,
        strands_W: watts.strands,
        parts_W: watts.parts,
        partsSpread: partsSpread(chain.drag.parts, speed),
        branches_W: watts.branches,
        delta_W: watts.delta,
        loops_W: watts.loops,
        shortedDiodes_W: watts.bridge,
      })),
  },
  {
    name: 'strandEddy',
    meaning:
      'eddy loss in the strands at 100 rpm, which goes with the square of the speed: underMagnets_W and ends_W (wire past the magnets’ ends); not counted in it, the most that may run round between strands in hand: betweenUntwisted_W, betweenTwisted_W (null for a single strand)',
    of: ({ drag }) => {
      const squared = (100 * 2 * Math.PI) ** 2 / 3600
      return {
        underMagnets_W: drag.strands.underMagnets * squared,
        ends_W: drag.strands.ends * squared,
        betweenUntwisted_W: drag.between === undefined ? null : drag.between.untwisted * squared,
        betweenTwisted_W: drag.between === undefined ? null : drag.between.twisted * squared,
      }
    },
  },
  {
    name: 'reelRest',
    meaning:
      'what is left on the reels after winding, below zero where they run out: length_m, mass_g and share of what was on them; null where no reel is named',
    of: ({ wound: { reelRest } }) =>
      reelRest === undefined
        ? null
        : {
            length_m: reelRest.length,
            mass_g: fromSi(reelRest.mass, unit('g')),
            share: reelRest.share,
          },
  },
  {
    name: 'temperatureLimits',
    meaning:
      'enamel_degC (its thermal class), support_degC (where plastic or resin softens), magnet_degC (of the grade; null where no grade is named)',
    of: ({ machine }) => ({
      enamel_degC: inUnit('degC', machine.stator.wire.highestTemperature),
      support_degC: inUnit('degC', machine.stator.support.softening),
      magnet_degC: inUnit('degC', machine.rotor.magnet.highestTemperature),
    }),
  },
  {
    name: 'runaway',
    meaning:
      'the load lost in the storm: wind_m_per_s, speed_rpm, tipSpeed_m_per_s, lineVolts_V_rms, directVolts_V (peak after the bridge), magnetForce_N, magnetHold_N (without glue)',
    of: ({ runaway }) => ({
      wind_m_per_s: runaway.wind,
      speed_rpm: fromSi(runaway.speed, unit('rpm')),
      tipSpeed_m_per_s: runaway.tipSpeed,
      lineVolts_V_rms: runaway.lineVoltage,
      directVolts_V: runaway.directVoltage,
      magnetForce_N: runaway.magnetForce,
      magnetHold_N: runaway.magnetHold,
    }),
  },
  {
    name: 'year',
    meaning: `energy_kWh (useful), hysteresis_kWh (half of what lies between a rising and a falling wind), energyOfMeanWind_kWh (what the mean wind alone would promise), available_kWh, pastBlades_kWh, held_kWh (not taken above the limiter’s wind), low_kWh and high_kWh (nine of ten single years), inGusts_kWh (if it followed every gust; null where not known), months (null where not known; meanWind_m_per_s, energy_kWh, low_kWh, high_kWh), and the year’s parts ${wattColumns.map((column) => `${column}_kWh`).join(', ')}`,
    of: ({ year }) => ({
      energy_kWh: fromSi(year.energy, unit('kWh')),
      hysteresis_kWh: fromSi(year.hysteresis, unit('kWh')),
      energyOfMeanWind_kWh: fromSi(year.energyOfMeanWind, unit('kWh')),
      available_kWh: fromSi(year.ledger.available, unit('kWh')),
      pastBlades_kWh: fromSi(year.ledger.pastBlades, unit('kWh')),
      held_kWh: fromSi(year.ledger.held, unit('kWh')),
      low_kWh: fromSi(year.range.low, unit('kWh')),
      high_kWh: fromSi(year.range.high, unit('kWh')),
      inGusts_kWh: inUnit('kWh', year.energyInGusts),
      months:
        year.months?.map(({ month, meanWind, energy, low, high }) => ({
          month,
          meanWind_m_per_s: meanWind,
          energy_kWh: fromSi(energy, unit('kWh')),
          low_kWh: fromSi(low, unit('kWh')),
          high_kWh: fromSi(high, unit('kWh')),
        })) ?? null,
      ...Object.fromEntries(
        wattColumns.map((column) => [`${column}_kWh`, fromSi(year.ledger.parts[column], unit('kWh'))]),
      ),
    }),
  },
  {
    name: 'worth',
    meaning:
      'the need against the year, storage losses taken off: energy_kWh, low_kWh, high_kWh, need_kWh, standing_kWh (controller and the like), refused_kWh (by a full battery), cover (covered, perhaps, short), autonomy_d, months, steps (what a higher tower or larger rotor would bring), verdict in sentences; null where no need is named or it was not computed',
    of: (_, __, worth) => (worth === undefined ? null : worthResult(worth)),
  },
  {
    name: 'spreads',
    meaning: `of ${spreadNames.join(', ')}: the interval that all guesses together leave, each as { value, low, high (nine of ten draws lie between), median, spread (half of the distance between low and high), never (share of the draws in which it never happens), causes: [{ path, share of the variance }], together (share that guesses bear only together) }; null where not computed`,
    of: (_, spreads) => (spreads === undefined ? null : intervalResults(spreads)),
  },
  {
    name: 'concerns',
    meaning:
      'code, severity (blocking, warning, note), path in the document, what, why, figures, remedies in words, answer (null, or note, file, date and unfit: why it does not hold, null where it does), open (no answer that holds)',
    of: ({ concerns }) => concerns.map(concernResult),
  },
  {
    name: 'signOff',
    meaning:
      'concerns open and answered, each counted as blocking, warning and note, and the verdict: not (something blocks), by note (only notes stand against what blocks), free',
    of: ({ concerns }) => {
      const { open, answered, verdict } = signOff(concerns)
      return { open: { ...open }, answered: { ...answered }, verdict }
    },
  },
]

export const designResult = (
  chain: Chain,
  spreads?: Spreads,
  worth?: Worth,
): Readonly<Record<string, Json>> =>
  Object.fromEntries(resultFields.map(({ name, of }) => [name, of(chain, spreads, worth)]))
