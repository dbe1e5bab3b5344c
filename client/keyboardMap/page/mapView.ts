import { shapeText, summaryText } from '../../../server/map/describe';
import { boxAttributes, drawKeyboard, drawPlot, drawVelocityAxis } from '../../../server/map/drawing';
import { escapeMarkup } from '../../../server/map/escape';
import type { MapLayout } from '../../../server/map/layout';
import { cellBox, layerInset, layOut, px } from '../../../server/map/layout';
import type { MapRegion, MapScene } from '../../../server/map/scene';
import { patternDefinitions } from '../../../server/map/textures';
import { detailsLine, detailsMarkup, placesMarkup } from './details';
import { layersMarkup, signsMarkup } from './legend';
import type { Direction } from './navigation';
import { findAgain, nearestShape, readingOrder } from './navigation';
import { skeleton } from './skeleton';

/** Pixels above the plot, so that the outline of a focused shape at its top is whole. */
const plotTop = 4;
const plotSide = 4;
const axisWidth = 46;
const mostZoom = 12;

/** What the view asks of its surroundings. */
export interface ViewEvents {
  choose(region: MapRegion): void;
  /** Zoom or the choice of layers has changed. */
  settingsChanged(settings: { zoom: number; hiddenLayers: string[] }): void;
}

/** The map with its legend and details; the only owner of the page's elements. */
export class MapView {
  readonly #events: ViewEvents;
  readonly #root: HTMLElement;
  readonly #map: HTMLElement;
  readonly #scroller: HTMLElement;
  readonly #details: HTMLElement;
  readonly #detailsText: HTMLElement;
  readonly #detailsBody: HTMLElement;
  #scene: MapScene | undefined;
  #document = '';
  #layout: MapLayout | undefined;
  #zoom: number;
  #hiddenNames: Set<string>;
  #hidden = new Set<number>();
  #order: number[] = [];
  #shapeOfHeader: Map<number, number> | undefined;
  /** Regions and shapes at the text cursor. */
  #selectedHeaders = new Set<number>();
  #selected = new Set<number>();
  /** The shape that arrow keys move from; the one clicked last. */
  #active: number | undefined;
  #hovered: number | undefined;
  #drawnDetails = '';

  constructor(
    root: HTMLElement,
    events: ViewEvents,
    settings: { zoom: number; hiddenLayers: readonly string[] },
  ) {
    this.#events = events;
    this.#root = root;
    this.#zoom = Math.max(1, Math.min(mostZoom, settings.zoom));
    this.#hiddenNames = new Set(settings.hiddenLayers);
    root.innerHTML = skeleton;
    this.#map = this.#part('map');
    this.#scroller = this.#part('scroller');
    this.#details = this.#part('details');
    this.#detailsText = this.#part('details-text');
    this.#detailsBody = this.#part('details-body');
    this.#listen();
  }

