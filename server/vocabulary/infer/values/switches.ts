import { isAudioFileName } from '../../../model/fileNames';
import { bareWord } from '../../../trade/languages/spelling';
import type { SwitchedOff } from '../../vocabulary';
import type { Draft, Settled } from '../draft';
import { isForeignWord } from '../elements/foreignElement';
import { saysSo } from '../saysSo';
import type { UnusedPlace } from '../stated/leftOut';
import { switchHeading } from '../words/headingMeanings';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import { oppositeOf, switchWord } from '../words/words';
import type { Column } from './column';
import type { Rows } from './rows';

/** Words for what sounds where it is said to be so, what does not, and what names either (common practice). */
const on: ReadonlySet<string> = new Set(
  'on enabled enable active activated live audible sounding playable used use plays aktiv aktiviert ein eingeschaltet klingt spielt an actif active allume activo attivo ativo acceso encendido ligado aan ingeschakeld actief pa aktivni zapnuto wlaczony wlaczone aktywny paalla taendt included include'.split(
    ' ',
  ),
);
const off: ReadonlySet<string> = new Set(
  'off mute muted disabled disable bypass bypassed skip skipped ignore ignored inactive deactivated silent silenced unused suspended stumm inaktiv deaktiviert desactive inactif inactivo inattivo desactivado disattivato aus ausgeschaltet abgeschaltet gesperrt muet coupe spento muto apagado silenciado silencioso uit uitgeschakeld gedempt dempt av avstangd pois wylaczony wylaczone vypnuto vypnute slukket frakoblet omitted omit excluded exclude hidden parked retired'.split(
    ' ',
  ),
);
const either: ReadonlySet<string> = new Set('status state zustand etat estado stato condition'.split(' '));
const weak: ReadonlySet<string> = new Set('is flag the region zone part'.split(' '));

/** Places that switch regions or groups of them off, and the rows that are on. */
export interface Switches {
  off: SwitchedOff[];
  drafts: Draft[];
  /** Without what is switched off and without the switches. */
  rows: Rows;
}

/** Finds places that switch elements of the chain off. Where all would be off, nothing is a switch. */
export function findSwitches(
  rows: Rows,
  chain: readonly string[],
  unused: readonly UnusedPlace[] = [],
): Switches {
  const named = rows.columns.flatMap((column) => {
    const words = offWordsOf(column, chain[column.level], rows) ?? foreignWordsOf(column, rows, chain);
    if (!words || !column.listed) return words ? [{ column, words }] : [];
    // What is off is the entry that is referred to: with it all that refers to it.
    const reference = rows.columns.find(
      ({ at, level, listed }) => at === column.at && level === column.level && !listed,
    );
    const keys = column.cells.flatMap((cell, row) => {
      const key = cell && words.has(folded(cell.text)) ? reference?.cells[row]?.text : undefined;
      return key === undefined ? [] : [folded(key)];
    });
    return reference && keys.length > 0 ? [{ column: reference, words: new Set(keys) }] : [];
  });
  const isSaid = ({ column, value }: UnusedPlace) =>
    !named.some((one) => one.column === column && one.words.has(folded(value)));
  const told = unused.filter(isSaid);
  const said = told.map(({ column, value }) => ({ column, words: new Set([folded(value)]) }));
  const found = [...named, ...said];
  const isOff = Array.from({ length: rows.count }, (_, row) =>
    found.some(({ column, words }) => words.has(folded(column.cells[row]?.text))),
  );
  if (found.length === 0 || !isOff.includes(false)) return { off: [], drafts: [], rows };
  const columns = new Set(named.map(({ column }) => column));
  const refersTo = new Set(rows.columns.flatMap(({ at, listed }) => (listed ? [at] : [])));
  return {
    off: found.map(({ column, words }) => ({
      element: chain[column.level],
      at: column.at,
      words: [...words],
    })),
    drafts: [
      ...named.map(({ column, words }) => draftOf(column, words, chain)),
      ...told.map((one) => unusedDraft(one, chain)),
    ],
    rows: {
      ...rows,
      count: isOff.filter((one) => !one).length,
      columns: rows.columns.flatMap((column) => {
        const cells = column.cells.filter((_, row) => !isOff[row]);
        const isSwitch = columns.has(column) && !refersTo.has(column.at);
        return isSwitch || cells.every((cell) => !cell) ? [] : [{ ...column, cells }];
      }),
    },
  };
}

