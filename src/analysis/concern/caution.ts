/** Sentences that send the reader to the people and codes that decide where someone can be hurt. */

export const turningCaution =
  'Keep people out of the plane of the turning parts; put a guard round every spin test and never reach in to stop it.'

export const electricCaution =
  'Wiring, protective earthing and lightning protection follow the local electrical code and belong to a licensed electrician.'

export const batteryCaution =
  'Batteries can burn, burst or give off explosive gas: follow the maker’s sheet and the local code, and have a competent installer check it.'

export const fireCaution =
  'Hot resin and plastic give off harmful fumes and can burn: stop the machine at the first smell of it.'

export const towerCaution =
  'Mast, guys and whatever limits the rotor in a storm need a competent rigger or structural engineer and the local permit.'
