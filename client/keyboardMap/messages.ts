import type { Arrangement } from '../../server/gestures/arrangement';
import type { MapScene } from '../../server/map/mapScene';
import type { RegionFinding } from '../../server/map/regionFindings';
import type { MapMeasures } from '../../server/map/views/mapMeasures';
import type { AuditionFromPage, AuditionToPage } from '../audition/messages';

/** Something that was found wrong with a region of the scene sent last. */
export type MapProblem = RegionFinding;

/** What the panel tells its page. */
export type MapToPage =
  | AuditionToPage
  /** The map of a document; `document` is the name to show. With the version of its text it can be changed. */
  | { type: 'scene'; scene: MapScene; document: string; version?: number }
  /** What was measured for the views of the map. */
  | { type: 'measures'; measures: MapMeasures }
  /** The map has the focus, as it had before a change was taken back. */
  | { type: 'focus' }
  /** What came of a change that was wanted, as a sentence. */
  | { type: 'arranged'; message: string }
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
  | { type: 'choose'; header: number; source: number; start: number; end: number }
  /** Regions of the scene sent last are to be changed, in one edit of the text. */
  | { type: 'arrange'; arrangement: Arrangement }
  /** Samples were dropped on a key, and on a region of the scene sent last where there is one: files and folders by URI. */
  | { type: 'addSamples'; uris: readonly string[]; key?: number | undefined; after?: number | undefined }
  /** What the views show is wanted, and what a note does by velocity on a key. */
  | { type: 'wantMeasures'; key: number }
  /** What is shown is to be saved: a drawing, and a picture in base 64. */
  | { type: 'picture'; svg: string; png?: string }
  /** The report on the samples of the instrument is wanted. */
  | { type: 'report' }
  /** The last change of the text is to be taken back, or made again. */
  | { type: 'undo' }
  | { type: 'redo' };
