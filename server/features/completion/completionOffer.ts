/** One thing that can be written at the cursor. */
export interface CompletionOffer {
  kind: 'header' | 'opcode' | 'option' | 'key' | 'file' | 'folder' | 'variable' | 'generator' | 'shape';
  label: string;
  /** The stretch of text that it takes the place of. */
  start: number;
  end: number;
  /** What is written; the cursor goes to the end of the first text, before the second. */
  insert: readonly [before: string, after: string];
  /** Parts of the first text for a person to fill in, such as the number in `locc1=`. */
  blanks?: readonly { start: number; end: number }[];
  /** A few words beside the label. */
  remark?: string;
  /** A line about it. */
  detail?: string;
  /** The opcode pattern or header that {@link documentationOf} tells more of. */
  documented?: string;
  /** What is compared with the text that is typed, where that is not the label. */
  filter?: string;
  /** Offers of a lower rank come first. */
  rank: number;
  /** Whether there is more to choose once it is written. */
  goesOn?: boolean;
}
