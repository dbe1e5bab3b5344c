import type { Grip } from '../../../../server/gestures/dragged';
import type { Box, MapLayout } from '../../../../server/map/layout';
import { keyLeft } from '../../../../server/map/layout';
import type { MapShape } from '../../../../server/map/mapScene';
import { l10n } from '../../../webview/page/l10n';

/** What of a shape is held. */
export type GripName =
  | 'whole'
  | 'left'
  | 'right'
  | 'lower'
  | 'upper'
  | 'lowerLeft'
  | 'lowerRight'
  | 'upperLeft'
  | 'upperRight'
  | 'root';

/** What of a shape is held, in the order in which the keyboard goes through it, with what moves, in words. */
export const gripWords: Readonly<Record<GripName, string>> = {
  whole: l10n.t('the whole shape'),
  left: l10n.t('the lowest key'),
  right: l10n.t('the highest key'),
  lower: l10n.t('the lowest velocity'),
  upper: l10n.t('the highest velocity'),
  lowerLeft: l10n.t('the lowest key and velocity'),
  lowerRight: l10n.t('the highest key and lowest velocity'),
  upperLeft: l10n.t('the lowest key and highest velocity'),
  upperRight: l10n.t('the highest key and velocity'),
  root: l10n.t('the root key'),
};

export const gripNames = Object.keys(gripWords) as GripName[];

/** The sides that a grip moves; none for the root key. */
export const gripSides: Readonly<Record<Exclude<GripName, 'root'>, Grip>> = {
  whole: { keys: 'both', velocities: 'both' },
  left: { keys: 'low' },
  right: { keys: 'high' },
  lower: { velocities: 'low' },
  upper: { velocities: 'high' },
  lowerLeft: { keys: 'low', velocities: 'low' },
  lowerRight: { keys: 'high', velocities: 'low' },
  upperLeft: { keys: 'low', velocities: 'high' },
  upperRight: { keys: 'high', velocities: 'high' },
};

/** The pointer that tells what would be moved. */
export const gripCursors: Readonly<Record<GripName, string>> = {
  whole: 'grab',
  left: 'ew-resize',
  right: 'ew-resize',
  lower: 'ns-resize',
  upper: 'ns-resize',
  lowerLeft: 'nesw-resize',
  upperRight: 'nesw-resize',
  lowerRight: 'nwse-resize',
  upperLeft: 'nwse-resize',
  root: 'col-resize',
};

/** So many pixels beside a border belong to it (our choice), less in small shapes. */
const reach = 5;

/** What of a shape lies at a point of the plot; `undefined` where the point is not on the shape or its border. */
export function gripAt(
  box: Box,
  shape: MapShape,
  layout: MapLayout,
  { x, y }: { x: number; y: number },
): GripName | undefined {
  if (
    x < box.x - reach ||
    x > box.x + box.width + reach ||
    y < box.y - reach ||
    y > box.y + box.height + reach
  )
    return undefined;
  if (isOnRoot(box, shape, layout, x, y)) return 'root';
  const [aside, along] = [Math.min(reach, box.width / 4), Math.min(reach, box.height / 4)];
  const side = x - box.x < aside ? 'Left' : box.x + box.width - x < aside ? 'Right' : '';
  const end = y - box.y < along ? 'upper' : box.y + box.height - y < along ? 'lower' : '';
  if (side !== '' && end !== '') return `${end}${side}`;
  if (side !== '') return side === 'Left' ? 'left' : 'right';
  return end === '' ? 'whole' : end;
}

/** Whether a point is on a root mark, which stands at the foot of shapes of several keys. */
function isOnRoot(
  box: Box,
  { lowKey, highKey, rootKeys }: MapShape,
  layout: MapLayout,
  x: number,
  y: number,
) {
  if (lowKey === highKey || y < box.y + box.height - 9 || y > box.y + box.height || box.height < 20)
    return false;
  return rootKeys.some((key) => {
    const middle = keyLeft(layout, key) + layout.keyWidth / 2;
    return key >= lowKey && key <= highKey && Math.abs(x - middle) <= Math.max(4, layout.keyWidth / 2);
  });
}
