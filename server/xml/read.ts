import { HeaderKind } from '../model/headerKinds';
import { unknownHeaderFinding } from '../model/headerSuggestions';
import type { Instrument } from '../model/instrument';
import type { Scope } from '../model/instrumentBuilder';
import { InstrumentBuilder } from '../model/instrumentBuilder';
import type { ReadOptions } from '../model/notation';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { oddVariableFinding, Variables } from '../model/variables/variables';
import type { VariableText } from '../model/variables/variableText';
import { readSfzInto } from '../sfz/read';
import { canContain, ElementKind, elementKindAt, isHeaderKind } from './elements';
import { Inclusions } from './inclusion';
import { isReadAsXml } from './isInstrumentXml';
import type { Frame } from './nesting';
import { Nesting } from './nesting';
import type { XmlHandler } from './scan/handler';
import { ValueMark } from './scan/handler';
import { ReaderEvents } from './scan/readerEvents';
import { decodeXmlAttribute } from './scan/references';
import { scanXmlInSteps } from './scan/scan';
import { attributeText, attributeValue } from './values';

/**
 * Reads instrument XML into an instrument. Never throws: what makes no sense is among the instrument's findings, with
 * its span, and reading goes on. Included files, in XML or SFZ, are asked for through `options.include`, by their path
 * joined to the folder of the main file, however deep they are included.
 */
export function readXml(text: string, options: ReadOptions): Instrument {
  return finish(readXmlInSteps(text, options));
}

/** As {@link readXml}, in steps. */
export function* readXmlInSteps(text: string, options: ReadOptions): Steps<Instrument> {
  const builder = new InstrumentBuilder('xml', text.length);
  const variables = new Variables();
  const shared: Shared = { builder, options, variables, inclusions: new Inclusions(options, builder) };
  yield* shared.inclusions.within(options.path, readFile(shared, options.path, text));
  return builder.finish();
}

/** What the files of one instrument have in common. */
interface Shared {
  builder: InstrumentBuilder;
  options: ReadOptions;
  variables: Variables;
  inclusions: Inclusions;
}

/** An included file, to be read before what follows its include. */
interface Included {
  path: string;
  text: string;
  around: Frame | undefined;
}

function* readFile(shared: Shared, path: string, text: string, around?: Frame): Steps<void> {
  shared.builder.enterSource(path, text);
  const reader = new XmlReader(shared, text, around);
  const steps = scanXmlInSteps(text, reader, () => reader.toEnter !== undefined);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return;
    const { toEnter } = reader;
    reader.toEnter = undefined;
    if (toEnter) yield* readIncluded(shared, toEnter);
    else yield value;
  }
}

function* readIncluded(shared: Shared, { path, text, around }: Included): Steps<void> {
  const { builder, inclusions, options, variables } = shared;
  const steps = isReadAsXml(path, text)
    ? readFile(shared, path, text, around)
    : readSfzInto(builder, text, path, options, variables);
  yield* inclusions.within(path, steps);
  builder.leaveSource();
}

/** An attribute of `define` or `include`. */
interface DirectiveAttribute {
  name: string;
  start: number;
  end: number;
  value: string;
  withVariables: VariableText;
}

class XmlReader extends ReaderEvents implements XmlHandler {
  readonly #shared: Shared;
  protected readonly builder: InstrumentBuilder;
  protected readonly text: string;
  readonly #nesting: Nesting;
  readonly #namespaceName: number;
  /** Numbers in `ParameterNames` of the names that the scanner has counted. */
  readonly #ids: number[] = [];
  /** The tag that is being read. */
  #kind: ElementKind = ElementKind.unknown;
  #header = -1;
  #tagStart = 0;
  #tagNameEnd = 0;
  #before: Scope | undefined;
  #attributes: DirectiveAttribute[] = [];
  #hadRoot = false;
  /** The file that an include which was just read names. */
  toEnter: Included | undefined;

  constructor(shared: Shared, text: string, around: Frame | undefined) {
    super();
    this.#shared = shared;
    this.builder = shared.builder;
    this.text = text;
    this.#nesting = new Nesting(shared.builder, around);
    this.#namespaceName = shared.builder.names.idOf('xmlns');
  }

  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    const builder = this.builder;
    const kind = elementKindAt(this.text, nameStart, nameEnd, hash);
    this.#kind = kind;
    this.#tagStart = tagStart;
    this.#tagNameEnd = nameEnd;
    const innermost = this.#nesting.innermost;
    if (this.#nesting.depth === 0) this.#checkRoot(nameStart, nameEnd);
    else if (innermost && !innermost.broken && !canContain(innermost.kind, kind))
      this.#misplaced(nameStart, nameEnd);
    if (innermost) innermost.hasElements = true;
    // A region changes nothing of what follows it, so its scope need not be kept.
    this.#before = kind === HeaderKind.region ? undefined : builder.scope();
    if (isHeaderKind(kind)) {
      if (kind === HeaderKind.unknown && this.#hadRoot) this.#unknown(nameStart, nameEnd);
      this.#header = builder.openHeader(kind, tagStart, nameEnd);
    } else {
      this.#header = -1;
      this.#attributes = [];
    }
    this.#hadRoot = true;
  }

  #checkRoot(nameStart: number, nameEnd: number): void {
    if (this.#hadRoot || this.#kind === ElementKind.instrument) return;
    this.builder.addFinding({
      code: 'header-unknown',
      severity: 'warning',
      start: nameStart,
      end: nameEnd,
      message: 'The outermost element of an instrument is <instrument>. Put this element into one.',
    });
  }

  #misplaced(nameStart: number, nameEnd: number): void {
    const name = this.text.slice(nameStart, nameEnd);
    const outer = names[this.#nesting.innermost?.kind ?? ElementKind.unknown];
    this.builder.addFinding({
      code: 'header-unknown',
      severity: 'warning',
      start: nameStart,
      end: nameEnd,
      message: `<${name}> cannot stand inside <${outer}>. Close <${outer}> before it.`,
    });
  }

  #unknown(nameStart: number, nameEnd: number): void {
    this.builder.addFinding(
      unknownHeaderFinding(
        this.text.slice(nameStart, nameEnd),
        { start: nameStart, end: nameEnd },
        (name) => `<${name}>`,
      ),
    );
  }

