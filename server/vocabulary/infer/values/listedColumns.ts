import type { Steps } from '../../../model/steps';
import { readEntriesInSteps, referencesTo } from '../../read/sampleList';
import type { SampleListPlace } from '../../vocabulary';
import type { RegionElement } from '../elements/regionElement';
import type { ElementType, Survey } from '../elements/survey';
import { folderWords } from '../samples/sampleFiles';
import { holdsRates } from '../samples/statedRates';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import type { Column } from './column';
import type { Rows } from './rows';

const mostLists = 6;
const mostLooked = 40;

/**
 * Adds what the entries of lists say of the regions that refer to them, as further places: roots and levels beside the files of a
 * list of samples, trims of microphones that regions name. In steps.
 */
export function* withListed(
  text: string,
  rows: Rows,
  survey: Survey,
  region: RegionElement,
  list: SampleListPlace | undefined,
): Steps<Rows> {
  const added: Column[] = [];
  const last = region.chain.length - 1;
  if (list) {
    const place = region.pathAt;
    const reference = rows.columns.find(({ at, level }) => at === place && level === last);
    if (reference) {
      const files = [list.path, list.rate];
      const entries = { element: list.element, key: list.key, areNamed: false };
      added.push(...(yield* columnsOf(text, reference, entries, files)));
    }
  }
  let looked = 0;
  for (const type of survey.types) {
    if (looked >= mostLooked || added.length >= 200) break;
    if (!isList(type, region) || type.name === list?.element) continue;
    looked++;
    const found = taggedBy(type, rows);
    const entries = { element: type.name, key: found?.key ?? '', areNamed: true };
    if (found) added.push(...(yield* columnsOf(text, found.column, entries, [])));
    if (added.length > 0 && looked > mostLists * 4) break;
  }
  return added.length === 0 ? rows : { ...rows, columns: [...rows.columns, ...added] };
}

/** Whether elements stand beside the regions and say something of the trade, name a folder, or have names. */
function isList(type: ElementType, { chain, types }: RegionElement): boolean {
  if (types.has(type) || chain.includes(type.name) || type.count < 2) return false;
  for (let at = type.parent; at; at = at.parent) if (types.has(at)) return false;
  const parts = [...type.children.values()].filter(({ mostInParent }) => mostInParent === 1);
  return [...type.attributes.keys(), ...parts.map(({ name }) => name)].some((name) => {
    const words = nameWords(name);
    const target = meaningsOf(words, [], [])[0]?.target;
    return words.some((word) => folderWords.has(word)) || (target !== undefined && listedTargets.has(target));
  });
}

/** What can be said of a microphone, a place where samples were taken, or a part of the keyboard. */
const listedTargets: ReadonlySet<string> = new Set(
  'volume attenuation pan tune transpose label group_name lokey hikey key_range pitch_keycenter lovel hivel velocity_range'.split(
    ' ',
  ),
);

/** The place of regions that holds the keys of a list, and that of the keys. */
function taggedBy(type: ElementType, rows: Rows): { column: Column; key: string } | undefined {
  const inside = [...type.children.values()].flatMap(({ name, text, mostInParent }) =>
    text && mostInParent === 1 ? [[name, text] as const] : [],
  );
  const sites = [...[...type.attributes].map(([name, site]) => [`@${name}`, site] as const), ...inside];
  for (const [key, { values, count }] of sites) {
    const names = new Set(values.map(({ text }) => text.trim()));
    if (count !== type.count || names.size !== values.length) continue;
    const keys = new Set([...names].flatMap((name) => referencesTo(name, key)));
    const ofType = new Set(nameWords(type.name));
    const column = rows.columns.find(({ at, own, cells }) => {
      // What stands in an entry refers to no entry.
      if (at.startsWith(`${type.name}/`)) return false;
      const filled = cells.filter((cell) => cell);
      if (filled.length === 0 || !filled.every((cell) => cell && keys.has(cell.text.trim()))) return false;
      const isNumeric = filled.every((cell) => cell && /^\s*\d+\s*$/.test(cell.text));
      return !isNumeric || own.some((word) => ofType.has(word) || ofType.has(`${word}s`));
    });
    if (column) return { column, key };
  }
  return undefined;
}

/** The elements of a list, the place that they are referred to by, and whether their names are those of what refers to them. */
interface Entries {
  element: string;
  key: string;
  areNamed: boolean;
}

/** The places of entries, with what stands there for the entry that each row refers to. */
function* columnsOf(
  text: string,
  reference: Column,
  { element, key, areNamed }: Entries,
  without: readonly (string | undefined)[],
): Steps<Column[]> {
  const byKey = new Map<string, Map<string, { text: string; start: number; end: number }>>();
  const places = new Set<string>();
  for (const [position, { values }] of (yield* readEntriesInSteps(text, element)).entries()) {
    const name = key.startsWith('#') ? String(position + Number(key.slice(1))) : values.get(key)?.text;
    if (name === undefined || byKey.has(name)) continue;
    for (const one of referencesTo(name, key)) if (!byKey.has(one)) byKey.set(one, new Map(values));
    for (const place of values.keys()) places.add(place);
  }
  const columns: Column[] = [];
  for (const at of places) {
    if (without.includes(at) || columns.length >= 40) continue;
    const words = at.split('/').map((step) => nameWords(step.replace(/^@/, '')));
    const own = at === '.' ? [] : (words.at(-1) ?? []);
    // What a file is called is no name of a region; a rate or a number of frames is that of the file.
    const isName = areNamed && own.some((word) => conceptsOf(word)?.concepts.includes('name'));
    if (own.length === 0 || (!isName && (at === key || words.flat().every((word) => isOfFile(word)))))
      continue;
    columns.push({
      level: reference.level,
      at: reference.at,
      own,
      around: words.slice(0, -1),
      listed: { element, key, at },
      cells: reference.cells.map((cell) => byKey.get(cell?.text.trim() ?? '')?.get(at)),
    });
  }
  return columns.filter((column) => column.cells.some((cell) => cell) && !holdsRates(column));
}

const fileConcepts: ReadonlySet<string> = new Set([
  'name',
  'frames',
  'len',
  'ignored',
  'weak',
  'chan',
  'file',
]);

function isOfFile(word: string): boolean {
  return conceptsOf(word)?.concepts.every((concept) => fileConcepts.has(concept)) ?? false;
}
