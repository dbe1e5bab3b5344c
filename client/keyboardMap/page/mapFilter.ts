import type { MapRegion, MapScene, MapShape } from '../../../server/map/mapScene';
import { nameWithoutEnding } from '../../../server/model/paths';
import type { MapProblem } from '../messages';

/** What is shown of a map beside the choice of groups. */
export interface MapFilter {
  /** Only what sounds after this keyswitch was pressed; `null` for all. */
  switchKey: number | null;
  /** Only what is started by this, as `trigger` says, `attack` included; `null` for all. */
  trigger: string | null;
  /** Only regions that something was found wrong with. */
  isProblem: boolean;
}

/** Shows everything. */
export const noFilter: MapFilter = { switchKey: null, trigger: null, isProblem: false };

/** The problems of regions by their header. */
export type Problems = ReadonlyMap<number, readonly MapProblem[]>;

/** A scene with the regions that a filter lets through; shapes without any are left out. */
export function filteredScene(scene: MapScene, filter: MapFilter, problems: Problems): MapScene {
  const { switchKey, trigger, isProblem } = filter;
  if (switchKey === null && trigger === null && !isProblem) return scene;
  const passes = (region: MapRegion): boolean =>
    (switchKey === null || isSwitchedBy(region, switchKey)) &&
    (trigger === null || (region.trigger ?? 'attack') === trigger) &&
    (!isProblem || problems.has(region.header));
  return {
    ...scene,
    shapes: scene.shapes.flatMap((shape) => filteredShape(shape, passes)),
    unplaced: scene.unplaced.filter(passes),
  };
}

function filteredShape(shape: MapShape, passes: (region: MapRegion) => boolean): MapShape[] {
  const regions = shape.regions.filter(passes);
  if (regions.length === shape.regions.length) return [shape];
  const [first] = regions;
  if (!first) return [];
  const isFirst = first === shape.regions[0];
  return [
    {
      ...shape,
      regions,
      label: isFirst || first.sample === '' ? shape.label : nameWithoutEnding(first.sample),
      shortLabel: isFirst ? shape.shortLabel : '',
      rootKeys: [...new Set(regions.map(({ rootKey }) => rootKey))],
    },
  ];
}

/** What starts regions of a scene, in the order of the text. */
export function triggersOf({ shapes, unplaced }: MapScene): string[] {
  const found = new Set<string>();
  for (const { regions } of shapes) for (const { trigger } of regions) found.add(trigger ?? 'attack');
  for (const { trigger } of unplaced) found.add(trigger ?? 'attack');
  return [...found];
}

/** The keyswitches that regions of a scene wait for. */
export function switchKeysOf({ shapes, keyswitches }: MapScene): MapScene['keyswitches'] {
  const isUsed = new Uint8Array(128);
  for (const { regions } of shapes) {
    for (const { switchedBy } of regions) if (switchedBy) isUsed.fill(1, switchedBy[0], switchedBy[1] + 1);
  }
  return keyswitches.filter(({ key }) => isUsed[key] === 1);
}

function isSwitchedBy({ switchedBy }: MapRegion, key: number): boolean {
  return !switchedBy || (switchedBy[0] <= key && key <= switchedBy[1]);
}

/** Problems by their region. */
export function problemsByRegion(problems: readonly MapProblem[]): Problems {
  const byRegion = new Map<number, MapProblem[]>();
  for (const problem of problems) {
    const known = byRegion.get(problem.header);
    if (known) known.push(problem);
    else byRegion.set(problem.header, [problem]);
  }
  return byRegion;
}
