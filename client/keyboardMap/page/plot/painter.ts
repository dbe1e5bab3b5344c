import type { Box } from '../../../../server/map/layout';
import type { Mark } from '../../../../server/map/marks';
import { FillPatterns } from './fillPatterns';
import type { MarkStyle } from './markStyles';
import { MarkStyles } from './markStyles';

type BoxMark = Extract<Mark, { kind: 'box' }>;
type TextMark = Extract<Mark, { kind: 'text' }>;

/** Boxes with a side below so many pixels have no room for a texture, or for a whole outline. */
const leastTexture = 6;
const leastOutlined = 16;

/** Paints marks on canvases, as the style sheet says. */
export class Painter {
  readonly #styles: MarkStyles;
  readonly #fills: FillPatterns;
  /** The style that lines are drawn in now, which is not set again for each of thousands. */
  #stroke: MarkStyle | undefined;

  constructor(parent: HTMLElement) {
    this.#styles = new MarkStyles(parent);
    this.#fills = new FillPatterns(this.#styles);
  }

  /** The theme or the density of pixels is another. */
  forget(): void {
    this.#styles.forget();
    this.#fills.forget();
  }

  /** Clears a canvas, gives it a size in pixels of the page, and paints marks whose place 0, 0 is at `origin`. */
  paint(
    canvas: HTMLCanvasElement,
    size: Size,
    origin: { x: number; y: number },
    marks: readonly Mark[],
  ): void {
    const density = window.devicePixelRatio;
    const [width, height] = [Math.round(size.width * density), Math.round(size.height * density)];
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
      canvas.style.width = `${size.width}px`;
      canvas.style.height = `${size.height}px`;
    }
    const context = canvas.getContext('2d');
    if (!context) return;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, width, height);
    context.setTransform(density, 0, 0, density, origin.x * density, origin.y * density);
    this.#stroke = undefined;
    const seen: Box = { x: -origin.x, y: -origin.y, ...size };
    for (const mark of marks) {
      if (mark.kind === 'box') {
        if (meets(mark.box, seen)) this.#box(context, mark);
      } else if (mark.kind === 'text') {
        if (mark.x < seen.x + seen.width && mark.x > seen.x - 400) this.#text(context, mark);
      } else this.#path(context, new Path2D(mark.data), this.#styles.of(mark.className));
    }
  }

  #box(context: CanvasRenderingContext2D, { box, className, fill }: BoxMark): void {
    const { x, y, width, height } = box;
    const style = this.#styles.of(className);
    const side = Math.min(width, height);
    const isSmall = side < leastTexture && fill !== undefined && fill !== 'overlap';
    context.globalAlpha = 1;
    if (isSmall) {
      context.fillStyle = this.#styles.of('ground').fill ?? 'transparent';
      context.fillRect(x, y, width, height);
      context.globalAlpha = 0.45;
      context.fillStyle = style.stroke ?? 'transparent';
      context.fillRect(x, y, width, height);
    } else if (fill !== undefined) {
      context.fillStyle = this.#fills.of(fill) ?? 'transparent';
      context.fillRect(x, y, width, height);
    } else if (style.fill) {
      context.globalAlpha = style.fillOpacity;
      context.fillStyle = style.fill;
      context.fillRect(x, y, width, height);
    }
    if (!style.stroke) return;
    this.#prepareStroke(context, style);
    // Whole outlines of small shapes would be all that is seen of a dense map.
    if (fill !== undefined && fill !== 'overlap' && side < leastOutlined)
      context.lineWidth = Math.max(0.3, (style.strokeWidth * side) / leastOutlined);
    context.strokeRect(x, y, width, height);
  }

  #path(context: CanvasRenderingContext2D, path: Path2D, style: MarkStyle): void {
    if (style.fill) {
      context.globalAlpha = style.fillOpacity;
      context.fillStyle = style.fill;
      context.fill(path);
    }
    if (!style.stroke) return;
    this.#prepareStroke(context, style);
    context.stroke(path);
  }

  #text(context: CanvasRenderingContext2D, { x, y, text, className, anchor, isUpright }: TextMark): void {
    const style = this.#styles.of(className);
    context.save();
    context.translate(x, y);
    if (isUpright) context.rotate(-Math.PI / 2);
    context.font = style.font;
    context.textAlign = anchor === 'middle' ? 'center' : (anchor ?? 'start');
    if (style.stroke && style.isOutlined) {
      this.#prepareStroke(context, style);
      context.lineJoin = 'round';
      context.strokeText(text, 0, 0);
    }
    context.globalAlpha = style.fillOpacity;
    context.fillStyle = style.fill ?? 'transparent';
    context.fillText(text, 0, 0);
    context.restore();
    this.#stroke = undefined;
  }

  #prepareStroke(context: CanvasRenderingContext2D, style: MarkStyle): void {
    context.globalAlpha = style.strokeOpacity;
    context.lineWidth = style.strokeWidth;
    if (this.#stroke === style) return;
    this.#stroke = style;
    context.strokeStyle = style.stroke ?? 'transparent';
    context.lineCap = style.lineCap;
    context.setLineDash(style.dash);
  }
}

/** Pixels of the page. */
export interface Size {
  width: number;
  height: number;
}

function meets(one: Box, other: Box): boolean {
  return (
    one.x <= other.x + other.width &&
    other.x <= one.x + one.width &&
    one.y <= other.y + other.height &&
    other.y <= one.y + one.height
  );
}
