import type { Vocabulary, VocabularyLevel } from '../vocabulary';
import type { Alternative, Draft, Settled } from './draft';
import { namesOfGroups } from './elements/elementNames';
import type { RegionElement } from './elements/regionElement';
import type { InferredVocabulary, VocabularyDecision } from './inferredVocabulary';
import { velocitiesByName } from './layers/namedLayers';
import type { Column } from './values/column';
import type { Rows } from './values/rows';
import { nameWords } from './words/nameWords';
import { holdsNames } from './words/releaseNames';
import { conceptsOf } from './words/tradeWords';
import { isReleaseName } from './words/words';

/**
 * The levels of a chain of elements: those that carry something or repeat, as often as they stand in one another. Elements
 * between them are named in `inside`.
 */
export function levelsOf(
  settled: readonly Settled[],
  region: RegionElement,
  rates: readonly Column[],
  folders: readonly Column[],
): VocabularyLevel[] {
  const { chain, repeats, nested, also, sides } = region;
  const layers = velocitiesByName(region, settled);
  const isNamed = settled.some(({ parameters }) =>
    parameters.some(({ parameter }) => parameter === 'region_label' || parameter === 'group_label'),
  );
  const named = isNamed ? new Set<string>() : namesOfGroups(region);
  const levels: VocabularyLevel[] = [];
  let inside: string[] = [];
  const repeatsRegions = repeats.at(-1) === true;
  for (const [position, element] of chain.entries()) {
    const parameters = settled
      .filter(({ assigned }) => assigned.column.level === position)
      .flatMap((one) => one.parameters);
    const isRegion = position === chain.length - 1;
    const rate = rates.find(({ level }) => level === position)?.at;
    const isRelease = !isRegion && position > 0 && startsOnRelease(settled, element, chain);
    const isTurns = !isRegion && position > 0 && repeatsRegions && isRoundRobin(settled, element);
    if (
      !isRegion &&
      position > 0 &&
      parameters.length === 0 &&
      !repeats[position] &&
      !isRelease &&
      !isTurns &&
      !named.has(element) &&
      rate === undefined &&
      !folders.some(({ level }) => level === position)
    ) {
      inside.push(element);
      continue;
    }
    levels.push({
      element,
      is: isRegion ? 'region' : position === 0 ? 'instrument' : 'group',
      ...(inside.length > 0 && { inside }),
      ...(isRegion && !sides && also.length > 0 && { also: othersOf(also, settled, named, layers) }),

      ...(isRegion && sides && { also: { [sides.right.name]: { pan: '100' } }, sets: { pan: '-100' } }),
      ...(rate !== undefined && { rate }),
      ...(isTurns && { turns: true }),
      ...(isRelease && { sets: { trigger: 'release' } }),
      ...((named.has(element) || (isRegion && layers)) && {
        sets: { ...(named.has(element) && { group_label: element }), ...(isRegion && layers?.[element]) },
      }),
      parameters,
    });
    // Other regions stand in the same elements, beside it.
    if (!isRelease) inside = [];
    const copies = isRegion ? 1 : nested[position];
    for (let copy = 1; copy < copies; copy++) levels.push({ element, is: 'group', parameters });
    if (copies > 1) addUp(levels.slice(-copies), settled);
  }
  return levels;
}

/** The headers whose levels and tunings add up, from the innermost outwards. */
const adding = ['group', 'master', 'global'] as const;

/** Levels and tunings that are added, in elements of one name that stand in one another: each such element adds its own. */
function addUp(copies: VocabularyLevel[], settled: readonly Settled[]): void {
  const all = new Set(settled.flatMap(({ parameters }) => parameters.map(({ parameter }) => parameter)));
  for (const [at, copy] of copies.reverse().entries()) {
    copy.parameters = copy.parameters.map((one) => {
      const [, header, what] = /^(group|master)_(volume|tune)$/.exec(one.parameter) ?? [];
      const free = adding.filter((name) => name === header || !all.has(`${name}_${what}`));
      const name = free[Math.min(at, free.length - 1)];
      return what === undefined ? one : { ...one, parameter: `${name}_${what}` };
    });
  }
}

