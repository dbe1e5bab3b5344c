import type { SampleFactsLookup } from '../../model/notation';
import { nameOf } from '../../model/paths';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import type { Vocabulary } from '../vocabulary';
import { finishVocabulary, levelDrafts, levelsOf } from './assemble';
import type { Assigned } from './assign';
import { assignColumns } from './assign';
import { settle } from './decideForms/settle';
import { findListedRegion } from './elements/listedRegion';
import { namespacesIn } from './elements/namespaces';
import { statedEnding } from './elements/pathPlaces';
import type { RegionElement } from './elements/regionElement';
import { findRegionElement } from './elements/regionElement';
import { findSelectors } from './elements/selectors';
import type { Survey } from './elements/survey';
import { surveyXml } from './elements/survey';
import type { InferredVocabulary } from './inferredVocabulary';
import { doubtfulBelow } from './inferredVocabulary';
import { instrumentConfidence, isForeignRoot, isOtherFormat, namesFiles } from './instrumentConfidence';
import { layerLimitsOf } from './layers/layerLimits';
import { listedLayers } from './layers/listedLayers';
import { namedLayerDrafts } from './layers/namedLayers';
import { withUnnamedLayers } from './layers/unnamedLayers';
import { missingRoots } from './missingRoots';
import { lackOfSense } from './musicalSense';
import { assumedRanges } from './ranges/assumedRanges';
import { backwardDrafts, backwardLoopDrafts } from './ranges/backwardRanges';
import { withCounts } from './ranges/counts';
import { withEndBesideRoots } from './ranges/endBesideRoots';
import { withKeyDistances } from './ranges/keyDistances';
import { withKeysAroundRoots } from './ranges/keysAroundRoots';
import { keyLikeDrafts, keysNamedAsTuning } from './ranges/keysAsTuning';
import { keysByRoots } from './ranges/keysByRoots';
import { withKeysFromBase } from './ranges/keysFromBase';
import { keysInOrder, withFirstKey } from './ranges/keysInOrder';
import { withOutermostEnds } from './ranges/outermostEnds';
import { withLoopLengths, withLoopStarts, withPairedEnds } from './ranges/pairedEnds';
import { withRootsBetween } from './ranges/rootsBetween';
import { singleRootDrafts } from './ranges/singleRoots';
import { withUnnamedLengths } from './ranges/unnamedLengths';
import { asideDrafts, regionDraft, sidedDrafts } from './regionDraft';
import { emptyRegions } from './samples/emptyRegions';
import { withoutFileLengths } from './samples/fileLengths';
import { generatedShape } from './samples/generatedShapes';
import { withoutMissing } from './samples/missingEntries';
import type { SampleFiles } from './samples/sampleFiles';
import { findSampleFiles } from './samples/sampleFiles';
import type { SampleList } from './samples/sampleList';
import { severalFilesIn } from './samples/severalFiles';
import { findStatedRates } from './samples/statedRates';
import { placesWithoutEffect, unusedPlaces, withoutEffectDrafts } from './stated/leftOut';
import { unselectedPrograms } from './stated/selectedProgram';
import { withOutermostKeys, withSpreadKeys } from './stated/spreadKeys';
import { withStatedLevels } from './stated/statedLevels';
import { withStatedTurns } from './stated/statedTurns';
import { proseIn, scalePlaces, statedIn, withoutStatements, withStatements } from './stated/statements';
import { withToldEnds } from './stated/toldEnds';
import type { ToldPlace } from './stated/toldPlaces';
import { toldPlaces } from './stated/toldPlaces';
import { withUnitParts } from './stated/unitParts';
import { unreadPlaces } from './unreadPlaces';
import { findChances } from './values/chances';
import type { Column } from './values/column';
import { impliedLoops } from './values/impliedLoops';
import { withoutImpossibleLevels } from './values/impossibleLevels';
import { withListed } from './values/listedColumns';
import { withMisspelt } from './values/misspeltPlaces';
import { withNeighbours } from './values/neighbours';
import type { Rows } from './values/rows';
import { readRows } from './values/rows';
import { withSharedMarks } from './values/sharedMarks';
import { stepEnds } from './values/steps';
import { findSwitches, loopSwitches } from './values/switches';
import { takesOf } from './values/takes';
import { withTuningPairs } from './values/tuningPairs';
import { withTurnCounts, withUnnamedTurns } from './values/unnamedTurns';
import { releaseNameDrafts } from './words/releaseNames';

export interface InferenceOptions {
  /** The path of the text; its name is the name of the vocabulary. */
  path: string;
  /** What the header of a sample file says; `undefined` while it is not known. */
  sampleFacts?: SampleFactsLookup;
  /** Told why a text that has regions is no instrument, as a clause. */
  tell?: (reason: string) => void;
  /** A vocabulary that is given already: only what its `unsettled` lists is decided anew. */
  given?: Vocabulary;
}

