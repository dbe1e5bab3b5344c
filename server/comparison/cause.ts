/** What a difference comes from. */
export type CauseKind =
  | 'sample'
  | 'missing'
  | 'root'
  | 'tuning'
  | 'level'
  | 'pan'
  | 'offset'
  | 'length'
  | 'loop'
  | 'envelope'
  | 'filter'
  | 'condition'
  | 'other';

/** The first thing in the texts or the samples that explains a difference. */
export interface Cause {
  kind: CauseKind;
  /** A sentence for a person. */
  message: string;
  /** The opcode that says it, where one does. */
  opcode?: string;
  /** The parameters that say it, of the first instrument and of the second; missing where a side does not say it. */
  a?: number;
  b?: number;
}
