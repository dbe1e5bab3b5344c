import { nearestOpcodes } from '../model/opcodes/nearest';
import { resolveOpcode } from '../model/opcodes/resolve';
import { nearestWords } from '../model/text/nearest';
import { isXmlName } from '../xml/scan/characters';
import { areSides, isEntryKey, isEntryPlace, isFormKind, isListPlace } from './formChecks';
import { isFieldValue, shorten, wantedOf } from './forms/fieldValues';
import type { FormField } from './forms/formFields';
import { formFields } from './forms/formFields';
import type { JsonNode } from './jsonTree';
import { readJson } from './jsonTree';
import { parseListedFolder } from './listedFolder';
import { folderPlaces, parsePlace } from './places';
import type {
  Chances,
  ListPlace,
  StepEnd,
  SwitchedOff,
  TakesElement,
  ValueForm,
  Vocabulary,
  VocabularyLevel,
  VocabularyParameter,
} from './vocabulary';

/** Something that a vocabulary has wrong, with its place in the text. */
export interface VocabularyProblem {
  message: string;
  start: number;
  end: number;
}

/**
 * Reads a vocabulary from JSON; never throws. Every fault is told with its place. A parameter that makes no sense is left
 * out; there is no vocabulary where its elements make none. A member `$schema` is passed over.
 */
export function parseVocabulary(text: string): { vocabulary?: Vocabulary; problems: VocabularyProblem[] } {
  const { root, problem } = readJson(text);
  if (!root) return { problems: problem ? [problem] : [] };
  const reader = new VocabularyReader();
  const vocabulary = reader.read(root);
  const { problems } = reader;
  return vocabulary ? { vocabulary, problems } : { problems };
}

function isStepEnd(name: string): name is StepEnd {
  return /^(?:lo|hi)(?:key|vel)$/.test(name);
}

/** Whether a text names places, with a bar between them. */
function areFolderPlaces(under: string): boolean {
  const places = folderPlaces(under);
  return places.length > 0 && places.every((place) => parsePlace(place) ?? parseListedFolder(place));
}

type Members = ReadonlyMap<string, JsonNode>;

/** One class of more than 400 lines, since all its steps tell what is wrong to one list, and none is used without the others. */
class VocabularyReader {
  readonly problems: VocabularyProblem[] = [];

