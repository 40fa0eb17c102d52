/** Three documents that stay as they are, for checks that name the very numbers in them; the examples may be improved. */

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will, also to what no type allows
type Raw = any

const documents = {
  drum: {
    gustloom: 2,
    name: 'Drum of checks',
    purpose: {
      class: 'outdoor',
      goal: 'Light for a hen-house, about 10 W in a fresh breeze',
      power_W: 10,
      atWind_m_per_s: 6,
    },
    site: {
      meanWind_m_per_s: {
        value: 4.2,
        spread: 0.8,
        known: 'guessed',
      },
      measuredHeight_m: 10,
      hubHeight_m: 7,
      shearExponent: {
        value: 0.2,
        spread: 0.05,
        known: 'guessed',
      },
      weibullShape: 2,
      ambient_degC: 10,
      stormWind_m_per_s: 25,
    },
    blades: {
      kind: 'optimum',
      diameter_m: 1.1,
      bladeCount: 3,
      hubDiameter_mm: 140,
      section: 'SD2030',
      tipSpeedRatio: 5,
    },
    protection: {
      mechanical: 'furling tail',
      actsAt_m_per_s: 11,
      electrical: 'shorting switch',
    },
    shaft: {
      friction_mNm: {
        value: 8,
        spread: 4,
        known: 'guessed',
      },
    },
    rotor: {
      arrangement: 'drum',
      windingSide: 'outside',
      poleCount: 12,
      pitchRadius_mm: 50,
      magnet: {
        shape: 'block',
        length_mm: 60,
        width_mm: 15,
        thickness_mm: 5,
        grade: 'N42',
      },
      cover_mm: 0.6,
      retention: {
        kind: 'pocket',
        wall_mm: 2.4,
        material: 'PETG',
      },
    },
    stator: {
      winding: {
        kind: 'serpentine',
        turns: 40,
        runLength_mm: 60,
        crownHeight_mm: 12,
        bundleWidth_mm: 8,
        bundleDepth_mm: 2.2,
        phases: [
          {
            offset_deg: 0,
            distance_mm: 3.2,
          },
          {
            offset_deg: 20,
            distance_mm: 5.5,
          },
          {
            offset_deg: 40,
            distance_mm: 7.8,
          },
        ],
      },
      wire: {
        size: 0.5,
        insulationClass: 'F',
        price_per_kg: 18,
      },
      connection: 'star',
      leadLength_m: 0.6,
      jointResistance_mohm: 20,
      support: 'PETG',
    },
    cable: {
      length_m: 12,
      area_mm2: 1.5,
    },
    bridge: {
      diode: 'diode 3 A',
    },
    load: {
      kind: 'battery',
      chemistry: 'lead-acid',
      voltage_V: 12.6,
      resistance_mohm: 60,
      capacity_Ah: 20,
    },
  },
  twoDiscs: {
    gustloom: 2,
    name: 'Two discs of checks',
    purpose: {
      class: 'outdoor',
      goal: 'Lights, pump and radio in a boathouse: about 300 W in a strong breeze',
      power_W: 300,
      atWind_m_per_s: 9,
    },
    site: {
      meanWind_m_per_s: {
        value: 5,
        spread: 0.5,
        known: 'measured',
      },
      measuredHeight_m: 10,
      hubHeight_m: 12,
      shearExponent: {
        value: 0.14,
        spread: 0.03,
        known: 'guessed',
      },
      weibullShape: {
        value: 2,
        spread: 0.2,
        known: 'guessed',
      },
      ambient_degC: 12,
      stormWind_m_per_s: 28,
    },
    blades: {
      kind: 'optimum',
      diameter_m: 1.9,
      bladeCount: 3,
      hubDiameter_mm: 260,
      section: 'SD2030',
      tipSpeedRatio: 6,
      straightTaper: true,
    },
    protection: {
      mechanical: 'furling tail',
      actsAt_m_per_s: 9,
      electrical: 'shorting switch',
    },
    shaft: {
      friction_mNm: {
        value: 60,
        spread: 30,
        known: 'guessed',
      },
    },
    rotor: {
      arrangement: 'two-discs',
      poleCount: 12,
      pitchRadius_mm: 100,
      magnet: {
        shape: 'block',
        length_mm: 40,
        width_mm: 25,
        thickness_mm: 10,
        grade: 'N42',
      },
      backIron: {
        kind: 'steel',
        thickness_mm: 8,
      },
      faceDistance_mm: 17,
      cover_mm: 0.5,
      retention: {
        kind: 'pocket',
        wall_mm: 6,
        material: 'nylon',
      },
    },
    stator: {
      winding: {
        kind: 'coils',
        coilCount: 9,
        phaseCount: 3,
        turns: 48,
        hole: {
          shape: 'wedge',
          holeInnerWidth_mm: 14,
          holeOuterWidth_mm: 30,
          holeLength_mm: 40,
          cornerRadius_mm: 4,
        },
        legWidth_mm: 18,
        bundleDepth_mm: 12,
        distance_mm: 8.5,
      },
      wire: {
        size: 1.25,
        enamelGrade: 2,
        insulationClass: 'H',
        price_per_kg: 16,
      },
      connection: 'star',
      leadLength_m: 1,
      jointResistance_mohm: 10,
      support: 'epoxy',
    },
    cable: {
      length_m: 25,
      area_mm2: 6,
      place: 'before bridge',
    },
    bridge: {
      diode: 'bridge 35 A',
    },
    load: {
      kind: 'battery',
      chemistry: 'lead-acid',
      voltage_V: 25.2,
      resistance_mohm: 25,
      capacity_Ah: 200,
    },
  },
  disc: {
    gustloom: 2,
    name: 'Disc of checks',
    purpose: {
      class: 'demonstration',
      goal: 'A fair test of coils in two lessons',
      power_W: 0.3,
      atWind_m_per_s: 5,
    },
    site: {
      meanWind_m_per_s: {
        value: 4.5,
        spread: 0.7,
        known: 'measured',
      },
      measuredHeight_m: 1,
      hubHeight_m: 1,
      weibullShape: 6,
      ambient_degC: 20,
      stormWind_m_per_s: 7,
    },
    blades: {
      kind: 'optimum',
      diameter_m: 0.36,
      bladeCount: 4,
      hubDiameter_mm: 60,
      section: 'NACA 6409',
      tipSpeedRatio: 3,
    },
    shaft: {
      friction_mNm: {
        value: 1,
        spread: 0.5,
        known: 'guessed',
      },
    },
    rotor: {
      arrangement: 'disc',
      poleCount: 8,
      pitchRadius_mm: 40,
      magnet: {
        shape: 'block',
        length_mm: 20,
        width_mm: 10,
        thickness_mm: 5,
        grade: 'N38',
      },
      backIron: {
        kind: 'none',
      },
      cover_mm: 0.4,
      retention: {
        kind: 'pocket',
        wall_mm: 3,
        material: 'PLA',
      },
    },
    stator: {
      winding: {
        kind: 'coils',
        coilCount: 6,
        phaseCount: 3,
        turns: 150,
        hole: {
          shape: 'round',
          holeDiameter_mm: 12,
        },
        legWidth_mm: 10,
        bundleDepth_mm: 6,
        distance_mm: 5,
      },
      wire: {
        size: 'AWG 26',
        insulationClass: 'A',
      },
      connection: 'star',
      support: 'PLA',
    },
    cable: {
      length_m: 0.5,
      area_mm2: 0.5,
    },
    bridge: {
      diode: 'Schottky 10 A 45 V',
    },
    load: {
      kind: 'resistor',
      resistance_ohm: 10,
    },
  },
}

export type FixedName = keyof typeof documents

/** A fresh copy, free to be changed. */
export const fixedDocument = (name: FixedName): Raw => structuredClone(documents[name])

export const fixedText = (name: FixedName): string => JSON.stringify(documents[name])
