import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';
import type { WriteOptions } from '../notation';
import type { ConversionNote } from '../notes';
import { isAbsolutePath, joinPath, relativePath } from '../paths';
import type { Span } from '../text/span';
import { spanIn } from '../text/span';
import { directiveText, hasVariableInName, valueWithVariables } from '../variables/textBeforeVariables';
import { Variables } from '../variables/variables';
import type { VariableText } from '../variables/variableText';
import { hasVariable, joinedText, literalText } from '../variables/variableText';
import type { IncludePart } from './includeParts';
import { holdsWholeHeaders, includeParts } from './includeParts';
import { writtenValue } from './rebase';
import { standsAlone } from './writingOrder';
import { writtenOutText } from './writtenOut';

/** A comment with the place where it stands in the instrument's text. */
export interface PlannedComment {
  text: string;
  directive: Directive;
}

/** What stands between headers of a text that is written. */
export type LeadingPart =
  | ({ kind: 'comment' } & PlannedComment)
  | { kind: 'define'; name: string; value: VariableText }
  | { kind: 'include'; path: VariableText; part: IncludePart };

/** How the directives and comments of an instrument are written. */
export interface WritingPlan {
  /** What is written before a header, in order; at `headers.count`, behind all. */
  leading: ReadonlyMap<number, readonly LeadingPart[]>;
  /** Comments that are written with the parameters of a header. */
  trailing: ReadonlyMap<number, readonly PlannedComment[]>;
  /** Headers that stand in included files and are not written. */
  isIncluded(header: number): boolean;
  /** Values in which variables stay. */
  values: ReadonlyMap<number, VariableText>;
  /** Values that the notation cannot hold, since a variable would be seen in them. */
  unholdable: ReadonlySet<number>;
  /** Notes by the header before which they belong. */
  headerNotes: ReadonlyMap<number, readonly ConversionNote[]>;
  /** Notes by parameter. */
  parameterNotes: ReadonlyMap<number, readonly ConversionNote[]>;
}

/** What a notation can say of directives. */
export interface DirectiveForms {
  /** Whether it can write a `$` that starts no variable whatever follows it. */
  hasLiterals: boolean;
  /** Whether variables can stand in the names of parameters. */
  hasVariableNames: boolean;
  /** Whether it can define a variable, named without its `$`. */
  canDefine(name: string, value: VariableText): boolean;
  /** Whether it can include a file of a text; `undefined` for one that was not read. */
  canInclude(path: VariableText, file: { path: string; text: string } | undefined): boolean;
}

/** How much of the directives is kept. */
export type Keeping = 'nothing' | 'defines' | 'all';

/** Plans how directives and comments are written: kept as far as `keeping` says and the notation can, else written out with a note. */
export function planWriting(
  instrument: Instrument,
  options: WriteOptions,
  forms: DirectiveForms,
  keeping: Keeping,
): WritingPlan {
  return new DirectivePlanner(instrument, options, forms, keeping).plan();
}

class DirectivePlanner {
  readonly #instrument: Instrument;
  readonly #options: WriteOptions;
  readonly #forms: DirectiveForms;
  readonly #keeping: Keeping;
  readonly #leading = new Map<number, LeadingPart[]>();
  readonly #trailing = new Map<number, PlannedComment[]>();
  readonly #included: Uint8Array | undefined;
  readonly #values = new Map<number, VariableText>();
  readonly #unholdable = new Set<number>();
  readonly #headerNotes = new Map<number, ConversionNote[]>();
  readonly #parameterNotes = new Map<number, ConversionNote[]>();
  /** The variables as the written text has them where the plan has come to. */
  readonly #variables = new Variables();
  /** Parameters whose values differ from the text, in order, and how many of them are settled. */
  readonly #changed: readonly number[];
  #settled = 0;