/** Works out in which vocabulary an XML text writes an instrument; `undefined` where it is none. Never throws. */
export function inferVocabulary(text: string, options: InferenceOptions): InferredVocabulary | undefined {
  return finish(inferVocabularyInSteps(text, options));
}

/** As {@link inferVocabulary}, in steps: going through the text, which may be long, and looking at places, of which there may be many. */
export function* inferVocabularyInSteps(
  text: string,
  options: InferenceOptions,
): Steps<InferredVocabulary | undefined> {
  if (!/^\ufeff?\s*</.test(text.slice(0, 1000))) return undefined;
  const survey = yield* surveyXml(text);
  if (!survey.root || isForeignRoot(survey.root)) return undefined;
  const selectors = findSelectors(survey);
  const listed = yield* findListedRegion(text, survey, selectors, options.sampleFacts);
  const region = listed?.region ?? findRegionElement(survey, selectors);
  if (!region) return undefined;
  const { chain } = region;
  const list = listed?.list;
  const own = yield* readRows(text, survey, region, selectors);
  const looked = yield* withListed(text, own, survey, region, list?.place);
  yield 1;
  const prose = proseIn(text, survey, region);
  const unapplied = placesWithoutEffect(prose, looked, chain);
  const applied = withoutColumns(
    looked,
    unapplied.map(({ column }) => column),
  );
  const switched = findSwitches(withNeighbours(applied), chain, [
    ...unusedPlaces(text, prose, applied, chain),
    ...unselectedPrograms(applied, chain),
  ]);
  const { rows, off, drafts: switches } = withoutMissing(listed, region, switched);
  yield 1;
  const told = toldPlaces(prose, rows.columns);
  const layers = yield* listedLayers(text, rows, survey, region);
  yield 1;
  const { assigned: columns, drafts: misspelt } = withMisspelt(
    rows,
    withTuningPairs(rows, withSharedMarks(yield* assignColumns(rows, region, told, layers, prose))),
  );
  const keyLike = keysNamedAsTuning(columns);
  const limits = layerLimitsOf(rows, columns, region, prose);
  const meant = columns.filter(({ column }) => !keyLike.includes(column) && column !== limits?.column);
  const {
    assigned: found,
    stated,
    rates,
    used,
    drafts: ofKeys,
  } = understood({ text, survey, region, told, prose }, rows, meant, list);
  const order = keysInOrder(rows, found, prose);
  const chances = findChances(rows, found, region);
  const assigned = (order?.assigned ?? found).filter(({ column }) => column !== chances?.column);
  const confidence =
    instrumentConfidence(assigned, region, survey) ?? (order && region.count > 1 ? 0.6 : undefined);
  if (confidence === undefined || isOtherFormat(survey.root, assigned)) {
    options.tell?.(lackOfSense(assigned, survey) ?? 'no place is known to hold keys or velocities');
    return undefined;
  }
  const files = findSampleFiles(
    assigned,
    rows,
    options.sampleFacts,
    samplePathOf(options.given),
    list && rates.inList !== undefined ? { ...list, place: { ...list.place, rate: rates.inList } } : list,
    statedEnding(survey),
  );
  const lack = severalFilesIn(assigned) ?? lackOfFiles(assigned, files, statedEnding(survey));
  if (lack !== undefined) {
    options.tell?.(lack);
    return undefined;
  }
  yield 1;
  const { assigned: read, drafts: impossible } = withoutImpossibleLevels(withoutFileLengths(assigned, files));
  const { settled, drafts } = settle(read, rows, chain, files, { ...stated, rates: rates.ofRows });
  yield 1;
  const stepping = stepEnds(read);
  const backward = backwardDrafts(read);
  const rooted = order ? undefined : keysByRoots(rows, chain, read, stated);
  const { levels, drafts: ofAll } = withStatedLevels(
    levelsOf(settled, region, rates.columns, files.around),
    region,
    settled,
    stated,
    rows,
  );
  const areNeeded = rooted !== undefined || order !== undefined || stepping.steps.length > 0;
  const empty = emptyRegions(read, rows, files, region, areNeeded);
  const all = [
    regionDraft(region, rows, confidence),
    ...sidedDrafts(region, rows),
    ...asideDrafts(region),
    ...namedLayerDrafts(region, settled, rows),
    ...switches,
    ...(order ? [] : empty.drafts),
    ...withoutEffectDrafts(unapplied, chain),
    ...levelDrafts(levels, rows, chain),
    ...releaseNameDrafts(settled),
    ...drafts,
    ...impossible,
    ...ofAll,
    ...stepping.drafts,
    ...ofKeys,
    ...misspelt,
    ...(order?.drafts ?? []),
    ...(impliedLoops(settled, files.facts)?.drafts ?? []),
    ...backward,
    ...backwardLoopDrafts(read),
    ...(order ? [] : assumedRanges(read, rooted !== undefined)),
    ...(rooted ?? []),
    ...missingRoots(read, rows, files),
    ...singleRootDrafts(read),
    ...keyLikeDrafts(keyLike, assigned, chain),
    ...unreadPlaces(
      withoutColumns(rows, [
        ...rates.columns,
        ...keyLike,
        ...used,
        ...[chances, limits].flatMap((one) => (one ? [one.column] : [])),
      ]),
      assigned,
      chain,
      files,
    ),
  ];
  const taken = takesOf(rows, assigned, chain);
  const takes = [...taken.takes, ...(limits ? [limits.takes] : [])];
  all.push(...taken.drafts, ...(chances?.drafts ?? []), ...(limits ? [limits.draft] : []));
  const allOff = [...off, ...empty.off, ...loopSwitches(settled)];
  const vocabulary: Vocabulary = {
    ...vocabularyOf(
      text,
      options.path,
      withFirstKey(withOutermostKeys(levels, stepping.steps, stated, read, rooted !== undefined), order),
      stepping.steps,
      allOff,
    ),
    ...(impliedLoops(settled, files.facts) && { loops: 'loop_continuous' }),
    ...(backward.length > 0 && { backwards: true }),
    ...(order && { keysInOrder: true }),
    ...(rooted && { keysByRoots: true }),
    ...(takes.length > 0 && { takes }),
    ...(chances && { chances: chances.chances }),
  };
  return finishVocabulary(vocabulary, all, confidence, doubtfulBelow, options.given);
}

