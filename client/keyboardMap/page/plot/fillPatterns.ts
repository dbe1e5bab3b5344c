import type { Texture } from '../../../../server/map/textures';
import { overlapTexture, textureOf, toneClass } from '../../../../server/map/textures';
import type { MarkStyles } from './markStyles';

/** The fills of marks as patterns of a canvas, made when they are first asked for. */
export class FillPatterns {
  readonly #styles: MarkStyles;
  readonly #known = new Map<string, CanvasPattern | null>();

  constructor(styles: MarkStyles) {
    this.#styles = styles;
  }

  /** A fill by its name: `overlap`, or `fill-` and a number. */
  of(name: string): CanvasPattern | null {
    let pattern = this.#known.get(name);
    if (pattern === undefined) {
      const fill = Number(/^fill-(\d+)$/.exec(name)?.[1] ?? -1);
      pattern = fill < 0 ? this.#paint(overlapTexture, '') : this.#paint(textureOf(fill), toneClass(fill));
      this.#known.set(name, pattern);
    }
    return pattern;
  }

  /** The theme or the density of pixels is another. */
  forget(): void {
    this.#known.clear();
  }

  /** With the class of a tone on an opaque ground, without one as lines alone. */
  #paint({ width, height, lines, dots }: Texture, tone: string): CanvasPattern | null {
    const density = Math.max(2, Math.ceil(window.devicePixelRatio));
    const canvas = document.createElement('canvas');
    canvas.width = width * density;
    canvas.height = height * density;
    const context = canvas.getContext('2d');
    if (!context) return null;
    context.scale(density, density);
    const fill = (className: string, paint: () => void): void => {
      const style = this.#styles.of(`${className} ${tone}`);
      context.globalAlpha = style.fillOpacity;
      context.fillStyle = style.fill ?? 'transparent';
      paint();
    };
    if (tone !== '') {
      fill('ground', () => context.fillRect(0, 0, width, height));
      fill('tint', () => context.fillRect(0, 0, width, height));
    }
    if (lines) {
      const style = this.#styles.of(tone === '' ? 'overlap-line' : `texture-line ${tone}`);
      context.globalAlpha = style.strokeOpacity;
      context.strokeStyle = style.stroke ?? 'transparent';
      context.lineWidth = style.strokeWidth;
      context.stroke(new Path2D(lines));
    }
    if (dots) fill('texture-dot', () => context.fill(new Path2D(dots)));
    const pattern = context.createPattern(canvas, 'repeat');
    pattern?.setTransform(new DOMMatrix().scale(1 / density));
    return pattern;
  }
}