/** What other names of regions set: that they start when a key is let go, where they say so and no place does, and their group. */
function othersOf(
  names: readonly string[],
  settled: readonly Settled[],
  named: ReadonlySet<string>,
  layers: Record<string, Record<string, string>> | undefined,
): Record<string, Record<string, string>> {
  const setBy = (name: string): Record<string, string> => ({
    ...(startsOnRelease(settled, name) && { trigger: 'release' }),
    ...(named.has(name) && { group_label: name }),
    ...layers?.[name],
  });
  return Object.fromEntries(names.map((name) => [name, setBy(name)]));
}

/** Whether an element around regions says by its name alone that they start when a key is let go. */
function startsOnRelease(
  settled: readonly Settled[],
  element: string,
  chain: readonly string[] = [],
): boolean {
  const isTold = settled.some(
    ({ assigned, parameters }) =>
      !holdsNames(assigned) && parameters.some(({ parameter }) => parameter === 'trigger'),
  );
  const words = nameWords(element);
  const isBeside = (one: string, other: string) =>
    words.join() === one && chain.some((name) => nameWords(name).join() === other);
  return !isTold && (isReleaseName(words) || isBeside('up', 'down') || isBeside('off', 'on'));
}

/** Whether an element around several regions says by its name that they take turns, and no place gives positions. */
function isRoundRobin(settled: readonly Settled[], element: string): boolean {
  const isTold = settled.some(({ parameters }) =>
    parameters.some(({ parameter }) => parameter === 'seq_position' || parameter === 'lorand'),
  );
  return (
    !isTold &&
    (/\b(?:cycles?|round ?robins?|alternat\w+|rotations?|turns|takes)\b/.test(nameWords(element).join(' ')) ||
      nameWords(element).some((word) => conceptsOf(word)?.concepts.join() === 'rr' && word !== 'order'))
  );
}

/** Decisions that follow from levels: what elements set by being there, and how long round robins are. */
export function levelDrafts(
  levels: readonly VocabularyLevel[],
  rows: Rows,
  chain: readonly string[],
): Draft[] {
  const spanOf = (element: string) => rows.tags[chain.indexOf(element)] ?? { start: 0, end: 0 };
  const drafts = levels
    .flatMap(({ element, sets, also = {} }) => [
      ...(sets?.trigger !== undefined ? [element] : []),
      ...Object.keys(also).filter((name) => also[name].trigger !== undefined),
    ])
    .map(
      (element): Draft => ({
        id: `${element}.release`,
        message: chain.includes(element)
          ? `Regions inside <${element}> start when a key is released.`
          : `<${element}> is a region that starts when a key is released.`,
        confidence: 0.8,
        isGuess: true,
        evidence: ['The name of the element says so.'],
        span: spanOf(element),
        isAbout: () => false,
        alternatives: [],
      }),
    );
  const has = (name: string) =>
    levels.find(({ parameters }) => parameters.some(({ parameter }) => parameter === name));
  for (const { element } of levels.filter((level) => level.turns))
    drafts.push({
      id: `${element}.turns`,
      message: `The regions inside <${element}> are the turns of a round robin, in their order.`,
      confidence: 0.8,
      isGuess: true,
      evidence: ['The name of the element says so.'],
      span: spanOf(element),
      isAbout: () => false,
      alternatives: [],
    });
  drafts.push(...replacedDrafts(levels, spanOf));
  const turns = has('seq_position');
  if (turns && !has('seq_length'))
    drafts.push({
      id: 'seq_length',
      message:
        'The length of a round robin is the greatest position among regions of the same keys and velocities.',
      confidence: 0.85,
      isGuess: true,
      evidence: ['Nothing in the text gives the length.'],
      span: spanOf(turns.element),
      isAbout: () => false,
      alternatives: [],
    });
  return drafts;
}

