import { bareWord } from '../../../trade/languages/spelling';
import type { TakesElement } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import { switchWord } from '../words/words';
import type { Column } from './column';
import { columnFactsOf, textsOf } from './columnFacts';
import type { Rows } from './rows';

/** Words for a choice by chance, and for turns in an order; from memory. */
const random =
  /^(?:rand(?:om(?:ly|i[sz]ed?)?)?|shuffled?|by ?chance|dice|lottery|zufall\w*|zufaellig\w*|aleatoires?|hasard|au hasard|aleatori[oa]s?|al azar|azar|casual[ei]?|a caso|acaso|willekeurig|toeval|slump\w*|tilfaeldig\w*|tilfeldig\w*|satunnai\w*|losow[oyae]\w*|nahodn\w*|rastgele|veletlen\w*|случайн\p{L}*|随机|隨機|ランダム|무작위)$/u;
const turns =
  /^(?:cycles?|cyclic|cycling|round ?robin|rr|alternat(?:e|es|ing|ely)|rotat(?:e|es|ing|ion)|sequential(?:ly)?|in turn|turns?|in order|reihum|der reihe nach|abwechselnd|zyklisch|tour a tour|cyclique|alterne|alternado|alternato|ciclic[oa]|por turnos?|a turno|om beurten|afwisselend|turvis|vuorotellen|na zmiane|stridave|по очереди)$/u;

/**
 * Elements around regions that say how one of these is chosen: by a word as in `mode="random"`, by a switch as in `random="yes"` or by
 * their own name. Where positions or shares are written these tell more.
 */
export function takesOf(
  rows: Rows,
  assigned: readonly Assigned[],
  chain: readonly string[],
): { takes: TakesElement[]; drafts: Draft[] } {
  const told = /^(?:seq_position|seq_length|seq|lorand|hirand|rand_range)$/;
  if (assigned.some(({ target }) => told.test(target))) return { takes: [], drafts: [] };
  const region = chain.length - 1;
  const ofPlaces = rows.columns
    .filter((column) => column.level < region && !column.listed && maySay(column))
    .filter((column) => !assigned.some((one) => one.column === column))
    .flatMap((column) => takesAt(column, chain[column.level]).map((take) => ({ take, column })));
  const ofNames = chain.slice(1, -1).flatMap((element): TakesElement[] => {
    const are = kindOf(nameWords(element).join(' '));
    return are === 'random' ? [{ element, are }] : [];
  });
  const isSaid = ({ element }: TakesElement) => ofPlaces.some(({ take }) => take.element === element);
  const named = ofNames.filter((one) => !isSaid(one));
  return {
    takes: [...ofPlaces.map(({ take }) => take), ...named],
    drafts: [
      ...ofPlaces.map(({ take, column }) => draftOf(take, column.cells.find((cell) => cell) ?? nowhere)),
      ...named.map((take) => draftOf(take, rows.tags[chain.indexOf(take.element)] ?? nowhere)),
    ],
  };
}

/** What names of such places may speak of, and what those speak of that say it of something else. */
const ofChoice: ReadonlySet<string> = new Set('mode rr rand play trig group pos weak on'.split(' '));
const ofOther: ReadonlySet<string> = new Set(
  'name ignored lfo filter env dir fade xfade loop choke pan tune level'.split(' '),
);

/** Whether the name of a place, and of elements that it stands in, leave it open that it says how one is chosen. */
function maySay({ own, around, level }: Column): boolean {
  const speaks = (word: string, of: ReadonlySet<string>) =>
    kindOf(word) !== undefined || conceptsOf(word)?.concepts.some((one) => of.has(one)) === true;
  if (own.some((word) => kindOf(word) === undefined && speaks(word, ofOther))) return false;
  const isOpen = level > 0 || own.some((word) => speaks(word, ofChoice));
  return isOpen && around.flat().every((word) => speaks(word, ofChoice));
}

const nowhere = { start: 0, end: 0 };

function kindOf(text: string): 'random' | 'turns' | undefined {
  const word = bareWord(text)
    .replace(/[-_\s]+/g, ' ')
    .replaceAll('ß', 'ss');
  if (random.test(word)) return 'random';
  return turns.test(word) ? 'turns' : undefined;
}

function takesAt({ own, around, at, cells }: Column, element: string): TakesElement[] {
  const { tally } = columnFactsOf(textsOf({ own, around, at, cells, level: 0 }));
  const values = [...tally.keys()];
  const named = kindOf(own.join(' '));
  const kinds = ['random', 'turns'] as const;
  return kinds.flatMap((are): TakesElement[] => {
    const words = values.filter((value) =>
      named === undefined ? kindOf(value) === are : named === are && switchWord(value) === true,
    );
    return words.length > 0 ? [{ element, at, words, are }] : [];
  });
}

function draftOf(
  { element, at, words = [], are }: TakesElement,
  span: { start: number; end: number },
): Draft {
  const how =
    are === 'random' ? 'are chosen at random, each as often as the others' : 'take turns in their order';
  const said = words.map((word) => `"${word}"`).join(' or ');
  const where = at === undefined ? '' : ` where "${at.replace(/^@/, '')}" is ${said}`;
  return {
    id: `${element}.${are}`,
    message: `Regions of the same keys and velocities inside <${element}> ${how}${where}.`,
    confidence: 0.85,
    isGuess: true,
    evidence: [at === undefined ? 'The name of the element says so.' : 'The word says so.'],
    span,
    isAbout: () => false,
    alternatives: [],
  };
}
