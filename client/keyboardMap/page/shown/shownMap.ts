import type { Arrangement } from '../../../../server/gestures/arrangement';
import type { Box } from '../../../../server/map/layout';
import type { MapRegion, MapScene, MapShape } from '../../../../server/map/mapScene';
import type { Stack } from '../../../../server/map/stack';
import { stackShapes } from '../../../../server/map/stack';
import type { MapProblem } from '../../messages';
import type { ProblemsByHeader } from './mapFilter';
import type { Direction } from './navigation';
import { findAgain, nearestShape, readingOrder } from './navigation';

/** A map with what is chosen and pointed at in it. Shapes and layers are given by their position in the scene. */
export class ShownMap {
  readonly scene: MapScene;
  readonly problems: ProblemsByHeader;
  readonly hiddenLayers = new Set<number>();
  /** Shapes that are shown, in the order in which they are stepped through. */
  order: readonly number[] = [];
  /** Which of the shapes that are shown lie over which. */
  stack: Stack;
  readonly #positions = new Map<number, number>();
  /** The shape that arrow keys move from; the one clicked last. */
  active: number | undefined;
  hovered: number | undefined;
  /** Regions and shapes at the text cursor. */
  selectedHeaders: ReadonlySet<number> = new Set();
  selected: ReadonlySet<number> = new Set();
  /** Shapes that were chosen to be changed together; empty where the active one alone is meant. */
  chosen: ReadonlySet<number> = new Set();
  /** What a gesture would change, while it is made. */
  preview: Arrangement | undefined;
  /** The frame that is drawn around shapes to choose them, in pixels of the plot. */
  frame: Box | undefined;
  /** Shapes and keys that sound just now. */
  sounding: ReadonlySet<number> = new Set();
  soundingKeys: ReadonlySet<number> = new Set();
  #shapeOfHeader: Map<number, number> | undefined;

