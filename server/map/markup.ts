import { escapeMarkup } from './escape';
import { px } from './layout';
import type { Mark } from './marks';

/** Shapes with a side below so many pixels have a thinner outline. */
const leastOutlined = 16;

/** How marks are written. */
export interface MarkupOptions {
  /** Put before the names of fills, which are ids of patterns. */
  prefix?: string;
  /** What a shape is, in words, by its position. */
  titleOf?: (shape: number) => string;
}

/** Marks as elements of SVG 1.1. */
export function markupOf(marks: readonly Mark[], options: MarkupOptions = {}): string {
  return marks.map((mark) => elementOf(mark, options)).join('');
}

function elementOf(mark: Mark, { prefix = '', titleOf }: MarkupOptions): string {
  const name = ` class="${mark.className}"`;
  switch (mark.kind) {
    case 'path':
      return `<path${name} d="${mark.data}"/>`;
    case 'text': {
      const place = `x="${px(mark.x)}" y="${px(mark.y)}"`;
      const anchor = mark.anchor ? ` text-anchor="${mark.anchor}"` : '';
      const turn = mark.isUpright ? ` transform="rotate(-90 ${px(mark.x)} ${px(mark.y)})"` : '';
      return `<text${name} ${place}${anchor}${turn}>${escapeMarkup(mark.text)}</text>`;
    }
    case 'box': {
      const { x, y, width, height } = mark.box;
      const fill = mark.fill ? ` fill="url(#${prefix}${mark.fill})"` : '';
      // Whole outlines of small shapes would be all that is seen of a dense map.
      const side = Math.min(width, height);
      const thin =
        mark.shape !== undefined && side < leastOutlined
          ? ` style="stroke-width:${px(side / leastOutlined)}"`
          : '';
      const place = `${thin} x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}"`;
      if (mark.shape === undefined || !titleOf) return `<rect${name}${fill}${place}/>`;
      return `<rect${name}${fill}${place}><title>${escapeMarkup(titleOf(mark.shape))}</title></rect>`;
    }
  }
}
