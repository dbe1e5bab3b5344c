import { keyboardMarks } from '../drawing';
import { escapeMarkup } from '../escape';
import { layOut, px } from '../layout';
import type { MapScene } from '../mapScene';
import { markupOf } from '../markup';
import type { ViewChart } from './viewChart';
import { velocityMarks, viewAxis, viewMarks } from './viewMarks';

const left = 56;
const right = 16;
const top = 10;
const width = 960;
const plotHeight = 220;
const keyboardHeight = 40;

/** A chart of a map as an SVG for a page that has the styles of maps. `label` says what it shows; screen readers hear no more of it. */
export function viewPicture(chart: ViewChart, scene: MapScene, label: string): string {
  const keyWidth = width / (scene.highKey - scene.lowKey + 1);
  const layout = layOut(scene, { keyWidth, plotHeight, keyboardHeight });
  const marks = [
    ...viewAxis(chart, layout),
    ...viewMarks(chart, layout),
    ...(chart.name === 'velocity' ? velocityMarks(layout) : keyboardMarks(scene, layout)),
  ];
  const box = `${-left} ${-top} ${px(left + layout.plotWidth + right)} ${px(top + layout.height)}`;
  return `<svg class="keyboard-map" viewBox="${box}" role="img" aria-label="${escapeMarkup(label)}">${markupOf(marks)}</svg>`;
}
