import type { Statements } from '../../trade/statements/statements';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { SampleEvidence } from '../sampleEvidence';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from '../zones/zoneList';
import { rootsInNames } from './rootsInNames';

/**
 * Gives zones their roots that some rows of a column of roots leave out, each with a note: by another zone with the same sample or the
 * same keys, by the notes in the names of the samples where those of all others agree with their roots, or by what the sample files
 * carry. What stays open is noted too. The zones of the table are those from number `first` on.
 */
export function fillRoots(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { rootKeyOf, pitchOf, statements }: SampleEvidence & { statements: Pick<Statements, 'blankRoot'> },
): void {
  const roots = zones.values('pitch_keycenter');
  if (!roots || !columns.some(({ meaning }) => meaning === 'pitch_keycenter')) return;
  const without: number[] = [];
  for (let zone = first; zone < zones.count; zone++)
    if (roots.cells[zone] < 0 && (zones.values('key')?.cells[zone] ?? -1) < 0) without.push(zone);
  if (without.length === 0 || without.length === zones.count - first) return;
  const known = new Known(zones, first);
  for (const zone of without) {
    const name = zones.sample(zone);
    const carried = rootKeyOf?.(zones.cells.value(zones.column('sample').cells[zone]));
    const pitch = pitchOf?.(zones.cells.value(zones.column('sample').cells[zone]));
    const said = statements.blankRoot;
    const found =
      answer(said && endOf(zones, zone, said.is), `"${shortened(said?.text ?? '')}" says`) ??
      answer(known.ofSample.get(name), 'another row gives it for the same sample') ??
      answer(known.ofKeys.get(keysOf(zones, zone)), 'another row gives it for the same keys') ??
      answer(known.named(name), 'the name of its sample gives it, as in the other rows') ??
      answer(carried, 'its sample file carries it') ??
      answer(pitch === undefined ? undefined : Math.round(pitch), 'it is the pitch measured in its sample');
    const span = zones.cells.rowSpan(zones.rows[zone]);
    notes.row = zones.rows[zone];
    const place = notes.place(span.start);
    if (!found) {
      const message = `${place} gives no root key, and nothing else gives it, so the region sounds as if it was recorded at key 60. Fill in its root key.`;
      notes.add('assumed', span, message, 'no root');
      continue;
    }
    const { lokey, sample } = { lokey: zones.values('lokey'), sample: zones.column('sample') };
    const cell = lokey && lokey.cells[zone] >= 0 ? lokey.cells[zone] : sample.cells[zone];
    roots.set(zone, cell, found.root);
    notes.add(
      'assumed',
      span,
      `${place} gives no root key; ${found.root} is taken, as ${found.how}.`,
      'root filled',
    );
  }
  notes.row = -1;
}

function endOf(zones: ZoneList, zone: number, end: 'lokey' | 'hikey'): number | undefined {
  const values = zones.values(end);
  return values && values.cells[zone] >= 0 ? values.numbers[zone] : undefined;
}

function answer(root: number | undefined, how: string): { root: number; how: string } | undefined {
  return root === undefined || !(root >= 0 && root <= 127) ? undefined : { root, how };
}

/** What the zones with a root say of others. */
class Known {
  /** Roots by sample and by keys; `undefined` where several differ. */
  readonly ofSample = new Map<string, number | undefined>();
  readonly ofKeys = new Map<string, number | undefined>();
  /** The root that a name tells. */
  readonly named: (name: string) => number | undefined;

  constructor(zones: ZoneList, first: number) {
    const roots = zones.column('pitch_keycenter');
    this.named = rootsInNames(zones, first);
    for (let zone = first; zone < zones.count; zone++) {
      if (roots.cells[zone] < 0) continue;
      const root = roots.numbers[zone];
      put(this.ofSample, zones.sample(zone), root);
      const keys = keysOf(zones, zone);
      if (keys !== '') put(this.ofKeys, keys, root);
    }
  }
}

function put(map: Map<string, number | undefined>, key: string, root: number): void {
  map.set(key, !map.has(key) || map.get(key) === root ? root : undefined);
}

/** The ends of the keys of a zone as one text; empty where they are not given. */
function keysOf(zones: ZoneList, zone: number): string {
  const [low, high] = [zones.values('lokey')?.oneMore(zone) ?? 0, zones.values('hikey')?.oneMore(zone) ?? 0];
  return low > 0 && high > 0 ? `${low} ${high}` : '';
}