function draftOf(column: Column, words: ReadonlySet<string>, chain: readonly string[]): Draft {
  const element = chain[column.level];
  const place = column.at.replace(/^@/, '');
  const said = [...words].map((word) => `"${word}"`).join(' or ');
  return {
    id: `${element}/${column.at}.off`,
    message: `"${place}" switches <${element}> off with ${said}; what is off is left out.`,
    confidence: 0.9,
    evidence: ['Its name and its values say so.'],
    span: column.cells.find((cell) => cell) ?? { text: '', start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
}

function unusedDraft({ column, value, comment }: UnusedPlace, chain: readonly string[]): Draft {
  const element = chain[column.level];
  return {
    id: `${element}/${column.at}.unused`,
    message: `<${element}> with "${value}" is left out.`,
    confidence: 0.9,
    isGuess: true,
    evidence: [saysSo(comment)],
    span: column.cells.find((cell) => cell?.text === value) ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
}

/** What stands in a place where its element is off, in lower case; `undefined` for a place that switches nothing. */
function offWordsOf(
  { own, around, cells, at, level }: Column,
  element: string,
  { columns }: Rows,
): ReadonlySet<string> | undefined {
  const inner = /^(.+\/)[^/]+$/.exec(at)?.[1];
  // An element with numbers of its own, such as a loop, is switched alone.
  if (
    inner !== undefined &&
    !around.every(areWeak) &&
    columns.some(
      (other) => other.at !== at && other.level === level && other.at.startsWith(inner) && isNumeric(other),
    )
  )
    return undefined;
  const ofElement = new Set(nameWords(element));
  const isWeak = (word: string) => weak.has(word) || ofElement.has(word);
  const telling = own.filter((word) => !isWeak(word));
  const heading = switchHeading(own);
  const known = (words: readonly string[]) =>
    words.every((word) => on.has(word) || off.has(word) || either.has(word) || isWeak(word));
  if (
    telling.length === 0 ||
    (!known(telling) && !heading) ||
    !around.every((words) => known(words) || sayLittle(words))
  )
    return undefined;
  const isNegative = known(telling) ? telling.some((word) => off.has(word)) : heading === 'disabled';
  const isStatus = !isNegative && telling.every((word) => either.has(word));
  const values = new Set(cells.flatMap((cell) => (cell ? [folded(cell.text)] : [])));
  const found = new Set<string>();
  for (const value of values) {
    const said = saysOn(value);
    if (said === undefined) {
      if (isStatus) continue;
      return undefined;
    }
    // A place such as `disabled` may repeat its name.
    const isOff = isNegative ? said || (value !== 'off' && off.has(bareWord(value))) : !said;
    if (isOff) found.add(value);
    else {
      const other = oppositeOf(value);
      if (other !== undefined && !isStatus) found.add(folded(other));
    }
  }
  return found.size > 0 ? found : undefined;
}

/**
 * What stands in a place that names the kind of a region where it is none but an effect or part of a panel, in lower case: a word
 * for one, in regions that name no keys though others do. `undefined` where there are none.
 */
function foreignWordsOf(
  column: Column,
  rows: Rows,
  chain: readonly string[],
): ReadonlySet<string> | undefined {
  const region = chain.length - 1;
  if (column.level !== region || column.around.length > 0 || !column.at.startsWith('@')) return undefined;
  if (column.cells.some((cell) => cell && isAudioFileName(cell.text))) return undefined;
  const found = new Set<string>();
  const others = new Set<string>();
  for (const cell of column.cells) {
    const value = folded(cell?.text);
    (cell && nameWords(cell.text).some(isForeignWord) ? found : others).add(value);
  }
  if (found.size === 0 || others.size === 0) return undefined;
  const isFound = (row: number) => found.has(folded(column.cells[row]?.text));
  const own = rows.columns.filter((one) => one.level === region && isKeyNamed(one));
  const isKeyed = (row: number) => own.some(({ cells }) => cells[row] !== undefined);
  const all = Array.from({ length: rows.count }, (_, row) => row);
  return all.every((row) => !isFound(row) || !isKeyed(row)) && all.some(isKeyed) ? found : undefined;
}

/** Whether a place names an end of a range of keys. */
function isKeyNamed({ own, around }: Column): boolean {
  const target = meaningsOf(own, around, [])[0]?.target;
  return target !== undefined && /^(?:lokey|hikey|key_range|key)$/.test(target);
}

function isNumeric({ cells }: Column): boolean {
  return cells.some((cell) => cell && /^\s*[-+]?\d/.test(cell.text));
}

/** Whether words are known to say nothing, as `settings` does. */
function areWeak(words: readonly string[]): boolean {
  return words.every((word) => conceptsOf(word)?.concepts.every((concept) => concept === 'weak') === true);
}

/** Whether the name of an element says nothing of what is in it, as `settings` does. */
function sayLittle(words: readonly string[]): boolean {
  return words.every((word) => conceptsOf(word)?.concepts.every((concept) => concept === 'weak') ?? true);
}

/** Whether a value says that something is on; `undefined` for one that says neither. */
function saysOn(value: string): boolean | undefined {
  const bare = bareWord(value);
  if (off.has(bare)) return false;
  return on.has(bare) ? true : switchWord(value);
}

function folded(text: string | undefined): string {
  return (text ?? '').trim().toLowerCase();
}

/** Loops with an element of their own that a place in it switches off: what else stands there then means nothing. */
export function loopSwitches(settled: readonly Settled[]): SwitchedOff[] {
  const all = settled.flatMap(({ parameters }) => parameters);
  const found = new Map<string, SwitchedOff>();
  for (const { parameter, at, form } of all) {
    const [, element, attribute] = /^([^/[\]@]+)\/(@[^/]+)$/.exec(at) ?? [];
    if (parameter !== 'loop_mode' || form.kind !== 'words' || !element || !attribute) continue;
    const words = Object.entries(form.words).flatMap(([word, value]) => (value === 'no_loop' ? [word] : []));
    const hasOthers = all.some((other) => other.at.startsWith(`${element}/`) && other.at !== at);
    if (words.length > 0 && hasOthers) found.set(at, { element, at: attribute, words });
  }
  return [...found.values()];
}
