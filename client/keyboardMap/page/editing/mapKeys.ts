import { zoomStep } from '../bar/zoomButtons';
import type { ShownMap } from '../shown/shownMap';
import type { Arranging } from './arranging';
import { splitGesture } from './changeButtons';

/** What keys on a map ask of its page. */
export interface KeyEvents {
  map(): ShownMap | undefined;
  arranging: Arranging;
  /** The place on the map that was clicked last. */
  place(): { key: number; velocity: number } | undefined;
  /** Another shape is active. */
  moved(): void;
  /** The active shape is to be shown in the text. */
  enter(): void;
  /** The group of the active shape is to be shown alone, or all again. */
  only(): void;
  undo(what: 'undo' | 'redo'): void;
  /** Zooms by a factor; to all keys without one. */
  zoom(factor: number | undefined): void;
}

/** The keys on a map: they move over shapes, choose and change them, and zoom. */
export class MapKeys {
  readonly #events: KeyEvents;

  constructor(events: KeyEvents) {
    this.#events = events;
  }

  /** A key while the map itself has the focus. */
  onMap(event: KeyboardEvent): void {
    if (!this.#events.map() || event.altKey) return;
    const isTaken = event.ctrlKey || event.metaKey ? this.#chooseAll(event) : this.#plain(event);
    if (!isTaken) return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** A key anywhere in the page. */
  anywhere(event: KeyboardEvent): void {
    if (event.altKey) return;
    if (event.ctrlKey || event.metaKey) {
      if (!this.#takenBack(event)) return;
    } else if (event.key === '+' || event.key === '=') this.#events.zoom(zoomStep);
    else if (event.key === '-' || event.key === '_') this.#events.zoom(1 / zoomStep);
    else if (event.key === '0') this.#events.zoom(undefined);
    else return;
    event.preventDefault();
  }

  #takenBack({ key, shiftKey }: KeyboardEvent): boolean {
    const letter = key.toLowerCase();
    if (letter !== 'z' && letter !== 'y') return false;
    this.#events.undo(letter === 'y' || shiftKey ? 'redo' : 'undo');
    return true;
  }

  #chooseAll({ key }: KeyboardEvent): boolean {
    const map = this.#events.map();
    if (key.toLowerCase() !== 'a' || !map) return false;
    map.chosen = new Set(map.order);
    this.#events.moved();
    return true;
  }

  #plain(event: KeyboardEvent): boolean {
    const { arranging } = this.#events;
    const map = this.#events.map();
    if (!map) return false;
    if (arranging.key(event)) return true;
    if (arranging.hand) return false;
    switch (event.key) {
      case 'Enter':
        this.#events.enter();
        return true;
      case ' ':
        if (map.active !== undefined) map.toggle(map.active);
        this.#events.moved();
        return true;
      case 's':
      case 'v':
        this.#split(event.key === 's' ? 'keys' : 'velocities');
        return true;
      case 'o':
        this.#events.only();
        return true;
      case 'j':
        arranging.perform({ kind: 'join', shapes: map.held });
        return true;
      case 'Escape':
        map.chosen = new Set();
        map.move('Escape');
        this.#events.moved();
        return true;
      default:
        if (!map.move(event.key)) return false;
        this.#events.moved();
        return true;
    }
  }

  #split(axis: 'keys' | 'velocities'): void {
    const map = this.#events.map();
    const gesture = map && splitGesture({ map, place: this.#events.place() }, axis);
    if (gesture) this.#events.arranging.perform(gesture);
  }
}