  read(root: JsonNode): Vocabulary | undefined {
    const members = this.#members(root, 'A vocabulary', [
      'name',
      'namespaces',
      'levels',
      'steps',
      'loops',
      'backwards',
      'keysInOrder',
      'keysByRoots',
      'off',
      'takes',
      'chances',
      'unsettled',
      '$schema',
    ]);
    if (!members) return undefined;
    const name = this.#text(members.get('name'), root, 'name') ?? '';
    const levels = this.#levels(members.get('levels'), root);
    const namespaces = this.#namespaces(members.get('namespaces'));
    const steps = this.#steps(members.get('steps'));
    const loops = this.#loops(members.get('loops'));
    const off = this.#switches(members.get('off'));
    const takes = this.#takes(members.get('takes'));
    const chances = this.#chances(members.get('chances'));
    const unsettled = this.#texts(members.get('unsettled'), 'unsettled');
    return (
      levels && {
        name,
        ...(namespaces && { namespaces }),
        levels,
        ...(steps && steps.length > 0 && { steps }),
        ...(loops && { loops }),
        ...(this.#isTrue(members.get('backwards'), 'backwards') && { backwards: true }),
        ...(this.#isTrue(members.get('keysInOrder'), 'keysInOrder') && { keysInOrder: true }),
        ...(this.#isTrue(members.get('keysByRoots'), 'keysByRoots') && { keysByRoots: true }),
        ...(off && { off }),
        ...(takes && { takes }),
        ...(chances && { chances }),
        ...(unsettled && { unsettled }),
      }
    );
  }

  #namespaces(node: JsonNode | undefined): Record<string, string> | undefined {
    if (!node) return undefined;
    if (node.kind !== 'object') {
      this.#tell(node, '"namespaces" is an object with the name of a namespace for each prefix.');
      return undefined;
    }
    const found: [string, string][] = [];
    for (const { name, nameStart, nameEnd, value } of node.members) {
      if (name !== '' && (!isXmlName(name) || name.includes(':')))
        this.#tell({ start: nameStart, end: nameEnd }, `"${shorten(name)}" cannot be a prefix in XML.`);
      else if (value.kind !== 'string' || value.value === '')
        this.#tell(value, 'The name of a namespace is a text, and not empty.');
      else found.push([name, value.value]);
    }
    return found.length > 0 ? Object.fromEntries(found) : undefined;
  }

  #steps(node: JsonNode | undefined): StepEnd[] | undefined {
    const ends = this.#texts(node, 'steps')?.filter(isStepEnd);
    if (node && ends?.length !== this.#texts(node, 'steps')?.length)
      this.#tell(node, '"steps" lists ends of ranges: lokey, hikey, lovel, hivel.');
    return ends;
  }

  #isTrue(node: JsonNode | undefined, name: string): boolean {
    const value = node && plainValue(node);
    if (node && value !== true && value !== false) this.#tell(node, `"${name}" must be true or false.`);
    return value === true;
  }

  #loops(node: JsonNode | undefined): Vocabulary['loops'] {
    const value = node && plainValue(node);
    if (value === 'loop_continuous' || value === 'loop_sustain') return value;
    if (node) this.#tell(node, '"loops" is "loop_continuous" or "loop_sustain".');
    return undefined;
  }

  #switches(node: JsonNode | undefined): SwitchedOff[] | undefined {
    if (!node) return undefined;
    if (node.kind !== 'array') {
      this.#tell(node, '"off" lists the elements that a place in them switches off.');
      return undefined;
    }
    const found = node.items.flatMap((item) => this.#switch(item));
    return found.length > 0 ? found : undefined;
  }

  #switch(node: JsonNode): SwitchedOff[] {
    const members = this.#members(node, 'A switch', ['element', 'at', 'words']);
    if (!members) return [];
    const element = this.#elementName(members.get('element'), node);
    const at = this.#text(members.get('at'), node, 'at');
    const words = this.#texts(members.get('words'), 'words') ?? [];
    const isPlace = at !== undefined && parsePlace(at) !== undefined;
    if (at !== undefined && !isPlace)
      this.#tell(members.get('at') ?? node, `"at" is a place such as @enabled, not "${shorten(at)}".`);
    if (words.length === 0)
      this.#tell(members.get('words') ?? node, '"words" lists what stands there where the element is off.');
    return element !== undefined && isPlace && words.length > 0 ? [{ element, at, words }] : [];
  }

  #takes(node: JsonNode | undefined): TakesElement[] | undefined {
    if (!node) return undefined;
    if (node.kind !== 'array') {
      this.#tell(node, '"takes" lists the elements of whose regions one sounds at a time.');
      return undefined;
    }
    const found = node.items.flatMap((item): TakesElement[] => {
      const members = this.#members(item, 'Such an element', ['element', 'at', 'words', 'are', 'upTo']);
      if (!members) return [];
      const element = this.#elementName(members.get('element'), item);
      const are = members.get('are') && plainValue(members.get('are') as JsonNode);
      if (!isKindOfTakes(are)) {
        this.#tell(members.get('are') ?? item, '"are" is "random", "turns" or "layers".');
        return [];
      }
      const upTo = are === 'layers' ? this.#layerEnds(members.get('upTo') ?? item) : undefined;
      if (element === undefined || (are === 'layers' && !upTo)) return [];
      const kind = { are, ...(upTo && { upTo }) };
      if (!members.has('at')) return [{ element, ...kind }];
      const at = this.#place(members.get('at'), item, 'at');
      const words = this.#texts(members.get('words'), 'words') ?? [];
      if (words.length === 0) this.#tell(members.get('words') ?? item, '"words" lists what stands there.');
      return at !== undefined && words.length > 0 ? [{ element, at, words, ...kind }] : [];
    });
    return found.length > 0 ? found : undefined;
  }

  #layerEnds(node: JsonNode): number[] | undefined {
    const value = plainValue(node);
    const isVelocity = (one: unknown): one is number =>
      typeof one === 'number' && Number.isInteger(one) && one >= 0 && one <= 127;
    if (Array.isArray(value) && value.length > 1 && value.every(isVelocity)) return value;
    this.#tell(node, '"upTo" lists the greatest velocity of each layer, from 0 to 127.');
    return undefined;
  }

  #chances(node: JsonNode | undefined): Chances | undefined {
    const members = node && this.#members(node, 'Chances', ['element', 'at', 'whole']);
    if (!node || !members) return undefined;
    const element = this.#elementName(members.get('element'), node);
    const at = this.#place(members.get('at'), node, 'at');
    const whole = members.get('whole') && plainValue(members.get('whole') as JsonNode);
    if (whole !== 1 && whole !== 100) this.#tell(members.get('whole') ?? node, '"whole" is 1 or 100.');
    return element !== undefined && at !== undefined && (whole === 1 || whole === 100)
      ? { element, at, whole }
      : undefined;
  }

  #levels(node: JsonNode | undefined, root: JsonNode): VocabularyLevel[] | undefined {
    if (node?.kind !== 'array' || node.items.length === 0) {
      this.#tell(
        node ?? firstOf(root),
        '"levels" lists the elements that carry parameters, from the outermost inwards.',
      );
      return undefined;
    }
    const { items } = node;
    const levels = items.map((item, at) => this.#level(item, at, items.length));
    return levels.every((level) => level !== undefined) ? levels : undefined;
  }

  #level(node: JsonNode, at: number, count: number): VocabularyLevel | undefined {
    const members = this.#members(node, 'A level', [
      'element',
      'is',
      'inside',
      'also',
      'rate',
      'turns',
      'sets',
      'parameters',
    ]);
    if (!members) return undefined;
    const element = this.#elementName(members.get('element'), node);
    const is = this.#kindOfLevel(members.get('is'), node, at, count);
    const inside = this.#texts(members.get('inside'), 'inside');
    if (inside && !inside.every(isXmlName))
      this.#tell(members.get('inside') ?? node, '"inside" lists names of elements.');
    const sets = this.#sets(members.get('sets'));
    const also = this.#also(members.get('also'));
    const turns = members.get('turns');
    if (turns && plainValue(turns) !== true && plainValue(turns) !== false)
      this.#tell(turns, '"turns" must be true or false.');
    const rate = members.get('rate') && this.#place(members.get('rate'), node, 'rate');
    const parameters = members.get('parameters');
    if (parameters && parameters.kind !== 'array') this.#tell(parameters, '"parameters" is a list.');
    const read = parameters?.kind === 'array' ? parameters.items.map((item) => this.#parameter(item)) : [];
    if (element === undefined || is === undefined) return undefined;
    return {
      element,
      is,
      ...(inside && inside.length > 0 && { inside: inside.filter(isXmlName) }),
      ...(also && { also }),
      ...(rate !== undefined && { rate }),
      ...(turns && plainValue(turns) === true && { turns: true }),
      ...(sets && { sets }),
      parameters: read.filter((one) => one !== undefined),
    };
  }

  #also(node: JsonNode | undefined): VocabularyLevel['also'] {
    if (!node) return undefined;
    if (node.kind !== 'object') {
      this.#tell(node, '"also" is an object with what each further name of an element sets.');
      return undefined;
    }
    const found: [string, Record<string, string>][] = [];
    for (const { name, nameStart, nameEnd, value } of node.members) {
      if (isXmlName(name)) found.push([name, this.#sets(value) ?? {}]);
      else
        this.#tell({ start: nameStart, end: nameEnd }, `"${shorten(name)}" is no name of an element in XML.`);
    }
    return found.length > 0 ? Object.fromEntries(found) : undefined;
  }

  /** A place of the member `name`. */
  #place(node: JsonNode | undefined, around: JsonNode, name: string): string | undefined {
    const at = this.#text(node, around, name);
    if (at === undefined || parsePlace(at)) return at;
    this.#tell(node ?? around, `"${name}" is a place such as @${name}, not "${shorten(at)}".`);
    return undefined;
  }

  #sets(node: JsonNode | undefined): Record<string, string> | undefined {
    if (!node) return undefined;
    if (node.kind !== 'object') {
      this.#tell(node, '"sets" is an object with a value for each parameter.');
      return undefined;
    }
    const found: [string, string][] = [];
    for (const { name, nameStart, nameEnd, value } of node.members) {
      if (!resolveOpcode(name))
        this.#tell(
          { start: nameStart, end: nameEnd },
          `The open SFZ format knows no parameter "${shorten(name)}".`,
        );
      else if (value.kind !== 'string' || value.value === '')
        this.#tell(value, 'What a level sets is a text, and not empty.');
      else found.push([name, value.value]);
    }
    return found.length > 0 ? Object.fromEntries(found) : undefined;
  }

  #elementName(node: JsonNode | undefined, level: JsonNode): string | undefined {
    const name = this.#text(node, level, 'element');
    if (name === undefined || isXmlName(name)) return name;
    this.#tell(node ?? level, `"${shorten(name)}" is no name of an element in XML.`);
    return undefined;
  }

  #kindOfLevel(
    node: JsonNode | undefined,
    level: JsonNode,
    at: number,
    count: number,
  ): VocabularyLevel['is'] | undefined {
    const is = this.#text(node, level, 'is');
    if (is === undefined) return undefined;
    const place = node ?? level;
    if (is !== 'instrument' && is !== 'group' && is !== 'region') {
      this.#tell(place, `"is" says instrument, group or region, not "${shorten(is)}".`);
      return undefined;
    }
    if ((is === 'region') === (at === count - 1) && (is !== 'instrument' || at === 0)) return is;
    this.#tell(
      place,
      'The last level, and no other, is the region; only the first can be the instrument; levels between are groups.',
    );
    return undefined;
  }

  #parameter(node: JsonNode): VocabularyParameter | undefined {
    const members = this.#members(node, 'A parameter', [
      'parameter',
      'at',
      'part',
      'between',
      'listed',
      'form',
    ]);
    if (!members) return undefined;
    const parameter = this.#parameterName(members.get('parameter'), node);
    const at = this.#text(members.get('at'), node, 'at');
    const place = at === undefined ? undefined : parsePlace(at);
    if (at !== undefined && !place) {
      this.#tell(
        members.get('at') ?? node,
        `"${shorten(at)}" is no place. Write @name for an attribute, name/@name for one of a child element, name for a child's text, . for the element's own.`,
      );
    }
    const part = members.get('part');
    if (part && !(part.kind === 'number' && (part.value === 1 || part.value === 2))) {
      this.#tell(part, '"part" is 1 or 2: the first or the second part of a range.');
    }
    const between = members.get('between');
    if (between && between.kind !== 'string') this.#tell(between, '"between" is a text, such as "-".');
    const listed = this.#listed(members.get('listed'));
    const form = this.#form(members.get('form'), node);
    if (parameter === undefined || at === undefined || !place || !form) return undefined;
    return {
      parameter,
      at,
      ...(part?.kind === 'number' && { part: part.value === 2 ? 2 : 1 }),
      ...(between?.kind === 'string' && { between: between.value }),
      ...(listed && { listed }),
      form,
    };
  }

  #listed(node: JsonNode | undefined): ListPlace | undefined {
    const members = node && this.#members(node, 'A place in a list', ['element', 'key', 'at']);
    if (!node || !members) return undefined;
    const element = this.#elementName(members.get('element'), node);
    const key = this.#text(members.get('key'), node, 'key');
    const at = this.#text(members.get('at'), node, 'at');
    if (element === undefined || key === undefined || at === undefined) return undefined;
    if (isEntryKey(key) && isEntryPlace(at)) return { element, key, at };
    this.#tell(
      node,
      '"key" is a place in an entry such as @id, #0 or #1 for its position; "at" is a place such as @root.',
    );
    return undefined;
  }

  #parameterName(node: JsonNode | undefined, parameter: JsonNode): string | undefined {
    const name = this.#text(node, parameter, 'parameter');
    if (name === undefined) return undefined;
    const place = node ?? parameter;
    const opcode = resolveOpcode(name);
    if (!opcode) {
      const near = nearestOpcodes(name, 1)[0];
      const meant = near === undefined ? '' : ` Did you mean "${near}"?`;
      this.#tell(place, `The open SFZ format knows no parameter "${shorten(name)}".${meant}`);
      return undefined;
    }
    if (opcode.spelling === 'alias') return opcode.canonical;
    return name;
  }

  #form(node: JsonNode | undefined, parameter: JsonNode): ValueForm | undefined {
    if (node?.kind !== 'object') {
      this.#tell(
        node ?? firstOf(parameter),
        '"form" says how the value is written, such as { "kind": "text" }.',
      );
      return undefined;
    }
    const kindNode = node.members.findLast(({ name }) => name === 'kind')?.value;
    const kind = this.#text(kindNode, node, 'kind');
    if (kind === undefined) return undefined;
    if (!isFormKind(kind)) {
      const kinds = Object.keys(formFields);
      const near = nearestWords(kind, kinds, 1)[0];
      const meant = near === undefined ? `It is one of ${kinds.join(', ')}.` : `Did you mean "${near}"?`;
      this.#tell(kindNode ?? node, `There is no kind of form "${shorten(kind)}". ${meant}`);
      return undefined;
    }
    const fields = formFields[kind];
    const members = this.#members(node, `A form of the kind "${kind}"`, ['kind', ...Object.keys(fields)]);
    const values: [string, unknown][] = [['kind', kind]];
    const before = this.problems.length;
    for (const [name, field] of Object.entries(fields)) {
      const value = members?.get(name);
      if (value) values.push([name, this.#field(value, name, field)]);
      else if (field.required) this.#tell(firstOf(node), `"${name}" is missing: ${wantedOf(field)}.`);
    }
    const form = Object.fromEntries(values) as unknown as ValueForm;
    if (this.problems.length > before) return undefined;
    if (form.kind === 'pan' && !((form.centre - form.left) * (form.right - form.centre) > 0)) {
      this.#tell(node, '"centre" must lie between "left" and "right".');
      return undefined;
    }
    if (form.kind === 'path' && form.under !== undefined && !areFolderPlaces(form.under)) {
      this.#tell(node, `"under" is a place such as @folder, not "${shorten(form.under)}".`);
      return undefined;
    }
    if (form.kind === 'path' && form.list && !isListPlace(form.list)) {
      this.#tell(
        node,
        '"list" has the name of an "element", a "key" such as @id, and a "path" such as @file or . for text; "under" and "rate", where given, are attributes such as @folder and @rate, and "first" is a whole number.',
      );
      return undefined;
    }
    if (form.kind === 'pan' && form.sides && !areSides(form.sides)) {
      this.#tell(node, '"sides" has the letters for "left", "centre" and "right", each another one.');
      return undefined;
    }
    return form;
  }

  #field(node: JsonNode, name: string, field: FormField): unknown {
    const value = plainValue(node);
    if (isFieldValue(value, field)) return value;
    this.#tell(node, `"${name}" must be ${wantedOf(field)}.`);
    return undefined;
  }

  /** The members of an object by name; the last of a name counts. */
  #members(node: JsonNode, what: string, known: readonly string[]): Members | undefined {
    if (node.kind !== 'object') {
      this.#tell(node, `${what} is an object: { … }.`);
      return undefined;
    }
    const members = new Map<string, JsonNode>();
    for (const { name, nameStart, nameEnd, value } of node.members) {
      if (!known.includes(name)) {
        const near = nearestWords(name, known, 1)[0];
        const meant =
          near === undefined
            ? `It knows ${known.filter((one) => one !== '$schema').join(', ')}.`
            : `Did you mean "${near}"?`;
        this.#tell({ start: nameStart, end: nameEnd }, `${what} has no "${shorten(name)}". ${meant}`);
      } else if (members.has(name)) {
        this.#tell({ start: nameStart, end: nameEnd }, `"${name}" stands here twice; the last one counts.`);
      }
      members.set(name, value);
    }
    return members;
  }

  #text(node: JsonNode | undefined, around: JsonNode, name: string): string | undefined {
    if (node?.kind === 'string' && node.value !== '') return node.value;
    this.#tell(
      node ?? firstOf(around),
      node ? `"${name}" is a text, and not empty.` : `"${name}" is missing.`,
    );
    return undefined;
  }

  #texts(node: JsonNode | undefined, name: string): string[] | undefined {
    if (!node) return undefined;
    if (node.kind !== 'array' || !node.items.every((item) => item.kind === 'string')) {
      this.#tell(node, `"${name}" is a list of texts.`);
      return undefined;
    }
    return node.items.map((item) => (item as { value: string }).value);
  }

  #tell({ start, end }: { start: number; end: number }, message: string): void {
    this.problems.push({ message, start, end });
  }
}

function isKindOfTakes(value: unknown): value is TakesElement['are'] {
  return value === 'random' || value === 'turns' || value === 'layers';
}

/** The bracket that opens an object or list, as the place of what it lacks. */
function firstOf({ start }: JsonNode): { start: number; end: number } {
  return { start, end: start + 1 };
}

function plainValue(node: JsonNode): unknown {
  switch (node.kind) {
    case 'object':
      return Object.fromEntries(node.members.map(({ name, value }) => [name, plainValue(value)]));
    case 'array':
      return node.items.map(plainValue);
    case 'null':
      return null;
    default:
      return node.value;
  }
}
