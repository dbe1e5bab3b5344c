import { dynamicIn, dynamicLetters } from '../../../trade/dynamics';
import { velocitiesOfLayers } from '../../../trade/layerVelocities';
import type { Statements } from '../../../trade/statements/statements';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ValueColumn, ZoneList } from '../zoneList';

const keyCount = 128;
const mostVelocity = 127;

/**
 * Gives zones whose dynamics are known, but not their velocities, an even share of the velocities 1..127: as many
 * shares as there are dynamics; dynamics that never stand on the same keys, nor beside ones that do, share them out apart. Where one of them is missing on the keys of a zone, the next softer one reaches up to
 * the next louder one. The zones of the table are those from number `first` on; `span` is where a note belongs.
 */
export function velocitiesFromDynamics(
  zones: ZoneList,
  first: number,
  span: { start: number; end: number },
  notes: TableNotes,
  { dynamics: stated, layerOrder }: Pick<Statements, 'dynamics' | 'layerOrder'>,
): void {
  const { dynamics } = zones;
  if (!dynamics) return;
  const turned = zones.areLayersNumbered && layerOrder?.is === 'loudestFirst' ? layerOrder : undefined;
  const most = turned ? turnAround(zones, dynamics, first) : 0;
  const present = new Layers(zones, dynamics, first);
  const all = present.all();
  if (all.length < 2) return;
  if (stated && all.every((dynamic) => stated.ranges.has(dynamic))) {
    giveStated(zones, dynamics, first, stated);
    notes.add('assumed', span, `The dynamics have the velocities that "${shortened(stated.text)}" gives.`);
    return;
  }
  const sets = zones.areLayersNumbered ? [all] : present.sets();
  const shares = new Map(sets.flatMap((set) => [...velocitiesOfLayers(set)]));
  const [low, high] = [zones.column('lovel'), zones.column('hivel')];
  let [written, uneven] = [0, false];
  for (let zone = first; zone < zones.count; zone++) {
    const cell = dynamics.cells[zone];
    if (cell < 0) continue;
    const beside = present.onKeysOf(zone);
    const [own, loudest] = [dynamics.numbers[zone], zones.loudestOf(zone)];
    const louder = all.find((dynamic) => dynamic > loudest && (beside & (1 << dynamic)) !== 0);
    const isLowest = (beside & ((1 << own) - 1)) === 0;
    const share = { low: shares.get(own)?.low, high: shares.get(loudest)?.high };
    const from = isLowest ? 1 : (share.low ?? 1);
    const to = louder === undefined ? mostVelocity : (shares.get(louder)?.low ?? 1) - 1;
    if (!isLowest) low.set(zone, cell, from);
    if (louder !== undefined) high.set(zone, cell, to);
    if (!isLowest || louder !== undefined) written++;
    if (from !== share.low || to !== share.high) uneven = true;
  }
  const what = zones.areLayersNumbered ? 'numbers of layers' : 'dynamics';
  if (written === 0) {
    const none = `The table gives ${what} but no velocities. No key has more than one of them, so each zone sounds at all velocities.`;
    notes.add('assumed', span, none);
    return;
  }
  const words = wordsOf(zones, dynamics, first);
  const nameOf = (dynamic: number) =>
    zones.areLayersNumbered ? `layer ${Math.abs(most - dynamic) + 1}` : words.get(dynamic);
  const listed = sets.map((set) => set.map(nameOf).join(', ')).join(', and on other keys among ');
  const further = uneven ? ' Where a key lacks one of them, the others reach further.' : '';
  const order = turned ? `, the softest first, as "${shortened(turned.text)}" says` : '';
  const message = `The table gives ${what} but no velocities. 1 to 127 are shared out evenly among ${listed}${order}.${further}`;
  notes.add('assumed', span, message);
}

/** How the table writes each of the dynamics where it first does; its letters where a cell says more. */
function wordsOf(zones: ZoneList, dynamics: ValueColumn, first: number): Map<number, string> {
  const words = new Map<number, string>();
  for (let zone = first; zone < zones.count; zone++) {
    const cell = dynamics.cells[zone];
    if (cell < 0) continue;
    const text = shortened(zones.cells.value(cell)).trim();
    for (const dynamic of [dynamics.numbers[zone], zones.loudestOf(zone)]) {
      if (words.has(dynamic)) continue;
      const word = [text, ...text.split(/[^\p{L}]+/u)].find((one) => dynamicIn(one) === dynamic);
      words.set(dynamic, word ?? dynamicLetters[dynamic]);
    }
  }
  return words;
}

