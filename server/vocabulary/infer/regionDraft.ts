import type { Draft } from './draft';
import type { RegionElement } from './elements/regionElement';
import type { Rows } from './values/rows';

/** The decision which element is the region. */
export function regionDraft({ chain, count, example }: RegionElement, rows: Rows, confidence: number): Draft {
  const element = chain.at(-1) as string;
  const outer = chain.slice(0, -1).map((name) => `<${name}>`);
  return {
    id: 'region',
    message: `<${element}> is a region${outer.length > 0 ? `, inside ${outer.join(' ')}` : ''}.`,
    confidence: Math.max(confidence, count > 1 ? 0.8 : 0.76),
    evidence: [
      count > 1
        ? `It occurs ${count} times and carries a path to an audio file, such as "${example.text.slice(0, 80)}".`
        : `It carries a path to an audio file, "${example.text.slice(0, 80)}".`,
    ],
    span: rows.tags.at(-1) ?? { start: example.start, end: example.end },
    isAbout: () => false,
    alternatives: [],
  };
}

/** The decision that the files of two sides sound together, each on its side. */
export function sidedDrafts({ sides, example }: RegionElement, rows: Rows): Draft[] {
  if (!sides) return [];
  const [left, right] = [sides.left.name, sides.right.name];
  return [
    {
      id: 'region.sides',
      message: `<${left}> and <${right}> are two regions that sound together, one all the way to the left, one to the right.`,
      confidence: 0.85,
      isGuess: true,
      evidence: ['Their names say so.'],
      span: rows.tags.at(-1) ?? { start: example.start, end: example.end },
      isAbout: () => false,
      alternatives: [],
    },
  ];
}

/** That audio files are left out that stand in elements called as regions are, without keys. */
export function asideDrafts({ aside = [], chain }: RegionElement): Draft[] {
  return aside.map((file, at) => ({
    id: `region.aside.${at}`,
    message: `"${file.text.slice(0, 80)}" is left out: its <${chain.at(-1)}> stands apart from the others, and no keys are named there. Put it among them if it is a region.`,
    confidence: 0.6,
    isGuess: true,
    isLost: true,
    evidence: [],
    span: file,
    isAbout: () => false,
    alternatives: [],
  }));
}
