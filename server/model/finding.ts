import type { Span } from './text/span';

export const severities = ['error', 'warning', 'information', 'hint'] as const;
export type Severity = (typeof severities)[number];

/** One change of text: the span is replaced by `newText`. */
export interface TextEdit extends Span {
  newText: string;
}

/** A change that settles a finding. `safe` fixes have one sensible outcome and may be applied in bulk. */
export interface Fix {
  title: string;
  /** What it does, said of any finding of its code; fixes of one code with the same words are of one kind. The title where absent. */
  kind?: string;
  edits: TextEdit[];
  safe: boolean;
  /** A file that is written instead, by its absolute path with `/`; one of that name is kept unless it `replaces` it. */
  saves?: { path: string; text: string; replaces: boolean };
}

/** Another place that helps to understand a finding. */
export interface RelatedPlace extends Span {
  message: string;
}

/** What a reader or a check has to say about a place in the text. */
export interface Finding extends Span {
  code: string;
  severity: Severity;
  /** What is wrong, where and what to do, in one or two sentences. */
  message: string;
  related?: RelatedPlace[];
  /** A folder that is not there, from that of the instrument, and the files that should be in it, from that folder: a million at times. */
  absentFolder?: { path: string; count: number; files: () => string[] };
  /** Worked out only when somebody asks, since a long document can hold thousands of findings. */
  fixes?: () => Fix[];
}