  constructor(instrument: Instrument, options: WriteOptions, forms: DirectiveForms, keeping: Keeping) {
    this.#instrument = instrument;
    this.#options = options;
    this.#forms = forms;
    this.#keeping = keeping;
    const hasIncludes = instrument.directives.some(({ kind }) => kind === 'include');
    if (keeping === 'all' && hasIncludes) this.#included = new Uint8Array(instrument.headers.count + 1);
    const { values, withVariables } = instrument.parameters;
    this.#changed =
      keeping === 'nothing'
        ? []
        : [...new Set([...values.keys(), ...(withVariables?.keys() ?? [])])].sort((a, b) => a - b);
    for (const [parameter, notes] of options.readingNotes ?? [])
      this.#parameterNotes.set(parameter, [...notes]);
  }

  plan(): WritingPlan {
    const { directives, parameters } = this.#instrument;
    const parts = directives.some(({ kind }) => kind === 'include')
      ? includeParts(this.#instrument)
      : new Map<number, IncludePart>();
    for (let index = 0; index < directives.length; index++) {
      const directive = directives[index];
      if (directive.kind === 'comment') this.#comment(directive);
      else {
        this.#settleTo(directive.parametersBefore);
        if (directive.kind === 'define') this.#define(directive);
        else index = this.#include(parts.get(index) as IncludePart);
      }
    }
    this.#settleTo(parameters.count);
    const included = this.#included;
    return {
      leading: this.#leading,
      trailing: this.#trailing,
      isIncluded: (header) => included?.[header] === 1,
      values: this.#values,
      unholdable: this.#unholdable,
      headerNotes: this.#headerNotes,
      parameterNotes: this.#parameterNotes,
    };
  }

  #lead(header: number, part: LeadingPart): void {
    const list = this.#leading.get(header);
    if (list) list.push(part);
    else this.#leading.set(header, [part]);
  }

