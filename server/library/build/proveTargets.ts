import type { Comparison, NoteDifference } from '../../comparison/compareInstruments';
import { compareInstruments } from '../../comparison/compareInstruments';
import { explainedBy } from '../../comparison/explainedBy';
import type { MeasureMemory } from '../../comparison/heardContent';
import { folderOf } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import { readInstrument } from '../../workspace/analyse';
import { renderSource } from '../../workspace/comparing/renderSource';
import type { InstrumentProof } from './instrumentRecord';
import type { ReadingTools, ReadSource } from './readSource';
import type { WrittenText } from './writeTargets';

/** As `convert --prove`: below the steps of 16 bits at full scale, −90.3 dB. */
const options = { toleranceDb: -90, sampleRate: 44100, seed: 0 };

/**
 * Plays the source of an instrument and each text that was written of it, in no template, and tells how they differ, one proof
 * for each. What was rendered before for the same regions and samples is taken from the memory.
 */
export async function proveTargets(
  source: ReadSource,
  texts: readonly WrittenText[],
  tools: ReadingTools,
  memory?: MeasureMemory,
): Promise<InstrumentProof[]> {
  const proofs: InstrumentProof[] = [];
  for (const text of texts) {
    // A template is there to change the sound.
    if (!text.isInTemplate) proofs.push(await proofOf(source, text, tools, memory));
  }
  return proofs;
}

async function proofOf(
  { instrument, folder }: ReadSource,
  { target, path, text, notation, notes }: WrittenText,
  { files, samples, includes }: ReadingTools,
  memory: MeasureMemory | undefined,
): Promise<InstrumentProof> {
  const needsSamples = notation.parameters !== undefined;
  const written = await readInstrument({ path, text, notation, ...(needsSamples && { samples }) }, includes);
  const a = await renderSource(files, samples, folder, instrument);
  const b = await renderSource(files, samples, folderOf(path), written);
  try {
    const comparison = await compareInstruments(a, b, { ...options, ...(memory && { memory }) }, files);
    return { target, ...toldOf(comparison, explainedBy(instrument, notes)) };
  } finally {
    await a.samples.close();
    await b.samples.close();
  }
}

function toldOf(
  { notes, worstDb, differences, notCompared }: Comparison,
  isExplained: (one: NoteDifference) => boolean,
): Omit<InstrumentProof, 'target'> {
  const unexplained = differences.filter((one) => !isExplained(one));
  const [worst] = unexplained.length > 0 ? unexplained : differences;
  return {
    verdict: unexplained.length > 0 ? 'differs' : differences.length > 0 ? 'noted' : 'alike',
    notes,
    differing: unexplained.length,
    explained: differences.length - unexplained.length,
    worstDb: tenths(worst ? worst.peakDb : worstDb),
    ...(worst && {
      worst: { key: worst.note.key, velocity: worst.note.velocity, cause: visibleText(worst.cause.message) },
    }),
    notRendered: notCompared.map(({ opcode }) => opcode).sort(),
  };
}

function tenths(db: number | null): number | null {
  return db === null ? null : Math.round(db * 10) / 10;
}
