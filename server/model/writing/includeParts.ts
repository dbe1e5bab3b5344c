import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';

/** What an include brought into an instrument, as positions of its headers, parameters and directives; ends are one past. */
export interface IncludePart {
  directive: Directive;
  /** Its position in `Instrument.directives`; the directives of the file follow it up to `endDirective`. */
  index: number;
  endDirective: number;
  firstHeader: number;
  endHeader: number;
  firstParameter: number;
  endParameter: number;
  /** Whether its file was read. */
  isRead: boolean;
  /** Why its file was not read, as the reader says. */
  reason: string | undefined;
}

/** What each include of an instrument brought in, by the position of its directive; includes within files among them. */
export function includeParts(instrument: Instrument): Map<number, IncludePart> {
  const parts = new Map<number, IncludePart>();
  const { directives, headers, parameters, findings } = instrument;
  const refusals = new Map<string, string>();
  for (const { code, source, start, message } of findings)
    if (code.startsWith('include-')) refusals.set(`${source}:${start}`, message);
  /** The parts of the includes around, with the file that each stands in. */
  const around: { part: IncludePart; source: number }[] = [];
  directives.forEach((directive, index) => {
    while (around.length > 0 && index >= around[around.length - 1]?.part.endDirective) around.pop();
    if (directive.kind !== 'include') return;
    const { source, headersBefore, parametersBefore, nameStart, value } = directive;
    const outer = around[around.length - 1]?.part;
    const lastDirective = outer?.endDirective ?? directives.length;
    let endDirective = index + 1;
    while (endDirective < lastDirective && directives[endDirective]?.source !== source) endDirective++;
    const next = endDirective < lastDirective ? directives[endDirective] : undefined;
    const lastHeader = next?.headersBefore ?? outer?.endHeader ?? headers.count;
    const lastParameter = next?.parametersBefore ?? outer?.endParameter ?? parameters.count;
    let endHeader = headersBefore;
    while (endHeader < lastHeader && instrument.headerSource(endHeader) !== source) endHeader++;
    let endParameter = parametersBefore;
    while (endParameter < lastParameter && instrument.parameterSource(endParameter) !== source)
      endParameter++;
    const reason = refusals.get(`${source}:${nameStart}`);
    const part: IncludePart = {
      directive,
      index,
      endDirective,
      firstHeader: headersBefore,
      endHeader,
      firstParameter: parametersBefore,
      endParameter,
      isRead: reason === undefined && instrument.sourceOf(value) !== undefined,
      reason,
    };
    parts.set(index, part);
    around.push({ part, source });
  });
  return parts;
}

/** Whether a file holds whole headers: none goes on in it that was opened outside, and none goes on behind it. */
export function holdsWholeHeaders(instrument: Instrument, part: IncludePart): boolean {
  const { firstHeader, endHeader, firstParameter, endParameter } = part;
  if (endParameter > firstParameter && instrument.headerOfParameter(firstParameter) < firstHeader)
    return false;
  if (endHeader === firstHeader) return true;
  return instrument.endParameter(endHeader - 1) <= endParameter;
}
