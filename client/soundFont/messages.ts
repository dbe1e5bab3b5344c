import type { FontFacts } from '../../server/protocol/requests/fontRequests';

/** A preset by the numbers that choose it. */
export interface PresetPlace {
  bank: number;
  program: number;
}

/** What the editor of a SoundFont tells its page. */
export type FontToPage =
  | { type: 'font'; file: string; facts: FontFacts }
  /** There is nothing to show; `reason` says why, as a sentence. */
  | { type: 'problem'; file: string; reason: string };

/** What the page tells the editor. */
export type FontFromPage =
  /** Show a preset as text; its samples stay in the font. */
  | { type: 'open'; preset: PresetPlace }
  /** Write a preset, or all of them, as text with their samples to a folder. */
  | { type: 'convert'; preset?: PresetPlace };
