import type { Finding } from '../model/finding';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { mainSpan } from '../model/text/span';
import { counted } from '../model/wording/counted';
import type { CheckContext, Rule, SeveritySettings } from './rule';
import { instrumentRules } from './rules';
import { soundFixes } from './soundFixes';

/** Findings of one code that are listed; a text that is no instrument would give one for every word. */
const mostOfOneCode = 1000;
/** Characters of a message that are shown; the middle of a longer one is left out. */
const mostOfMessage = 1200;

/**
 * All findings about an instrument, those of its reader included, sorted by file and place. Never waits: samples that
 * were not looked at yet give no findings. `severities` overrides the severity of a code, or switches it off.
 * A finding in a file that is included twice is given once.
 */
export function checkInstrument(context: CheckContext, severities: SeveritySettings = {}): Finding[] {
  return finish(checkInSteps(context, severities));
}

/**
 * As {@link checkInstrument}, in steps: a rule, or part of one where it takes long; each tells the share done, 0..1. What is known of samples may grow meanwhile:
 * who lets it has to check again then.
 */
export function* checkInSteps(context: CheckContext, severities: SeveritySettings = {}): Steps<Finding[]> {
  const findings = new FindingCollector(severities, soundFixes(context));
  for (const finding of context.instrument.findings) findings.add(finding);
  // Rules share what they work out through the context, and what is known of samples changes between checks.
  const once: CheckContext = { ...context };
  for (const [at, rule] of instrumentRules.entries()) {
    if (severities[rule.code] === 'off') continue;
    yield* findings.addFrom(rule, once, at / instrumentRules.length);
    yield (at + 1) / instrumentRules.length;
  }
  return findings.sorted();
}

/** A message in a length that can be read, whatever values of the text it quotes. */
function shortened(message: string): string {
  if (message.length <= mostOfMessage) return message;
  return `${message.slice(0, mostOfMessage / 2)} … ${message.slice(-mostOfMessage / 4)}`;
}

class FindingCollector {
  readonly #severities: SeveritySettings;
  readonly #sound: ReturnType<typeof soundFixes>;
  readonly #findings: Finding[] = [];
  readonly #seen = new Set<string>();

  constructor(severities: SeveritySettings, sound: ReturnType<typeof soundFixes>) {
    this.#severities = severities;
    this.#sound = sound;
  }

  *addFrom(rule: Rule, context: CheckContext, share: number): Steps<void> {
    try {
      yield* this.#addAllFrom(rule, context, share);
    } catch (error) {
      // A fault of one check is told where it happened, and takes no other finding with it.
      const reason = error instanceof Error ? error.message : String(error);
      const message = `The check ${rule.code} stopped with an error (${reason}), so its findings are missing here. Please report it.`;
      this.add({ code: 'syntax-error', severity: 'error', ...mainSpan(0, 0), message });
    }
  }

  *#addAllFrom(rule: Rule, context: CheckContext, share: number): Steps<void> {
    let count = 0;
    let last: Finding | undefined;
    const steps = rule.check(context, (found) => {
      if (count >= mostOfOneCode) {
        count++;
        return;
      }
      const made = typeof found === 'function' ? found() : found;
      if (made.fixes) made.fixes = this.#sound(made.fixes);
      const finding = this.add({ code: rule.code, severity: rule.severity, ...made });
      if (!finding) return;
      last = finding;
      count++;
    });
    if (steps) while (!steps.next().done) yield share;
    if (last && count > mostOfOneCode) {
      last.message += ` (${counted(count - mostOfOneCode, 'more finding like this is', 'more findings like this are')} not listed.)`;
    }
  }

  /** Takes a finding in; `undefined` where it is switched off or was there before. */
  add(finding: Finding): Finding | undefined {
    const severity = this.#severities[finding.code];
    if (severity === 'off') return undefined;
    finding.message = shortened(finding.message);
    const { code, source, start, end, message } = finding;
    const key = `${code} ${source} ${start} ${end} ${message}`;
    if (this.#seen.has(key)) return undefined;
    this.#seen.add(key);
    const taken = severity === undefined ? finding : { ...finding, severity };
    this.#findings.push(taken);
    return taken;
  }

  sorted(): Finding[] {
    return this.#findings.sort((a, b) => a.source - b.source || a.start - b.start || a.end - b.end);
  }
}
