import type { RelatedPlace } from '../../model/finding';
import type { InstrumentBuilder } from '../../model/instrumentBuilder';
import { standingIn } from '../../model/text/span';
import type { RelatedSpan } from './handler';

/** What every reader of instrument XML does with what is no element: it notes comments and reports what is not well formed. */
export abstract class ReaderEvents {
  protected abstract readonly builder: InstrumentBuilder;
  protected abstract readonly text: string;

  comment(start: number, end: number): void {
    const { text } = this;
    const closed = end - start >= 7 && text.startsWith('-->', end - 3);
    this.builder.addDirective({
      kind: 'comment',
      start,
      end,
      name: '',
      nameStart: start,
      nameEnd: start,
      value: text.slice(start + 4, closed ? end - 3 : end).trim(),
    });
  }

  instruction(): void {}

  doctype(): void {}

  problem(start: number, end: number, message: string, related?: RelatedSpan): void {
    this.builder.addFinding({
      code: 'syntax-error',
      severity: 'error',
      start,
      end,
      message,
      ...(related && { related: [standingIn<RelatedPlace>(this.builder.source, related)] }),
    });
  }

  remark(start: number, end: number, message: string): void {
    this.builder.addFinding({ code: 'syntax-error', severity: 'warning', start, end, message });
  }
}
