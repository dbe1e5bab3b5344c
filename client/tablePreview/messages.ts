import type {
  MiddleCChoice,
  PreviewTableResult,
  TableDecisions,
} from '../../server/protocol/requests/tableRequests';
import type { ColumnMeaning } from '../../server/trade/meaning';

/** Where what is written goes: into a document, or a new one in a notation, at a path as a person reads it. */
export type ShownPlace =
  | { kind: 'document'; name: string }
  | { kind: 'new'; format: 'sfz' | 'xml'; path?: string };

/** What the panel tells its page. */
export type PreviewToPage =
  /** How the table is understood now, and what a person has decided so far. */
  | { type: 'preview'; preview: PreviewTableResult; decisions: TableDecisions; place: ShownPlace }
  /** There is nothing to show; `reason` says why, as a sentence. */
  | { type: 'empty'; reason: string };

/** What the page tells its panel. */
export type PreviewFromPage =
  /** A column was given a meaning; `null` for what is found by itself. */
  | { type: 'column'; column: number; meaning: ColumnMeaning | null }
  /** The numbers of a column were given a scale; `null` for what is found by itself. */
  | { type: 'scale'; column: number; scale: string | null }
  | { type: 'middleC'; middleC: MiddleCChoice }
  | { type: 'grouping'; kind: string; isTaken: boolean }
  /** A file was chosen for a sample name; `null` for what is found by itself. */
  | { type: 'sample'; name: string; path: string | null }
  | { type: 'update'; isUpdate: boolean }
  | { type: 'format'; format: 'sfz' | 'xml' }
  | { type: 'write' }
  | { type: 'writeText' }
  /** The table is to go into a template that is still to be chosen. */
  | { type: 'template' }
  | { type: 'forget' };
