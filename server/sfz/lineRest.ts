import type { Instrument } from '../model/instrument';
import type { Span } from '../model/text/span';
import { lineEndAt } from '../model/text/textLayout';
import { lineEndOf } from '../model/text/textLines';

/**
 * What has to stand between an opcode and what follows `span` on its line, so that the value does not go on into it: a line
 * break before stray text and before an opcode that is read at the start of a line alone, nothing before all else.
 */
export function breakBehindValue(instrument: Instrument, span: Span): '' | '\n' | '\r\n' {
  const { source, end } = span;
  const text = instrument.sources[source]?.text ?? '';
  let at = end;
  const lineEnd = lineEndAt(text, end);
  while (at < lineEnd && text.charCodeAt(at) <= 32) at++;
  if (at === lineEnd || endsValue(instrument, source, at, text)) return '';
  return lineEndOf(text);
}

/** Whether a value before an offset ends there: at a header, a directive, a remark or a plainly named opcode. */
function endsValue(instrument: Instrument, source: number, at: number, text: string): boolean {
  const header = instrument.headerAt(source, at);
  if (text[at] === '<') return header >= 0 && instrument.headerSpan(header).start === at;
  if (text[at] === '/') return text[at + 1] === '/' || text[at + 1] === '*';
  if (text[at] === '#') return instrument.directives.some((one) => one.source === source && one.start === at);
  const parameter = instrument.parameterAt(source, at);
  return (
    parameter >= 0 &&
    instrument.parameterSpan(parameter).start === at &&
    /^[\w$]+=/.test(text.slice(at, at + 200))
  );
}