  /** Shows a scene. Focus, selection, zoom and place stay as far as the new scene has them. */
  show(scene: MapScene, document: string): void {
    const before = document === this.#document ? this.#scene : undefined;
    if (!before) {
      this.#active = undefined;
      this.#selected.clear();
    }
    // Layers of another instrument are not meant, though they may have the same names.
    if (this.#document !== '' && document !== this.#document) this.#hiddenNames.clear();
    this.#scene = scene;
    this.#document = document;
    this.#shapeOfHeader = undefined;
    this.#hovered = undefined;
    this.#part('document').textContent = document;
    this.#toggle('chart', scene.regionCount > 0);
    this.#toggle('empty', scene.regionCount === 0);
    if (scene.regionCount === 0) {
      this.#part('empty-reason').textContent = `${document} has no regions yet.`;
    }
    this.#hidden = new Set();
    scene.layers.forEach(({ name }, layer) => {
      if (this.#hiddenNames.has(name)) this.#hidden.add(layer);
    });
    const names = scene.layers.map(({ name }) => name);
    const again = (index: number): number | undefined => {
      const shape = before?.shapes[index];
      if (!before || !shape) return undefined;
      return findAgain(scene.shapes, names, shape, before.layers[shape.layer]?.name ?? '');
    };
    this.#active = this.#active === undefined ? undefined : again(this.#active);
    const selected = [...this.#selected].map(again).filter((index) => index !== undefined);
    this.#selected = new Set(selected);
    this.#selectedHeaders.clear();
    this.#say(summaryText(scene));
    this.#draw();
    this.#drawLegend();
  }

  /** Says why there is no map. */
  showNothing(reason: string): void {
    this.#scene = undefined;
    this.#selected.clear();
    this.#selectedHeaders.clear();
    this.#active = undefined;
    this.#toggle('chart', false);
    this.#toggle('empty', true);
    this.#part('document').textContent = '';
    this.#part('empty-reason').textContent = reason;
    this.#say('');
  }

  /** Marks the shapes of regions and brings the first of them into view. */
  select(headers: readonly number[]): void {
    const scene = this.#scene;
    if (!scene) return;
    this.#selectedHeaders = new Set(headers);
    this.#selected = new Set();
    for (const header of headers) {
      const index = this.#shapesByHeader(scene).get(header);
      if (index !== undefined) this.#selected.add(index);
    }
    const [first] = this.#selected;
    if (first !== undefined && !this.#hasFocus()) this.#active = first;
    this.#markSelected();
    this.#drawMarks();
    this.#drawDetails();
    if (first !== undefined) this.#reveal(first);
  }

  #part(name: string): HTMLElement {
    const part = this.#root.querySelector<HTMLElement>(`[data-part="${name}"]`);
    if (!part) throw new Error(`The page has no part "${name}".`);
    return part;
  }

  #toggle(name: string, shown: boolean): void {
    this.#part(name).hidden = !shown;
  }

  #say(text: string): void {
    const summary = this.#part('summary');
    if (summary.textContent !== text) summary.textContent = text;
  }

  #hasFocus(): boolean {
    return this.#map.contains(document.activeElement) || this.#details.contains(document.activeElement);
  }

