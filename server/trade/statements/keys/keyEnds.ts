import { bareWord } from '../../languages/spelling';
import { aroundBlank } from '../blanks';
import { columnsNamedIn } from './namedColumns';

/** The end of a key range that an empty cell is the other one of, and the sentence that says so. */
export interface BlankEnd {
  of: 'lokey' | 'hikey';
  text: string;
}

/** The end of their key range that the roots of all zones are, and the sentence that says so. */
export interface RootAtEnd {
  is: 'lokey' | 'hikey';
  text: string;
}

const longest = 2000;
const longestSentence = 200;
const sentences = /[.!?;](?=\s|$)|[\n\r]/u;
const oneKey =
  /\b(?:(?:one|single|same|that|this) (?:key|note)|(?:nur )?(?:eine|diese|dieselbe|einzelne|einzige) (?:einzige |einzelne )?(?:taste|note)|(?:une|la meme|cette) (?:seule )?(?:touche|note)|(?:una|la misma|esa) (?:sola |unica )?(?:tecla|nota)|(?:un|lo stesso|quel) (?:solo |unico )?tasto|(?:uma|a mesma|essa) (?:so |unica )?(?:tecla|nota)|(?:een|dezelfde|die) (?:enkele )?toets|(?:en|samma|bara en) (?:enda )?tangent)(?!\p{L})/u;
const saying =
  /\s*(?:[=:]|(?<!\p{L})(?:is|are|equals?|always|lies?|sits?|ist|sind|immer|liegt|liegen|entspricht|est|sont|toujours|es|son|siempre|sempre|e|sono|sao|altijd|zijn|ligt|alltid|ar|er|altid)(?!\p{L}))/u;
const bounded =
  /(?<!\p{L})(?:not?|never|unless|except|but|if|when|where|without|nicht|nie|kein\p{L}*|ausser|wenn|falls|aber|wo|pas|jamais|sauf|si|quand|mais|nunca|salvo|excepto|cuando|pero|non|mai|tranne|eccetto|se|quando|ma|nao|exceto|niet|nooit|behalve|als|inte|aldrig|utom|om)(?!\p{L})/u;

/** What some texts say of an empty end of a key range: `HIGH left blank = one key, same as LOW`; `undefined` where they say nothing of it. */
export function blankEndIn(texts: readonly string[]): BlankEnd | undefined {
  for (const sentence of sentencesOf(texts)) {
    const around = aroundBlank(sentence);
    if (!around) continue;
    const [before, behind] = [columnsNamedIn(around.before), columnsNamedIn(around.behind)];
    if (before.has('pitch_keycenter') || behind.has('pitch_keycenter')) continue;
    const isOneKey = oneKey.test(around.behind) || oneKey.test(around.before);
    const [low, high] = [before.has('lokey'), before.has('hikey')];
    // `An empty high key means the low one` names both behind.
    const isLowBehind = behind.has('lokey') && (high || behind.has('hikey') || isOneKey);
    if (!low && (isLowBehind || (isOneKey && !behind.has('lokey'))) && isSaid(around.behind))
      return { of: 'hikey', text: sentence };
    if (low && !high && (behind.has('hikey') || isOneKey)) return { of: 'lokey', text: sentence };
  }
  return undefined;
}

/** What some texts say of all roots: `the root is always the low key`; `undefined` where they do not, or not without an exception. */
export function rootAtEndIn(texts: readonly string[]): RootAtEnd | undefined {
  for (const sentence of sentencesOf(texts)) {
    const bare = bareWord(sentence);
    const verb = saying.exec(bare);
    if (!verb || bounded.test(bare) || aroundBlank(sentence)) continue;
    const before = columnsNamedIn(
      bare.slice(0, verb.index).replace(/\b(root|grundton|fondamental)s\b/gu, '$1'),
    );
    const behind = columnsNamedIn(bare.slice(verb.index));
    const [low, high] = [behind.has('lokey'), behind.has('hikey')];
    if (!before.has('pitch_keycenter') || before.size > 1 || low === high || /\d/.test(bare)) continue;
    return { is: low ? 'lokey' : 'hikey', text: sentence };
  }
  return undefined;
}

function isSaid(words: string): boolean {
  return !bounded.test(words);
}

function sentencesOf(texts: readonly string[]): string[] {
  return texts.flatMap((whole) =>
    whole
      .slice(0, longest)
      .split(sentences)
      .map((one) => one.trim())
      .filter((one) => one !== '' && one.length <= longestSentence),
  );
}
