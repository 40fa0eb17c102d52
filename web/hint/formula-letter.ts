/** The letters of the formulas that hints show, in plain words with their units. */
import { say } from '../text/say.ts'
import type { MethodName } from './figure-method.ts'

type Letters = readonly (readonly [letter: string, words: string])[]

const weibullLetters = (): Letters => [
  ['A', say`scale of the distribution, m/s`],
  ['k', say`shape of the distribution, 2 is usual`],
]
const bladeLetters = (): Letters => [
  ['C_p', say`share of the wind’s power that the rotor takes`],
  ['C_q', say`torque of the rotor, as a share`],
  ['λ', say`tip-speed ratio`],
]
const ringLetters = (): Letters => [
  ['B', say`number of blades`],
  ['c', say`chord of the blade, m`],
  ['W', say`speed of the air against the blade, over the wind`],
  ['R', say`radius of the rotor, m`],
]
const inductanceLetters = (): Letters => [
  ['dl', say`piece of the wire’s path, m`],
  ['r', say`distance between two pieces, m`],
  ['g', say`mean distance within the bundle, m`],
  ['μ0', say`magnetic constant, H/m`],
]
const potentialLetters = (): Letters => [
  ['A', say`vector potential, Wb/m`],
  ['J', say`polarization of the magnet, T`],
]

export const formulaLetters: Readonly<Record<MethodName, () => Letters>> = {
  'aerodynamics/annual-energy#meanPower': () => [
    ['P̄', say`mean power, W`],
    ['S', say`share of the time in which the wind is above a speed`],
    ['ΔP/Δv', say`slope of a piece of the power curve, W per m/s`],
    ...weibullLetters(),
  ],
  'aerodynamics/blade-element#rotorCoefficients': () => [
    ...bladeLetters(),
    ['C_t', say`push on the rotor, as a share`],
    ...ringLetters(),
    ['r, Δr', say`radius and width of one ring, m`],
  ],
  'aerodynamics/blade-element#runawayTipSpeedRatio': () => [
    ['C_q', say`torque of the rotor, as a share`],
    ['λ', say`tip-speed ratio`],
  ],
  'aerodynamics/power-table#powerTableCoefficients': bladeLetters,
  'aerodynamics/streamtube#straightBladeTurn': () => [
    ...bladeLetters(),
    ['a', say`share by which the rotor slows the wind`],
    ['σ', say`blade area over swept area`],
    ['θ', say`place of the blade on its circle`],
    ...ringLetters(),
  ],
  'aerodynamics/weibull#windDistribution': () => [['v̄', say`mean wind, m/s`], ...weibullLetters()],
  'aerodynamics/weibull#windSpeedShare': () => [
    ['F', say`share of the time at or below a wind`],
    ['v', say`wind, m/s`],
    ...weibullLetters(),
  ],
  'aerodynamics/wind-histogram#histogramMeanPower': () => [
    ['P̄', say`mean power, W`],
    ['p_i', say`share of the time in one bin`],
    ['w', say`width of a bin, m/s`],
  ],
  'aerodynamics/wind-power#tipSpeedRatio': () => [
    ['λ', say`tip-speed ratio`],
    ['ω', say`speed of the rotor, rad/s`],
    ['R', say`radius of the rotor, m`],
    ['v', say`wind, m/s`],
  ],
  'aerodynamics/wind-profile#windSpeedByPowerLaw': () => [
    ['v_1, v_2', say`wind at either height, m/s`],
    ['h_1, h_2', say`the two heights above ground, m`],
    ['α', say`shear exponent`],
  ],
  'electrics/bridge-rectifier#rectifierPoint': () => [
    ['e', say`induced voltage, V`],
    ['i', say`current, A`],
    ['L', say`inductance, H`],
    ['R', say`resistance, Ω`],
    ['v', say`volts that bridge and load hold against it, V`],
  ],
  'electrics/resistance#conductorResistance': () => [
    ['R', say`resistance, Ω`],
    ['ρ', say`resistivity of the metal, Ω·m`],
    ['l', say`length of the wire, m`],
    ['A', say`section of the metal, m²`],
  ],
  'electrics/resistance#resistanceRatio': () => [
    ['R20', say`resistance at 20 °C, Ω`],
    ['α', say`temperature coefficient, 1/K`],
    ['T', say`temperature, K`],
  ],
  'electrics/strand-section#roundSection': () => [
    ['A', say`section of the metal, m²`],
    ['d', say`bare diameter, m`],
  ],
  'electrics/strand-section#stripSection': () => [
    ['A', say`section of the metal, m²`],
    ['w, t', say`width and thickness of the strip, m`],
    ['r', say`radius of its edges, m`],
  ],
  'heat/conduction#windingConductivity': () => [
    ['kw', say`conductivity of the wire with its coat, W/(m·K)`],
    ['km', say`conductivity of what is between, W/(m·K)`],
    ['kc', say`conductivity of the bare metal, W/(m·K)`],
    ['v, f', say`shares of the section that wire and metal take`],
  ],
  'heat/radiation#radiationCoefficient': () => [
    ['h', say`heat that a surface gives off, W/(m²·K)`],
    ['ε', say`emissivity of the surface`],
    ['σ', say`Stefan–Boltzmann constant, W/(m²·K⁴)`],
    ['T1, T2', say`temperatures of surface and surroundings, K`],
  ],
  'magnetics/block-magnet#blockVectorPotential': () => [
    ...potentialLetters(),
    ['X, Y, Z', say`from the point to a corner of the block, m`],
    ['R', say`distance to that corner, m`],
  ],
  'magnetics/cylinder-magnet#cylinderVectorPotential': () => [
    ...potentialLetters(),
    ['a, b', say`radius and half the height of the disc, m`],
    ['ρ, z', say`place of the point: off the axis, along it, m`],
  ],
  'magnetics/inductance#mutualInductance': () => [['M', say`mutual inductance, H`], ...inductanceLetters()],
  'magnetics/inductance#selfInductance': () => [
    ['L', say`inductance, H`],
    ['N', say`turns`],
    ...inductanceLetters(),
  ],
  'magnetics/iron-cylinder-inductance#ironTubeInductance': () => [
    ['M', say`mutual inductance, H`],
    ['R₁, R₂', say`radii of the two iron walls, m`],
    ['s₁, s₂', say`magnetic charge on the two walls`],
    ['m, k', say`waves round the axis and along it`],
  ],
  'magnetics/magnet#magnetVolume': () => [
    ['V', say`volume, m³`],
    ['a, b, c', say`edges, m`],
    ['r, h', say`radius and height, m`],
    ['A', say`base area, m²`],
  ],
  'magnetics/prism-magnet#prismVectorPotential': () => [
    ...potentialLetters(),
    ['n', say`direction square to a face`],
    ['R', say`distance to the face, m`],
  ],
  'mechanics/retention#centrifugalForce': () => [
    ['F', say`force outward, N`],
    ['m', say`mass, kg`],
    ['r', say`radius of its path, m`],
    ['ω', say`speed of the rotor, rad/s`],
  ],
  'winding/path-linkage#pathLinkage': () => [
    ['ψ', say`flux linked with the path, Wb`],
    ['A', say`vector potential, Wb/m`],
    ['dl', say`piece of the wire’s path, m`],
  ],
}
