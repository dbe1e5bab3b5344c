import { byCount, counted } from '../../../model/wording/counted';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf } from '../draft';
import { rowKeyNumber } from './rowKeys';

const ends = [
  ['lokey', 'hikey', 'key'],
  ['lovel', 'hivel', 'velocity'],
] as const;

/** Notes on loops that end before they start, which is no loop. */
export function backwardLoopDrafts(assigned: readonly Assigned[]): Draft[] {
  const start = assigned.find(({ target }) => target === 'loop_start');
  const end = assigned.find(
    ({ target, column }) => target === 'loop_end' && column.level === start?.column.level,
  );
  if (!start || !end) return [];
  const turned = [...end.facts.numbers.keys()].filter((row) => {
    const [from, to] = [start.facts.numbers[row], end.facts.numbers[row]];
    return to > 0 && to < from;
  });
  const [example] = turned;
  if (example === undefined) return [];
  return [
    {
      id: 'loop.backwards',
      message: `${counted(turned.length, 'loop ends', 'loops end')} before ${byCount(turned.length, 'it starts', 'they start')}, such as ${start.texts[example]} to ${end.texts[example]}.`,
      confidence: 0.5,
      evidence: [
        'Others make sense as starts and ends, so the second number is not taken for a length. Correct the numbers.',
      ],
      span: end.column.cells[example] ?? firstValueOf(end),
      isAbout: () => false,
      alternatives: [],
    },
  ];
}

/** Notes on ranges that are written backwards; where most of their kind are, what is low and what is high is in doubt. */
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
    if (turned === 0) return [];
    const areMost = turned * 2 >= filled;
    const range = `${low.texts[example]} to ${high.texts[example]}`;
    const which =
      turned === 1
        ? `The ${words} range ${range} is`
        : `${counted(turned, `${words} range`)}, such as ${range}, are`;
    return [
      {
        id: `${words}.backwards`,
        message: `${which} written backwards and read the other way round.`,
        confidence: areMost ? 0.6 : 0.85,
        evidence: [
          areMost
            ? 'Most are written so, so the low and the high place may have been taken for each other. Check both.'
            : 'Swap the two values in the text.',
        ],
        span: low.column.cells[example] ?? firstValueOf(low),
        isAbout: () => false,
        alternatives: [],
      },
    ];
  });
}