  #shapesByHeader(scene: MapScene): Map<number, number> {
    if (!this.#shapeOfHeader) {
      this.#shapeOfHeader = new Map();
      for (let index = 0; index < scene.shapes.length; index++) {
        for (const { header } of scene.shapes[index].regions) this.#shapeOfHeader.set(header, index);
      }
    }
    return this.#shapeOfHeader;
  }

  #listen(): void {
    const map = this.#map;
    map.addEventListener('keydown', (event) => this.#mapKey(event));
    map.addEventListener('focus', () => {
      this.#active ??= this.#selected.values().next().value ?? this.#order[0];
      this.#detailsText.setAttribute('aria-live', 'off');
      this.#moved();
    });
    map.addEventListener('blur', () => {
      this.#detailsText.setAttribute('aria-live', 'polite');
      this.#drawMarks();
    });
    map.addEventListener('pointerover', (event) => this.#hover(shapeAt(event)));
    map.addEventListener('pointerleave', () => this.#hover(undefined));
    map.addEventListener('click', (event) => {
      const index = shapeAt(event);
      if (index === undefined) return;
      this.#active = index;
      this.#moved();
      const region = this.#scene?.shapes[index]?.regions[0];
      if (region) this.#events.choose(region);
    });
    this.#scroller.addEventListener('wheel', (event) => this.#wheel(event), { passive: false });
    this.#root.addEventListener('click', (event) => this.#buttonClick(event));
    this.#root.addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && this.#details.contains(document.activeElement)) this.#map.focus();
      else if (!event.ctrlKey && !event.metaKey && !event.altKey) this.#zoomKey(event);
    });
    this.#root.addEventListener('change', (event) => {
      const box = event.target;
      if (box instanceof HTMLInputElement && box.dataset.layer !== undefined) {
        this.#toggleLayer(Number(box.dataset.layer), box.checked);
      }
    });
    new ResizeObserver(() => this.#resized()).observe(this.#scroller);
    window.addEventListener('resize', () => this.#resized());
  }

  #resized(): void {
    requestAnimationFrame(() => {
      const wanted = this.#size();
      const layout = this.#layout;
      if (layout && wanted.keyWidth === layout.keyWidth && wanted.plotHeight === layout.plotHeight) return;
      this.#draw();
    });
  }

  #mapKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const scene = this.#scene;
    if (!scene) return;
    const direction = directions[event.key];
    const at = this.#active === undefined ? -1 : this.#order.indexOf(this.#active);
    let next: number | undefined;
    if (direction) {
      next =
        this.#active === undefined
          ? this.#order[0]
          : nearestShape(scene.shapes, this.#order, this.#active, direction);
    } else if (event.key === 'Home') next = this.#order[0];
    else if (event.key === 'End') next = this.#order.at(-1);
    else if (event.key === 'PageDown') next = this.#order[Math.min(at + 1, this.#order.length - 1)];
    else if (event.key === 'PageUp') next = this.#order[Math.max(at - 1, 0)];
    else if (event.key === 'Enter' || event.key === ' ') this.#enter();
    else if (event.key === 'Escape') next = this.#selected.values().next().value;
    else return;
    event.preventDefault();
    if (next === undefined) return;
    this.#active = next;
    this.#hovered = undefined;
    this.#moved();
  }

  /** One region is chosen at once; among several the details let choose. */
  #enter(): void {
    const shape = this.#active === undefined ? undefined : this.#scene?.shapes[this.#active];
    const [first] = shape?.regions ?? [];
    if (!shape || !first) return;
    if (shape.regions.length === 1) this.#events.choose(first);
    else this.#detailsBody.querySelector<HTMLElement>('button.region')?.focus();
  }

  #moved(): void {
    if (this.#active === undefined) this.#map.removeAttribute('aria-activedescendant');
    else this.#map.setAttribute('aria-activedescendant', `shape-${this.#active}`);
    this.#drawMarks();
    this.#drawDetails();
    if (this.#active !== undefined) this.#reveal(this.#active);
  }

  #hover(index: number | undefined): void {
    if (index === this.#hovered) return;
    this.#hovered = index;
    this.#drawMarks();
    if (!this.#details.contains(document.activeElement)) this.#drawDetails();
  }

  #buttonClick(event: Event): void {
    const button = event.target instanceof Element ? event.target.closest('button') : null;
    const scene = this.#scene;
    if (!button || !scene) return;
    const { header, shape, zoom } = button.dataset;
    if (zoom !== undefined) this.#setZoom(zoom === 'in' ? this.#zoom * 1.5 : this.#zoom / 1.5);
    if (shape !== undefined) {
      this.#active = Number(shape);
      this.#hovered = undefined;
      this.#map.focus();
      this.#moved();
    }
    if (header !== undefined) {
      const number = Number(header);
      const index = this.#shapesByHeader(scene).get(number);
      const regions = index === undefined ? scene.unplaced : scene.shapes[index].regions;
      const region = regions.find((one) => one.header === number);
      if (region) this.#events.choose(region);
    }
  }

  #zoomKey(event: KeyboardEvent): void {
    if (event.key === '+' || event.key === '=') this.#setZoom(this.#zoom * 1.5);
    else if (event.key === '-' || event.key === '_') this.#setZoom(this.#zoom / 1.5);
    else if (event.key === '0') this.#setZoom(1);
    else return;
    event.preventDefault();
  }

  #wheel(event: WheelEvent): void {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const offset = event.clientX - this.#scroller.getBoundingClientRect().left;
    this.#setZoom(this.#zoom * 1.2 ** -Math.sign(event.deltaY), offset);
  }

  /** Zooms such that what stands at `offset` pixels from the left stays there; without it, the active shape or the middle. */
  #setZoom(zoom: number, offset?: number): void {
    const wanted = Math.max(1, Math.min(mostZoom, zoom));
    const layout = this.#layout;
    if (!layout || wanted === this.#zoom) return;
    let at = offset ?? this.#scroller.clientWidth / 2;
    const active = this.#active === undefined ? undefined : this.#scene?.shapes[this.#active];
    if (offset === undefined && active) {
      const box = cellBox(layout, active);
      const middle = plotSide + box.x + box.width / 2 - this.#scroller.scrollLeft;
      if (middle >= 0 && middle <= this.#scroller.clientWidth) at = middle;
    }
    const key = (this.#scroller.scrollLeft + at - plotSide) / layout.keyWidth;
    this.#zoom = wanted;
    this.#draw();
    this.#scroller.scrollLeft = key * (this.#layout?.keyWidth ?? 1) + plotSide - at;
    this.#settingsChanged();
  }

  #toggleLayer(layer: number, shown: boolean): void {
    const name = this.#scene?.layers[layer]?.name;
    if (name === undefined) return;
    if (shown) {
      this.#hidden.delete(layer);
      this.#hiddenNames.delete(name);
    } else {
      this.#hidden.add(layer);
      this.#hiddenNames.add(name);
    }
    this.#draw();
    this.#settingsChanged();
  }

  #settingsChanged(): void {
    this.#events.settingsChanged({ zoom: this.#zoom, hiddenLayers: [...this.#hiddenNames] });
  }

  #size(): { keyWidth: number; plotHeight: number; keyboardHeight: number } {
    const keys = (this.#scene?.highKey ?? 127) - (this.#scene?.lowKey ?? 0) + 1;
    const room = Math.max(120, this.#scroller.clientWidth - 2 * plotSide);
    // As in the style sheet: a low panel shows the details beside the plot, which then takes the height.
    const isLow = window.innerHeight <= 460 && window.innerWidth >= 640;
    const wanted = isLow ? window.innerHeight - 130 : window.innerHeight * 0.5;
    const plotHeight = Math.max(110, Math.min(460, Math.round(wanted)));
    return {
      keyWidth: Math.max(2, room / keys) * this.#zoom,
      plotHeight,
      keyboardHeight: Math.round(Math.max(34, plotHeight * 0.14)),
    };
  }

  #draw(): void {
    const scene = this.#scene;
    if (!scene || scene.regionCount === 0) return;
    const layout = layOut(scene, this.#size());
    this.#layout = layout;
    this.#order = readingOrder(scene.shapes, this.#hidden);
    const hides = (index: number): boolean => this.#hidden.has(scene.shapes[index].layer);
    if (this.#active !== undefined && hides(this.#active)) this.#active = this.#order[0];
    const width = px(layout.plotWidth + 2 * plotSide);
    const height = px(layout.height + plotTop);
    const plot = drawPlot(scene, layout, {
      hiddenLayers: this.#hidden,
      attributes: (shape, index) =>
        ` id="shape-${index}" data-shape="${index}" role="option" aria-selected="${this.#selected.has(index)}" aria-label="${escapeMarkup(shapeText(scene, shape))}"`,
    });
    this.#map.innerHTML = `<svg role="none" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><defs>${patternDefinitions(scene.layers.length)}</defs><g transform="translate(${plotSide} ${plotTop})">${plot}${drawKeyboard(scene, layout)}<g class="marks" aria-hidden="true"></g></g></svg>`;
    // Outlines of marked shapes lie under the labels.
    this.#map.querySelector('.labels')?.before(this.#map.querySelector('.marks') ?? '');
    this.#part('axis').innerHTML =
      `<svg width="${axisWidth}" height="${height}" viewBox="0 0 ${axisWidth} ${height}" aria-hidden="true"><g transform="translate(${axisWidth} ${plotTop})">${drawVelocityAxis(layout)}</g></svg>`;
    this.#part('zoom-level').textContent = `${Math.round(this.#zoom * 100)} %`;
    if (this.#active === undefined) this.#map.removeAttribute('aria-activedescendant');
    else this.#map.setAttribute('aria-activedescendant', `shape-${this.#active}`);
    this.#drawMarks();
    this.#drawDetails();
  }

  #drawLegend(): void {
    const scene = this.#scene;
    if (!scene) return;
    const focused =
      document.activeElement instanceof HTMLElement ? document.activeElement.dataset.layer : undefined;
    const layers = this.#part('layers');
    layers.innerHTML = layersMarkup(scene, this.#hidden);
    if (focused !== undefined) layers.querySelector<HTMLElement>(`[data-layer="${focused}"]`)?.focus();
    this.#part('signs').innerHTML = signsMarkup(scene);
    const places = this.#part('places');
    const open = [...places.querySelectorAll('details[open]')].map((one) => one.className);
    places.innerHTML = placesMarkup(scene);
    for (const name of open) places.querySelector(`details.${name}`)?.setAttribute('open', '');
  }

  #markSelected(): void {
    for (const marked of this.#map.querySelectorAll('[aria-selected="true"]')) {
      marked.setAttribute('aria-selected', 'false');
    }
    for (const index of this.#selected) {
      this.#map.querySelector(`#shape-${index}`)?.setAttribute('aria-selected', 'true');
    }
  }

  /** Outlines of hovered, selected and focused shapes, above all shapes. */
  #drawMarks(): void {
    const group = this.#map.querySelector('.marks');
    if (!group) return;
    let markup = this.#outline(this.#hovered, 'hovered', 0);
    for (const index of this.#selected) markup += this.#outline(index, 'selected', 0);
    if (document.activeElement === this.#map || this.#details.contains(document.activeElement)) {
      markup += this.#outline(this.#active, 'focused', -2.5);
    }
    group.innerHTML = markup;
  }

  #outline(index: number | undefined, name: string, inset: number): string {
    const shape = index === undefined ? undefined : this.#scene?.shapes[index];
    const layout = this.#layout;
    if (!shape || !layout || this.#hidden.has(shape.layer)) return '';
    const box = cellBox(layout, shape, layerInset(layout, shape.layer));
    const { x, y, width, height } = box;
    const grown = { x: x + inset, y: y + inset, width: width - 2 * inset, height: height - 2 * inset };
    return `<rect class="mark ${name}"${boxAttributes(grown)}/>`;
  }

  #drawDetails(): void {
    const scene = this.#scene;
    if (!scene) return;
    const index = this.#hovered ?? this.#active ?? this.#selected.values().next().value;
    const line = detailsLine(scene, index);
    if (this.#detailsText.textContent !== line) this.#detailsText.textContent = line;
    const markup = detailsMarkup(scene, index, this.#selectedHeaders, this.#hidden);
    if (markup === this.#drawnDetails) return;
    this.#drawnDetails = markup;
    const focused = [...this.#detailsBody.querySelectorAll('button')].indexOf(
      document.activeElement as HTMLButtonElement,
    );
    this.#detailsBody.innerHTML = markup;
    if (focused < 0) return;
    const buttons = this.#detailsBody.querySelectorAll('button');
    (buttons[Math.min(focused, buttons.length - 1)] ?? this.#map).focus();
  }

  /** Scrolls sideways until a shape is in view. */
  #reveal(index: number): void {
    const shape = this.#scene?.shapes[index];
    const layout = this.#layout;
    if (!shape || !layout) return;
    const { x, width } = cellBox(layout, shape);
    const view = this.#scroller;
    const left = plotSide + x;
    const right = left + Math.min(width, view.clientWidth);
    let target = view.scrollLeft;
    if (left < target) target = left - 8;
    else if (right > target + view.clientWidth) target = right - view.clientWidth + 8;
    else return;
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    view.scrollTo({ left: target, behavior: still ? 'instant' : 'smooth' });
  }
}

const directions: Readonly<Record<string, Direction | undefined>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** The shape that an event of the pointer is about. */
function shapeAt(event: Event): number | undefined {
  const element = event.target instanceof Element ? event.target.closest<SVGElement>('[data-shape]') : null;
  return element ? Number(element.dataset.shape) : undefined;
}
