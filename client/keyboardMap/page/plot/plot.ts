import {
  axisMarks,
  keyboardMarks,
  overlapMarks,
  plotMarks,
  shapeMark,
  soundingKeyMarks,
} from '../../../../server/map/drawing';
import { fitText, labelSize } from '../../../../server/map/labels';
import type { Box, MapLayout } from '../../../../server/map/layout';
import { cellBox, layOut, placeAt, shapeBox } from '../../../../server/map/layout';
import type { Mark } from '../../../../server/map/marks';
import type { ViewChart } from '../../../../server/map/views/viewChart';
import { shapeOfLineAt, velocityMarks, viewAxis, viewMarks } from '../../../../server/map/views/viewMarks';
import type { ShownMap } from '../shown/shownMap';
import { selectedMarks } from './chosenMarks';
import { Painter } from './painter';
import { previewMarks } from './previewMarks';
import { problemMarks } from './problemSigns';
import { ShapeOptions } from './shapeOptions';

/** Pixels above the plot, so that the outline of a focused shape at its top is whole. */
const plotTop = 4;
const plotSide = 4;
const axisWidth = 46;
/** Pixels that the keyboard, its octave names and the edge of the page take in a low panel. */
const besidePlot = 68;
/** What a press on the keyboard below the plot counts as (our choice). */
const keyboardVelocity = 96;

/** The elements that a plot is painted into. */
export interface PlotParts {
  /** Scrolls sideways. */
  scroller: HTMLElement;
  /** As wide as the whole plot; it holds the canvases, which stay in view. */
  map: HTMLElement;
  /** One for the plot, one above it for what is hovered, selected and focused, one for the velocities beside it. */
  plot: HTMLCanvasElement;
  marks: HTMLCanvasElement;
  axis: HTMLCanvasElement;
}

/** Paints the map of keys and velocities, and knows where its shapes are. */
export class Plot {
  readonly #parts: PlotParts;
  readonly #painter: Painter;
  readonly #options: ShapeOptions;
  #shown: ShownMap | undefined;
  #layout: MapLayout | undefined;
  #drawing: readonly Mark[] = [];
  #zoom = 1;
  #hasFocus = false;
  /** What stands in the place of the shapes. */
  #chart: ViewChart | undefined;
  #frame = 0;

