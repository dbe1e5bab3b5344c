import { counted } from '../../model/wording/counted';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from '../zones/zoneList';
import { rootsInNames } from './rootsInNames';

/** A root more than two octaves outside of its keys is looked at (our choice). */
const far = 24;
/** So many others have to have theirs among their keys, and so large a share of all (our choice). */
const fewestWithin = 2;
const mostWithin = 2 / 3;

/** A zone whose root lies outside of its keys. */
interface Outside {
  zone: number;
  root: number;
  low: number;
  high: number;
}

/**
 * Notes roots far outside of the keys of their zones where those of other rows lie among theirs, with what the name of the sample says: a
 * slip, as the sample would play octaves too high or too low. They are kept. The zones of the table are those from number `first` on.
 */
export function noteFarRoots(zones: ZoneList, first: number, notes: TableNotes): void {
  const [roots, key] = [zones.values('pitch_keycenter'), zones.values('key')];
  const [lows, highs] = [zones.values('lokey') ?? key, zones.values('hikey') ?? key];
  if (!roots || !lows || !highs) return;
  const outside: Outside[] = [];
  let [within, known] = [0, 0];
  for (let zone = first; zone < zones.count; zone++) {
    if (roots.cells[zone] < 0) continue;
    const [from, to] = [lows.cells[zone] < 0 ? key : lows, highs.cells[zone] < 0 ? key : highs];
    if (!from || !to || from.cells[zone] < 0 || to.cells[zone] < 0) continue;
    const [root, low, high] = [roots.numbers[zone], from.numbers[zone], to.numbers[zone]];
    known++;
    if (root >= low && root <= high) within++;
    else if (low - root > far || root - high > far) outside.push({ zone, root, low, high });
  }
  if (outside.length === 0) return;
  const areUsual = within >= fewestWithin && within >= (known - 1) * mostWithin;
  const named = rootsInNames(zones, first, new Set(outside.map(({ zone }) => zone)));
  for (const { zone, root, low, high } of outside) {
    const told = named(zones.sample(zone));
    const isTold = told !== undefined && told >= low && told <= high;
    if (!areUsual && !isTold) continue;
    const cell = roots.cells[zone];
    const span = { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
    const away = root < low ? `${counted(low - root, 'key')} below` : `${counted(root - high, 'key')} above`;
    const keys = low === high ? `its key ${low}` : `its keys ${low}–${high}`;
    const name = isTold ? `; the name of its sample says ${told}` : ', unlike those of the other rows';
    notes.row = zones.rows[zone];
    notes.add(
      'assumed',
      span,
      `${notes.place(span.start)}: the root key ${root} lies ${away} ${keys}${name}. It is kept. Check it.`,
      'far root',
    );
  }
  notes.row = -1;
}
