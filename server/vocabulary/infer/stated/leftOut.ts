import { bareWord, isForm } from '../../../trade/languages/spelling';
import { notUsedIn } from '../../../trade/statements/notUsed';
import type { Draft } from '../draft';
import { saysSo } from '../saysSo';
import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import { nameWords } from '../words/nameWords';

// Words from memory.
const withoutEffect =
  /(?<!\p{L})(?:(?:is|are|was) (?:only|just|merely) (?:what|(?:an?|the) (?:\p{L}+ )?(?:reading|measurement|note|remark|reminder|label|hint|comment))|not (?:applied|used|played back|in effect)|for (?:information|reference|display|the record) only|has no effect|changes nothing|(?:is|are) already (?:contained|included|applied|counted|in (?:the|all|these))|(?:bereits|schon) (?:enthalten|eingerechnet|berücksichtigt|angewend\p{L}+|angewandt)|déjà (?:inclus|compris|appliqu|compt)\p{L}*|ya (?:está|están) (?:incluid|aplicad|contad)\p{L}*|già (?:inclus|compres|applicat)\p{L}*|(?:al|reeds) (?:inbegrepen|verwerkt|toegepast)|wird nicht (?:angewendet|angewandt|benutzt|ausgewertet)|nur (?:zur (?:information|anzeige|erinnerung)|als (?:notiz|hinweis)|ein messwert|der messwert)|ohne wirkung|n['’]est pas appliqu\p{L}*|à titre (?:indicatif|d['’]information)|sans effet|no se aplica|s[oó]lo (?:informativ\p{L}*|orientativ\p{L}*|de referencia)|sin efecto|non (?:si applica|viene applicat\p{L}*|è applicat\p{L}*)|solo (?:indicativ\p{L}*|informativ\p{L}*|per informazione)|senza effetto|não (?:se aplica|é aplicad\p{L}*)|só informativ\p{L}*|sem efeito|niet toegepast|alleen ter informatie|zonder effect|används inte|bara (?:till|för) information|utan effekt|anvendes ikke|kun til (?:orientering|information)|uden virkning|ei käytetä|vain tiedoksi|nie (?:jest|są) stosowan\p{L}*|tylko informacyjn\p{L}*|nepoužívá se|jen pro informaci|не применя\p{L}*|только для справки|не влияет)(?!\p{L})|不应用|仅供参考|不起作用|適用されない|参考(?:値|のみ)|적용되지 않|참고용/iu;
const mostComments = 200;
const longest = 300;
/** The words of a place that a clause starts with lie among so many. */
const mostLead = 3;

const clauseEnds = /[.!?;](?=\s|$)|[。；！？\n\r]/u;

/** A place of an element around regions whose values the text says are not applied. */
export interface WithoutEffect {
  column: Column;
  /** The clause that says so. */
  text: string;
}

/** Places around regions whose values are not applied by what the text says: `level is only what the meter showed`. */
export function placesWithoutEffect(
  prose: readonly string[],
  { columns }: Rows,
  chain: readonly string[],
): WithoutEffect[] {
  const clauses = prose
    .flatMap((text) => text.split(clauseEnds))
    .filter((clause) => clause.length <= longest && withoutEffect.test(clause));
  if (clauses.length === 0) return [];
  return columns.flatMap((column): WithoutEffect[] => {
    const { own, level } = column;
    if (level === chain.length - 1 || own.length === 0) return [];
    const areSeveral = columns.some((other) => other !== column && other.own.join() === own.join());
    const element = nameWords(chain[level]);
    const text = clauses.find((clause) => {
      const words = wordsIn(clause);
      if (!startsWith(words, own)) return false;
      // Where inner elements have a place of the same name, the clause has to say which is meant.
      return (
        !areSeveral || element.every((word) => words.some((one) => isForm(one, word) || word.includes(one)))
      );
    });
    return text === undefined ? [] : [{ column, text: text.trim() }];
  });
}

function wordsIn(clause: string): string[] {
  return (clause.match(/[\p{L}\p{N}]+/gu) ?? []).map(bareWord);
}

/** Whether a clause starts with a name, small words before it apart. */
function startsWith(words: readonly string[], own: readonly string[]): boolean {
  for (let from = 0; from < mostLead; from++)
    if (own.every((word, at) => words[from + at] === word)) return true;
  return false;
}

/** The decisions that places are left out that the text says are not applied. */
export function withoutEffectDrafts(places: readonly WithoutEffect[], chain: readonly string[]): Draft[] {
  return places.map(({ column, text }) => ({
    id: `${chain[column.level]}/${column.at}.unapplied`,
    message: `"${column.at.replace(/^@/, '')}" of <${chain[column.level]}> is left out.`,
    confidence: 0.9,
    isGuess: true,
    evidence: [saysSo(text)],
    span: column.cells.find((cell) => cell) ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  }));
}

/** An element that a comment before it says is not used: its name, where its tag starts, and the attributes of that. */
interface UnusedElement {
  name: string;
  start: number;
  attributes: ReadonlyMap<string, string>;
  comment: string;
}

