import type { Instrument } from '../../model/instrument';
import { spreadKeys } from '../../trade/keySpread';
import type { StepValue } from './steps';

/** Regions that share the keys out among them: those in one element, with the same velocities. */
interface Part {
  /** The element that they stand in. */
  place: number;
  lowVelocity: number;
  highVelocity: number;
  regions: { header: number; root: number }[];
  lowest: number;
  highest: number;
}

/** What lets some regions sound and others not; only those alike share the keys out among them. */
const conditions = 'trigger sw_last sw_down sw_up sw_previous lorand channel lochan hichan'.split(' ');
/** With more parts than these each goes by its element alone, so that the work stays small. */
const mostParts = 64;
const wholeKeyboard = { low: 0, high: 127 };

/**
 * The keys of regions that give root keys alone, by header: they are shared out up to the middles between roots, the outermost ones
 * reach to the ends of the keyboard or of what an element around gives. Layers that sound at other velocities or by another start
 * have keys of their own, and so have elements side by side whose roots lie among one another.
 */
export function rootedKeys(instrument: Instrument): ReadonlyMap<number, readonly StepValue[]> {
  const { names } = instrument;
  const [low, high] = ['lokey', 'hikey'].map((name) => names.canonical(names.idOf(name)));
  const values = new Map<number, StepValue[]>();
  for (const parts of partsOf(instrument).values()) {
    for (const { part, roots } of rootsOf(parts)) {
      const [first] = part.regions;
      const numberOf = (name: number, otherwise: number) => {
        const place = instrument.effective(first.header, name);
        return place < 0 ? otherwise : instrument.number(place);
      };
      const given = { low: numberOf(low, wholeKeyboard.low), high: numberOf(high, wholeKeyboard.high) };
      const spans = spreadKeys(roots, given);
      for (const { header, root } of spans.size < 2 ? [] : part.regions) {
        const span = spans.get(root);
        if (!span || span.low > span.high) continue;
        values.set(header, [
          { parameter: 'lokey', value: span.low },
          { parameter: 'hikey', value: span.high },
        ]);
      }
    }
  }
  return values;
}

/** The regions with a root key and no keys of their own, by what lets them sound, and in parts. */
function partsOf(instrument: Instrument): ReadonlyMap<string, Part[]> {
  const { names } = instrument;
  const idOf = (name: string) => names.canonical(names.idOf(name));
  const [root, low, high] = [idOf('pitch_keycenter'), idOf('lokey'), idOf('hikey')];
  const alike = conditions.map(idOf);
  const places = placesOf(instrument, root);
  const sets = new Map<string, Map<string, Part>>();
  for (const header of instrument.regions) {
    const at = instrument.effective(header, root);
    if (at < 0 || instrument.own(header, low) >= 0 || instrument.own(header, high) >= 0) continue;
    const number = instrument.number(at);
    if (!(number >= 0 && number <= 127)) continue;
    const id = alike
      .map((name) => instrument.effective(header, name))
      .map((one) => (one < 0 ? '' : instrument.valueText(one)))
      .join(' ');
    const place = places.get(header) ?? -1;
    const [lowVelocity, highVelocity] = [instrument.lowVelocity[header], instrument.highVelocity[header]];
    const set = sets.get(id) ?? new Map<string, Part>();
    sets.set(id, set);
    const key = `${place} ${lowVelocity} ${highVelocity}`;
    const part = set.get(key) ?? {
      place,
      lowVelocity,
      highVelocity,
      regions: [],
      lowest: number,
      highest: number,
    };
    set.set(key, part);
    part.regions.push({ header, root: number });
    part.lowest = Math.min(part.lowest, number);
    part.highest = Math.max(part.highest, number);
  }
  return new Map([...sets].map(([id, parts]) => [id, [...parts.values()]]));
}

/** For each region the innermost element around it with more than one root key in it, or the outermost one. */
function placesOf(instrument: Instrument, root: number): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  /** By header, the one root key in it; NaN where there are several. */
  const only = new Map<number, number>();
  const roots = [...instrument.regions].map((header) => {
    const at = instrument.effective(header, root);
    return { header, root: at < 0 ? Number.NaN : instrument.number(at) };
  });
  for (const { header, root: number } of roots) {
    if (Number.isNaN(number)) continue;
    for (let at = instrument.parent(header); at >= 0; at = instrument.parent(at)) {
      const before = only.get(at);
      if (before !== undefined && Number.isNaN(before)) break;
      only.set(at, before === undefined || before === number ? number : Number.NaN);
    }
  }
  for (const { header } of roots) {
    let at = instrument.parent(header);
    while (at >= 0 && !Number.isNaN(only.get(at) ?? 0)) at = instrument.parent(at);
    found.set(header, at);
  }
  return found;
}

/** For each part all roots that share the keys out with its own. */
function rootsOf(parts: readonly Part[]): { part: Part; roots: number[] }[] {
  const own = ({ regions }: Part) => regions.map(({ root }) => root);
  if (parts.length > mostParts) {
    const byPlace = new Map<number, number[]>();
    for (const part of parts) byPlace.set(part.place, [...(byPlace.get(part.place) ?? []), ...own(part)]);
    return parts.map((part) => ({ part, roots: byPlace.get(part.place) ?? [] }));
  }
  return parts.map((part) => {
    const atOnce = parts.filter(
      (other) => other.lowVelocity <= part.highVelocity && part.lowVelocity <= other.highVelocity,
    );
    const isHere = (other: Part) => other.place === part.place;
    const isApart = (one: Part, other: Part) =>
      isSame(one, other) || one.highest < other.lowest || other.highest < one.lowest;
    const areApart = atOnce.every((one) => atOnce.every((other) => isApart(one, other)));
    return { part, roots: (areApart ? atOnce : atOnce.filter(isHere)).flatMap(own) };
  });
}

function isSame(one: Part, other: Part): boolean {
  return one.place === other.place;
}
