import type { Box, MapLayout } from '../../../../server/map/layout';
import { px } from '../../../../server/map/layout';
import type { Mark } from '../../../../server/map/marks';

/** A chosen shape with a side below so many pixels is filled, so that it is found at once among many (our choice). */
const leastOutlined = 24;

/** A shape at the text cursor: its outline, filled where it is small, and where it stands on both axes. */
export function selectedMarks(box: Box, layout: MapLayout): Mark[] {
  const isSmall = Math.min(box.width, box.height) < leastOutlined;
  const outline: Mark[] = [
    { kind: 'box', className: 'mark halo', box },
    { kind: 'box', className: `mark selected${isSmall ? ' small' : ''}`, box },
  ];
  return isSmall ? [...outline, ...guides(box, layout)] : outline;
}

/** Two lines from a shape: to the velocities at the left and down to the keyboard. */
function guides({ x, y, width, height }: Box, { plotHeight }: MapLayout): Mark[] {
  const data = `M0 ${px(y + height / 2)}H${px(Math.max(0, x - 2))}M${px(x + width / 2)} ${px(y + height + 2)}V${px(plotHeight)}`;
  return [
    { kind: 'path', className: 'mark halo thin', data },
    { kind: 'path', className: 'mark guide', data },
  ];
}
