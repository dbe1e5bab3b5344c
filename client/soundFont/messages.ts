import type { FontFacts } from '../../server/protocol/requests/fontRequests';
import type { PresetNumbers } from '../../server/soundfont/font';
import type { MapFromPage, MapToPage } from '../keyboardMap/messages';

/** What the editor of a SoundFont tells its page; messages about the map and sound are of the preset that is shown. */
export type FontToPage =
  | MapToPage
  | { type: 'font'; file: string; facts: FontFacts }
  /** There is nothing to show; `reason` says why, as a sentence. */
  | { type: 'problem'; file: string; reason: string };

/** What the page tells the editor. */
export type FontFromPage =
  | MapFromPage
  /** Show the map of a preset, and play it from now on. */
  | { type: 'show'; preset: PresetNumbers }
  /** Show a preset as text; its samples stay in the font. */
  | { type: 'open'; preset: PresetNumbers }
  /** Write a preset, or all of them, as text with their samples to a folder. */
  | { type: 'convert'; preset?: PresetNumbers };
