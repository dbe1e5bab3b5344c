import { counted } from '../../../model/wording/counted';
import { saysNone } from '../../../trade/languages/cellWords';
import type { SwitchedOff } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import { columnFactsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import type { SampleFiles } from './sampleFiles';

/**
 * Elements called as regions are that name no audio file, as an empty pad: they are none, which is told. Where ranges follow from
 * other regions (`areNeeded`) they stay, as they take up keys.
 */
export function emptyRegions(
  assigned: readonly Assigned[],
  rows: Rows,
  { names }: SampleFiles,
  { chain, also }: RegionElement,
  areNeeded: boolean,
): { off: SwitchedOff[]; drafts: Draft[] } {
  const none = { off: [], drafts: [] };
  const [place, ...others] = assigned.filter(({ target }) => target === 'sample');
  const region = chain.length - 1;
  if (!place || others.length > 0 || place.column.level !== region) return none;
  const { column, texts } = place;
  // Where files have endings, a word for none is no name.
  const areEnded = columnFactsOf(texts).files > 0;
  const isNone = (text: string) => areEnded && saysNone(text);
  const empty = Array.from({ length: rows.count }, (_, row) => row).filter((row) => {
    const text = texts[row]?.trim() ?? '';
    return text === '' ? !names[row] : isNone(text);
  });
  if (empty.length === 0 || empty.length === rows.count) return none;
  const words = new Set(empty.map((row) => texts[row]?.trim().toLowerCase() ?? ''));
  const at = column.at.replace(/^@/, '');
  const element = chain[region];
  const draft: Draft = {
    id: 'sample.empty',
    message: areNeeded
      ? `${counted(empty.length, `<${element}> names`, `<${element}> name`)} no audio file in "${at}" and plays nothing.`
      : `${counted(empty.length, `<${element}> names`, `<${element}> name`)} no audio file in "${at}", so no region is made of it.`,
    confidence: 0.85,
    isGuess: true,
    evidence: ['Others of the same kind name one.'],
    span: rows.tags[region] ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
  if (areNeeded) return { off: [], drafts: [draft] };
  const elements = [element, ...also];
  return {
    off: elements.map((name) => ({ element: name, at: column.at, words: [...words] })),
    drafts: [draft],
  };
}
