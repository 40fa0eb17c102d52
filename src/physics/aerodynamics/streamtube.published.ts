/** Upright rotors as measured: power and thrust against tip-speed ratio, and loads round the turn. */

/** RM2 at 1:6 in the towing tank at 1 m/s, first series; mean_tsr, mean_cp, mean_cd rounded to four digits. */
export const rm2Towed = [
  [1.5003, '0.0168', '0.3989'],
  [2.0002, '0.0802', '0.5253'],
  [2.5, '0.2457', '0.6746'],
  [2.7995, '0.3294', '0.7683'],
  [3.0993, '0.3546', '0.8459'],
  [3.4992, '0.3359', '0.9030'],
  [3.9997, '0.2856', '0.9298'],
] as const

/** The same without blades: what the arms cost. */
export const rm2ArmsAlone = [
  [1.5, '-0.00358'],
  [2, '-0.00629'],
  [2.5, '-0.00986'],
  [3.0999, '-0.01553'],
  [3.4999, '-0.02083'],
  [3.9999, '-0.02935'],
  [4.7497, '-0.04597'],
] as const

/** UNH-RVAT in the towing tank at 1 m/s; mean_tsr, mean_cp, mean_cd. */
export const rvatTowed = [
  [1.3009, '0.1741', '0.7531'],
  [1.5996, '0.2447', '0.8469'],
  [1.8999, '0.2616', '0.9119'],
  [2.2007, '0.2276', '0.9509'],
] as const

/** Blade loads of a two-bladed rotor round the turn, per ½ρv²R and unit length: azimuth 90° faces the wind [deg], normal, positive inward. */
export const delftNormal = [
  [29.44, '1.313'],
  [50.5, '2.062'],
  [76.18, '2.406'],
  [101.78, '2.177'],
  [120.96, '1.779'],
  [146.66, '1.157'],
  [225.55, '-0.653'],
  [264, '-0.639'],
  [298.87, '-0.584'],
  [338.27, '-0.526'],
] as const

/** The same, tangential, positive forward. */
export const delftTangential = [
  [30.06, '0.032'],
  [47.53, '0.154'],
  [72.1, '0.298'],
  [91.34, '0.332'],
  [110.14, '0.291'],
  [129.23, '0.195'],
  [150.55, '0.080'],
] as const