  constructor(parts: PlotParts) {
    this.#parts = parts;
    this.#painter = new Painter(parts.map);
    this.#options = new ShapeOptions(parts.map);
    parts.scroller.addEventListener('scroll', () => this.#paintSoon());
    // The editor tells a theme by the attributes of both.
    const themes = new MutationObserver(() => this.#themeChanged());
    themes.observe(document.documentElement, { attributeFilter: ['style', 'class'] });
    themes.observe(document.body, { attributeFilter: ['class'] });
  }

  /** Shows a map; with zoom 1 all keys are in view. */
  show(shown: ShownMap, zoom: number, chart?: ViewChart): void {
    this.#shown = shown;
    this.#chart = chart;
    this.#options.show(shown);
    this.#draw(zoom);
  }

  /** Draws it anew where its room has changed. */
  fit(): void {
    const wanted = this.#size(this.#zoom);
    const { keyWidth, plotHeight } = this.#layout ?? wanted;
    if (wanted.keyWidth !== keyWidth || wanted.plotHeight !== plotHeight) this.#draw(this.#zoom);
    else this.#paintSoon();
  }

  /** Draws it at another zoom such that what stands at `offset` pixels from the left stays there. */
  zoomTo(zoom: number, offset: number): void {
    const before = this.#layout;
    if (!before) return;
    const { scroller } = this.#parts;
    const key = (scroller.scrollLeft + offset - plotSide) / before.keyWidth;
    this.#draw(zoom);
    scroller.scrollLeft = key * (this.#layout?.keyWidth ?? 1) + plotSide - offset;
  }

  /** Whether it shows that curve, or the shapes where none is given. */
  shows(chart: ViewChart | undefined): boolean {
    return this.#chart === chart;
  }

  /** Whether a curve stands in the place of the shapes. */
  get hasChart(): boolean {
    return this.#chart !== undefined;
  }

  /** How keys and velocities are laid out now. */
  get layout(): MapLayout | undefined {
    return this.#layout;
  }

  /** Where an event of the pointer is, in pixels from the upper left corner of the plot. */
  pointOf({ clientX, clientY }: MouseEvent): { x: number; y: number } {
    const { left, top } = this.#parts.map.getBoundingClientRect();
    return { x: clientX - left - plotSide, y: clientY - top - plotTop };
  }

  /** The key and velocity at a point of the plot, the nearest where it is beside it. */
  placeAt(x: number, y: number): { key: number; velocity: number } | undefined {
    return this.#layout && placeAt(this.#layout, x, y);
  }

  /** Where a shape is drawn; nowhere where its layer is hidden. */
  boxOf(index: number | undefined): Box | undefined {
    const map = this.#shown;
    const shape = map?.shape(index);
    if (!map || !shape || index === undefined || !this.#layout || map.hiddenLayers.has(shape.layer))
      return undefined;
    return shapeBox(this.#layout, map.stack, shape, index);
  }

  /** The key and velocity that an event of the pointer is about; a middle velocity on the keyboard below the plot. */
  noteAt(event: MouseEvent): { key: number; velocity: number } | undefined {
    const layout = this.#layout;
    if (!layout) return undefined;
    const { x, y } = this.pointOf(event);
    if (x < 0 || x >= layout.plotWidth || y < 0 || y >= layout.height) return undefined;
    const place = placeAt(layout, x, y);
    return y < layout.plotHeight ? place : { key: place.key, velocity: keyboardVelocity };
  }

  /** Pixels from the left at which a shape's middle is in view; without one, the middle of the view. */
  middleOf(index: number | undefined): number {
    const { scrollLeft, clientWidth } = this.#parts.scroller;
    const shape = this.#shown?.shape(index);
    if (shape && this.#layout) {
      const box = cellBox(this.#layout, shape);
      const middle = plotSide + box.x + box.width / 2 - scrollLeft;
      if (middle >= 0 && middle <= clientWidth) return middle;
    }
    return clientWidth / 2;
  }

  /** The uppermost shape that an event of the pointer is about. A screen reader presses options, which have no place. */
  shapeAt(event: MouseEvent): number | undefined {
    const option = this.#options.shapeOf(event.target);
    const layout = this.#layout;
    const map = this.#shown;
    if (!layout || !map) return undefined;
    if (event.type === 'click' && event.detail === 0) return option;
    const { x, y } = this.pointOf(event);
    if (x < 0 || x >= layout.plotWidth || y < 0 || y >= layout.plotHeight) return undefined;
    if (this.#chart) return shapeOfLineAt(this.#chart, layout, x, y);
    const { key, velocity } = placeAt(layout, x, y);
    const shape = map.stack.top[key * 128 + velocity];
    return shape < 0 ? undefined : shape;
  }

  /** Outlines hovered, selected and focused shapes above all shapes, and tells screen readers of them. */
  mark(hasFocus: boolean): void {
    this.#hasFocus = hasFocus;
    this.#options.mark();
    this.#paintMarks();
  }

  /** Scrolls sideways until a shape is in view. */
  reveal(index: number | undefined): void {
    const shape = this.#shown?.shape(index);
    if (!shape || !this.#layout) return;
    const { x, width } = cellBox(this.#layout, shape);
    const view = this.#parts.scroller;
    const left = plotSide + x;
    const right = left + Math.min(width, view.clientWidth);
    let target = view.scrollLeft;
    if (left < target) target = left - 8;
    else if (right > target + view.clientWidth) target = right - view.clientWidth + 8;
    else return;
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    view.scrollTo({ left: target, behavior: still ? 'instant' : 'smooth' });
  }

  #draw(zoom: number): void {
    const shown = this.#shown;
    if (!shown) return;
    this.#zoom = zoom;
    const layout = layOut(shown.scene, this.#size(zoom));
    this.#layout = layout;
    const chart = this.#chart;
    this.#drawing = [
      ...(chart ? viewMarks(chart, layout) : plotMarks(shown.scene, layout, shown.stack)),
      ...(chart ? [] : this.#problemSigns(shown)),
      ...(chart?.name === 'velocity' ? velocityMarks(layout) : keyboardMarks(shown.scene, layout)),
    ];
    this.#parts.map.style.width = `${layout.plotWidth + 2 * plotSide}px`;
    this.#parts.map.style.height = `${layout.height + plotTop}px`;
    this.#parts.map.style.setProperty('--picture-height', `${layout.height + plotTop}px`);
    this.#options.place(layout, plotSide, plotTop);
    this.#paint();
  }

  #problemSigns(shown: ShownMap): Mark[] {
    if (shown.problems.size === 0) return [];
    return shown.stack.order.flatMap((index) => {
      const box = shown.stack.isSeen[index] ? this.boxOf(index) : undefined;
      return box ? problemMarks(shown.problemsOf(index), box) : [];
    });
  }

  #paintSoon(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => this.#paint());
  }

  #paint(): void {
    const layout = this.#layout;
    if (!layout) return;
    const height = layout.height + plotTop;
    const { scrollLeft, clientWidth } = this.#parts.scroller;
    const size = { width: clientWidth, height };
    this.#painter.paint(this.#parts.plot, size, { x: plotSide - scrollLeft, y: plotTop }, this.#drawing);
    this.#painter.paint(
      this.#parts.axis,
      { width: axisWidth, height },
      { x: axisWidth, y: plotTop },
      this.#chart ? viewAxis(this.#chart, layout) : axisMarks(layout),
    );
    this.#paintMarks();
  }

  #paintMarks(): void {
    const layout = this.#layout;
    const map = this.#shown;
    if (!layout || !map) return;
    const { scrollLeft, clientWidth } = this.#parts.scroller;
    if (this.#chart) {
      this.#paintChosenLines(this.#chart, map, layout);
      return;
    }
    const chosen = [...map.selected, ...(this.#hasFocus ? [map.active] : [])];
    const raised = chosen.flatMap((index) => this.#raised(index));
    const marks = [
      ...raised.filter(({ kind }) => kind === 'box'),
      ...(raised.length > 0 ? overlapMarks(map.scene, layout, map.stack) : []),
      ...raised.filter(({ kind }) => kind === 'text'),
      ...[...map.sounding].flatMap((index) => this.#outline(index, 'sounding', 2)),
      ...soundingKeyMarks(layout, map.soundingKeys),
      ...[...map.selected].flatMap((index) => this.#selected(index, layout)),
      ...this.#outline(map.hovered, 'hovered', 0),
      ...[...map.chosen].flatMap((index) => this.#outline(index, 'chosen', -1)),
      ...(this.#hasFocus ? this.#outline(map.active, 'focused', -2.5) : []),
      ...(map.preview ? previewMarks(map.scene.shapes, layout, map.preview) : []),
      ...(map.frame ? [{ kind: 'box', className: 'mark frame', box: map.frame } as const] : []),
    ];
    this.#painter.paint(
      this.#parts.marks,
      { width: clientWidth, height: layout.height + plotTop },
      { x: plotSide - scrollLeft, y: plotTop },
      marks,
    );
  }

  /** The lines of shapes that are chosen or pointed at, drawn stronger. */
  #paintChosenLines(chart: ViewChart, map: ShownMap, layout: MapLayout): void {
    const chosen = new Set([...map.selected, map.hovered, this.#hasFocus ? map.active : undefined]);
    const lines = chart.lines.filter(({ shape }) => chosen.has(shape));
    const marks = chart.name === 'velocity' ? [] : viewMarks({ ...chart, lines, ticks: [] }, layout).slice(2);
    const strong = marks.map((mark) => ({ ...mark, className: `${mark.className} strong` }));
    const { scrollLeft, clientWidth } = this.#parts.scroller;
    const size = { width: clientWidth, height: layout.height + plotTop };
    this.#painter.paint(this.#parts.marks, size, { x: plotSide - scrollLeft, y: plotTop }, [
      ...strong,
      ...soundingKeyMarks(layout, map.soundingKeys),
    ]);
  }

  /** A shape above all others, where others lie over it. */
  #raised(index: number | undefined): Mark[] {
    const shape = this.#shown?.shape(index);
    const box = this.boxOf(index);
    const map = this.#shown;
    if (!map || !shape || !box || index === undefined || !map.stack.isCovered[index]) return [];
    const text = fitText(shape.label, box.width - 10);
    const hasRoom = box.width >= 40 && box.height >= 18;
    return [
      shapeMark(map.scene, index, box),
      ...(hasRoom
        ? [{ kind: 'text', className: 'label', x: box.x + 5, y: box.y + 2 + labelSize, text } as const]
        : []),
    ];
  }

  #selected(index: number, layout: MapLayout): Mark[] {
    const box = this.boxOf(index);
    return box ? selectedMarks(box, layout) : [];
  }

  #outline(index: number | undefined, name: string, inset: number): Mark[] {
    const box = this.boxOf(index);
    if (!box) return [];
    const { x, y, width, height } = box;
    const grown = { x: x + inset, y: y + inset, width: width - 2 * inset, height: height - 2 * inset };
    return [
      { kind: 'box', className: 'mark halo', box: grown },
      { kind: 'box', className: `mark ${name}`, box: grown },
    ];
  }

  #themeChanged(): void {
    this.#painter.forget();
    this.#paintSoon();
  }

  #size(zoom: number): { keyWidth: number; plotHeight: number; keyboardHeight: number } {
    const { lowKey, highKey } = this.#shown?.scene ?? { lowKey: 0, highKey: 127 };
    const room = Math.max(120, this.#parts.scroller.clientWidth - 2 * plotSide);
    // As in the style sheet: a low panel shows the details beside the plot, which then takes the height that is left.
    const isLow = window.innerHeight <= 460 && window.innerWidth >= 640;
    const above = this.#parts.scroller.getBoundingClientRect().top + window.scrollY;
    const wanted = isLow ? window.innerHeight - above - besidePlot : window.innerHeight * 0.5;
    const plotHeight = Math.max(90, Math.min(460, Math.round(wanted)));
    return {
      keyWidth: Math.max(2, room / (highKey - lowKey + 1)) * zoom,
      plotHeight,
      keyboardHeight: Math.round(Math.max(34, plotHeight * 0.14)),
    };
  }
}
