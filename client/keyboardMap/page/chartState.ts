import type { ViewName } from '../../../server/map/views/viewChart';
import type { MapFilter } from './shown/mapFilter';
import { noFilter } from './shown/mapFilter';

/** What is remembered of a chart while its page is hidden or the window is reloaded. */
export interface ChartState {
  zoom: number;
  /** The document that the other values belong to. */
  document: string;
  /** Names of the layers that are switched off. */
  hiddenLayers: readonly string[];
  /** The lists below the map that are open. */
  openLists: readonly string[];
  filter: MapFilter;
  /** What is drawn over the keyboard. */
  view: ViewName;
}

/** What is remembered of a chart that nobody has touched. */
export const untouchedChart: ChartState = {
  zoom: 1,
  document: '',
  hiddenLayers: [],
  openLists: [],
  filter: noFilter,
  view: 'map',
};
