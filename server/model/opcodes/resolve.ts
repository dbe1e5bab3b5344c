import { catalogue } from './catalogue';
import { describeModulation } from './describe';
import { headerMaskOf } from './headerMask';
import type { OpcodeFacts, ResolvedOpcode } from './opcode';

/** How a name that the catalogue lists is found: a key with `N` for each of its numbers. */
interface Entry {
  readonly facts: OpcodeFacts;
  /** How the name is written in the catalogue: the pattern, or another spelling of it. */
  readonly written: string;
}

type Form = 'on' | 'curve' | 'smooth' | 'step';

const longestName = 96;
const mostNumbers = 5;
const mostRemembered = 8192;

const entries = new Map<string, Entry>();
const derived = new Map<string, OpcodeFacts>();
const remembered = new Map<string, ResolvedOpcode | undefined>();

/**
 * What the catalogue knows of an opcode name as it stands in text, in any letter case, its numbers put in:
 * `amp_velcurve_64`, `cutoff_oncc74`, `lfo03_freq`. Leading zeros in numbers mean nothing. Controllers may be spelt
 * `_onccN`, `_ccN` or `ccN` for every opcode that can be moved, whether or not the documentation lists the
 * combination. `undefined` for a name that the format does not know.
 */
export function resolveOpcode(name: string): ResolvedOpcode | undefined {
  const known = remembered.get(name);
  if (known !== undefined || remembered.has(name)) return known;
  if (name.length === 0 || name.length > longestName) return undefined;
  const found = lookUp(name.toLowerCase());
  if (remembered.size >= mostRemembered) remembered.clear();
  // A name may be a slice of a whole document, which the map must not keep alive.
  remembered.set(` ${name}`.slice(1), found);
  return found;
}

/**
 * All opcodes of the catalogue: the published ones in the order of the published table, each followed by the further
 * ones of the same kind (second filter, further waveforms), and the names inside `<sample>`.
 */
export function listOpcodes(): readonly OpcodeFacts[] {
  return catalogue().facts;
}

/** A pattern with numbers put in for `N`, `X` and `Y` in order; `NN` and `NNN` keep their two or three digits. */
export function fillPattern(pattern: string, indexes: readonly number[]): string {
  let next = 0;
  return pattern.replace(/N+|[XYZ]/g, (letter) => String(indexes[next++] ?? 0).padStart(letter.length, '0'));
}

function lookUp(name: string): ResolvedOpcode | undefined {
  if (entries.size === 0) fillEntries();
  return direct(name) ?? moved(name) ?? wildcard(name);
}

/** Patterns hold capital letters for numbers and names are lower case here, so that `N` cannot be mistaken. */
function keyOf(pattern: string): string {
  return pattern.replace(/N+|[XYZ]/g, 'N');
}

function fillEntries(): void {
  const { facts } = catalogue();
  for (const one of facts) entries.set(keyOf(one.pattern), { facts: one, written: one.pattern });
  for (const one of facts) {
    for (const alias of one.aliases) {
      const key = keyOf(alias);
      if (!entries.has(key)) entries.set(key, { facts: one, written: alias });
    }
  }
  // By analogy: `fil_random` is also spelt `cutoff_random`, and the second filter has `cutoff2_random`.
  const second = entries.get('cutoff2_random');
  if (second && !entries.has('fil2_random'))
    entries.set('fil2_random', { facts: second.facts, written: 'fil2_random' });
}

/** Whether an alias differs by more than the way a controller is spelt, on the opcode that is moved. */
function isOtherWord(alias: string, facts: OpcodeFacts): boolean {
  if (alias === facts.pattern) return false;
  const plain = withoutController(alias);
  return plain !== withoutController(facts.pattern) && plain !== facts.modulates;
}

function withoutController(name: string): string {
  return name.replace(/_?(?:on|curve|smooth|step)?cc[NXYZ\d]+$/, '');
}

/** Finds a listed name. Each number in it may stand for itself (`effect1`) or for a letter of the pattern. */
function direct(name: string): ResolvedOpcode | undefined {
  const parts = name.split(/(\d+)/);
  const count = (parts.length - 1) / 2;
  if (count > mostNumbers) return undefined;
  for (let choice = 0; choice < 1 << count; choice++) {
    let key = parts[0];
    const indexes: number[] = [];
    let fits = true;
    for (let at = 0; at < count; at++) {
      const digits = parts[2 * at + 1];
      if (choice & (1 << at)) {
        if (digits.length > 3) fits = false;
        indexes.push(Number(digits));
        key += 'N';
      } else key += digits;
      key += parts[2 * at + 2];
    }
    const entry = fits ? entries.get(key) : undefined;
    if (entry) return resolved(entry.facts, indexes, isOtherWord(entry.written, entry.facts));
  }
  return undefined;
}

