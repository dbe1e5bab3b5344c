import type { Finding, Severity } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { SampleLookup } from '../model/samples';
import type { Steps } from '../model/steps';

/** What a rule may look at. */
export interface CheckContext {
  instrument: Instrument;
  samples: SampleLookup;
  /** The notation of the instrument's text, for fixes. */
  notation: Notation;
}

/** A finding as a rule reports it; code and severity come from the rule where it says nothing else. */
export type RuleFinding = Omit<Finding, 'code' | 'severity'> & { severity?: Severity };

/** Takes the findings of a rule; one that is made by a function costs nothing where there are too many to list. */
export type Report = (finding: RuleFinding | (() => RuleFinding)) => void;

/** A finding code as the documentation and machine-readable reports list it. */
export interface RuleDescription {
  readonly code: string;
  /** The severity of its findings unless settings say otherwise. */
  readonly severity: Severity;
  /** Whether each finding is about one sample by itself, so that those of many can be told as one. */
  readonly ofSample?: true;
  /** One sentence for the documentation: what it finds. */
  readonly finds: string;
}

/** One check of an instrument; in steps where looking at one with very many regions takes long. */
export interface Rule extends RuleDescription {
  check(context: CheckContext, report: Report): Steps<void> | void;
}

/** A severity of one's own for a finding code. */
export type SeveritySettings = Readonly<Record<string, Severity | 'off'>>;
