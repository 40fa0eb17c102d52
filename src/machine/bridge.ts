/** The diode bridge. */
import { z } from 'zod'
import { diodeClasses } from '../data/diode.ts'
import { choice, namesOf, quantity } from './field.ts'

export const bridgeSchema = z.strictObject({
  diode: choice(namesOf(diodeClasses), {
    help: 'Kind of diode or bridge; sets threshold and slope unless they are given',
  }).default('bridge 25 A'),
  threshold_V: quantity('V', {
    min: 0,
    max: 5,
    help: 'Threshold of one diode, in place of the usual one',
  }).optional(),
  slope_mohm: quantity('mohm', {
    min: 0,
    max: 5000,
    help: 'Slope of one diode above its threshold',
  }).optional(),
  reverseVoltage_V: quantity('V', {
    min: 1,
    max: 5000,
    help: 'Repetitive peak reverse voltage on the label of one diode',
  }).optional(),
})
