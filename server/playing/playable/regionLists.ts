/** Takes together what single regions have several of into flat lists: those of region r are at `start[r]`..`start[r + 1] − 1`. */
export class RegionLists<Item> {
  readonly #regions: number[] = [];
  readonly #items: Item[] = [];

  add(region: number, item: Item): void {
    this.#regions.push(region);
    this.#items.push(item);
  }

  /** Where the items of each region start, and all items, those of one region in the order in which they were added. */
  finish(regionCount: number): { start: Int32Array; items: Item[] } {
    const start = new Int32Array(regionCount + 1);
    for (const region of this.#regions) start[region + 1]++;
    for (let region = 0; region < regionCount; region++) start[region + 1] += start[region];
    const next = start.slice();
    const items = new Array<Item>(this.#items.length);
    for (const [at, region] of this.#regions.entries()) items[next[region]++] = this.#items[at];
    return { start, items };
  }
}
