import type { Box } from './layout';

/**
 * One thing that a map is drawn with, in pixels from the upper left corner of the plot. What it looks like is said by
 * style sheets through its class, so that a page and a drawing on its own differ in nothing else.
 */
export type Mark =
  | {
      kind: 'box';
      className: string;
      box: Box;
      /** The fill by its name, `overlap` or `fill-` and a number; without one the style sheet says it. */
      fill?: string;
      /** The position of the shape that it stands for. */
      shape?: number;
    }
  /** A path, as the data of one in SVG 1.1. */
  | { kind: 'path'; className: string; data: string }
  /** Text from the start, the middle or the end of its baseline; an upright one reads to the top. */
  | {
      kind: 'text';
      className: string;
      x: number;
      y: number;
      text: string;
      anchor?: 'middle' | 'end';
      isUpright?: boolean;
    };
