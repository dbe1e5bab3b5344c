import type { MapScene } from '../../server/map/mapScene';
import type { AuditionFromPage, AuditionToPage } from '../audition/messages';

/** Something that was found wrong with a region. */
export interface MapProblem {
  /** The region as a header number of the scene sent last. */
  header: number;
  severity: 'error' | 'warning' | 'information';
  message: string;
}

/** What the panel tells its page. */
export type MapToPage =
  | AuditionToPage
  /** The map of a document as it now is; `document` is the name to show. */
  | { type: 'scene'; scene: MapScene; document: string }
  /** The regions at the text cursor, as header numbers of the scene sent last. */
  | { type: 'select'; regions: number[] }
  /** All that is wrong with regions of the scene sent last, in the order of the text. */
  | { type: 'problems'; problems: MapProblem[] }
  /** There is no map to show; `reason` says why, as a sentence. */
  | { type: 'empty'; reason: string };

/** What the page tells its panel. */
export type MapFromPage =
  | AuditionFromPage
  /** Somebody chose a region: show its text. The span is that of the region header with its parameters. */
  | { type: 'choose'; header: number; source: number; start: number; end: number };
