import type { CheckContext } from '../../../checks/rule';
import type { MapScene } from '../../../map/mapScene';
import { buildMapScene } from '../../../map/scene';
import type { MapMeasures } from '../../../map/views/mapMeasures';
import { mapMeasures } from '../../mapViews/mapMeasures';

/** What the pictures of a report are drawn from. */
export interface ReportViews {
  scene: MapScene;
  /** What was measured, and the levels by velocity of the key whose root is nearest to the middle of what is played. */
  measures: MapMeasures;
}

/** What is known by now for the pictures of a report; what is not is asked for in passing. */
export function reportViews(context: CheckContext): ReportViews {
  const scene = buildMapScene(context.instrument);
  const { lowKey, highKey } = scene.played ?? { lowKey: 60, highKey: 60 };
  const middle = (lowKey + highKey) / 2;
  let key = Math.round(middle);
  let least = Number.POSITIVE_INFINITY;
  for (const { rootKeys } of scene.shapes) {
    for (const root of rootKeys) {
      if (root < lowKey || root > highKey || Math.abs(root - middle) >= least) continue;
      least = Math.abs(root - middle);
      key = root;
    }
  }
  return { scene, measures: mapMeasures(context, key) };
}
