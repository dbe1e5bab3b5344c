import type { SeveritySettings } from '../../checks/rule';
import type { Finding, Fix } from '../../model/finding';
import { mainSpan } from '../../model/text/span';
import type { VocabularyDecision } from '../../vocabulary/infer/inferredVocabulary';
import { doubtfulBelow } from '../../vocabulary/infer/inferredVocabulary';
import { otherReadings } from '../../vocabulary/infer/otherReadings';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { writeVocabulary } from '../../vocabulary/writeVocabulary';
import type { VocabularyInForce } from './notationFinder';

const code = 'vocabulary-doubt';

/** A file to be written with a vocabulary in it. */
export type VocabularyToSave = NonNullable<Fix['saves']>;

/** The points in which a vocabulary was worked out on little evidence. */
export function doubtfulDecisions({ inferred }: VocabularyInForce): VocabularyDecision[] {
  return (inferred?.decisions ?? []).filter(({ confidence }) => confidence < doubtfulBelow);
}

/** The doubtful points as findings; their fixes settle them in the vocabulary's file, which is saved in `folder` where there is none. */
export function vocabularyFindings(
  inForce: VocabularyInForce,
  folder: string | undefined,
  severities: SeveritySettings,
): Finding[] {
  const severity = severities[code] ?? 'information';
  if (severity === 'off') return [];
  const doubts = doubtfulDecisions(inForce);
  return doubts.map((doubt) => ({
    code,
    severity,
    ...mainSpan(doubt.span.start, doubt.span.end),
    message: messageOf(doubt),
    fixes: () => fixesOf(doubt, doubts, inForce, folder),
  }));
}

function messageOf({ message, evidence, choices }: VocabularyDecision): string {
  const others = otherReadings(choices.map(({ label }) => label));
  return `${[message, ...evidence].join(' ')}${others} Choose with a quick fix or in a vocabulary file.`;
}

function fixesOf(
  { id, choices }: VocabularyDecision,
  doubts: readonly VocabularyDecision[],
  inForce: VocabularyInForce,
  folder: string | undefined,
): Fix[] {
  const unsettled = doubts.map((doubt) => doubt.id).filter((one) => one !== id);
  const settled = (title: string, vocabulary: Vocabulary): Fix[] => {
    const saves = vocabularyFile(inForce, { ...vocabulary, unsettled }, folder);
    return saves ? [{ title, edits: [], safe: false, saves }] : [];
  };
  return [
    ...settled('Keep how it is read now', inForce.vocabulary),
    ...choices.flatMap(({ label, vocabulary }) => settled(`Read it another way: ${label}`, vocabulary)),
  ];
}

/** The file for a vocabulary: where it is kept already, or a new one in a folder; `undefined` where there is neither. */
export function vocabularyFile(
  { savedIn }: VocabularyInForce,
  vocabulary: Vocabulary,
  folder: string | undefined,
): VocabularyToSave | undefined {
  const { unsettled = [], ...settled } = vocabulary;
  const text = writeVocabulary(unsettled.length > 0 ? { ...settled, unsettled } : settled);
  if (savedIn !== undefined) return { path: savedIn, text, replaces: true };
  if (folder === undefined) return undefined;
  const name = vocabulary.name.replace(/[^\p{L}\p{N}._ -]+/gu, '-').replace(/^[.\s-]+|[.\s]+$/g, '');
  return { path: `${folder}/${name || 'instrument'}${vocabularyEnding}`, text, replaces: false };
}
