import type { Arrangement, RegionValues } from '../../../../server/gestures/arrangement';
import { cellWith } from '../../../../server/gestures/gesture';
import type { MapLayout } from '../../../../server/map/layout';
import { cellBox, keyLeft, px } from '../../../../server/map/layout';
import type { MapCell, MapShape } from '../../../../server/map/mapScene';
import type { Mark } from '../../../../server/map/marks';
import { noteNameOf } from '../../../../server/model/keys';
import { noteNamesText, velocityText } from '../../../../server/model/wording/rangeWords';

/** A shape as it would be. */
interface Shown {
  cell: MapCell;
  rootKey: number;
  hasNewRoot: boolean;
}

/** What an arrangement makes of the shapes of a map, drawn over them: where they would lie, their roots, and what goes. */
export function previewMarks(
  shapes: readonly MapShape[],
  layout: MapLayout,
  arrangement: Arrangement,
): Mark[] {
  const { cells, gone } = shownBy(shapes, arrangement);
  const marks: Mark[] = [];
  for (const cell of gone) {
    const { x, y, width, height } = cellBox(layout, cell, 2);
    const cross = `M${px(x)} ${px(y)}l${px(width)} ${px(height)}m0 ${px(-height)}l${px(-width)} ${px(height)}`;
    marks.push({ kind: 'path', className: 'mark goes', data: cross });
  }
  for (const { cell, rootKey, hasNewRoot } of cells) {
    const box = cellBox(layout, cell, 0.5);
    marks.push({ kind: 'box', className: 'mark halo', box }, { kind: 'box', className: 'mark preview', box });
    if (hasNewRoot) {
      const x = keyLeft(layout, rootKey) + layout.keyWidth / 2;
      const size = Math.max(3, Math.min(5, layout.keyWidth / 2));
      const data = `M${px(x - size)} ${px(box.y + box.height - 1)}h${px(2 * size)}l${px(-size)} ${px(-2 * size)}z`;
      marks.push({ kind: 'path', className: 'preview-root', data });
    }
  }
  return marks;
}

/** What would change, in words: the first shape's keys, velocities and root, and how many regions in all. */
export function previewText(shapes: readonly MapShape[], arrangement: Arrangement): string {
  const [first] = shownBy(shapes, arrangement).cells;
  if (!first) return '';
  const { lowKey, highKey, lowVelocity, highVelocity } = first.cell;
  const parts = [noteNamesText(lowKey, highKey), velocityText(lowVelocity, highVelocity)];
  if (first.hasNewRoot) parts.push(`root ${noteNameOf(first.rootKey)}`);
  return parts.join(', ');
}

function shownBy(
  shapes: readonly MapShape[],
  { values, copies, removed }: Arrangement,
): { cells: Shown[]; gone: MapCell[] } {
  const byHeader = new Map<number, RegionValues[]>();
  for (const one of [...values, ...copies])
    byHeader.set(one.header, [...(byHeader.get(one.header) ?? []), one]);
  const isGone = new Set(removed);
  const cells = new Map<string, Shown>();
  const gone: MapCell[] = [];
  for (const shape of shapes) {
    for (const { header, rootKey } of shape.regions) {
      if (isGone.has(header)) gone.push(shape);
      for (const one of byHeader.get(header) ?? []) {
        const root = one.pitch_keycenter ?? rootKey;
        const cell = cellWith(shape, one);
        cells.set(JSON.stringify([cell, root]), {
          cell,
          rootKey: root,
          hasNewRoot: one.pitch_keycenter !== undefined,
        });
      }
    }
  }
  return { cells: [...cells.values()], gone };
}
