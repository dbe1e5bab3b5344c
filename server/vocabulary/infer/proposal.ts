import type { LayerEnds } from '../../trade/layerLimits';
import type { Column } from './values/column';
import type { ColumnFacts } from './values/columnFacts';
import type { Meaning } from './words/meanings';

/** Layers among which all velocities are shared out, as no numbers give them. */
export interface SharedLayers {
  /** By what stands in the place. */
  ends: ReadonlyMap<string, LayerEnds>;
  /** Whether some keys lack louder layers, so that a layer reaches up to the next one that there is. */
  areOpen: boolean;
}

/** What a place may hold, by its name or its values. */
export interface Proposal {
  column: Column;
  meaning: Meaning;
  facts: ColumnFacts;
  texts: readonly (string | undefined)[];
  order: number;
  /** Why, where the values say more than the name; such a proposal goes before others of its weight. */
  evidence?: string;
  /** What the document says that its values stand for, by the bare value. */
  words?: ReadonlyMap<string, string>;
  /** The velocities that its texts stand for, where a list gives them. */
  layers?: ReadonlyMap<string, LayerEnds>;
  /** The velocities that its texts stand for, where they are shared out among them. */
  shared?: SharedLayers;
}
