import type { VocabularyLevel } from '../../vocabulary';
import type { Draft, Settled } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import { saysSo } from '../saysSo';
import type { Rows } from '../values/rows';
import type { XmlStatements } from './statements';

/** Levels with what the document says of all regions, and the decisions about that. */
export interface StatedLevels {
  levels: VocabularyLevel[];
  drafts: Draft[];
}

/** Puts to levels what a document says of all its regions: that those of the same keys take turns, and that they play to their end. */
export function withStatedLevels(
  levels: readonly VocabularyLevel[],
  { chain, repeats }: RegionElement,
  settled: readonly Settled[],
  { turns, playsOut }: XmlStatements,
  rows: Rows,
): StatedLevels {
  const has = (name: string) =>
    settled.some(({ parameters }) => parameters.some(({ parameter }) => parameter === name));
  const changed = [...levels];
  const drafts: Draft[] = [];
  const tell = (id: string, message: string, text: string, element: string): void => {
    drafts.push({
      id,
      message,
      confidence: 0.9,
      evidence: [saysSo(text)],
      span: rows.tags[chain.indexOf(element)] ?? { start: 0, end: 0 },
      isAbout: () => false,
      alternatives: [],
    });
  };
  const around = chain[repeats.lastIndexOf(true) - 1];
  const holder = changed.findIndex(({ element, is }) => element === around && is !== 'region');
  // Elements that are a take each say the position of all regions in them.
  const areTakes = levels.some(
    ({ is, parameters }) =>
      is !== 'region' && parameters.some(({ parameter }) => parameter === 'seq_position'),
  );
  const isTold = has('lorand') || areTakes || levels.some((level) => level.turns);
  if (turns !== undefined && holder >= 0 && !isTold) {
    changed[holder] = { ...changed[holder], turns: true };
    tell(
      `${around}.turns`,
      `Regions of the same keys inside <${around}> take turns, in their order.`,
      turns,
      around,
    );
  }
  if (playsOut !== undefined && !has('loop_mode') && !has('loop_end') && changed[0]) {
    const [first] = changed;
    changed[0] = { ...first, sets: { ...first.sets, loop_mode: 'one_shot' } };
    tell('loop_mode.all', 'All regions play to their end.', playsOut, first.element);
  }
  return { levels: changed, drafts };
}
