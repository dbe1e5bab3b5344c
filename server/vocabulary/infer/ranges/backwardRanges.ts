import { counted } from '../../../model/wording/counted';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf } from '../draft';
import { rowKeyNumber } from './rowKeys';

const ends = [
  ['lokey', 'hikey', 'key'],
  ['lovel', 'hivel', 'velocity'],
] as const;

/** Notes on ranges that are written backwards, where most of their kind are not. */
export function backwardDrafts(assigned: readonly Assigned[]): Draft[] {
  return ends.flatMap(([lowName, highName, words]): Draft[] => {
    const low = assigned.find(({ target }) => target === lowName);
    const high = assigned.find(
      ({ target, column, countedFrom }) =>
        target === highName && column.level === low?.column.level && !countedFrom,
    );
    if (!low || !high) return [];
    const read = words === 'key' ? rowKeyNumber : (text: string | undefined) => Number(text ?? Number.NaN);
    const highs = high.texts.map(read);
    let [filled, turned, example] = [0, 0, -1];
    for (const [row, text] of low.texts.entries()) {
      const [from, to] = [read(text), highs[row]];
      if (from === undefined || to === undefined || Number.isNaN(from) || Number.isNaN(to) || to < 0)
        continue;
      filled++;
      if (from <= to) continue;
      turned++;
      if (example < 0) example = row;
    }
    if (turned === 0 || turned * 2 >= filled) return [];
    return [
      {
        id: `${words}.backwards`,
        message: `${counted(turned, `${words} range is`, `${words} ranges are`)} written backwards, such as ${low.texts[example]} to ${high.texts[example]}, and read the other way round.`,
        confidence: 0.85,
        evidence: ['Swap the two values in the text.'],
        span: low.column.cells[example] ?? firstValueOf(low),
        isAbout: () => false,
        alternatives: [],
      },
    ];
  });
}
