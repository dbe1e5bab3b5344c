import { shapeText } from '../../../../server/map/describe';
import type { MapLayout } from '../../../../server/map/layout';
import { l10n } from '../../../webview/page/l10n';
import type { ShownMap } from '../shown/shownMap';

/** So many options are made at once; more are made while the browser has nothing else to do. */
const atOnce = 300;
const inOneGo = 500;
/** More of them than these are laid out anew only once the plot stands still for so many milliseconds. */
const laidAtOnce = 2000;
const stillMilliseconds = 200;

/**
 * The shapes of a map as options of a list, for screen readers: elements without a look that lie over the painted shapes.
 * Nothing is left out; what is made later is made at once where somebody comes to it.
 */
export class ShapeOptions {
  readonly #list: HTMLElement;
  /** One unit across is a key, one down a velocity, so that another size of the plot changes none of the options. */
  readonly #sheet = document.createElement('div');
  #map: ShownMap | undefined;
  #options: (HTMLElement | undefined)[] = [];
  #selected: ReadonlySet<number> = new Set();
  #made = 0;
  #work = 0;
  #placing: ReturnType<typeof setTimeout> | undefined;

  constructor(list: HTMLElement) {
    this.#list = list;
    this.#sheet.className = 'shape-options';
    this.#sheet.setAttribute('role', 'presentation');
    list.append(this.#sheet);
  }

  /** Makes the options of a map anew. */
  show(map: ShownMap): void {
    this.#map = map;
    this.#sheet.replaceChildren();
    this.#options = new Array(map.scene.shapes.length);
    this.#selected = new Set();
    this.#made = 0;
    cancelIdleCallback(this.#work);
    this.#make(atOnce);
    this.mark();
  }

  /** Lays the options over the plot. */
  place({ keyWidth, plotHeight }: MapLayout, side: number, top: number): void {
    const place = () => {
      this.#sheet.style.transform = `translate(${side}px, ${top}px) scale(${keyWidth}, ${plotHeight / 127})`;
    };
    clearTimeout(this.#placing);
    // The browser goes through all of them each time, which would hold up every frame of zooming.
    if (this.#made <= laidAtOnce || this.#sheet.style.transform === '') place();
    else this.#placing = setTimeout(place, stillMilliseconds);
  }

  /** Tells which shapes are selected and which one the keyboard is at. */
  mark(): void {
    const map = this.#map;
    if (!map) return;
    for (const index of this.#selected) this.#options[index]?.setAttribute('aria-selected', 'false');
    this.#selected = map.selected;
    for (const index of this.#selected) this.#options[index]?.setAttribute('aria-selected', 'true');
    if (map.active === undefined) this.#list.removeAttribute('aria-activedescendant');
    else {
      this.#options[map.active] ??= this.#add(map, map.active);
      this.#list.setAttribute('aria-activedescendant', idOf(map.active));
    }
  }

  /** The shape of an option. */
  shapeOf(element: EventTarget | null): number | undefined {
    const shape = element instanceof HTMLElement ? element.dataset.shape : undefined;
    return shape === undefined ? undefined : Number(shape);
  }

  #make(most: number): void {
    const map = this.#map;
    if (!map) return;
    const { order } = map.stack;
    const end = Math.min(order.length, this.#made + most);
    for (; this.#made < end; this.#made++)
      this.#options[order[this.#made]] ??= this.#add(map, order[this.#made]);
    if (end < order.length) this.#work = requestIdleCallback(() => this.#make(inOneGo));
  }

  #add(map: ShownMap, index: number): HTMLElement {
    const { scene } = map;
    const shape = scene.shapes[index];
    const option = document.createElement('div');
    option.id = idOf(index);
    option.dataset.shape = String(index);
    option.setAttribute('role', 'option');
    option.setAttribute('aria-selected', String(map.selected.has(index)));
    option.setAttribute('aria-label', [shapeText(scene, shape), ...problemWords(map, index)].join(', '));
    option.setAttribute('aria-posinset', String(map.positionOf(index) + 1));
    option.setAttribute('aria-setsize', String(map.order.length));
    option.style.left = `${shape.lowKey - scene.lowKey}px`;
    option.style.top = `${127 - shape.highVelocity}px`;
    option.style.width = `${shape.highKey - shape.lowKey + 1}px`;
    option.style.height = `${shape.highVelocity - shape.lowVelocity + 1}px`;
    this.#sheet.append(option);
    return option;
  }
}

function problemWords(map: ShownMap, index: number): string[] {
  const { length } = map.problemsOf(index);
  return length === 0 ? [] : [length === 1 ? l10n.t('1 problem') : l10n.t('{0} problems', length)];
}

function idOf(shape: number): string {
  return `shape-${shape}`;
}