const commentBefore =
  /<!--((?:(?!-->)[\s\S]){1,300})-->\s*<([\p{L}_][\p{L}\p{N}_.:-]*)((?:\s+[^\s=>/]+\s*=\s*(?:"[^"]*"|'[^']*'))*)/gu;
const attribute = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/gu;

/** Elements that a comment right before them says are not used. */
function unusedElements(text: string): UnusedElement[] {
  const found: UnusedElement[] = [];
  let looked = 0;
  for (const match of text.matchAll(commentBefore)) {
    const [whole, said = '', name = '', tag = ''] = match;
    if (looked++ >= mostComments) break;
    const comment = said.replace(/\s+/g, ' ').trim();
    if (!saysUnused(comment, name)) continue;
    const attributes = new Map<string, string>();
    for (const [, key = '', one, other] of tag.matchAll(attribute)) attributes.set(key, one ?? other ?? '');
    // What is said of a value is not said of the element behind, which may have another one.
    if (saidOfValues(comment).some(({ name, value }) => attributes.get(name) !== value)) continue;
    const start = match.index + whole.length - tag.length;
    found.push({ name, start, attributes, comment });
  }
  return found;
}

/** Words before such a phrase that speak of the element behind the comment, besides its own name. */
const pointing: ReadonlySet<string> = new Set(
  'that which means mean marks heisst bedeutet dass signifie que significa quiere decir vuol dire che betekent dat this these it they is are was were the one ones set group layer take old alt dies diese dieser dieses wird werden ist sind der die das ce cette ces est sont es este esta estos son questo questa questi sono deze dit worden zijn denna dessa det de to nie tyto tento ta это эти эта'.split(
    ' ',
  ),
);
const mostShort = 20;

/** Whether a comment says by a clause of its own that the element behind it is not used. */
function saysUnused(comment: string, element: string): boolean {
  const own = nameWords(element);
  return comment.split(/[,;:.!?()、。，；]/u).some((clause) => {
    const found = notUsedIn(clause);
    if (!found) return false;
    if (/[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}]/u.test(clause))
      return clause.trim().length <= mostShort;
    const before = wordsIn(clause.slice(0, found.index));
    return before.every((word) => pointing.has(word) || own.some((one) => isForm(word, one)));
  });
}

const namedValue =
  /(?<![\p{L}\p{N}_.-])([\p{L}_][\p{L}\p{N}_.-]{0,40})\s?=\s?(?:"([^"]{1,24})"|'([^']{1,24})'|([\p{L}\p{N}_+-]{1,24}))/gu;

/** What a text says of places with values, as `on="no": not played`, each up to the next one. */
function saidOfValues(text: string): { name: string; value: string; says: string }[] {
  const all = [...text.matchAll(namedValue)];
  return all.map((found, at) => {
    const [whole, name = '', one, other, bare] = found;
    const says = text.slice(found.index + whole.length, all[at + 1]?.index);
    return { name, value: one ?? other ?? bare ?? '', says };
  });
}

/** Places whose elements a text says are not used where a value stands there: `on="no": not played`. */
function unusedByValue(prose: readonly string[], { columns }: Rows, chain: readonly string[]): UnusedPlace[] {
  return prose
    .filter((text) => text.length <= longest && text.includes('='))
    .slice(0, mostComments)
    .flatMap((text) =>
      saidOfValues(text).flatMap(({ name, value, says }): UnusedPlace[] => {
        const placeOf = (place: string, text: string) =>
          columns.find(
            ({ at, level, listed, cells }) =>
              level > 0 &&
              !listed &&
              at.replace(/^@/, '') === place &&
              cells.some((cell) => cell?.text.trim() === text),
          );
        const comment = text.replace(/\s+/g, ' ').trim();
        const column = placeOf(name, value);
        if (column) return saysUnused(says, chain[column.level]) ? [{ column, value, comment }] : [];
        // `status: k = kept, d = not used`.
        const listed = placeOf(/^\s*([\p{L}_][\p{L}\p{N}_.-]{0,40})\s*:/u.exec(text)?.[1] ?? '', name);
        const isUnused = listed && saysUnused(`${value} ${says}`, chain[listed.level]);
        return listed && isUnused ? [{ column: listed, value: name, comment }] : [];
      }),
    );
}

/** A place that tells an element that is not used from the others of its name, with its value there. */
export interface UnusedPlace {
  column: Column;
  value: string;
  comment: string;
}

/**
 * Groups and regions that the text says are not used: by a value that stands there, or in a comment right before them, by an attribute
 * that no other of their name shares.
 */
export function unusedPlaces(
  text: string,
  prose: readonly string[],
  rows: Rows,
  chain: readonly string[],
): UnusedPlace[] {
  return [...unusedByValue(prose, rows, chain), ...unusedBehind(text, rows, chain)];
}

function unusedBehind(text: string, { columns }: Rows, chain: readonly string[]): UnusedPlace[] {
  return unusedElements(text).flatMap(({ name, start, attributes, comment }): UnusedPlace[] => {
    const level = chain.indexOf(name);
    if (level < 1) return [];
    for (const [key, value] of attributes) {
      const column = columns.find((one) => one.level === level && one.at === `@${key}` && !one.listed);
      const starts = new Set(column?.cells.flatMap((cell) => (cell?.text === value ? [cell.start] : [])));
      if (column && starts.size === 1) return [{ column, value, comment }];
    }
    return level === chain.length - 1 ? unusedInside(start, comment, columns, level) : [];
  });
}

/** A region by a value inside of it that no other region has: the first one behind the start of its tag. */
function unusedInside(
  start: number,
  comment: string,
  columns: readonly Column[],
  level: number,
): UnusedPlace[] {
  const own = columns.filter((one) => one.level === level && !one.listed);
  let [row, nearest] = [-1, Number.POSITIVE_INFINITY];
  for (const { cells } of own)
    for (const [at, cell] of cells.entries())
      if (cell && cell.start > start && cell.start < nearest) [row, nearest] = [at, cell.start];
  const column = own.find(({ cells }) => {
    const text = cells[row]?.text;
    return text !== undefined && cells.filter((cell) => cell?.text === text).length === 1;
  });
  const value = column?.cells[row]?.text;
  return column && value !== undefined ? [{ column, value, comment }] : [];
}
