import type { Plot } from '../plot/plot';
import { meets } from '../shown/navigation';
import type { ShownMap } from '../shown/shownMap';
import type { Arranging } from './arranging';
import type { GripName } from './grips';
import { gripAt, gripCursors } from './grips';
import { settled } from './inHand';

/** A pointer that is pressed has to move so many pixels before it drags, so that a click stays one. */
const leastDrag = 4;
/** Sides settle on borders of others that are so many pixels away or less. */
const settlingReach = 6;

/** What the pointer over a map asks of its page. */
export interface PointerEvents {
  map(): ShownMap | undefined;
  plot(): Plot | undefined;
  arranging: Arranging;
  /** The pointer is on a shape, or on none. */
  hover(shape: number | undefined): void;
  /** A shape was clicked. */
  clicked(shape: number): void;
  /** A press, a look without one, and the end of a press, for what plays notes; none while something is dragged. */
  press(event: PointerEvent): void;
  look(event: PointerEvent): void;
  release(): void;
  changed(): void;
}

interface Pressed {
  x: number;
  y: number;
  /** What is held; nothing where a frame is drawn around shapes instead. */
  shape: number | undefined;
  grip: GripName;
  isDragging: boolean;
  addsTo: readonly number[];
}

/** The pointer over a map: it plays, chooses, and drags shapes and their borders. */
export class MapPointer {
  readonly #events: PointerEvents;
  #pressed: Pressed | undefined;
  #wasDragged = false;
  /** The place on the map that was clicked last. */
  place: { key: number; velocity: number } | undefined;

  constructor(events: PointerEvents) {
    this.#events = events;
  }

  down(event: PointerEvent): void {
    const plot = this.#events.plot();
    this.#wasDragged = false;
    if (!plot || event.button !== 0) return;
    const { x, y } = plot.pointOf(event);
    const found = this.#gripAt(event);
    const isAdding = event.ctrlKey || event.metaKey || event.shiftKey;
    const isOnPlot = y >= 0 && y < (plot.layout?.plotHeight ?? 0);
    if ((found || isOnPlot) && this.#events.arranging.isPossible && !plot.hasChart)
      this.#pressed = {
        x,
        y,
        shape: found?.shape,
        grip: found?.grip ?? 'whole',
        isDragging: false,
        addsTo: isAdding ? (this.#events.map()?.held ?? []) : [],
      };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    if (!isAdding) this.#events.press(event);
  }

  move(event: PointerEvent): void {
    const pressed = this.#pressed;
    const plot = this.#events.plot();
    if (!pressed || !plot || event.buttons === 0) {
      this.#pressed = undefined;
      this.#point(event);
      if (event.buttons === 0) this.#events.look(event);
      return;
    }
    const { x, y } = plot.pointOf(event);
    if (!pressed.isDragging) {
      if (Math.hypot(x - pressed.x, y - pressed.y) < leastDrag) return;
      this.#begin(pressed);
    }
    if (pressed.shape === undefined) this.#frame(pressed, x, y);
    else if (this.#events.arranging.hand) this.#drag(pressed, x, y, event);
  }

  up(): void {
    const pressed = this.#pressed;
    this.#pressed = undefined;
    this.#events.release();
    const map = this.#events.map();
    if (map?.frame) {
      map.frame = undefined;
      this.#events.changed();
    }
    if (pressed?.isDragging && pressed.shape !== undefined) this.#events.arranging.finish();
  }

  /** The system took the pointer away: nothing is changed. */
  cancel(): void {
    if (this.#pressed?.isDragging) this.#events.arranging.cancel();
    this.#pressed = undefined;
    this.up();
  }

  click(event: MouseEvent): void {
    const plot = this.#events.plot();
    const map = this.#events.map();
    if (this.#wasDragged || !plot || !map) return;
    const shape = plot.shapeAt(event);
    if (event.detail > 0) this.place = plot.noteAt(event);
    const isAdding = event.ctrlKey || event.metaKey || event.shiftKey;
    if (shape === undefined) {
      if (!isAdding) map.chosen = new Set();
      this.#events.changed();
      return;
    }
    if (isAdding) {
      map.toggle(shape);
      this.#events.changed();
      return;
    }
    map.chosen = new Set();
    map.active = shape;
    this.#events.clicked(shape);
  }

  #begin(pressed: Pressed): void {
    pressed.isDragging = true;
    this.#wasDragged = true;
    this.#events.release();
    const { shape, grip } = pressed;
    const map = this.#events.map();
    if (shape === undefined || !map) return;
    if (!map.chosen.has(shape)) map.chosen = new Set();
    map.active = shape;
    const others = map.held.filter((one) => one !== shape);
    this.#events.arranging.take(
      { shapes: [shape, ...others], grip, keys: 0, velocities: 0, isParted: false },
      false,
    );
  }

  #drag({ x: fromX, y: fromY }: Pressed, x: number, y: number, { altKey, shiftKey }: PointerEvent): void {
    const map = this.#events.map();
    const layout = this.#events.plot()?.layout;
    const { arranging } = this.#events;
    const { hand } = arranging;
    if (!map || !layout || !hand) return;
    const rowHeight = layout.plotHeight / 127;
    const by = {
      keys: Math.round((x - fromX) / layout.keyWidth),
      velocities: Math.round((fromY - y) / rowHeight),
    };
    const settle = (axis: 'keys' | 'velocities', pixels: number) =>
      shiftKey
        ? by[axis]
        : settled(map.scene.shapes, map.order, hand, axis, by[axis], settlingReach / pixels);
    arranging.move({
      keys: settle('keys', layout.keyWidth),
      velocities: settle('velocities', rowHeight),
      // Held over a whole shape, the key is about its root instead of its neighbours.
      isParted: altKey && hand.grip !== 'whole',
      takesRoots: altKey && hand.grip === 'whole' ? !this.#takesRoots(hand.shapes[0]) : undefined,
    });
  }

  #takesRoots(index: number): boolean {
    const shape = this.#events.map()?.shape(index);
    return shape?.lowKey === shape?.highKey && shape?.rootKeys[0] === shape?.lowKey;
  }

