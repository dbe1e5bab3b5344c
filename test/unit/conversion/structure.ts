import { HeaderKind } from '../../../server/model/headerKinds';
import type { Instrument } from '../../../server/model/instrument';
import { directiveText, valueWithVariables } from '../../../server/model/variables/textBeforeVariables';
import { joinedText } from '../../../server/model/variables/variableText';

/** What an instrument's text is made of, whatever notation it is in. */
export interface Structure {
  /** Headers with their parameters in order, as written; those that set nothing and only end what is in force aside. */
  headers: string[];
  /** Variables and includes in order. */
  directives: string[];
  /** The lines of comments, with the number of those headers before them. */
  comments: string[];
}

/** The structure of an instrument: its main file alone where `mainOnly`, else with all that it includes in its place. */
export function structureOf(instrument: Instrument, mainOnly = true): Structure {
  const headers: string[] = [];
  const countBefore: number[] = [];
  for (let header = 0; header < instrument.headers.count; header++) {
    countBefore.push(headers.length);
    if (mainOnly && instrument.headerSource(header) !== 0) continue;
    const kind = instrument.kind(header);
    const isPassing = kind === HeaderKind.global || kind === HeaderKind.master || kind === HeaderKind.group;
    const parameters: string[] = [];
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const raw = valueWithVariables(instrument, parameter);
      const value = raw ? joinedText(raw) : instrument.valueText(parameter);
      parameters.push(`${instrument.names.text(instrument.name(parameter))}=${value}`);
    }
    if (!isPassing || parameters.length > 0)
      headers.push(`<${instrument.headerName(header)}> ${parameters.join(' ')}`);
  }
  countBefore.push(headers.length);
  const directives: string[] = [];
  const comments: string[] = [];
  for (const directive of instrument.directives) {
    const { kind, source, name, value, headersBefore } = directive;
    if (mainOnly && source !== 0) continue;
    if (kind === 'define') directives.push(`${name} ${joinedText(directiveText(instrument, directive))}`);
    else if (kind === 'include') directives.push(name);
    else
      for (const line of value.split(/\r\n|\r|\n/))
        comments.push(`${countBefore[headersBefore]} ${line.trim()}`);
  }
  return { headers, directives, comments };
}
