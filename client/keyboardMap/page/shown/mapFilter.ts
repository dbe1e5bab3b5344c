import type { MapRegion, MapScene, MapShape } from '../../../../server/map/mapScene';
import { nameWithoutEnding } from '../../../../server/model/paths';
import type { MapProblem } from '../../messages';
import { onceFor } from './onceFor';

/** What is shown of a map beside the choice of groups. */
export interface MapFilter {
  /** Only what sounds after this keyswitch was pressed; `null` for all. */
  switchKey: number | null;
  /** Only what is started by this, as `trigger` says, `attack` included; `null` for all. */
  trigger: string | null;
  /** Only what answers this strike of those in turn, 1 the first; `null` for all. */
  strike: number | null;
  /** Only what sounds while a controller is at a value; `null` for all. */
  controller: { number: number; value: number } | null;
  /** Only regions that something was found wrong with. */
  isProblem: boolean;
}

/** Shows everything. */
export const noFilter: MapFilter = {
  switchKey: null,
  trigger: null,
  strike: null,
  controller: null,
  isProblem: false,
};

/** The problems of regions by their header. */
export type ProblemsByHeader = ReadonlyMap<number, readonly MapProblem[]>;

/** A scene with the regions that a filter lets through; shapes without any are left out. */
export function filteredScene(scene: MapScene, filter: MapFilter, problems: ProblemsByHeader): MapScene {
  if (isOff(filter)) return scene;
  const { switchKey, trigger, strike, controller, isProblem } = { ...noFilter, ...filter };
  const passes = (region: MapRegion): boolean =>
    (switchKey === null || isSwitchedBy(region, switchKey)) &&
    (trigger === null || (region.trigger ?? 'attack') === trigger) &&
    (strike === null || isAtTurn(region, strike)) &&
    (controller === null || isLetBy(region, controller.number, controller.value)) &&
    (!isProblem || problems.has(region.header));
  return {
    ...scene,
    shapes: scene.shapes.flatMap((shape) => filteredShape(shape, passes)),
    unplaced: scene.unplaced.filter(passes),
  };
}

/** Whether a filter lets everything through. What was remembered by an earlier version lacks some of its parts. */
export function isOff(filter: Partial<MapFilter>): boolean {
  const { switchKey, trigger, strike, controller, isProblem } = { ...noFilter, ...filter };
  return switchKey === null && trigger === null && strike === null && controller === null && !isProblem;
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
export const triggersOf = onceFor(({ shapes, unplaced }: MapScene): string[] => {
  const found = new Set<string>();
  for (const { regions } of shapes) for (const { trigger } of regions) found.add(trigger ?? 'attack');
  for (const { trigger } of unplaced) found.add(trigger ?? 'attack');
  return [...found];
});

/** The keyswitches that regions of a scene wait for. */
export const switchKeysOf = onceFor(({ shapes, keyswitches }: MapScene): MapScene['keyswitches'] => {
  const isUsed = new Uint8Array(128);
  for (const { regions } of shapes) {
    for (const { switchedBy } of regions) if (switchedBy) isUsed.fill(1, switchedBy[0], switchedBy[1] + 1);
  }
  return keyswitches.filter(({ key }) => isUsed[key] === 1);
});

/** How many strikes in turn regions of a scene tell apart; 1 where they tell none. */
export const strikesOf = onceFor(({ shapes }: MapScene): number => {
  let most = 1;
  for (const { regions } of shapes) for (const { turn } of regions) if (turn) most = Math.max(most, turn[1]);
  return most;
});

/** The states of controllers that regions of a scene tell apart: a controller with a value that each range begins with. */
export const controllerStatesOf = onceFor(
  ({ shapes }: MapScene): { number: number; low: number; high: number }[] => {
    const found = new Map<string, { number: number; low: number; high: number }>();
    for (const { regions } of shapes) {
      for (const { controllers = [] } of regions)
        for (const [number, low, high] of controllers)
          found.set(`${number} ${low} ${high}`, { number, low, high });
    }
    return [...found.values()].sort((one, other) => one.number - other.number || one.low - other.low);
  },
);

function isAtTurn({ turn }: MapRegion, strike: number): boolean {
  return !turn || ((strike - 1) % turn[1]) + 1 === turn[0];
}

function isLetBy({ controllers = [] }: MapRegion, number: number, value: number): boolean {
  return controllers.every(([one, low, high]) => one !== number || (low <= value && value <= high));
}

function isSwitchedBy({ switchedBy }: MapRegion, key: number): boolean {
  return !switchedBy || (switchedBy[0] <= key && key <= switchedBy[1]);
}

/** Problems by their region. */
export function problemsByRegion(problems: readonly MapProblem[]): ProblemsByHeader {
  const byRegion = new Map<number, MapProblem[]>();
  for (const problem of problems) {
    const known = byRegion.get(problem.header);
    if (known) known.push(problem);
    else byRegion.set(problem.header, [problem]);
  }
  return byRegion;
}
