/** The stations in the order in which the power passes them. */
import { answerStation } from './answer.ts'
import { benchStation } from './bench.ts'
import { bladeStation } from './blade.ts'
import { bridgeStation } from './bridge.ts'
import { cableStation } from './cable.ts'
import { converterStation } from './converter.ts'
import { defectStation } from './defect.ts'
import { designStation } from './design.ts'
import { loadStation } from './load.ts'
import { needStation } from './need.ts'
import { protectionStation } from './protection.ts'
import { purposeStation } from './purpose.ts'
import { rotorStation } from './rotor.ts'
import { shaftStation } from './shaft.ts'
import { sharingStation } from './sharing.ts'
import { siteStation } from './site.ts'
import type { Station } from './station.ts'
import { statorStation } from './stator.ts'
import { toleranceStation } from './tolerance.ts'
import { wiringStation } from './wiring.ts'

export const stations: readonly Station[] = [
  designStation,
  purposeStation,
  siteStation,
  bladeStation,
  protectionStation,
  shaftStation,
  rotorStation,
  statorStation,
  cableStation,
  bridgeStation,
  converterStation,
  loadStation,
  wiringStation,
  needStation,
  toleranceStation,
  benchStation,
  sharingStation,
  defectStation,
  answerStation,
]
