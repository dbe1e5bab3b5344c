import type { Diagnostic, Range } from 'vscode-languageserver';
import { DiagnosticSeverity } from 'vscode-languageserver';
import { joinAlike } from '../../checks/alikeFindings';
import type { Finding, Severity } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { directiveName } from '../../model/instrumentParts';
import { nameOf } from '../../model/paths';
import type { Span } from '../../model/text/span';
import { visibleText } from '../../model/text/visibleText';
import { byCount, counted } from '../../model/wording/counted';
import type { Judgement } from '../../workspace/openDocument';
import { rangeOf } from './positions';

/** Findings of one included file that are shown where it is included; the rest is counted. */
const mostOfInclude = 10;

const diagnosticSource = 'zonewright';

const levels: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What diagnostics are made of. */
export type JudgedText = Pick<Judgement, 'findings' | 'instrument' | 'source'>;

/** What turning findings into diagnostics needs to know. */
export interface DiagnosticOptions {
  /** The URI of the document that the diagnostics are for. */
  uri: string;
  /** The URI of another file. */
  uriOf: (path: string) => string;
  /** Whether the client shows related places. */
  withRelated: boolean;
}

/**
 * The findings of a document as diagnostics. Those in files that it includes stand where they are included and lead
 * to their place.
 */
export function diagnosticsOf(judgement: JudgedText, options: DiagnosticOptions): Diagnostic[] {
  const { findings, instrument, source } = judgement;
  const diagnostics: Diagnostic[] = [];
  const included = new Map<number, Finding[]>();
  const own = findings.filter((finding) => finding.source === source);
  for (const finding of joinAlike(own)) diagnostics.push(diagnosticOf(finding, judgement, options));
  for (const finding of findings) {
    if (finding.source === source) continue;
    if (source === 0) {
      const list = included.get(finding.source);
      if (list) list.push(finding);
      else included.set(finding.source, [finding]);
    }
  }
  for (const [file, list] of included) {
    const at = includeSpan(instrument, file);
    if (at) diagnostics.push(...includeDiagnostics(at, file, list, judgement, options));
  }
  return diagnostics;
}

/** One finding as a diagnostic of the file that it stands in. */
export function diagnosticOf(
  finding: Finding,
  judgement: JudgedText,
  options: DiagnosticOptions,
): Diagnostic {
  const { code, severity, message, related } = finding;
  const diagnostic: Diagnostic = {
    range: rangeIn(judgement, finding),
    severity: levels[severity],
    code,
    source: diagnosticSource,
    message: visibleText(message),
  };
  if (options.withRelated && related && related.length > 0) {
    diagnostic.relatedInformation = related.map((place) => ({
      location: locationOf(judgement, place, options),
      message: place.message,
    }));
  }
  return diagnostic;
}

function includeDiagnostics(
  at: Span,
  file: number,
  findings: readonly Finding[],
  judgement: JudgedText,
  options: DiagnosticOptions,
): Diagnostic[] {
  const range = rangeIn(judgement, at);
  const source = judgement.instrument.sources[file];
  const name = nameOf(source.path);
  const joined = joinAlike(findings);
  const diagnostics = joined.slice(0, mostOfInclude).map((finding): Diagnostic => {
    const { code, severity, message } = finding;
    const diagnostic: Diagnostic = {
      range,
      severity: levels[severity],
      code,
      source: diagnosticSource,
      message: `In "${name}", line ${source.positionAt(finding.start).line}: ${visibleText(message)}`,
    };
    if (options.withRelated) {
      diagnostic.relatedInformation = [
        { location: locationOf(judgement, finding, options), message: 'The place in the included file.' },
      ];
    }
    return diagnostic;
  });
  const last = diagnostics[diagnostics.length - 1];
  if (last && joined.length > mostOfInclude)
    last.message += ` (${counted(joined.length - mostOfInclude, 'more finding', 'more findings')} in "${name}" ${byCount(joined.length - mostOfInclude, 'is', 'are')} not listed here.)`;
  return diagnostics;
}

/** The include in the main file that brings a file in, directly or through others. */
function includeSpan(instrument: Instrument, file: number): Span | undefined {
  let at = file;
  for (let step = 0; step <= instrument.sources.length; step++) {
    const path = instrument.sources[at]?.path;
    const include = instrument.directives.find(
      ({ kind, value, source }) => kind === 'include' && value === path && source < at,
    );
    if (!include) return undefined;
    if (include.source === 0) return directiveName(include);
    at = include.source;
  }
  return undefined;
}

function rangeIn({ instrument }: JudgedText, span: Span): Range {
  return rangeOf(instrument.sources[span.source], span);
}

function locationOf(judgement: JudgedText, place: Span, { uri, uriOf }: DiagnosticOptions) {
  const path = judgement.instrument.sources[place.source]?.path ?? '';
  return {
    uri: place.source === judgement.source ? uri : uriOf(path),
    range: rangeIn(judgement, place),
  };
}
