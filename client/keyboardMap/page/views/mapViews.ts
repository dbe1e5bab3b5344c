import type { MapMeasures } from '../../../../server/map/views/mapMeasures';
import type { ViewChart, ViewName } from '../../../../server/map/views/viewChart';
import { keyChart, velocityChart } from '../../../../server/map/views/viewChart';
import type { ShownMap } from '../shown/shownMap';

/** Which curve stands over the keyboard in the place of shapes, and what was measured for it. */
export class MapViews {
  readonly #want: (key: number) => void;
  name: ViewName = 'map';
  #measures: MapMeasures | undefined;
  /** The key that was chosen for velocities; the root of the active shape where none was. */
  #key: number | undefined;
  #wantedKey: number | undefined;
  /** The chart that was made last, and what of. */
  #chart: ViewChart | undefined;
  #parts: unknown[] = [];

  /** `want` asks the host for what was measured, and for the velocities of a key. */
  constructor(want: (key: number) => void) {
    this.#want = want;
  }

  /** Whether what was measured has not come yet. */
  get isWaiting(): boolean {
    return this.#wantedKey !== undefined && this.name !== 'map' && this.name !== 'stretch';
  }

  /** The key whose velocities are shown. */
  keyIn(map: ShownMap): number {
    return this.#key ?? map.shape(map.active)?.rootKeys[0] ?? map.scene.shapes[0]?.rootKeys[0] ?? 60;
  }

  choose(name: ViewName): void {
    this.name = name;
  }

  chooseKey(key: number): void {
    this.#key = key;
  }

  /** Another text, or another instrument. */
  forget(isOther: boolean): void {
    this.#measures = undefined;
    this.#wantedKey = undefined;
    if (isOther) this.#key = undefined;
  }

  take(measures: MapMeasures): void {
    this.#measures = measures;
    if (this.#wantedKey === measures.key) this.#wantedKey = undefined;
  }

  /** How loud regions are by their header; `undefined` while it is not known, and then it is asked for. */
  levels(map: ShownMap): ReadonlyMap<number, number> | undefined {
    if (!this.#measures) {
      if (this.#wantedKey === undefined) this.#ask(this.keyIn(map));
      return undefined;
    }
    const known = this.#measures.regions.filter(({ levelDb }) => levelDb !== undefined);
    return new Map(known.map(({ header, levelDb }) => [header, levelDb as number]));
  }

  #ask(key: number): void {
    this.#wantedKey = key;
    this.#want(key);
  }

  /** The chart to draw; nothing for the map of shapes. What it lacks is asked for. */
  chart(map: ShownMap): ViewChart | undefined {
    if (this.name === 'map') return undefined;
    const parts = [this.name, map.scene, map.order, this.#measures, this.keyIn(map)];
    if (!this.#chart || parts.some((one, at) => one !== this.#parts[at])) this.#chart = this.#newChart(map);
    this.#parts = parts;
    return this.#chart;
  }

  #newChart(map: ShownMap): ViewChart | undefined {
    if (this.name === 'map') return undefined;
    if (this.name === 'stretch') return keyChart('stretch', map.scene, map.order, []);
    const key = this.keyIn(map);
    const isKnown = this.#measures && (this.name !== 'velocity' || this.#measures.key === key);
    if (!isKnown && this.#wantedKey !== key) this.#ask(key);
    if (this.name !== 'velocity')
      return keyChart(this.name, map.scene, map.order, this.#measures?.regions ?? []);
    const velocities = isKnown ? (this.#measures?.velocities ?? []) : [];
    return velocityChart(velocities, (header) => map.shapeOf(header) ?? -1);
  }
}
