import type { Instrument } from '../model/instrument';
import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import { createPlayer } from '../playing/player/createPlayer';
import { namedControllers } from './controllers';

/** A controller that an instrument uses, with the value that it begins with. */
export interface UsedController {
  number: number;
  /** The name that the text or the MIDI standard gives it; empty where neither does. */
  label: string;
  /** 0..127. */
  value: number;
}

/** Names of controllers by the MIDI 1.0 Detailed Specification, table of control change messages. */
const standardNames: Readonly<Record<number, string>> = {
  1: 'Modulation wheel',
  2: 'Breath',
  4: 'Foot',
  7: 'Volume',
  10: 'Pan',
  11: 'Expression',
  64: 'Sustain pedal',
  66: 'Sostenuto pedal',
  67: 'Soft pedal',
};

const highestController = 127;
const inName = /(?:cc|locc|hicc)(\d+)$/;

/** The controllers that conditions or sounds of an instrument ask for, or that it names, by number; those of MIDI alone. */
export function usedControllers(instrument: Instrument, playable: PlayableInstrument): UsedController[] {
  const labels = new Map(namedControllers(instrument).map(({ controller, label }) => [controller, label]));
  const numbers = new Set(labels.keys());
  for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
    const name = instrument.names.text(instrument.canonicalName(parameter));
    const digits = inName.exec(name)?.[1];
    if (digits !== undefined && !name.startsWith('set_')) numbers.add(Number(digits));
  }
  const { controllers } = createPlayer(playable).state;
  return [...numbers]
    .filter((number) => number <= highestController)
    .sort((a, b) => a - b)
    .map((number) => ({
      number,
      label: labels.get(number) ?? standardNames[number] ?? '',
      value: controllers[number],
    }));
}
