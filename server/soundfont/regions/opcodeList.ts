import type { NoteKind } from '../../model/notes';
import { decimalText } from '../../model/text/decimalText';

/** A remark on something that SFZ text says in another way or not at all. */
export interface Remark {
  kind: NoteKind;
  message: string;
}

/** Digits of times and frequencies: enough to find the whole timecent or cent again, which is 0.06 % wide. */
const digits = 6;

/** The opcodes of one region in the order in which they are written, with remarks on what they do not say. */
export class OpcodeList {
  readonly #values = new Map<string, string>();
  readonly remarks: Remark[] = [];

  /** Says a value; nothing where it is the one that holds anyway. */
  put(name: string, value: number | string, byDefault?: number): void {
    if (value === byDefault) return;
    this.#values.set(name, typeof value === 'string' ? value : plain(value));
  }

  /** As {@link put} for a value that is worked out, to as many digits as tell its unit. */
  measured(name: string, value: number, byDefault?: number): void {
    this.put(name, Number(value.toPrecision(digits)), byDefault);
  }

  remark(kind: NoteKind, message: string): void {
    this.remarks.push({ kind, message });
  }

  has(name: string): boolean {
    return this.#values.has(name);
  }

  entries(): [name: string, value: string][] {
    return [...this.#values];
  }
}

/** Without the digits that come from counting in binary. */
function plain(value: number): string {
  return decimalText(Math.round(value * 1e6) / 1e6);
}