/** What places hold with what the text around says of them, apart from the sample rates that some state. */
function understood(
  {
    text,
    survey,
    region,
    told,
    prose,
  }: {
    text: string;
    survey: Survey;
    region: RegionElement;
    told: ReadonlyMap<Column, ToldPlace>;
    prose: readonly string[];
  },
  rows: Rows,
  columns: readonly Assigned[],
  list: SampleList | undefined,
) {
  const distant = withKeyDistances(rows, columns);
  const based = withKeysFromBase(rows, distant.assigned, prose, region);
  const ranged = withUnnamedLengths(
    rows,
    withCounts(rows, withLoopLengths(withLoopStarts(rows, withPairedEnds(based.assigned)))),
  );
  const rooted = withEndBesideRoots(rows, withKeysAroundRoots(rows, withRootsBetween(rows, ranged)));
  const layered = withUnnamedLayers(rows, withOutermostEnds(rows, rooted));
  const named = withoutStatements(layered);
  const stated = withToldEnds(statedIn(text, survey, region, named), told);
  const spread = withSpreadKeys(named, stated, region.chain);
  const sampleColumn = named.find(({ target }) => target === 'sample')?.column;
  const rates = findStatedRates(rows, list, sampleColumn);
  const isNoRate = ({ column }: Assigned) => !rates.columns.includes(column);
  const turning = withStatedTurns(
    rows,
    withUnitParts(withStatements(spread.assigned, stated, told), prose).filter(isNoRate),
    stated.turns,
    region.chain,
  );
  // A unit of seconds may be stated.
  const assigned = withSharedMarks(withTurnCounts(rows, withUnnamedTurns(rows, turning, region.chain)));
  const used = [...(based.base ? [based.base] : []), ...scalePlaces(layered, named)];
  return { assigned, stated, rates, used, drafts: [...distant.drafts, ...based.drafts, ...spread.drafts] };
}

function withoutColumns(rows: Rows, left: readonly Column[]): Rows {
  return { ...rows, columns: rows.columns.filter((column) => !left.includes(column)) };
}

function vocabularyOf(
  text: string,
  path: string,
  levels: Vocabulary['levels'],
  steps: NonNullable<Vocabulary['steps']>,
  off: NonNullable<Vocabulary['off']>,
): Vocabulary {
  const name = nameOf(path.replaceAll('\\', '/')).replace(/\.xml$/i, '');
  const namespaces = namespacesIn(text, levels);
  return {
    name: name || 'Vocabulary',
    ...(namespaces && { namespaces }),
    levels,
    ...(steps.length > 0 && { steps }),
    ...(off.length > 0 && { off }),
  };
}

/** Why what was assigned is no instrument after all, as a clause. */
function lackOfFiles(
  assigned: readonly Assigned[],
  files: SampleFiles,
  ending: string | undefined,
): string | undefined {
  const shape = generatedShape(files);
  if (shape !== undefined)
    return `what could be names of audio files are shapes of waves such as "${shape}", which are generated and not recorded`;
  if (namesFiles(assigned, files, ending)) return undefined;
  return 'what could be names of audio files has no ending of one, and too little else suggests an instrument';
}

function samplePathOf(vocabulary: Vocabulary | undefined): SampleFiles['form'] | undefined {
  for (const { parameters } of vocabulary?.levels ?? []) {
    for (const { parameter, form } of parameters)
      if (parameter === 'sample' && form.kind === 'path') return form;
  }
  return undefined;
}
