import type { Vocabulary } from '../vocabulary';

/** One thing that was worked out about how a text is written. */
export interface VocabularyDecision {
  /** Names the decision within a vocabulary, the same each time: `region`, `lokey`, `loop_end.last`, `middleC`. */
  id: string;
  /** What was decided, as a sentence for people. */
  message: string;
  /** 0..1; below {@link doubtfulBelow} a person should look at it. */
  confidence: number;
  /** Whether a value is read so on what its numbers look like alone, so that a person is told even where it is likely. */
  isGuess?: true;
  /** Whether what is said at the place is lost, though its name speaks of a parameter. */
  isLost?: true;
  /** Why, in sentences for people. */
  evidence: string[];
  /** An example of it in the text. */
  span: { start: number; end: number };
  /** What else it could be, the likeliest first. */
  choices: VocabularyChoice[];
}

/** Another way to take something, with the vocabulary that follows from it. */
export interface VocabularyChoice {
  /** In a few words. */
  label: string;
  vocabulary: Vocabulary;
}

export interface InferredVocabulary {
  vocabulary: Vocabulary;
  decisions: VocabularyDecision[];
  /** 0..1: how sure it is that the text is an instrument at all. */
  confidence: number;
}

/** Below this confidence a decision is a question. */
export const doubtfulBelow = 0.75;
