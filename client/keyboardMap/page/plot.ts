import { nothing, render, svg } from 'lit';
import { shapeText } from '../../../server/map/describe';
import { drawKeyboard, drawPlot, drawVelocityAxis } from '../../../server/map/drawing';
import { escapeMarkup } from '../../../server/map/escape';
import type { Box, MapLayout } from '../../../server/map/layout';
import { cellBox, layerInset, layOut, px } from '../../../server/map/layout';
import { patternDefinitions } from '../../../server/map/textures';
import type { ShownMap } from './shownMap';

/** Pixels above the plot, so that the outline of a focused shape at its top is whole. */
const plotTop = 4;
const plotSide = 4;
const axisWidth = 46;

/** The elements that a plot is drawn into. */
export interface PlotParts {
  /** Scrolls sideways. */
  scroller: HTMLElement;
  /** Holds the shapes as options of a list. */
  map: HTMLElement;
  axis: HTMLElement;
}

/** Draws the map of keys and velocities, and knows where its shapes are. */
export class Plot {
  readonly #parts: PlotParts;
  #shown: ShownMap | undefined;
  #layout: MapLayout | undefined;
  #zoom = 1;

  constructor(parts: PlotParts) {
    this.#parts = parts;
  }

  /** Draws a map anew; with zoom 1 all keys are in view. */
  draw(shown: ShownMap, zoom: number): void {
    this.#shown = shown;
    this.#zoom = zoom;
    const { scene } = shown;
    const layout = layOut(scene, this.#size());
    this.#layout = layout;
    const width = px(layout.plotWidth + 2 * plotSide);
    const height = px(layout.height + plotTop);
    const plot = drawPlot(scene, layout, {
      hiddenLayers: shown.hiddenLayers,
      attributes: (shape, index) =>
        ` id="shape-${index}" data-shape="${index}" role="option" aria-selected="${shown.selected.has(index)}" aria-label="${escapeMarkup(shapeText(scene, shape))}"`,
    });
    const drawn = drawingNodes(
      `<g transform="translate(${plotSide} ${plotTop})">${plot}${drawKeyboard(scene, layout)}<g class="marks" aria-hidden="true"></g></g>`,
      `<defs>${patternDefinitions(scene.layers.length)}</defs>`,
    );
    drawn.setAttribute('role', 'none');
    setSize(drawn, width, height);
    // Outlines of marked shapes lie under the labels.
    drawn.querySelector('.labels')?.before(drawn.querySelector('.marks') ?? '');
    this.#parts.map.replaceChildren(drawn);
    const axis = drawingNodes(
      `<g transform="translate(${axisWidth} ${plotTop})">${drawVelocityAxis(layout)}</g>`,
    );
    axis.setAttribute('aria-hidden', 'true');
    setSize(axis, String(axisWidth), height);
    this.#parts.axis.replaceChildren(axis);
  }

  /** Draws it anew where its room has changed. */
  fit(): void {
    const wanted = this.#size();
    const { keyWidth, plotHeight } = this.#layout ?? wanted;
    if (this.#shown && (wanted.keyWidth !== keyWidth || wanted.plotHeight !== plotHeight))
      this.draw(this.#shown, this.#zoom);
  }

  /** Draws it at another zoom such that what stands at `offset` pixels from the left stays there. */
  zoomTo(zoom: number, offset: number): void {
    const before = this.#layout;
    if (!before || !this.#shown) return;
    const { scroller } = this.#parts;
    const key = (scroller.scrollLeft + offset - plotSide) / before.keyWidth;
    this.draw(this.#shown, zoom);
    scroller.scrollLeft = key * (this.#layout?.keyWidth ?? 1) + plotSide - offset;
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

  /** Tells which shapes are selected, and outlines hovered, selected and focused ones above all shapes. */
  mark(isFocused: boolean): void {
    const shown = this.#shown;
    const group = this.#parts.map.querySelector<SVGGElement>('.marks');
    if (!shown || !group) return;
    for (const marked of this.#parts.map.querySelectorAll('[aria-selected="true"]')) {
      marked.setAttribute('aria-selected', 'false');
    }
    for (const index of shown.selected) {
      this.#parts.map.querySelector(`#shape-${index}`)?.setAttribute('aria-selected', 'true');
    }
    const marks = [
      this.#outline(shown.hovered, 'hovered', 0),
      ...[...shown.selected].map((index) => this.#outline(index, 'selected', 0)),
      isFocused ? this.#outline(shown.active, 'focused', -2.5) : nothing,
    ];
    render(svg`${marks}`, group as unknown as HTMLElement);
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

  #outline(index: number | undefined, name: string, inset: number): unknown {
    const shape = this.#shown?.shape(index);
    const layout = this.#layout;
    if (!shape || !layout || this.#shown?.hiddenLayers.has(shape.layer)) return nothing;
    const { x, y, width, height }: Box = cellBox(layout, shape, layerInset(layout, shape.layer));
    return svg`<rect class="mark ${name}" x=${px(x + inset)} y=${px(y + inset)} width=${px(width - 2 * inset)} height=${px(height - 2 * inset)}/>`;
  }

  #size(): { keyWidth: number; plotHeight: number; keyboardHeight: number } {
    const { lowKey, highKey } = this.#shown?.scene ?? { lowKey: 0, highKey: 127 };
    const room = Math.max(120, this.#parts.scroller.clientWidth - 2 * plotSide);
    // As in the style sheet: a low panel shows the details beside the plot, which then takes the height.
    const isLow = window.innerHeight <= 460 && window.innerWidth >= 640;
    const wanted = isLow ? window.innerHeight - 130 : window.innerHeight * 0.5;
    const plotHeight = Math.max(110, Math.min(460, Math.round(wanted)));
    return {
      keyWidth: Math.max(2, room / (highKey - lowKey + 1)) * this.#zoom,
      plotHeight,
      keyboardHeight: Math.round(Math.max(34, plotHeight * 0.14)),
    };
  }
}

/** A drawing as an element. It is read as XML, where text that is not escaped is a fault and a script never runs. */
function drawingNodes(...parts: readonly string[]): SVGSVGElement {
  const text = `<svg xmlns="http://www.w3.org/2000/svg">${parts.join('')}</svg>`;
  const { documentElement } = new DOMParser().parseFromString(text, 'image/svg+xml');
  return document.importNode(documentElement, true) as unknown as SVGSVGElement;
}

function setSize(element: SVGSVGElement, width: string, height: string): void {
  element.setAttribute('width', width);
  element.setAttribute('height', height);
  element.setAttribute('viewBox', `0 0 ${width} ${height}`);
}
