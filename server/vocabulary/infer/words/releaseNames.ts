import { byCount } from '../../../model/wording/counted';
import { listText } from '../../../model/wording/listText';
import { startInTitle } from '../../../trade/readings/startInTitle';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft, Settled } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';

type WordsForm = Extract<ValueForm, { kind: 'words' }>;

const mostNames = 96;
/** A name with one of these speaks of how long a sound dies away (common practice). */
const ofTimes =
  /(?<!\p{L})(?:long|short|slow|fast|quick|time|medium|lang\p{L}*|kurz\p{L}*|schnell\p{L}*|langsam\p{L}*|zeit|court\p{L}*|lent\p{L}*|rapide|temps|larg[ao]s?|cort[ao]s?|rápid\p{L}*|tiempo|lung[hoa]\p{L}*|cort[oa]|veloc\p{L}*|tempo|snel|traag|kort\p{L}*)(?!\p{L})/iu;

/**
 * What names of groups or regions say of when they start: some are named after letting a key go, others not. `undefined` where they say
 * nothing or another place does.
 */
export function startByNames(one: Assigned, assigned: readonly Assigned[]): WordsForm | undefined {
  const names = [...one.facts.tally.keys()];
  const isTold = assigned.some(({ target }) => target === 'trigger' || target === 'release_switch');
  if (isTold || one.column.level === 0 || names.length > mostNames) return undefined;
  const released = names.filter(isOfRelease);
  const areSome = released.length > 0 && (released.length < names.length || one.texts.includes(undefined));
  if (!areSome || names.includes('__proto__')) return undefined;
  return {
    kind: 'words',
    words: Object.fromEntries(names.map((name) => [name, isOfRelease(name) ? 'release' : ''])),
  };
}

function isOfRelease(name: string): boolean {
  return !ofTimes.test(name) && startInTitle(name) === 'release';
}

/** Whether what starts regions follows from their names or those of their groups. */
export function holdsNames({ target }: Assigned): boolean {
  return target === 'label' || target === 'group_name';
}

/** What is told where names say when regions start. */
export function releaseNameDrafts(settled: readonly Settled[]): Draft[] {
  return settled.flatMap(({ assigned, parameters }): Draft[] => {
    const form = parameters.find(({ parameter }) => parameter === 'trigger')?.form;
    if (!holdsNames(assigned) || form?.kind !== 'words') return [];
    const names = Object.keys(form.words).filter((name) => form.words[name] === 'release');
    return [
      {
        id: 'trigger.name',
        message: `${listText(
          names.map((name) => `"${name}"`),
          'and',
        )} in ${wordedPlace(assigned)} ${byCount(names.length, 'starts', 'start')} when a key is released.`,
        confidence: 0.8,
        isGuess: true,
        evidence: [`${byCount(names.length, 'The name says', 'The names say')} so.`],
        span:
          assigned.column.cells.find((cell) => cell && names.includes(cell.text)) ?? firstValueOf(assigned),
        isAbout: ({ parameter }) => parameter === 'trigger',
        alternatives: [{ label: 'starts when a key is pressed', change: () => undefined }],
      },
    ];
  });
}