/** Numbers layers from the softest on where they are numbered from the loudest on; the greatest number, counted from 0. */
function turnAround(zones: ZoneList, dynamics: ValueColumn, first: number): number {
  let most = 0;
  for (let zone = first; zone < zones.count; zone++)
    if (dynamics.cells[zone] >= 0) most = Math.max(most, dynamics.numbers[zone]);
  for (let zone = first; zone < zones.count; zone++)
    if (dynamics.cells[zone] >= 0) dynamics.set(zone, dynamics.cells[zone], most - dynamics.numbers[zone]);
  return most;
}

/** Gives zones the velocities that the text names for their dynamics. */
function giveStated(
  zones: ZoneList,
  dynamics: ValueColumn,
  first: number,
  { ranges }: NonNullable<Statements['dynamics']>,
): void {
  for (let zone = first; zone < zones.count; zone++) {
    const cell = dynamics.cells[zone];
    const soft = cell < 0 ? undefined : ranges.get(dynamics.numbers[zone]);
    const loud = cell < 0 ? undefined : ranges.get(zones.loudestOf(zone));
    if (!soft || !loud) continue;
    if (soft.low > 1 || soft.isLowGiven) zones.column('lovel').set(zone, cell, soft.low);
    if (loud.high < mostVelocity) zones.column('hivel').set(zone, cell, loud.high);
  }
}

/** Which dynamics sound on which keys: within its group where some group holds several of them, else over all groups. */
class Layers {
  readonly #masks = new Map<number, Int32Array>();
  readonly #byGroup: boolean;

  constructor(
    readonly zones: ZoneList,
    readonly dynamics: ValueColumn,
    readonly first: number,
  ) {
    this.#byGroup = this.#holdsSeveral();
    for (let zone = first; zone < zones.count; zone++) {
      if (dynamics.cells[zone] < 0) continue;
      const mask = this.#mask(zone);
      const [low, high] = this.#keys(zone);
      const own = (1 << dynamics.numbers[zone]) | (1 << zones.loudestOf(zone));
      for (let key = low; key <= high; key++) mask[key] |= own;
    }
  }

  /** The dynamics of all zones, softest first. */
  all(): number[] {
    let mask = 0;
    for (const keys of this.#masks.values()) for (const one of keys) mask |= one;
    return [...dynamicLetters.keys()].filter((dynamic) => (mask & (1 << dynamic)) !== 0);
  }

  /** The dynamics by what they stand beside on some key, or beside what that stands beside; softest first. */
  sets(): number[][] {
    let joined: number[] = [];
    for (const keys of this.#masks.values())
      for (const one of new Set(keys)) {
        if (one === 0) continue;
        const beside = joined.filter((set) => (set & one) !== 0);
        joined = [...joined.filter((set) => (set & one) === 0), beside.reduce((sum, set) => sum | set, one)];
      }
    // What stands alone on its keys is one of the layers of the others.
    const alone = joined.filter((set) => (set & (set - 1)) === 0);
    const several = joined.filter((set) => (set & (set - 1)) !== 0);
    const [first = 0, ...more] = several;
    const sets = more.length === 0 ? [alone.reduce((sum, set) => sum | set, first)] : [...several, ...alone];
    return sets.map((set) => [...dynamicLetters.keys()].filter((dynamic) => (set & (1 << dynamic)) !== 0));
  }

  /** The dynamics on the keys of a zone, as bits. */
  onKeysOf(zone: number): number {
    const mask = this.#mask(zone);
    const [low, high] = this.#keys(zone);
    let found = 0;
    for (let key = low; key <= high; key++) found |= mask[key];
    return found;
  }

  #holdsSeveral(): boolean {
    const seen = new Map<number, number>();
    for (let zone = this.first; zone < this.zones.count; zone++) {
      if (this.dynamics.cells[zone] < 0) continue;
      const dynamic = this.dynamics.numbers[zone];
      if ((seen.get(this.zones.groups[zone]) ?? dynamic) !== dynamic) return true;
      seen.set(this.zones.groups[zone], dynamic);
    }
    return false;
  }

  #mask(zone: number): Int32Array {
    const group = this.#byGroup ? this.zones.groups[zone] : 0;
    let mask = this.#masks.get(group);
    if (!mask) {
      mask = new Int32Array(keyCount);
      this.#masks.set(group, mask);
    }
    return mask;
  }

  #keys(zone: number): [low: number, high: number] {
    const key = this.zones.values('key')?.oneMore(zone) ?? 0;
    const low = this.zones.values('lokey')?.oneMore(zone) ?? 0;
    const high = this.zones.values('hikey')?.oneMore(zone) ?? 0;
    return [(low || key || 1) - 1, (high || key || keyCount) - 1];
  }
}