function resolved(facts: OpcodeFacts, indexes: readonly number[], alias: boolean): ResolvedOpcode {
  return {
    facts,
    canonical: fillPattern(facts.pattern, indexes),
    indexes,
    spelling: alias ? 'alias' : 'canonical',
  };
}

const suffixes: Readonly<Record<Form, readonly string[]>> = {
  on: ['_oncc', '_cc', 'cc'],
  curve: ['_curvecc', 'curvecc'],
  smooth: ['_smoothcc', 'smoothcc'],
  step: ['_stepcc', 'stepcc'],
};

/** Finds the opcode by which a controller moves another: in a listed spelling, or else derived from the one moved. */
function moved(name: string): ResolvedOpcode | undefined {
  const parts = /^(.*?)_?(on|curve|smooth|step)?cc(\d{1,3})$/.exec(name);
  if (!parts) return undefined;
  const [, base = '', form = 'on', number = ''] = parts;
  const listed = listedMove(base, form as Form, number);
  if (listed) return listed;
  const of = direct(baseWord(base));
  if (!of || !canBeMoved(of.facts)) return undefined;
  if (of.canonical !== base) {
    const canonical = listedMove(of.canonical, form as Form, number);
    if (canonical) return of.spelling === 'alias' ? { ...canonical, spelling: 'alias' } : canonical;
  }
  return resolved(
    deriveMove(of.facts, form as Form),
    [...of.indexes, Number(number)],
    of.spelling === 'alias',
  );
}

/** `gain` moves the volume, yet is no opcode by itself. */
function baseWord(base: string): string {
  return base === 'gain' ? 'volume' : base;
}

function listedMove(base: string, form: Form, number: string): ResolvedOpcode | undefined {
  for (const suffix of suffixes[form]) {
    const found = direct(base + suffix + number);
    if (found) return found;
  }
  return undefined;
}

const unmovable = /^(?:Region Logic|Instrument Settings|Curves|Loading|Embedded|Real-Time)/;

function canBeMoved(facts: OpcodeFacts): boolean {
  if (facts.kind === 'option' || facts.kind === 'path' || facts.kind === 'text') return false;
  if (/cc[NXYZ]$/.test(facts.pattern) || facts.pattern.includes('*')) return false;
  return !unmovable.test(facts.category) || facts.pattern === 'off_time' || facts.pattern === 'off_shape';
}

/** Facts for a combination that no documentation lists, of an opcode that it does list. */
function deriveMove(base: OpcodeFacts, form: Form): OpcodeFacts {
  const taken = base.pattern.match(/N+|[XYZ]/g)?.length ?? 0;
  const pattern = `${base.pattern}_${form}cc${'NXYZ'[taken]}`;
  const known = derived.get(pattern);
  if (known) return known;
  const target = catalogue().subjects.get(base.pattern) ?? base.pattern;
  const unit = form === 'on' ? base.unit : form === 'smooth' ? 'ms' : undefined;
  const facts: OpcodeFacts = {
    pattern,
    level: 'extension',
    category: base.category,
    type: form === 'curve' ? 'integer' : 'float',
    ...(unit !== undefined && { unit }),
    ...(form === 'curve' && { min: 0, max: 255 }),
    defaultText: '0',
    options: [],
    modulates: base.pattern,
    aliases: [],
    description: describeModulation({ pattern, target, ...(unit !== undefined && { unit }) }) ?? '',
    kind: form === 'curve' ? 'whole' : 'number',
    headers: headerMaskOf(pattern, base.category),
  };
  derived.set(pattern, facts);
  return facts;
}

/** Finds the families that are documented with a star. */
function wildcard(name: string): ResolvedOpcode | undefined {
  if (/^hint_./.test(name)) return family('hint_*', name, []);
  const variable = /^var(\d{1,2})(_[a-z].*)$/.exec(name);
  if (variable) {
    const number = Number(variable[1]);
    return family('varNN_*', `var${String(number).padStart(2, '0')}${variable[2]}`, [number]);
  }
  const moving = /^(.+)_mod$/.exec(name)?.[1];
  const base = moving === undefined ? undefined : (direct(baseWord(moving)) ?? moved(moving));
  return base && family('*_mod', `${base.canonical}_mod`, []);
}

function family(pattern: string, canonical: string, indexes: readonly number[]): ResolvedOpcode | undefined {
  const facts = catalogue().byPattern.get(pattern);
  return facts && { facts, canonical, indexes, spelling: 'canonical' };
}
