import { counted } from '../../model/wording/counted';
import { keysText, keyText } from '../../model/wording/rangeWords';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from '../zones/zoneList';
import { keysOfZones } from './keysOfZones';
import { rootsInNames } from './rootsInNames';

/** A root more than two octaves outside of its keys is a slip where fewer others tell so (our choice). */
const far = { keys: 24, fewest: 2, most: 2 / 3 };
/** So many rows have to agree otherwise, and so large a share of all (our choice). */
const usual = { fewest: 3, most: 0.75 };
const mostListed = 8;
const octave = 12;
const centsOfKey = 100;

/** A zone with its root and its keys, where they are known, and the other root that the name of its sample says. */
interface Rooted {
  zone: number;
  root: number;
  keys: { low: number; high: number } | undefined;
  named: number | undefined;
  /** Whether the name says the root itself. */
  isNamed: boolean;
}

/**
 * Notes roots that contradict the keys of their zones, or the names of their samples, where those of nearly all other rows agree with theirs:
 * slips, as the samples would play too high or too low. They are kept. The zones of the table are those from number `first` on.
 */
export function noteOddRoots(zones: ZoneList, first: number, notes: TableNotes): void {
  const odd = oddRoots(zones, first);
  const roots = zones.column('pitch_keycenter');
  const spanOf = ({ zone }: Rooted) => {
    const cell = roots.cells[zone];
    return { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
  };
  const [one, ...others] = odd;
  if (!one) return;
  if (others.length === 0) {
    notes.add(
      'assumed',
      spanOf(one),
      `${notes.place(spanOf(one).start)}: ${sentence(one)} It is kept. Check it.`,
    );
    return;
  }
  const listed = odd
    .slice(0, mostListed)
    .map((each) => `${notes.place(spanOf(each).start).toLowerCase()} (${brief(each)})`);
  const more = odd.length > listed.length ? `; and ${counted(odd.length - listed.length, 'more row')}` : '';
  notes.add(
    'assumed',
    spanOf(one),
    `${odd.length} root keys contradict the keys of their rows or the names of their samples, unlike those of the other rows: ${listed.join('; ')}${more}. They are kept. Check them.`,
  );
}

function sentence({ root, keys, named }: Rooted): string {
  const own = named === undefined ? '' : keyText(named);
  const name = own === '' ? '' : `; the name of its sample says ${own}`;
  if (keys && isOutside(root, keys)) {
    const away =
      root < keys.low
        ? `${counted(keys.low - root, 'key')} below`
        : `${counted(root - keys.high, 'key')} above`;
    return `the root key ${keyText(root)} lies ${away} its ${keysText(keys.low, keys.high)}, unlike those of the other rows${name}.`;
  }
  return `the name of its sample says ${own} for the root key ${keyText(root)}, unlike those of the other rows.`;
}

function brief({ root, keys, named }: Rooted): string {
  const isOff = keys !== undefined && isOutside(root, keys);
  const own = isOff ? `, ${keysText(keys.low, keys.high)}` : '';
  return `root ${keyText(root)}${own}${named === undefined ? '' : `, name ${keyText(named)}`}`;
}

function oddRoots(zones: ZoneList, first: number): Rooted[] {
  const roots = zones.values('pitch_keycenter');
  if (!roots) return [];
  const keysOf = keysOfZones(zones);
  const all: Rooted[] = [];
  for (let zone = first; zone < zones.count; zone++)
    if (roots.cells[zone] >= 0)
      all.push({ zone, root: roots.numbers[zone], keys: keysOf(zone), named: undefined, isNamed: false });
  const outside = all.filter(({ root, keys }) => keys && isOutside(root, keys));
  const within = all.filter(({ root, keys }) => keys && !isOutside(root, keys));
  const told = rootsInNames(zones, first, new Set(outside.map(({ zone }) => zone)), usual);
  for (const one of all) {
    const named = told(zones.sample(one.zone));
    one.isNamed = named === one.root;
    if (!one.isNamed) one.named = named;
  }
  const areUsual = ({ fewest, most }: typeof usual, others: number) =>
    within.length >= fewest && within.length >= (within.length + others) * most;
  const [isSlip, isFarSlip] = [areUsual(usual, outside.length), areUsual(far, outside.length - 1)];
  const hasOneRoot = all.every(({ root }) => root === all[0]?.root);
  const isMeant = meantApart(zones, within);
  const off = outside.filter((one) => {
    const { root, keys = { low: root, high: root }, named } = one;
    if (named !== undefined && !isOutside(named, keys)) return true;
    if (keys.low - root > far.keys || root - keys.high > far.keys) return isFarSlip;
    return isSlip && !hasOneRoot && !isMeant(one);
  });
  const contradicted = all.filter(
    ({ zone, keys, root, named }) =>
      named !== undefined && !(keys && isOutside(root, keys)) && !isTuned(zones, zone),
  );
  const odd = new Set([
    ...(areLayer(off, within) ? [] : off),
    ...(areLayer(contradicted, within) ? [] : contradicted),
  ]);
  return all.filter((one) => odd.has(one));
}

/** Tells zones whose root lies outside of their keys on purpose: tuned ones, outermost ones that are stretched, samples that others play too. */
function meantApart(zones: ZoneList, within: readonly Rooted[]): (one: Rooted) => boolean {
  const samples = new Set(within.map(({ zone, root }) => `${root} ${zones.sample(zone)}`));
  const least = within.reduce((sum, { keys }) => Math.min(sum, keys?.low ?? sum), Number.POSITIVE_INFINITY);
  const most = within.reduce((sum, { keys }) => Math.max(sum, keys?.high ?? sum), 0);
  return ({ zone, root, keys, isNamed }) => {
    if (!keys || isTuned(zones, zone) || samples.has(`${root} ${zones.sample(zone)}`)) return true;
    const isInward = (away: number) => away > 0 && (away < octave || isNamed);
    return (
      (keys.low < least && isInward(root - keys.high)) || (keys.high > most && isInward(keys.low - root))
    );
  };
}

/** Whether some zones are a layer of others on the same keys, as all their roots lie as many octaves from those. */
function areLayer(some: readonly Rooted[], within: readonly Rooted[]): boolean {
  if (some.length < 2) return false;
  const apart = new Set(some);
  const rootOn = new Map(
    within.filter((one) => !apart.has(one)).map(({ root, keys }) => [`${keys?.low} ${keys?.high}`, root]),
  );
  const distances = new Set(
    some.map(({ root, keys }) => root - (rootOn.get(`${keys?.low} ${keys?.high}`) ?? Number.NaN)),
  );
  const [distance = Number.NaN] = distances;
  return distances.size === 1 && distance !== 0 && distance % octave === 0;
}

/** Whether a zone is moved by keys, so that its root may lie elsewhere. */
function isTuned(zones: ZoneList, zone: number): boolean {
  const [moves, tunes] = [zones.values('transpose'), zones.values('tune')];
  const isMoved = (moves?.cells[zone] ?? -1) >= 0 && moves?.numbers[zone] !== 0;
  return isMoved || ((tunes?.cells[zone] ?? -1) >= 0 && Math.abs(tunes?.numbers[zone] ?? 0) >= centsOfKey);
}

function isOutside(root: number, { low, high }: { low: number; high: number }): boolean {
  return root < low || root > high;
}