  /** Chooses the shapes that a frame from where the pointer was pressed meets. */
  #frame({ x: fromX, y: fromY, addsTo }: Pressed, x: number, y: number): void {
    const plot = this.#events.plot();
    const map = this.#events.map();
    if (!plot || !map) return;
    const frame = {
      x: Math.min(x, fromX),
      y: Math.min(y, fromY),
      width: Math.abs(x - fromX),
      height: Math.abs(y - fromY),
    };
    const low = plot.placeAt(frame.x, frame.y + frame.height);
    const high = plot.placeAt(frame.x + frame.width, frame.y);
    if (!low || !high) return;
    const cell = {
      lowKey: low.key,
      highKey: high.key,
      lowVelocity: low.velocity,
      highVelocity: high.velocity,
    };
    map.frame = frame;
    map.chosen = new Set([...addsTo, ...map.order.filter((index) => meets(map.scene.shapes[index], cell))]);
    this.#events.changed();
  }

  #point(event: PointerEvent): void {
    const plot = this.#events.plot();
    this.#events.hover(plot?.shapeAt(event));
    const grip = this.#gripAt(event)?.grip;
    const isPossible = this.#events.arranging.isPossible;
    const target = event.currentTarget as HTMLElement;
    target.style.setProperty('--pointer', !grip ? 'default' : isPossible ? gripCursors[grip] : 'pointer');
  }

  /** What would be held at a place: of the shapes that are chosen or active, else of the uppermost one. */
  #gripAt(event: PointerEvent): { shape: number; grip: GripName } | undefined {
    const plot = this.#events.plot();
    const map = this.#events.map();
    if (!plot?.layout || !map || plot.hasChart) return undefined;
    const point = plot.pointOf(event);
    const top = plot.shapeAt(event);
    for (const index of [...map.held, ...(top === undefined ? [] : [top])]) {
      const shape = map.shape(index);
      const box = plot.boxOf(index);
      const grip = shape && box && gripAt(box, shape, plot.layout, point);
      // Inside, the uppermost shape is meant.
      if (grip && (grip !== 'whole' || index === top || map.chosen.has(index))) return { shape: index, grip };
    }
    return undefined;
  }
}
