import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import { groupNames } from '../trade/names/groupNames';
import type { MapLayer } from './mapScene';

/**
 * Finds the layer of each region: its group by label, else by the label of its master or global, else the group
 * header that it stands under, named by what its samples share. Layers come in the order in which regions ask for them.
 */
export class LayerFinder {
  readonly layers: MapLayer[] = [];
  readonly #instrument: Instrument;
  readonly #byLabel = new Map<string, number>();
  readonly #byHeader = new Map<number, number>();
  readonly #byParent = new Map<number, number>();
  /** One more than the layer of each header that was asked for. */
  readonly #known: Int32Array;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#known = new Int32Array(instrument.headers.count);
  }

  /** The layer of a region header, counted as one more region the first time that it is asked for. */
  layerOf(region: number): number {
    const known = this.#known[region];
    if (known > 0) return known - 1;
    const layer = this.#find(region);
    this.#known[region] = layer + 1;
    this.layers[layer].regionCount++;
    return layer;
  }

  #find(region: number): number {
    if (this.#hasOwnLabel(region)) return this.#layerOfHeader(region);
    const parent = this.#instrument.parent(region);
    let layer = this.#byParent.get(parent);
    if (layer === undefined) {
      layer = this.#layerOfHeader(region);
      this.#byParent.set(parent, layer);
    }
    return layer;
  }

  #hasOwnLabel(region: number): boolean {
    const instrument = this.#instrument;
    const end = instrument.endParameter(region);
    for (let parameter = instrument.firstParameter(region); parameter < end; parameter++) {
      const name = instrument.canonicalName(parameter);
      if (
        name === Parameter.group_label ||
        name === Parameter.master_label ||
        name === Parameter.global_label
      )
        return true;
    }
    return false;
  }

  #layerOfHeader(region: number): number {
    const label = this.#instrument.groupLabel(region)?.trim();
    if (label) return this.#layer(this.#byLabel, label, () => label);
    const group = this.#instrument.enclosing(region, HeaderKind.group);
    return this.#layer(this.#byHeader, group, () => this.#nameOf(group));
  }

  #nameOf(group: number): string {
    if (group < 0) return 'no group';
    const names = groupNames(this.#instrument);
    return names.nameOf(group) ?? `Group ${names.numberOf(group)}`;
  }

  #layer<Key>(known: Map<Key, number>, key: Key, name: () => string): number {
    let layer = known.get(key);
    if (layer === undefined) {
      layer = this.layers.push({ name: name(), regionCount: 0 }) - 1;
      known.set(key, layer);
    }
    return layer;
  }
}
