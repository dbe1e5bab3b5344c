import type { ValueForm, VocabularyParameter } from '../vocabulary';
import type { Assigned } from './assign';
import type { Cell } from './elements/survey';

/** A decision before the whole vocabulary is known. */
export interface Draft {
  id: string;
  message: string;
  /** 0..1 */
  confidence: number;
  /** As in `VocabularyDecision`. */
  isGuess?: true;
  /** As in `VocabularyDecision`. */
  isLost?: true;
  /** Whether the parameters that it is about are left out until a person chooses. */
  isLeft?: boolean;
  /** Sentences for people. */
  evidence: string[];
  span: { start: number; end: number };
  /** Whether a parameter of an element is one that the decision is about. */
  isAbout: (parameter: VocabularyParameter, element: string) => boolean;
  /** What else it could be, the likeliest first. */
  alternatives: Alternative[];
}

/** Another way to take a parameter; `undefined` leaves it out. */
export interface Alternative {
  label: string;
  change: (parameter: VocabularyParameter) => VocabularyParameter | undefined;
}

/** The parameters that an assigned place gives. */
export interface Settled {
  assigned: Assigned;
  parameters: VocabularyParameter[];
}

/** A choice that changes how values are written. */
export function otherForm(label: string, form: (form: ValueForm) => ValueForm): Alternative {
  return { label, change: (parameter) => ({ ...parameter, form: form(parameter.form) }) };
}

/** The first value of a place. */
export function firstValueOf({ column }: Assigned): Cell {
  return column.cells.find((cell) => cell !== undefined) ?? { text: '', start: 0, end: 0 };
}

/** The parameter of an assigned place, without its form. */
export function parameterAt(assigned: Assigned, parameter: string, form: ValueForm): VocabularyParameter {
  const { part, between, column } = assigned;
  return {
    parameter,
    at: column.at,
    ...(part !== undefined && { part }),
    ...(part !== undefined && between !== undefined && { between }),
    ...(column.listed && { listed: column.listed }),
    form,
  };
}

/** How a message names a place: `"low"` or `"keys/@low"`. */
export function wordedPlace({ column }: Assigned): string {
  const { listed } = column;
  if (listed) return `"${listed.at.replace(/^@/, '')}" of the <${listed.element}> that it refers to`;
  const { at } = column;
  return `"${at.startsWith('@') ? at.slice(1) : at}"`;
}