/** That of more elements of one name in one another than headers add up, the inner levels and tunings take the place of outer ones. */
function replacedDrafts(
  levels: readonly VocabularyLevel[],
  spanOf: (element: string) => { start: number; end: number },
): Draft[] {
  return levels.flatMap(({ element, parameters }, at): Draft[] => {
    const next = levels[at + 1];
    const shared = parameters.find(
      ({ parameter }) =>
        /_(?:volume|tune)$/.test(parameter) && next?.parameters.some((one) => one.parameter === parameter),
    );
    if (next?.element !== element || !shared) return [];
    return [
      {
        id: `${element}.replaced`,
        message: `Of nested <${element}> elements only the innermost ${adding.length} add their "${shared.at.replace(/^@/, '')}". Those further out are left out.`,
        confidence: 0.5,
        isLost: true,
        evidence: [],
        span: spanOf(element),
        isAbout: () => false,
        alternatives: [],
      },
    ];
  });
}

/** Puts decisions with their choices to a vocabulary, and lists the doubtful ones in it. */
export function finishVocabulary(
  inferred: Vocabulary,
  drafts: readonly Draft[],
  confidence: number,
  doubtfulBelow: number,
  given?: Vocabulary,
): InferredVocabulary {
  const open = given && new Set(given.unsettled ?? []);
  const told = open ? drafts.filter(({ id }) => open.has(id)) : drafts;
  let vocabulary = given ?? inferred;
  if (given) for (const draft of told) vocabulary = withDecided(vocabulary, inferred, draft);
  const unsettled = told.filter((one) => one.confidence < doubtfulBelow).map(({ id }) => id);
  const listed = (one: Vocabulary, ids: readonly string[]): Vocabulary => {
    const { unsettled: _, ...rest } = one;
    return ids.length > 0 ? { ...rest, unsettled: [...ids] } : rest;
  };
  const left = told.filter(({ isLeft }) => isLeft);
  const without = (one: Vocabulary, drafts: readonly Draft[]) =>
    drafts.reduce((rest, draft) => changed(rest, draft, leaveOut), one);
  const base = without(vocabulary, left);
  const decisions = told.map(
    (draft): VocabularyDecision => ({
      id: draft.id,
      message: draft.message,
      confidence: draft.confidence,
      ...(draft.isGuess && { isGuess: true }),
      ...(draft.isLost && { isLost: true }),
      evidence: draft.evidence,
      span: { start: draft.span.start, end: draft.span.end },
      choices: draft.alternatives.map((alternative) => ({
        label: alternative.label,
        vocabulary: listed(
          changed(
            without(
              vocabulary,
              left.filter((one) => one !== draft),
            ),
            draft,
            alternative,
          ),
          unsettled.filter((id) => id !== draft.id),
        ),
      })),
    }),
  );
  return { vocabulary: listed(base, unsettled), decisions, confidence };
}

const leaveOut: Alternative = { label: '', change: () => undefined };

function changed(vocabulary: Vocabulary, { isAbout }: Draft, { change }: Alternative): Vocabulary {
  return {
    ...vocabulary,
    levels: vocabulary.levels.map((level) => ({
      ...level,
      parameters: level.parameters.flatMap((parameter) => {
        if (!isAbout(parameter, level.element)) return [parameter];
        const other = change(parameter);
        return other ? [other] : [];
      }),
    })),
  };
}

/** A given vocabulary with what a decision is about as it was inferred. */
function withDecided(vocabulary: Vocabulary, inferred: Vocabulary, { isAbout }: Draft): Vocabulary {
  return {
    ...vocabulary,
    levels: vocabulary.levels.map((level) => {
      const same = inferred.levels.find(({ element }) => element === level.element);
      return {
        ...level,
        parameters: level.parameters.map((parameter) => {
          if (!isAbout(parameter, level.element)) return parameter;
          return (
            same?.parameters.find(
              (other) =>
                other.parameter === parameter.parameter &&
                other.at === parameter.at &&
                other.part === parameter.part,
            ) ?? parameter
          );
        }),
      };
    }),
  };
}
