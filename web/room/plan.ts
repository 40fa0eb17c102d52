/** The rooms of the page by their keys: their words at once, what is shown in each when it is entered. */
import type { RoomKey } from '../store/room.ts'
import { say } from '../text/say.ts'
import type { Room } from './room.ts'

export const rooms: Readonly<Partial<Record<RoomKey, Room>>> = {
  wind: {
    title: () => say`Wind`,
    lead: () => say`The wind and the air where the machine stands, and what a year of them brings.`,
    load: async () => (await import('./wind.tsx')).windRoom,
  },
  blades: {
    title: () => say`Blades`,
    lead: () => say`What takes the power out of the wind, and what keeps it from running away.`,
    load: async () => (await import('./blades.tsx')).bladesRoom,
  },
  shaft: {
    title: () => say`Shaft`,
    lead: () => say`Bearings and seals between blades and magnets, and what they have to bear.`,
    load: async () => (await import('./shaft.tsx')).shaftRoom,
  },
  magnets: {
    title: () => say`Magnets`,
    lead: () => say`The magnets that turn, what holds them, and the field they send through the wire.`,
    load: async () => (await import('./magnets.tsx')).magnetsRoom,
  },
  winding: {
    title: () => say`Winding`,
    lead: () => say`The wire that stands still: its path past the magnets, its volts, its heat.`,
    load: async () => (await import('./winding.tsx')).windingRoom,
  },
  bridge: {
    title: () => say`Bridge`,
    lead: () => say`The diodes that make direct current, and the electronics behind them.`,
    load: async () => (await import('./bridge.tsx')).bridgeRoom,
  },
  cable: {
    title: () => say`Cable`,
    lead: () => say`From the machine to the store: copper, fuse, switch, and where people may touch it.`,
    load: async () => (await import('./cable.tsx')).cableRoom,
  },
  store: {
    title: () => say`Store`,
    lead: () => say`What the power feeds, and whether that suffices for what is wanted.`,
    load: async () => (await import('./store.tsx')).storeRoom,
  },
  whole: {
    title: () => say`The whole machine`,
    lead: () => say`What it is for, what a year brings, and what stands against it.`,
    load: async () => (await import('./whole.tsx')).wholeRoom,
  },
  begin: {
    title: () => say`A first machine`,
    lead: () => say`From the magnets, the wire and the wind that you have.`,
    load: async () => (await import('./begin.tsx')).beginRoom,
  },
  turn: {
    title: () => say`Turn it by hand`,
    lead: () => say`What the meter will read, and what it says of the machine when it reads something else.`,
    load: async () => (await import('./turn.tsx')).turnRoom,
  },
  storm: {
    title: () => say`Storm and failures`,
    lead: () => say`What happens in a gust, in a storm, and when one part fails.`,
    load: async () => (await import('./storm.tsx')).stormRoom,
  },
  faults: {
    title: () => say`Find a fault`,
    lead: () => say`How each mistake of building shows in the volts, and which one your readings point to.`,
    load: async () => (await import('./faults.tsx')).faultsRoom,
  },
  compare: {
    title: () => say`Side by side`,
    lead: () => say`Lay one state over another, and see what differs and by how much.`,
    load: async () => (await import('./compare.tsx')).compareRoom,
  },
  sure: {
    title: () => say`How sure is this`,
    lead: () => say`How far your guesses let the results be off, and which reading would narrow them most.`,
    load: async () => (await import('./sure.tsx')).sureRoom,
  },
  sheet: {
    title: () => say`Sheet for the bench`,
    lead: () => say`All that one needs at hand while building, on one page of A4 or Letter.`,
    load: async () => (await import('./sheet.tsx')).sheetRoom,
  },
  shelf: {
    title: () => say`The shelf`,
    lead: () =>
      say`All your designs and how they stood before, kept on this machine, and the way in and out for files.`,
    load: async () => (await import('./shelf.tsx')).shelfRoom,
  },
  words: {
    title: () => say`Words`,
    lead: () => say`What the words of the trade mean on this page.`,
    load: async () => (await import('./words.tsx')).wordsRoom,
  },
}