  attribute(
    attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    marks: number,
  ): void {
    const builder = this.builder;
    let name = this.#ids[attribute];
    if (name === undefined) {
      name = builder.names.idAt(this.text, nameStart, nameEnd);
      this.#ids[attribute] = name;
    }
    if (marks & ValueMark.prefixed || name === this.#namespaceName) return;
    if (this.#header < 0 && !this.#openForRoot(nameStart, nameEnd, valueStart, valueEnd, marks)) return;
    const parameter = builder.addParameter(name, nameStart, valueStart, valueEnd, number);
    if (marks === 0) return;
    builder.setValue(parameter, this.#value(valueStart, valueEnd, marks));
    if (marks & ValueMark.dollar)
      builder.setWithVariables(parameter, attributeText(this.text.slice(valueStart, valueEnd)));
  }

  /** Keeps an attribute of `define` and `include`; one of `instrument` is like an opcode before any header: answers true for it. */
  #openForRoot(
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    marks: number,
  ): boolean {
    if (this.#kind === ElementKind.instrument) {
      this.#header = this.builder.openHeader(HeaderKind.unknown, nameStart, nameStart);
      return true;
    }
    const name = this.text.slice(nameStart, nameEnd);
    // The name of a variable that has been defined before does not stand for its value.
    const isName = this.#kind === ElementKind.define && name === 'name';
    const value = isName
      ? decodeXmlAttribute(this.text.slice(valueStart, valueEnd))
      : this.#value(valueStart, valueEnd, marks);
    const withVariables = attributeText(this.text.slice(valueStart, valueEnd));
    this.#attributes.push({ name, start: valueStart, end: valueEnd, value, withVariables });
    return false;
  }

  #value(start: number, end: number, marks: number): string {
    const raw = this.text.slice(start, end);
    if (marks === 0) return raw;
    return attributeValue(raw, this.#shared.variables, (variable) => {
      const placed = { ...variable, start: start + variable.start, end: start + variable.end };
      const define = `<define name="${variable.name.slice(1)}" value="…"/>`;
      this.builder.addFinding(oddVariableFinding(placed, define));
    });
  }

  openEnd(end: number, empty: boolean, broken: boolean): void {
    const { innermost } = this.#nesting;
    const header = this.#kind === ElementKind.instrument ? -1 : this.#header;
    if (header >= 0) this.builder.closeHeader(header, end);
    if (!empty) {
      this.#nesting.enter(this.#kind, header, this.#before ?? this.builder.scope(), broken);
    }
    if (this.#kind === ElementKind.define) this.#define(end);
    else if (this.#kind === ElementKind.include) this.#include(end, innermost);
  }

  #find(name: string): DirectiveAttribute | undefined {
    return this.#attributes.findLast((one) => one.name === name);
  }

  #define(end: number): void {
    const name = this.#find('name');
    const value = this.#find('value');
    const word = name?.value.replace(/^\$/, '') ?? '';
    if (!name || !value || !/^\w+$/.test(word)) {
      this.problem(
        this.#tagStart,
        this.#tagNameEnd,
        'A <define> needs a name of letters, digits and "_", and a value: <define name="NAME" value="…"/>.',
      );
      return;
    }
    this.#shared.variables.define(word, value.value);
    this.builder.addDirective({
      kind: 'define',
      start: this.#tagStart,
      end,
      name: `$${word}`,
      nameStart: name.start,
      nameEnd: name.end,
      value: value.value,
      withVariables: value.withVariables,
    });
  }

  #include(end: number, around: Frame | undefined): void {
    const { builder, inclusions } = this.#shared;
    const path = this.#find('path');
    if (!path || path.value === '') {
      this.problem(
        this.#tagStart,
        this.#tagNameEnd,
        'An <include> needs the path of a file: <include path="…"/>.',
      );
      return;
    }
    const found = inclusions.find(path.value);
    const { start, end: pathEnd } = path;
    builder.addDirective({
      kind: 'include',
      start: this.#tagStart,
      end,
      name: path.value,
      nameStart: start,
      nameEnd: pathEnd,
      value: found.path,
      withVariables: path.withVariables,
    });
    if (found.kind === 'refused') {
      const { code, message } = found;
      builder.addFinding({ code, severity: 'error', start, end: pathEnd, message });
    }
    if (found.kind === 'text') this.toEnter = { path: found.path, text: found.text, around };
  }

  close(_start: number, end: number): void {
    const frame = this.#nesting.leave();
    if (frame && frame.header >= 0) this.builder.closeHeader(frame.header, end);
  }

  characters(start: number, end: number): void {
    this.problem(
      start,
      end,
      'Text between elements has no effect: values stand in attributes, remarks in <!-- … -->.',
    );
  }
}

const names: Readonly<Record<ElementKind, string>> = Object.fromEntries(
  Object.entries(ElementKind).map(([name, kind]) => [kind, name]),
) as Record<ElementKind, string>;