  /** Takes over what is chosen in an earlier map of the same document, as far as this one has it. */
  constructor(
    scene: MapScene,
    hiddenNames: readonly string[],
    problems: ProblemsByHeader,
    before?: ShownMap,
  ) {
    this.scene = scene;
    this.problems = problems;
    scene.layers.forEach(({ name }, layer) => {
      if (hiddenNames.includes(name)) this.hiddenLayers.add(layer);
    });
    if (before) {
      this.active = before.active === undefined ? undefined : this.#again(before, before.active);
      const selected = [...before.selected].map((index) => this.#again(before, index));
      this.selected = new Set(selected.filter((index) => index !== undefined));
      const chosen = [...before.chosen].map((index) => this.#again(before, index));
      this.chosen = new Set(chosen.filter((index) => index !== undefined));
    }
    this.stack = this.#layersChanged();
  }

  /** The names of the layers that are switched off. */
  get hiddenNames(): string[] {
    return [...this.hiddenLayers].map((layer) => this.scene.layers[layer]?.name ?? '');
  }

  /** The shape that details are shown of. */
  get detailed(): number | undefined {
    return this.hovered ?? this.active ?? this.firstSelected;
  }

  /** The shapes that a change is about: those chosen together, else the active one. */
  get held(): readonly number[] {
    if (this.chosen.size > 0) return [...this.chosen];
    return this.active === undefined ? [] : [this.active];
  }

  /** The shape of a region, given by its header. */
  shapeOf(header: number): number | undefined {
    return this.#shapesByHeader().get(header);
  }

  /** Chooses a shape beside those chosen before, or no longer. */
  toggle(index: number): void {
    const isOnly = this.chosen.size === 0 && index === this.active;
    const chosen = new Set(this.held);
    if (isOnly || !chosen.delete(index)) chosen.add(index);
    this.chosen = chosen;
    this.active = index;
  }

  get firstSelected(): number | undefined {
    return this.selected.values().next().value;
  }

  /** Takes what sounds: regions by their headers, and keys. */
  showSounding(headers: readonly number[], keys: readonly number[]): void {
    const shapes = headers.map((header) => this.#shapesByHeader().get(header));
    this.sounding = new Set(shapes.filter((shape) => shape !== undefined));
    this.soundingKeys = new Set(keys);
  }

  shape(index: number | undefined): MapShape | undefined {
    return index === undefined ? undefined : this.scene.shapes[index];
  }

  /** The position of a shape among those that are stepped through; −1 for a hidden one. */
  positionOf(index: number): number {
    return this.#positions.get(index) ?? -1;
  }

  /** Marks the shapes of regions; the first of them is moved from where `isActive` says so. */
  select(headers: readonly number[], isActive: boolean): void {
    this.selectedHeaders = new Set(headers);
    const shapes = headers.map((header) => this.#shapesByHeader().get(header));
    this.selected = new Set(shapes.filter((index) => index !== undefined));
    if (isActive && this.firstSelected !== undefined) this.active = this.firstSelected;
  }

  /** What is wrong with the regions of a shape. */
  problemsOf(index: number): MapProblem[] {
    if (this.problems.size === 0) return [];
    return (this.shape(index)?.regions ?? []).flatMap(({ header }) => this.problems.get(header) ?? []);
  }

  /** Hides all layers but one, or none. */
  showOnly(layer: number | undefined): void {
    this.hiddenLayers.clear();
    for (let other = 0; layer !== undefined && other < this.scene.layers.length; other++)
      if (other !== layer) this.hiddenLayers.add(other);
    this.stack = this.#layersChanged();
  }

  /** The only layer that is shown; `undefined` where there are more or none. */
  get onlyLayer(): number | undefined {
    if (this.scene.layers.length < 2 || this.scene.layers.length - this.hiddenLayers.size !== 1)
      return undefined;
    return this.scene.layers.findIndex((_, layer) => !this.hiddenLayers.has(layer));
  }

  showLayer(layer: number, isShown: boolean): void {
    if (isShown) this.hiddenLayers.delete(layer);
    else this.hiddenLayers.add(layer);
    this.stack = this.#layersChanged();
  }

  /** Moves to another shape by the name of a key; whether that key moves. */
  move(key: string): boolean {
    const next = this.#next(key);
    if (next === 'none') return false;
    if (next === undefined) return true;
    this.active = next;
    this.hovered = undefined;
    return true;
  }

  /** The region of a header, wherever it is. */
  region(header: number): MapRegion | undefined {
    const index = this.#shapesByHeader().get(header);
    const regions = this.shape(index)?.regions ?? this.scene.unplaced;
    return regions.find((one) => one.header === header);
  }

  #next(key: string): number | 'none' | undefined {
    const { active, order } = this;
    const at = active === undefined ? -1 : this.positionOf(active);
    const direction = directions[key];
    if (direction)
      return active === undefined ? order[0] : nearestShape(this.scene.shapes, order, active, direction);
    switch (key) {
      case 'Home':
        return order[0];
      case 'End':
        return order.at(-1);
      case 'PageDown':
        return order[Math.min(at + 1, order.length - 1)];
      case 'PageUp':
        return order[Math.max(at - 1, 0)];
      case 'Escape':
        return this.firstSelected;
      default:
        return 'none';
    }
  }

  #layersChanged(): Stack {
    this.order = readingOrder(this.scene.shapes, this.hiddenLayers);
    this.#positions.clear();
    for (const [position, index] of this.order.entries()) this.#positions.set(index, position);
    const active = this.shape(this.active);
    if (active && this.hiddenLayers.has(active.layer)) this.active = this.order[0];
    this.chosen = new Set([...this.chosen].filter((index) => this.#positions.has(index)));
    return stackShapes(this.scene, this.hiddenLayers);
  }

  #again(before: ShownMap, index: number): number | undefined {
    const { scene } = before;
    const shape = scene.shapes[index];
    if (!shape) return undefined;
    // With as many regions as before, the regions are most likely the same, wherever they lie now.
    const [first] = shape.regions;
    const same = scene.regionCount === this.scene.regionCount && first && this.region(first.header);
    if (same && same.sample === first.sample) return this.#shapesByHeader().get(first.header);
    const names = this.scene.layers.map(({ name }) => name);
    return findAgain(this.scene.shapes, names, shape, scene.layers[shape.layer]?.name ?? '');
  }

  #shapesByHeader(): Map<number, number> {
    if (!this.#shapeOfHeader) {
      this.#shapeOfHeader = new Map();
      for (const [index, { regions }] of this.scene.shapes.entries()) {
        for (const { header } of regions) this.#shapeOfHeader.set(header, index);
      }
    }
    return this.#shapeOfHeader;
  }
}

const directions: Readonly<Record<string, Direction | undefined>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};
