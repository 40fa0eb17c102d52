/** Volts and resistance of battery cells by chemistry. */

export interface BatteryChemistry {
  readonly name: string
  /** What one divides the label's volts by to count cells. */
  readonly nominal_V_per_cell: number
  /** At rest, empty, nearly empty (20 %), half and full. */
  readonly restEmpty_V_per_cell: number
  readonly restLow_V_per_cell: number
  readonly restHalf_V_per_cell: number
  readonly restFull_V_per_cell: number
  /** Where a charger holds at the end of charge (absorption). */
  readonly charge_V_per_cell: number
  /** What may stand for days; equal to rest where floating is not done. */
  readonly float_V_per_cell: number
  readonly cutOff_V_per_cell: number
  /** Resistance × capacity, typical: R of a cell = this / Ah. */
  readonly internalResistance_ohm_Ah_per_cell: number
  /** Typical value times or divided by this holds nine of ten batteries. */
  readonly internalResistanceFactor_1: number
  /** Below this the battery must not be charged. */
  readonly chargeLeast_degC: number
  readonly source: string
  readonly where: string
}

const guess =
  'internal resistance and rest volts at 0 %, 20 % and 50 %: common practice, no source (measure yours)'

export const batteryChemistries: readonly BatteryChemistry[] = [
  {
    name: 'lead-acid',
    nominal_V_per_cell: 2,
    restEmpty_V_per_cell: 1.92,
    restLow_V_per_cell: 1.95,
    restHalf_V_per_cell: 2.03,
    restFull_V_per_cell: 2.12,
    charge_V_per_cell: 2.4,
    float_V_per_cell: 2.27,
    cutOff_V_per_cell: 1.75,
    internalResistance_ohm_Ah_per_cell: 0.1,
    internalResistanceFactor_1: 2,
    chargeLeast_degC: -20,
    source: 'battery-charge-volts',
    where: `14.4 V absorption, 13.6 V float for 12 V; rest 12.6–12.7 V battery-rest-volts; 1.75 V cell-end-voltage; ${guess}; least temperature for a charged battery, common practice`,
  },
  {
    name: 'LiFePO4',
    nominal_V_per_cell: 3.2,
    restEmpty_V_per_cell: 3.0,
    restLow_V_per_cell: 3.2,
    restHalf_V_per_cell: 3.28,
    restFull_V_per_cell: 3.38,
    charge_V_per_cell: 3.6,
    float_V_per_cell: 3.38,
    cutOff_V_per_cell: 2.5,
    internalResistance_ohm_Ah_per_cell: 0.05,
    internalResistanceFactor_1: 2.5,
    chargeLeast_degC: 0,
    source: 'battery-rest-volts',
    where: `3.2 V nominal, 3.6–3.65 V charge; no charge below 0 °C battery-charge-volts; cut-off 2.5 V common practice; ${guess}`,
  },
  {
    name: 'Li-ion',
    nominal_V_per_cell: 3.6,
    restEmpty_V_per_cell: 3.2,
    restLow_V_per_cell: 3.5,
    restHalf_V_per_cell: 3.7,
    restFull_V_per_cell: 4.15,
    charge_V_per_cell: 4.2,
    float_V_per_cell: 4.1,
    cutOff_V_per_cell: 2.5,
    internalResistance_ohm_Ah_per_cell: 0.1,
    internalResistanceFactor_1: 2.5,
    chargeLeast_degC: 0,
    source: 'battery-rest-volts',
    where: `3.6–3.7 V nominal, 4.2 V charge; 2.5 V cell-end-voltage; no charge below 0 °C battery-charge-volts; ${guess}`,
  },
  {
    name: 'NiMH',
    nominal_V_per_cell: 1.2,
    restEmpty_V_per_cell: 1.1,
    restLow_V_per_cell: 1.22,
    restHalf_V_per_cell: 1.28,
    restFull_V_per_cell: 1.38,
    charge_V_per_cell: 1.45,
    float_V_per_cell: 1.38,
    cutOff_V_per_cell: 1,
    internalResistance_ohm_Ah_per_cell: 0.06,
    internalResistanceFactor_1: 2.5,
    chargeLeast_degC: 0,
    source: 'battery-rest-volts',
    where: `1.2 V nominal, 1.4–1.5 V charged; 1.0 V cell-end-voltage; ${guess}; least temperature common practice`,
  },
]
