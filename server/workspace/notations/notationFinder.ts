import type { Files } from '../../model/files';
import type { Notation } from '../../model/notation';
import { folderOf } from '../../model/paths';
import type { InferredVocabulary } from '../../vocabulary/infer/inferredVocabulary';
import { matchesVocabulary } from '../../vocabulary/infer/matchesVocabulary';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { writeVocabulary } from '../../vocabulary/writeVocabulary';
import { sampleFactsIn } from '../samples/sampleFactsIn';
import type { SampleStore } from '../samples/sampleStore';
import { takeSteps } from '../takeSteps';
import { certainNotation } from './certainNotation';
import { notationOfLanguage } from './notationOf';
import { VocabularyStore } from './vocabularyStore';

/** A text that may hold an instrument. */
export interface NotationQuery {
  /** Absolute with `/`; `undefined` for a document that is no file. */
  path: string | undefined;
  text: string;
  /** The language of an open document; missing for a file that is not open. */
  languageId?: string;
}

/** How a text is read. */
export interface FoundNotation {
  notation: Notation;
  /** The vocabulary of XML that is not in our own notation. */
  vocabulary?: VocabularyInForce;
}

export interface VocabularyInForce {
  vocabulary: Vocabulary;
  /** The file that it is kept in; `undefined` where it was worked out from the text. */
  savedIn: string | undefined;
  /** What was worked out of it; `undefined` where a file settles everything. */
  inferred: InferredVocabulary | undefined;
}

/** What was worked out from a text. */
interface Inference {
  text: string;
  inferred: InferredVocabulary | undefined;
  /** Milliseconds that it took, and when it was done. */
  took: number;
  at: number;
}

/** Rounds of working out a vocabulary while what is known of samples grows. */
const mostRounds = 4;
/** While a person types, at most this part of the time is spent on working vocabularies out. */
const shareOfTime = 20;
/** Texts whose vocabulary is remembered. */
const mostRemembered = 64;
/** Less than this and the outermost element with its path to a first sample cannot stand there. */
const shortestXml = 8;

/** Finds how texts are read: by their language and content, and where these say XML alone by a vocabulary. */
export class NotationFinder {
  readonly vocabularies: VocabularyStore;
  readonly #samples: SampleStore;
  readonly #inferences = new Map<string, Inference>();

  /** `warn` is given a line about each saved vocabulary that makes no sense. */
  constructor(files: Files, samples: SampleStore, warn: (message: string) => void) {
    this.vocabularies = new VocabularyStore(files, warn);
    this.#samples = samples;
  }

  /** How a text is read; `undefined` for one that holds no instrument. */
  async find(query: NotationQuery): Promise<FoundNotation | undefined> {
    const { path = '', text, languageId } = query;
    const plain = await plainNotation(path, text, languageId);
    if (plain) return { notation: plain };
    if (languageId === undefined ? !isXml(text) : languageId !== 'xml') return undefined;
    if (text.length < shortestXml) return undefined;
    const vocabulary = await this.#vocabularyOf(query);
    if (!vocabulary) return undefined;
    const { vocabularyNotation } = await import('../../vocabulary/vocabularyNotation');
    return { notation: vocabularyNotation(vocabulary.vocabulary), vocabulary };
  }

  /** What reading needs beside the notation: one in a vocabulary can count in seconds, and so ask for samples. */
  readingOf({ vocabulary }: FoundNotation): { samples?: SampleStore; vocabulary?: VocabularyInForce } {
    return vocabulary ? { samples: this.#samples, vocabulary } : {};
  }

  /** Says that a file or folder came, went or changed; samples tell of vocabularies too. */
  forget(path: string): void {
    this.vocabularies.forget(path);
    this.#inferences.clear();
  }

  /** Says that all files may be others. */
  forgetAll(): void {
    this.vocabularies.forgetAll();
    this.#inferences.clear();
  }

  async #vocabularyOf({ path, text }: NotationQuery): Promise<VocabularyInForce | undefined> {
    const saved =
      path === undefined
        ? undefined
        : (await this.vocabularies.around(folderOf(path))).find(({ vocabulary }) =>
            matchesVocabulary(vocabulary, text),
          );
    if (!saved) {
      const inferred = await this.#infer(path, text, undefined);
      return inferred && { vocabulary: inferred.vocabulary, savedIn: undefined, inferred };
    }
    const { vocabulary } = saved;
    const isSettled = (vocabulary.unsettled ?? []).length === 0;
    const inferred = isSettled ? undefined : await this.#infer(path, text, vocabulary);
    return { vocabulary, savedIn: saved.path, inferred };
  }

  /** Works a vocabulary out, again with what is then known of the samples that it made known. */
  async #infer(
    path: string | undefined,
    text: string,
    given: Vocabulary | undefined,
  ): Promise<InferredVocabulary | undefined> {
    // Loaded with the first XML of other names, so that whoever has none does not wait for it.
    const { inferVocabularyInSteps } = await import('../../vocabulary/infer/inferVocabulary');
    const key = path ?? '';
    const known = this.#inferences.get(key);
    if (known && !given && this.#stillHolds(known, text)) return known.inferred;
    const sampleFacts = path === undefined ? undefined : sampleFactsIn(this.#samples, folderOf(path));
    let inferred: InferredVocabulary | undefined;
    const started = performance.now();
    for (let round = 0; round < mostRounds; round++) {
      const steps = inferVocabularyInSteps(text, {
        path: key,
        ...(sampleFacts && { sampleFacts }),
        ...(given && { given }),
      });
      inferred = await takeSteps(steps);
      if (!inferred || !sampleFacts || !this.#samples.wants) break;
      await this.#samples.loadWanted();
    }
    const now = performance.now();
    if (inferred && known?.inferred && sameVocabulary(inferred.vocabulary, known.inferred.vocabulary)) {
      inferred = { ...inferred, vocabulary: known.inferred.vocabulary };
    }
    this.#inferences.delete(key);
    this.#inferences.set(key, { text, inferred, took: now - started, at: now });
    for (const oldest of this.#inferences.keys()) {
      if (this.#inferences.size <= mostRemembered) break;
      this.#inferences.delete(oldest);
    }
    return inferred;
  }

  #stillHolds({ text: before, inferred, took, at }: Inference, text: string): boolean {
    if (before === text) return true;
    return (
      inferred !== undefined &&
      performance.now() - at < took * shareOfTime &&
      matchesVocabulary(inferred.vocabulary, text)
    );
  }
}

/** The notation of ours that a text is in; what tables are is loaded where that has to be looked at. */
async function plainNotation(
  path: string,
  text: string,
  languageId: string | undefined,
): Promise<Notation | undefined> {
  if (languageId === undefined) {
    const certain = certainNotation(path, text);
    if (certain) return certain.kind === 'notation' ? certain.notation : undefined;
  } else {
    const settled = notationOfLanguage.get(languageId);
    if (settled) return settled;
  }
  const { notationOfDocument, notationOfFile } = await import('./detectedNotation');
  return languageId === undefined ? notationOfFile(path, text) : notationOfDocument(languageId, path, text);
}

function sameVocabulary(a: Vocabulary, b: Vocabulary): boolean {
  return a === b || writeVocabulary(a) === writeVocabulary(b);
}

function isXml(text: string): boolean {
  return /^\ufeff?\s*</.test(text.slice(0, 1000)) && !/^\ufeff?\s*<(?:!doctype\s+)?html\b/i.test(text);
}
