import type { Plot } from '../plot/plot';
import type { ShownMap } from '../shown/shownMap';

/** What dropping on a map asks of its page. */
export interface DropEvents {
  map(): ShownMap | undefined;
  plot(): Plot | undefined;
  /** Whether the map is one of a text, which can be changed. */
  isPossible(): boolean;
  /** Files and folders were dropped, by their URIs: on a key, and on a region where there is one. */
  dropped(uris: readonly string[], key: number | undefined, after: number | undefined): void;
  changed(): void;
}

/** Lists of URIs that an editor or a system drags along, one a line (RFC 2483, text/uri-list), the fuller one first. */
const listTypes = ['application/vnd.code.uri-list', 'text/uri-list'] as const;

/** Samples that are dragged over a map and dropped on it. */
export class MapDrop {
  readonly #events: DropEvents;

  constructor(events: DropEvents) {
    this.#events = events;
  }

  /** Something is dragged over the map: the key under the pointer is framed. */
  over(event: DragEvent): void {
    const { dataTransfer } = event;
    if (!dataTransfer || !this.#events.isPossible()) return;
    if (!listTypes.some((type) => dataTransfer.types.includes(type))) return;
    event.preventDefault();
    dataTransfer.dropEffect = 'copy';
    const map = this.#events.map();
    const plot = this.#events.plot();
    // In the place of a map without any region there is no key.
    if (!map || !plot?.layout) return;
    const key = plot.noteAt(event)?.key;
    const { lowKey, keyWidth, plotHeight } = plot.layout;
    map.frame =
      key === undefined
        ? undefined
        : { x: (key - lowKey) * keyWidth, y: 0, width: keyWidth, height: plotHeight };
    this.#events.changed();
  }

  leave(): void {
    const map = this.#events.map();
    if (!map?.frame) return;
    map.frame = undefined;
    this.#events.changed();
  }

  drop(event: DragEvent): void {
    const uris = urisOf(event.dataTransfer);
    this.leave();
    if (uris.length === 0 || !this.#events.isPossible()) return;
    event.preventDefault();
    event.stopPropagation();
    const plot = this.#events.plot();
    const shape = plot?.hasChart ? undefined : this.#events.map()?.shape(plot?.shapeAt(event));
    this.#events.dropped(uris, plot?.noteAt(event)?.key, shape?.regions.at(-1)?.header);
  }
}

function urisOf(dataTransfer: DataTransfer | null): string[] {
  for (const type of listTypes) {
    const lines = dataTransfer?.getData(type).split(/\r?\n/) ?? [];
    const uris = lines.map((line) => line.trim()).filter((line) => line !== '' && !line.startsWith('#'));
    if (uris.length > 0) return uris;
  }
  return [];
}