  #note(header: number, kind: ConversionNote['kind'], { source, start, end }: Span, message: string): void {
    const note: ConversionNote = { kind, ...spanIn(source, start, end), message };
    const list = this.#headerNotes.get(header);
    if (list) list.push(note);
    else this.#headerNotes.set(header, [note]);
  }

  #comment(comment: Directive): void {
    const instrument = this.#instrument;
    const { headersBefore, parametersBefore, value } = comment;
    const header = headersBefore - 1;
    const isAmong = header >= 0 && parametersBefore < instrument.endParameter(header);
    const isBeside = header >= 0 && !standsAlone(instrument, comment) && !this.#leading.has(headersBefore);
    if ((isAmong || isBeside) && this.#included?.[header] !== 1) {
      const list = this.#trailing.get(header);
      const planned = { text: value, directive: comment };
      if (list) list.push(planned);
      else this.#trailing.set(header, [planned]);
    } else this.#lead(headersBefore, { kind: 'comment', text: value, directive: comment });
  }

  /** A definition among the parameters of a header comes before that header, else behind it where that would change a value. */
  #define(define: Directive): void {
    const instrument = this.#instrument;
    const { headersBefore, parametersBefore } = define;
    const name = define.name.slice(1);
    const value = directiveText(instrument, define);
    if (this.#keeping === 'nothing' || !this.#forms.canDefine(name, value)) {
      const why =
        this.#keeping === 'nothing'
          ? ''
          : ' A variable with this name or value cannot be defined in the text that is written.';
      const message = `${writtenOutText(define)}${why}`;
      this.#note(headersBefore, 'approximated', define, message);
      return;
    }
    const header = headersBefore - 1;
    let place = headersBefore;
    if (header >= 0 && parametersBefore < instrument.endParameter(header)) {
      if (this.#changesValues(header, name, value)) this.#settleTo(instrument.endParameter(header));
      else place = header;
    }
    this.#variables.define(name, this.#expand(value, this.#variables));
    this.#lead(place, { kind: 'define', name, value });
  }

  /** Whether values of a header that are settled would mean something else if a variable were defined before it. */
  #changesValues(header: number, name: string, value: VariableText): boolean {
    const later = this.#variables.layer();
    later.define(name, this.#expand(value, this.#variables));
    const first = this.#instrument.firstParameter(header);
    const end = this.#instrument.endParameter(header);
    for (let parameter = first; parameter < end; parameter++) {
      const text = this.#values.get(parameter);
      if (text && this.#expand(text, later) !== this.#expand(text, this.#variables)) return true;
    }
    return false;
  }

  /** What a text means where these variables are defined, in the text that is written. */
  #expand(text: VariableText, variables: Variables): string {
    if (!this.#forms.hasLiterals) return variables.expand(joinedText(text), ignore);
    return text.map((piece) => (piece.literal ? piece.text : variables.expand(piece.text, ignore))).join('');
  }

  /** Decides how the values before a parameter are written that differ from the text of the instrument. */
  #settleTo(end: number): void {
    while (this.#settled < this.#changed.length && this.#changed[this.#settled] < end)
      this.#settle(this.#changed[this.#settled++]);
  }

  #settle(parameter: number): void {
    const instrument = this.#instrument;
    const header = instrument.headerOfParameter(parameter);
    if (this.#included?.[header] === 1) return;
    const wanted = writtenValue(instrument, header, parameter, this.#options);
    const text = valueWithVariables(instrument, parameter);
    const moved = text && this.#moved(text, instrument.valueText(parameter), wanted);
    if (moved && this.#expand(moved, this.#variables) === wanted) this.#values.set(parameter, moved);
    else {
      if (text && hasVariable(text) && this.#expand(text, this.#variables) !== joinedText(text)) {
        const message = `The variable in "${joinedText(text)}" is written out here as ${wanted}: it would mean something else in this place.`;
        this.#noteParameter(parameter, message);
      }
      if (this.#expand(literalText(wanted), this.#variables) !== wanted) this.#unholdable.add(parameter);
    }
    if (!this.#forms.hasVariableNames && hasVariableInName(instrument, parameter)) {
      const name = instrument.names.text(instrument.name(parameter));
      this.#noteParameter(parameter, `The variable in this name is written out: ${name}.`);
    }
  }

  #noteParameter(parameter: number, message: string): void {
    const note: ConversionNote = {
      kind: 'approximated',
      ...this.#instrument.parameterSpan(parameter),
      message,
    };
    const list = this.#parameterNotes.get(parameter);
    if (list) list.push(note);
    else this.#parameterNotes.set(parameter, [note]);
  }

  /** A path in which variables stand, led to another folder: the way there is put before it, where that leads to the same place. */
  #moved(text: VariableText, before: string, after: string): VariableText {
    const { move } = this.#options;
    if (before === after || !move) return text;
    const way = relativePath(move.to, `${move.from}/-`).slice(0, -1);
    const led = [{ text: way, literal: true }, ...text];
    const means = this.#expand(led, this.#variables);
    return joinPath(move.to, means) === joinPath(move.to, after) ? [...led] : text;
  }

  /** Keeps an include or writes out what is in it; answers the directive behind which to go on. */
  #include(part: IncludePart): number {
    const { directive, index, endDirective, firstHeader, endHeader } = part;
    const path = this.#includePath(directive);
    const reason = this.#whyWrittenOut(part, path);
    if (reason === undefined) {
      this.#included?.fill(1, firstHeader, endHeader);
      this.#lead(firstHeader, { kind: 'include', path, part });
      this.#settleTo(part.endParameter);
      return endDirective - 1;
    }
    if (part.isRead) {
      const message = `${writtenOutText(directive)}${reason}`;
      this.#note(firstHeader, 'approximated', directive, message);
    } else {
      const message = `The include of "${directive.name}" is left out: ${part.reason ?? 'its file was not read.'}`;
      this.#note(firstHeader, 'dropped', directive, message);
    }
    return index;
  }

  #includePath(directive: Directive): VariableText {
    const { move } = this.#options;
    const text = directiveText(this.#instrument, directive);
    const { name } = directive;
    if (!move || move.from === move.to || isAbsolutePath(name)) return text;
    const led = relativePath(move.to, joinPath(move.from, name));
    if (!hasVariable(text)) return literalText(led);
    const moved = this.#moved(text, name, led);
    return joinPath(move.to, this.#expand(moved, this.#variables)) === joinPath(move.to, led)
      ? moved
      : literalText(led);
  }

  /** Why an include cannot be kept, as a sentence behind another; empty where none is kept, `undefined` where it can. */
  #whyWrittenOut(part: IncludePart, path: VariableText): string | undefined {
    if (!this.#included) return '';
    const instrument = this.#instrument;
    const file = part.isRead ? instrument.sourceOf(part.directive.value) : undefined;
    if (!this.#forms.canInclude(path, file))
      return ' The text that is written cannot include a file of this kind.';
    if (!holdsWholeHeaders(instrument, part)) return ' A header stands partly in that file.';
    if (this.#leadsElsewhere(part)) return ' Its paths would not lead to the files from the other folder.';
    const variables = this.#variables.layer();
    if (!this.#readsTheSame(part, variables)) return ' Its variables would mean something else.';
    variables.keep();
    return undefined;
  }

  /** Whether paths in an included file, which stays as it is, would be wrong from the folder that is written to. */
  #leadsElsewhere({ index, endDirective, firstHeader, endHeader }: IncludePart): boolean {
    const { move } = this.#options;
    if (!move || move.from === move.to) return false;
    const instrument = this.#instrument;
    for (let at = index + 1; at < endDirective; at++) {
      const { kind, name } = instrument.directives[at];
      if (kind === 'include' && !isAbsolutePath(name)) return true;
    }
    for (let header = firstHeader; header < endHeader; header++) {
      const end = instrument.endParameter(header);
      for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
        const value = instrument.valueText(parameter);
        if (writtenValue(instrument, header, parameter, this.#options) !== value) return true;
      }
    }
    return false;
  }

  /** Whether the values of an included file come out the same with these variables, to which those of the file are added. */
  #readsTheSame(part: IncludePart, variables: Variables): boolean {
    const { directives } = this.#instrument;
    let at = part.firstParameter;
    for (let index = part.index + 1; index < part.endDirective; index++) {
      const directive = directives[index];
      if (directive.kind !== 'define') continue;
      if (!this.#valuesReadTheSame(at, directive.parametersBefore, variables)) return false;
      at = directive.parametersBefore;
      const value = expandAsWritten(directiveText(this.#instrument, directive), variables);
      variables.define(directive.name.slice(1), value);
    }
    return this.#valuesReadTheSame(at, part.endParameter, variables);
  }

  #valuesReadTheSame(first: number, end: number, variables: Variables): boolean {
    const instrument = this.#instrument;
    for (let parameter = first; parameter < end; parameter++) {
      if (!instrument.parameters.values.has(parameter)) continue;
      const text = valueWithVariables(instrument, parameter);
      if (text && expandAsWritten(text, variables) !== instrument.valueText(parameter)) return false;
      if (hasVariableInName(instrument, parameter) && !this.#nameReadsTheSame(parameter, variables))
        return false;
    }
    return true;
  }

  #nameReadsTheSame(parameter: number, variables: Variables): boolean {
    const instrument = this.#instrument;
    const { source, start, end } = instrument.nameSpan(parameter);
    const raw = instrument.sources[source]?.text.slice(start, end) ?? '';
    const name = instrument.names.text(instrument.name(parameter));
    const expanded = variables.expand(raw, ignore);
    return expanded === name || expanded === `${name}=${instrument.valueText(parameter)}`;
  }
}

function expandAsWritten(text: VariableText, variables: Variables): string {
  return text.map((piece) => (piece.literal ? piece.text : variables.expand(piece.text, ignore))).join('');
}

function ignore(): void {}
